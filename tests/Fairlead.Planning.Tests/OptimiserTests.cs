using CsCheck;
using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Planning;

public sealed class OptimiserTests
{
    private static readonly OptimiserOptions Quick = new(5) { Searchers = 1 };

    [Fact]
    public void The_optimum_is_that_of_trying_every_plan() => Problems.Any.Sample(
        problem =>
        {
            var (result, least) = (Optimiser.Run(problem, Quick), Exhaustive.Finish(problem));
            Assert.Equal(least, result.Schedule?.Finish);
            Assert.True(result.Proved);
            Assert.True(result.Bound <= (least ?? int.MaxValue));
        },
        iter: 60, threads: 1);

    [Fact]
    public void A_plan_made_at_once_keeps_every_rule_and_is_never_better_than_the_bound() => Problems.Any.Sample(
        problem =>
        {
            if (new ListScheduler(problem).Run() is { } plan)
            {
                Assert.Empty(ScheduleChecker.Faults(problem, plan));
                Assert.True(Optimiser.Run(problem, Quick).Schedule!.Finish <= plan.Finish);
            }
        },
        iter: 60, threads: 1);

    [Fact]
    public void The_same_problem_gives_the_same_plan_twice() => Problems.Any.Sample(
        problem => Assert.Equal(Optimiser.Run(problem), Optimiser.Run(problem)), iter: 5, threads: 1);

    [Fact]
    public void One_more_person_never_makes_the_finish_later() => Problems.Any.Sample(
        problem =>
        {
            var more = new Problem(problem.Horizon, problem.Tasks, [.. problem.Workers, new("S", ["a", "b"], [new(0, problem.Horizon)])], problem.Resources);
            var (few, many) = (Optimiser.Run(problem, Quick), Optimiser.Run(more, Quick));
            Assert.True(many.Schedule is not null || few.Schedule is null);
            Assert.True((many.Schedule?.Finish ?? 0) <= (few.Schedule?.Finish ?? int.MaxValue));
        },
        iter: 40, threads: 1);

    // As it is asked what one more person would buy: begun from the plan without that person.
    [Fact]
    public void What_one_more_person_buys_is_that_of_trying_every_plan_with_that_person() => Problems.Any.Sample(
        problem =>
        {
            if (Optimiser.Run(problem, Quick).Schedule is { } plan)
            {
                var more = new Problem(problem.Horizon, problem.Tasks, [.. problem.Workers, new("one more", ["a"], problem.Workers[0].Shifts)], problem.Resources);
                var (result, least) = (Optimiser.Run(more, Quick, plan, null, TestContext.Current.CancellationToken), Exhaustive.Finish(more));
                Assert.Equal(least, result.Schedule!.Finish);
                Assert.True(result.Bound < plan.Finish || least == plan.Finish, "excluded, yet it gains");
            }
        },
        iter: 30, threads: 1);

    [Fact]
    public void A_window_that_shuts_before_its_task_can_begin_is_told_and_is_no_error()
    {
        var problem = new Problem(20, [new("A", 4, default, [new("a", 1)]), new("B", 3, [new("A")], [new("a", 1)], Windows: [new(0, 6)])], [new("P", ["a"], [new(0, 20)])]);
        Assert.Equal("no plan keeps every rule before the end of the time looked at", Optimiser.Run(problem, Quick).Why);
        var narrow = problem.With([problem.Tasks[0], problem.Tasks[1] with { Windows = [new(8, 10)] }]);
        Assert.Equal("B runs for longer without a pause than its windows are open", Optimiser.Run(narrow, Quick).Why);
    }

    [Fact]
    public void People_who_are_too_few_hold_the_bound_before_anything_is_searched()
    {
        // Two people carry twelve tasks of four hours: 24 hours each, in days of eight from 0, 24 and 48, so not before 56.
        Sequence<Slot> days = [new(0, 8), new(24, 32), new(48, 56), new(72, 80)];
        var problem = new Problem(96, Enumerable.Range(0, 12).Select(i => new Work($"T{i}", 4, default, [new("a", 1)])).ToSequence(), [new("P", ["a"], days), new("Q", ["a"], days)]);
        var result = Optimiser.Run(problem, new(0));
        Assert.Equal((56, 56, true), (result.Schedule!.Finish, result.Bound, result.Proved));
    }

