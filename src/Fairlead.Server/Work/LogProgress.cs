using Fairlead.Calculations;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Records;

namespace Fairlead.Server.Work;

/// <summary>What the log says of the tasks of a job: tasks started and done, panels opened and closed, tests measured.</summary>
public static class LogProgress
{
    /// <summary>The progress of each task the log knows of.</summary>
    /// <param name="state">How things stand.</param>
    /// <param name="tasks">The tasks.</param>
    /// <param name="zone">Time zone of the hangar.</param>
    public static Sequence<TaskProgress> Of(HangarState state, Sequence<JobTask> tasks, TimeZoneInfo zone) =>
        tasks.Select(t => Of(state, t, zone)).OfType<TaskProgress>().ToSequence();

    private static TaskProgress? Of(HangarState state, JobTask task, TimeZoneInfo zone)
    {
        var subject = JobCards.SubjectOf(task);
        var (begun, ended) = task.Kind switch
        {
            TaskKind.Open => (new[] { "opened" }, new[] { "opened" }),
            TaskKind.Close => (["closed"], ["closed"]),
            TaskKind.Controls => (["signed"], ["signed"]),
            _ when task.Card is not null => (["measured", "observed"], ["measured", "observed"]),
            _ => (["started"], ["done"]),
        };
        var first = state.Story(subject).FirstOrDefault(e => begun.Contains(e.Kind)) ?? state.Last(subject, ended);
        if (first is null)
        {
            return null;
        }

        var last = task.Kind == TaskKind.Open || !state.IsOpen(subject) ? state.Last(subject, ended) : null;
        var people = state.Story(subject).Where(e => begun.Contains(e.Kind)).Select(e => e.Who).Distinct(StringComparer.Ordinal).Take(task.People).ToSequence();
        return new(task.Id, Wall(first.At, zone), last is null ? null : Wall(last.At, zone), people);
    }

    // Log times are UTC; plans are by the hangar's wall clock.
    private static DateTime Wall(DateTimeOffset at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at, zone).DateTime;
}
