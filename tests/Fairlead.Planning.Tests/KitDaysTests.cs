using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Tests.Planning;

/// <summary>The day each line of the kit is needed is that of the first task of the plan that uses it.</summary>
public sealed class KitDaysTests
{
    private static readonly Lazy<Assessment> Twin = new(() => new Assessor().Assess(TaskListTests.Demo("survey-twin")));
    private static readonly Lazy<JobPlan> Plan = new(() => PlanOf(Twin.Value));
    private static readonly Lazy<KitList> Kit = new(() => Twin.Value.KitOn(KitDays.Of(Twin.Value, Plan.Value)!));

    [Theory]
    [InlineData("ZZ-TR40", "MOUNT-XPD1")]
    [InlineData("BM-01", "BOND-")]
    [InlineData("FIL05", "SEAL-E")]
    [InlineData("W20", "CUT-")]
    [InlineData("BS37", "TERM-TS1-P1")]
    [InlineData("AN8", "RIVET-GPS1")]
    public void A_line_is_needed_when_the_first_task_that_uses_it_starts(string part, string task)
    {
        var line = Kit.Value.Lines.Single(l => l.Part == part);
        var tasks = Plan.Value.Tasks.Where(t => t.Task.Id.StartsWith(task, StringComparison.Ordinal)).ToArray();
        if (part is "W20" or "FIL05" or "BM-01")
        {
            tasks = [.. tasks.Where(t => t.Task.Parts.Contains(part) || t.Task.Tools.Contains(part))];
        }

        Assert.Equal(DateOnly.FromDateTime(tasks.Min(t => t.Start)), line.NeededOn);
    }

    [Fact]
    public void Every_line_is_needed_within_the_plan_and_nothing_before_it_begins()
    {
        var (first, last) = (DateOnly.FromDateTime(Plan.Value.Tasks[0].Start), DateOnly.FromDateTime(Plan.Value.Finish));
        Assert.All(Kit.Value.Lines, l => Assert.True(l.NeededOn >= first && l.NeededOn <= last, $"{l.Part} {l.NeededOn}"));
        Assert.Equal(Twin.Value.Kit.Lines.Select(l => (l.Key, l.Used, l.Spare)), Kit.Value.Lines.Select(l => (l.Key, l.Used, l.Spare)));
    }

    // The kit of one day says that it is there; on the day it is mixed it is past its last day.
    [Fact]
    public void Sealant_that_expires_between_opening_and_use_is_missing()
    {
        var job = TaskListTests.Demo("survey-twin");
        var opening = KitDays.Opening(Plan.Value.Tasks);
        var stock = job.Stock! with
        {
            Lots = new(job.Stock!.Lots!.Select(l => l.Part == "FIL05" ? l with { Made = null, Expires = opening.AddDays(1) } : l)),
            Deliveries = new([new("D1", "FIL05", Duration.Of(10, "day"))]),
        };
        var assessment = new Assessor().Assess(job with { Stock = stock });
        Assert.True(assessment.Kit.IsComplete);
        var kit = assessment.KitOn(KitDays.Of(assessment, PlanOf(assessment))!);
        var line = kit.Lines.Single(l => l.Part == "FIL05");
        Assert.False(kit.IsComplete);
        Assert.Equal((KitState.Short, line.NeededOn!.Value.AddDays(-10)), (line.State, line.OrderBy!.Value));
    }

    [Fact]
    public void An_instrument_out_of_calibration_before_its_last_use_keeps_the_aircraft_shut()
    {
        var job = TaskListTests.Demo("survey-twin");
        var last = DateOnly.FromDateTime(Plan.Value.Tasks.Where(t => t.Task.Tools.Contains("BM-01")).Max(t => t.End));
        KitState State(DateOnly due)
        {
            var assessment = new Assessor().Assess(job with { Aircraft = job.Aircraft with { Instruments = job.Aircraft.Instruments!.With(job.Aircraft.Instruments!["BM-01"] with { CalibrationDue = due }) } });
            return assessment.KitOn(KitDays.Of(assessment, Plan.Value)!).Lines.Single(l => l.Part == "BM-01").State;
        }

        Assert.Equal((KitState.Covered, KitState.CalibrationEnds), (State(last), State(last.AddDays(-1))));
    }

    private static JobPlan PlanOf(Assessment assessment) => Planner.Run(TaskList.Of(assessment), assessment.Job, new PlanOptions(new DateOnly(2027, 3, 22), Effort: 0, Runs: 0, WhatIfs: false));
}
