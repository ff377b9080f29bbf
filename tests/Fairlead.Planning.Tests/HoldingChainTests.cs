using CsCheck;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Planning;

public sealed class HoldingChainTests
{
    private static readonly Worker Day = new("P", ["a"], [new(0, 8), new(24, 32), new(48, 56)]);

    [Fact]
    public void The_chain_names_the_cure_the_person_and_the_night()
    {
        var problem = new Problem(
            72,
            [new("Open", 2, default, [new("a", 1)]), new("Drill", 3, [new("Open")], [new("a", 1)]), new("Seal", 2, [new("Drill")], [new("a", 1)]), new("Close", 1, [new("Seal", 20)], [new("a", 1)])],
            [Day]);
        var chain = HoldingChain.Of(problem, new ListScheduler(problem).Run()!);
        Assert.Equal(["Open", "Drill", "Seal", "Close"], chain.Select(l => l.Task));
        Assert.Equal([Hold.Start, Hold.Task, Hold.Task, Hold.Task], chain.Select(l => l.Hold));
        Assert.Equal(27, chain[^1].Start);
    }

    [Fact]
    public void A_person_busy_elsewhere_holds_a_task()
    {
        var problem = new Problem(72, [new("A", 4, default, [new("a", 1)]), new("B", 3, default, [new("a", 1)])], [Day]);
        var last = HoldingChain.Of(problem, new ListScheduler(problem).Run()!)[^1];
        Assert.Equal(("B", Hold.Person, "A", "P"), (last.Task, last.Hold, last.By, last.Through));
    }

    [Fact]
    public void The_chain_ends_at_the_finish_and_every_link_is_held_by_the_one_before() => Problems.Any.Sample(
        problem =>
        {
            if (new ListScheduler(problem).Run() is { } plan)
            {
                var chain = HoldingChain.Of(problem, plan);
                Assert.Equal(plan.Finish, chain[^1].End);
                Assert.All(chain.Zip(chain.Skip(1)), x => Assert.Equal(x.First.Task, x.Second.By));
            }
        },
        iter: 100, threads: 1);
}
