using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Problem = Fairlead.Planning.Scheduling.Problem;

namespace Fairlead.Tests.Planning;

/// <summary>Hours that never meet are told by task, people and hours, and stop nothing but what follows from them; work that nobody can do takes its time all the same.</summary>
public sealed class HoursApartTests
{
    private static readonly PlanOptions Quick = new(new DateOnly(2027, 3, 22), Effort: 0, Runs: 0, WhatIfs: false);
    private static readonly Lazy<Job> Job = new(() => TaskListTests.Demo("survey-twin"));
    private static readonly Lazy<Sequence<JobTask>> Tasks = new(() => TaskList.Of(new Assessor().Assess(Job.Value)));

    // The day shift is 07:00 to 15:30 with two hours of overtime, the late one 13:00 to 21:00 with as much: nobody is there from 23:00 on.
    [Fact]
    public void Hours_of_the_ramp_outside_all_shifts_are_blamed_and_the_work_inside_is_planned()
    {
        var plan = Plan(order => order with { Plan = order.Plan! with { Ramp = [order.Plan.Ramp[0] with { From = new(23, 0), To = new(23, 45) }] } });
        Assert.All(plan.Findings.Where(f => f.Severity == Verdict.Fails), f =>
        {
            Assert.Equal(("ramp-hours", "plan/ramp"), (f.Rule, f.Subject));
            Assert.Contains("23:00 to 23:45", f.Message, StringComparison.Ordinal);
            Assert.Contains("AV1 07:00 to 15:30", f.Message, StringComparison.Ordinal);
        });
        Assert.Contains(plan.Findings, f => f.Rule == "ramp-hours");
        Assert.Equal(Tasks.Value.Where(t => t.Outside).Select(t => t.Id).Order(StringComparer.Ordinal), plan.Unplanned.Where(u => !u.Follows).Select(u => u.Task.Id).Order(StringComparer.Ordinal));
        Rest(plan);
    }

    [Fact]
    public void A_task_without_a_pause_that_is_longer_than_the_shift_of_the_only_one_who_can_do_it_is_told_with_that_shift()
    {
        var plan = Plan(order => order with
        {
            Labour = new(order.Labour!.Append(new LabourTime("SEAL-E1", new Fairlead.Model.ThreePoint(Hours(12), Hours(12), Hours(12))))),
        });
        var finding = Assert.Single(plan.Findings, f => f.Rule == "hours-apart");
        Assert.Contains("No plan can hold SEAL-E1: nobody, or too few, who can do it are at work for 12 h without a pause", finding.Message, StringComparison.Ordinal);
        Assert.Contains("ST1 07:00 to 15:30", finding.Message, StringComparison.Ordinal);
        Assert.Equal(["SEAL-E1"], plan.Unplanned.Where(u => !u.Follows).Select(u => u.Task.Id));
        Rest(plan);
    }

    [Fact]
    public void Two_people_who_are_never_at_work_together_are_told_with_their_shifts()
    {
        var plan = Plan(order => order with
        {
            Shifts = new(order.Shifts!.Append(new Shift("night", order.Shifts!["day"].Days, new(23, 0), new(4, 0)))),
            People = new(order.People!.Select(p => p.Skills.Contains(Skills.Inspection) ? p with { Shift = "night" } : p)),
            Plan = order.Plan! with { Overtime = default },
        });
        var finding = Assert.Single(plan.Findings, f => f.Rule == "hours-apart" && f.Message.Contains("CONTROLS-", StringComparison.Ordinal));
        Assert.Contains("those who do it together are never at work at the same time", finding.Message, StringComparison.Ordinal);
        Assert.Contains("IN1 23:00 to 04:00", finding.Message, StringComparison.Ordinal);
        Assert.NotEmpty(finding.Remedy);
        Rest(plan);
    }

    [Fact]
    public void A_job_that_can_be_planned_has_nothing_unplanned() => Assert.Empty(Plan(o => o).Unplanned);

    [Fact]
    public void Work_that_nobody_can_do_takes_its_time_in_the_hours_of_the_first_shift_one_task_after_the_other()
    {
        var plan = Plan(order => order with { People = order.People!.With(order.People["ST1"] with { Skills = ["structure", "access"] }) });
        var sealing = plan.Tasks.Where(t => t.Task.Crew.Contains(Skills.Sealing)).ToArray();
        Assert.True(sealing.Length > 4);
        Assert.Contains("shift 'day'", Assert.Single(plan.Findings, f => f.Rule == "skill-missing").Message, StringComparison.Ordinal);
        var pieces = sealing.SelectMany(t => t.Pieces).OrderBy(p => p.From).ToArray();
        Assert.All(pieces, p => Assert.True(p.From.TimeOfDay >= new TimeSpan(7, 0, 0) && p.To.TimeOfDay <= new TimeSpan(15, 30, 0) && p.From.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday), $"{p}"));
        Assert.All(pieces.Zip(pieces.Skip(1)), x => Assert.True(x.First.To <= x.Second.From));
        Assert.All(sealing, t => Assert.Empty(t.People));
    }

    [Fact]
    public void The_optimiser_says_by_name_what_its_people_never_have_time_for_together()
    {
        var problem = new Problem(20, [new("T", 2, Crew: [new("a", 1), new("b", 1)])], [new("P", ["a"], [new(0, 4)]), new("Q", ["b"], [new(3, 9)])]);
        Assert.Equal("those who do T together never have so long in common", Optimiser.Run(problem).Why);
        Assert.Equal(4, Optimiser.Run(problem.With([problem.Tasks[0] with { Duration = 1 }])).Schedule!.Finish);
    }

    // All is planned or told as not planned; what is planned waits for nothing that is not; and the release is not told as if it could be.
    private static void Rest(JobPlan plan)
    {
        Assert.Equal("", plan.Why);
        Assert.False(plan.Holds);
        Assert.Equal(Tasks.Value.Select(t => t.Id).Order(StringComparer.Ordinal), plan.Tasks.Select(t => t.Task.Id).Concat(plan.Unplanned.Select(u => u.Task.Id)).Order(StringComparer.Ordinal));
        var left = plan.Unplanned.Select(u => u.Task.Id).ToHashSet(StringComparer.Ordinal);
        Assert.All(plan.Tasks, t => Assert.DoesNotContain(t.Task.After, w => left.Contains(w.Task)));
        Assert.All(plan.Unplanned.Where(u => u.Follows), u => Assert.Contains(u.Task.After, w => left.Contains(w.Task)));
        Assert.Contains("RELEASE", left);
        Assert.True(plan.Tasks.Count > 20);
    }

    private static JobPlan Plan(Func<WorkOrder, WorkOrder> edit)
    {
        var job = Job.Value with { Order = edit(Job.Value.Order) };
        return Planner.Run(TaskList.Of(new Assessor().Assess(job)), job, Quick);
    }

    private static Duration Hours(double hours) => Duration.Of(hours, "h");
}
