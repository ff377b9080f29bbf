using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Problem = Fairlead.Planning.Scheduling.Problem;

namespace Fairlead.Planning.Plans;

/// <summary>Work that no plan can hold, since those who do it, or the hours in which it may be done, are never there together for long enough. It is told by name
/// and left out with what follows from it, so that the rest is planned.</summary>
internal static class HoursApart
{
    /// <summary>What can be planned, what cannot and why, and the findings that say so.</summary>
    /// <param name="whole">All that is left to do.</param>
    /// <param name="job">The job.</param>
    /// <param name="days">Days looked at first: weeks repeat.</param>
    /// <param name="most">Days looked at before anything is called impossible, in case all these were closed.</param>
    public static (PlanTakeOff TakeOff, Sequence<UnplannedTask> Unplanned, Sequence<Finding> Findings) Sift(PlanTakeOff whole, Job job, int days, int most)
    {
        var never = Never(whole, days).Count == 0 ? [] : Never(whole, most);
        if (never.Count == 0)
        {
            return (whole, [], []);
        }

        var why = never.ToDictionary(n => n.Task.Id, n => n.Cause.Words, StringComparer.Ordinal);
        foreach (var task in whole.Left.Where(t => !whole.Begun(t) && !why.ContainsKey(t.Id)))
        {
            if (task.After.FirstOrDefault(w => why.ContainsKey(w.Task)) is { } wait)
            {
                why.Add(task.Id, $"it follows from {wait.Task}");
            }
        }

        var unplanned = whole.Left.Where(t => why.ContainsKey(t.Id)).Select(t => new UnplannedTask(t, why[t.Id], never.TrueForAll(n => n.Task != t))).ToSequence();
        return (whole.Without(why.Keys), unplanned, never.GroupBy(n => n.Cause).Select(g => Told(g.Key, [.. g.Select(n => n.Task)], unplanned.Count - never.Count)).ToSequence());
    }

    private static List<(JobTask Task, Cause Cause)> Never(PlanTakeOff whole, int days)
    {
        var problem = whole.Problem(whole.Calendar(days));
        var meetings = new Meetings(problem);
        var byId = whole.Left.ToDictionary(t => t.Id, StringComparer.Ordinal);
        return [.. problem.Tasks.Where(w => !meetings.Ever(w)).DistinctBy(w => SecondLook.TaskOf(w.Id)).Select(w => (byId[SecondLook.TaskOf(w.Id)], Of(whole, problem, meetings, w.Piece == 0 ? w : w with { Piece = 1 })))];
    }

    // What may pause needs no more than a moment in common. The windows are at fault where without them there would be time; else one skill whose people are never there so long; else that these are there at different hours.
    private static Cause Of(PlanTakeOff whole, Problem problem, Meetings meetings, Work task)
    {
        var piece = task.Pieces().Max();
        var length = task.Piece == 0 ? $"{NumberFormat.Text(piece / (double)PlanCalendar.PerHour)} h without a pause" : "any time";
        string Hours(IEnumerable<string> skills) => string.Join("; ", skills.Select(s => $"{s}: {string.Join(", ", problem.Workers.Where(w => w.Skills.Contains(s)).Select(w => whole.HoursOf(w.Id)))}"));
        string[] needs = [.. task.Crew.Select(c => c.Skill)];
        if (task.Windows.Count > 0 && meetings.Ever(task, windows: false))
        {
            return task.Windows.Any(w => w.Length >= piece)
                ? new("ramp-hours", "plan/ramp", $"the hours of the ramp, {whole.RampHours}, and the shifts of those who do it do not have {length} in common ({Hours(needs)})", "State hours of the ramp that lie in a shift, or give those who test outside a shift in the hours of the ramp.", "job/plan")
                : new("ramp-hours", "plan/ramp", $"the hours of the ramp, {whole.RampHours}, are shorter than it takes, {length}", "State longer hours of the ramp.", "job/plan");
        }

        return Array.Find(needs, s => !meetings.Ever(task with { Windows = [], Crew = [task.Crew.First(c => c.Skill == s)] })) is { } one
            ? new("hours-apart", $"crew/{one}", $"nobody, or too few, who can do it are at work for {length} ({Hours([one])})", "Give them a longer shift, or one that meets that of the others; or give the skill to somebody who has it.", "job/people")
            : new("hours-apart", $"crew/{string.Join(", ", needs)}", $"those who do it together are never at work at the same time for {length} ({Hours(needs)})", "Give one of them a shift that meets that of the others, or the skill to somebody who is there with them.", "job/people");
    }

    private static Finding Told(Cause cause, JobTask[] tasks, int following) => new(
        cause.Rule, Verdict.Fails, cause.Subject,
        string.Create(CultureInfo.InvariantCulture, $"No plan can hold {PlanFindings.Names(tasks)}: {cause.Words}. {(following > 0 ? $"What follows from what cannot be planned, {following} task{(following == 1 ? "" : "s")}, is not planned either" : "The rest is planned")}."), "", PlanFindings.Job, cause.Remedy, cause.Path);

    private sealed record Cause(string Rule, string Subject, string Words, string Remedy, string Path);
}
