using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Whether those who do a task together are ever at work at the same time for as long as it goes on without a pause, in the hours in which it may be done.</summary>
internal sealed class Meetings
{
    private readonly Problem problem;
    private readonly Sequence<Slot>[] hours;

    public Meetings(Problem problem)
    {
        this.problem = problem;
        hours = [.. problem.Workers.Select(w => Hours.Joined(w.Shifts.Concat(w.Overtime)))];
    }

    /// <summary>Whether some crew has time for the longest piece of a task.</summary>
    /// <param name="task">The task.</param>
    /// <param name="windows">Whether its windows count.</param>
    public bool Ever(Work task, bool windows = true)
    {
        var open = windows && task.Windows.Count > 0 ? Hours.Joined(task.Windows) : [new(0, problem.Horizon)];
        return Meets(Hours.Common(open, [new(task.NotBefore, problem.Horizon)]), [.. task.Crew.SelectMany(c => Enumerable.Repeat(c.Skill, c.Count))], [], task.Pieces().Max());
    }

    // One after the other joins: nobody twice, and as long as enough is left of the hours they have in common.
    private bool Meets(Sequence<Slot> open, string[] needs, int[] crew, int length) =>
        length == 0 || (open.Any(s => s.Length >= length) && (crew.Length == needs.Length
            || Enumerable.Range(0, hours.Length).Any(w => !crew.Contains(w) && problem.Workers[w].Skills.Contains(needs[crew.Length]) && Meets(Hours.Common(open, hours[w]), needs, [.. crew, w], length))));
}