    // Nobody need be there for a milestone. P could do one piece of two in the window, and that is T's: M beside it is no second one.
    [Fact]
    public void A_milestone_is_no_work_in_the_hours_of_its_window()
    {
        Sequence<Slot> open = [new(3, 6), new(14, 30)];
        var problem = new Problem(40, [new("M", 0, default, [new("a", 1)], Windows: open), new("T", 2, [new("M")], [new("a", 1)], Windows: open)], [new("P", ["a"], [new(0, 5), new(8, 40)])]);
        Assert.Equal(5, Bounds.Finish(problem, 40));
        Assert.Equal(5, Optimiser.Run(problem, Quick).Schedule!.Finish);
    }

    [Fact]
    public void A_milestone_may_end_the_plan_at_the_moment_its_window_opens()
    {
        var problem = new Problem(40, [new("T", 8, default, [new("a", 1)]), new("M", 0, [new("T")], Windows: [new(3, 6), new(10, 30)])], [new("P", ["a"], [new(1, 40)])]);
        Assert.Equal(10, Bounds.Finish(problem, 40));
        Assert.Equal(10, Optimiser.Run(problem, Quick).Schedule!.Finish);
    }

    // Three tests of four hours on the one ramp, open four hours a day from 0, 24 and 48: whoever does them, the last ends at 52.
    [Fact]
    public void A_thing_that_is_shared_within_windows_holds_the_bound()
    {
        Sequence<Slot> open = [new(0, 4), new(24, 28), new(48, 52), new(72, 76)];
        var problem = new Problem(96, Enumerable.Range(0, 3).Select(i => new Work($"T{i}", 4, Crew: [new("a", 1)], Demands: [new("ramp", 1)], Windows: open)).ToSequence(), [.. Enumerable.Range(0, 3).Select(i => new Worker($"P{i}", ["a"], [new(0, 96)]))], [new("ramp", 1)]);
        Assert.Equal(52, Bounds.Finish(problem, 96));
        Assert.Equal(52, Optimiser.Run(problem, Quick).Schedule!.Finish);
    }

    [Fact]
    public void A_stopped_search_still_gives_the_plan_made_at_once()
    {
        var problem = new Problem(40, [new("A", 4, default, [new("a", 1)]), new("B", 4, default, [new("a", 1)])], [new("P", ["a"], [new(0, 40)])]);
        var result = Optimiser.Run(problem, cancel: new CancellationToken(canceled: true));
        Assert.Equal(8, result.Schedule!.Finish);
        Assert.Empty(ScheduleChecker.Faults(problem, result.Schedule));
    }

    [Fact]
    public void What_nobody_can_do_is_said_by_name()
    {
        var result = Optimiser.Run(new(40, [new("Rivet", 4, default, [new("structure", 2)])], [new("P", ["structure"], [new(0, 8)])]));
        Assert.Null(result.Schedule);
        Assert.True(result.Proved);
        Assert.Equal("Rivet needs 2 with the skill structure; there are 1", result.Why);
    }

    [Fact]
    public void Overtime_is_worked_only_when_it_brings_the_finish_forward()
    {
        Worker day = new("P", ["a"], [new(0, 8), new(24, 32)], [new(8, 10), new(32, 34)]);
        Assert.Equal((10, 2), Worked(new(48, [new("A", 10, default, [new("a", 1)], Piece: 1)], [day])));
        Assert.Equal((20, 0), Worked(new(48, [new("A", 8, default, [new("a", 1)], Piece: 1), new("Cure", 12, [new("A")])], [day])));
    }

    [Fact]
    public void Cure_passes_in_wall_time_while_nobody_is_at_work()
    {
        Worker day = new("P", ["a"], [new(0, 8), new(24, 32), new(48, 56)]);
        var problem = new Problem(72, [new("Seal", 2, default, [new("a", 1)]), new("Close", 1, [new("Seal", 20)], [new("a", 1)])], [day]);
        Assert.Equal(25, Optimiser.Run(problem).Schedule!.Finish);
    }

    private static (int Finish, int Overtime) Worked(Problem problem) => Optimiser.Run(problem, Quick).Schedule is { } plan ? (plan.Finish, plan.Overtime) : default;
}
