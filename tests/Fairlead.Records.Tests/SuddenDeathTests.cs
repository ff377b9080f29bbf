using System.Diagnostics;
using System.Globalization;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>A process of ten writers is killed in the middle of its appends, thirty times on each store: nothing that was acknowledged is lost, and the
/// logs stay whole. FAIRLEAD_KILLS sets another number of kills.</summary>
public sealed class SuddenDeathTests(PostgresServer server) : IDisposable
{
    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("FAIRLEAD_KILLS") is { Length: > 0 } kills ? kills : "30", CultureInfo.InvariantCulture);
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-kill-");
    private readonly long[] acknowledged = new long[Appender.Writers];
    private readonly (long Read, string Head)[] kept = [.. Enumerable.Repeat((0L, Entry.Origin), Appender.Writers)];

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Killing_the_writers_of_files_loses_nothing_acknowledged() => Repeated(folder.FullName, Kills, writer => writer.Kill());

    [Fact]
    public void Killing_the_writers_of_a_database_loses_nothing_acknowledged() => Repeated(server.Need(), Kills, writer => writer.Kill());

    [Fact]
    public void Stopping_the_database_dead_loses_nothing_acknowledged()
    {
        server.Need();
        using var own = new PostgresServer();
        Repeated(own.Need(), 5, _ => own.Crash());
    }

    private void Repeated(string place, int times, Action<Process> end)
    {
        for (var i = 0; i < times; i++)
        {
            using var process = Start(place);
            Hear(process, lines: 1 + (i * 7 % 120));
            end(process);
            Rest(process);
            process.WaitForExit();
            for (var writer = 0; writer < Appender.Writers; writer++)
            {
                Keep(place, writer);
            }
        }

        Assert.All(acknowledged, a => Assert.True(a >= times, $"only {a} acknowledged"));
    }

    // What was added since the last look, link by link: so the whole log is looked at, and each entry once.
    private void Keep(string place, int writer)
    {
        using var store = Appender.Open(place, writer);
        var (read, head) = kept[writer];
        foreach (var entry in store.Lines(read).Select(Entry.Read))
        {
            Assert.Equal((read + 1, head, entry.Computed()), (entry.Sequence, entry.Previous, entry.Hash));
            (read, head) = (entry.Sequence, entry.Hash);
        }

        Assert.True(read >= acknowledged[writer], $"{acknowledged[writer]} acknowledged, {read} kept");
        kept[writer] = (read, head);
    }

    private static Process Start(string place) =>
        Process.Start(new ProcessStartInfo("dotnet", [typeof(Appender).Assembly.Location, "append", place]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;

    private void Hear(Process process, int lines)
    {
        for (var i = 0; i < lines && process.StandardOutput.ReadLine() is { } line; i++)
        {
            Hear(line);
        }
    }

    // A line without its end was not acknowledged whole.
    private void Rest(Process process) => Array.ForEach([.. process.StandardOutput.ReadToEnd().Split('\n').SkipLast(1)], Hear);

    private void Hear(string line)
    {
        var words = line.Split(' ');
        if (words.Length == 2 && int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out var writer) && long.TryParse(words[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var sequence))
        {
            Assert.True(sequence > 0, "an append was refused");
            acknowledged[writer] = Math.Max(acknowledged[writer], sequence);
        }
    }
}
