using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Planning;

/// <summary>The aircraft is there once: what stands outside or radiates has it to itself, whatever instruments are used.</summary>
public sealed class WholeAircraftTests
{
    private static readonly PlanOptions Quick = new(new DateOnly(2027, 3, 22), Effort: 0, Runs: 0, WhatIfs: false);
    private static readonly Lazy<Job> Job = new(() => TaskListTests.Demo("survey-twin"));

    [Fact]
    public void Tests_outside_never_go_on_at_once_nor_while_anybody_works_on_the_aircraft()
    {
        var tasks = TaskList.Of(new Assessor().Assess(Job.Value));
        Assert.True(tasks.Count(t => t.Outside && t.Tools.Count == 0) > 1, "some share no instrument");
        Assert.True(Clashes(tasks, t => t.Outside) is [], string.Join("; ", Clashes(tasks, t => t.Outside)));
    }

    // The two tests under power are made to radiate in the hangar: suppression, and the height with a delay line.
    [Fact]
    public void What_radiates_in_the_hangar_has_people_clear_of_the_aircraft()
    {
        var tasks = TaskList.Of(new Assessor().Assess(Job.Value)).Select(t => t.Id is "TEST-T4" or "TEST-T6" ? t with { Card = t.Card! with { Radiates = true } } : t).ToSequence();
        Assert.True(Clashes(tasks, t => t.Id is "TEST-T4" or "TEST-T6") is [], string.Join("; ", Clashes(tasks, t => t.Id is "TEST-T4" or "TEST-T6")));
    }

    // Work at the bench and at the desk is in no zone, behind no panel, and no test.
    private static string[] Clashes(Sequence<JobTask> tasks, Func<JobTask, bool> whole)
    {
        var plan = Planner.Run(tasks, Job.Value, Quick);
        Assert.Equal("", plan.Why);
        var there = plan.Tasks.Where(t => t.Task.Zone.Length > 0 || t.Task.Panels.Count > 0 || t.Task.Card is not null).ToArray();
        return [.. plan.Tasks.Where(t => whole(t.Task)).SelectMany(w => there.Where(o => o != w && w.Pieces.Any(p => o.Pieces.Any(q => p.From < q.To && q.From < p.To))).Select(o => $"{w.Task.Id} and {o.Task.Id}"))];
    }
}
