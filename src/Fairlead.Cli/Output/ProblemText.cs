using Fairlead.Model;

namespace Fairlead.Cli.Output;

/// <summary>What is wrong with the text of a job, a line each, and the count.</summary>
internal static class ProblemText
{
    public static IEnumerable<string> Lines(string directory, IReadOnlyCollection<Problem> problems)
    {
        foreach (var problem in problems)
        {
            yield return (problem with { Location = problem.Location.In(directory) }).ToString();
        }

        yield return $"{Counted.Of(problems.Count, "problem")} in the job's files: nothing was assessed.";
    }

    /// <summary>The place as seen from where the command was typed.</summary>
    public static Location In(this Location location, string directory) => location with { File = Path.Combine(directory, location.File) };
}
