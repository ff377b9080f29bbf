using System.Globalization;
using Fairlead.Bench;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Reference.Planning;

/// <summary>Instances of Kolisch and Sprecher (European Journal of Operational Research 96, 1996, 205-216) at their proved optima.</summary>
public sealed class PublishedOptimaTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "data", "psplib");

    public static TheoryData<string, int> Optima => [.. File.ReadLines(Path.Combine(Folder, "optima.csv")).Skip(1).Select(l => l.Split(',')).Select(c => new TheoryDataRow<string, int>(c[0], int.Parse(c[1], CultureInfo.InvariantCulture)))];

    [Theory]
    [MemberData(nameof(Optima))]
    public void The_optimum_is_found_and_proved(string instance, int optimum)
    {
        var problem = Psplib.Read(File.ReadAllText(Path.Combine(Folder, $"{instance}.sm")));
        var result = Optimiser.Run(problem);
        Assert.Equal((optimum, optimum, true), (result.Schedule!.Finish, result.Bound, result.Proved));
        Assert.Empty(ScheduleChecker.Faults(problem, result.Schedule));
    }

    // MPM-Time in the file: the longest chain of activities.
    [Theory]
    [MemberData(nameof(Optima))]
    public void The_critical_path_is_the_one_the_file_states(string instance, int optimum)
    {
        var text = File.ReadAllText(Path.Combine(Folder, $"{instance}.sm"));
        var stated = int.Parse(text.ReplaceLineEndings("\n").Split('\n').SkipWhile(l => !l.Contains("MPM-Time", StringComparison.Ordinal)).ElementAt(1).Split(' ', StringSplitOptions.RemoveEmptyEntries)[^1], CultureInfo.InvariantCulture);
        Assert.Equal(stated, Psplib.Read(text).Tails().Max());
        Assert.True(stated <= optimum);
    }
}
