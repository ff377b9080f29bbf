using CsCheck;
using Fairlead.Calculations;
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

    // Without nights and windows there is no slack in the chain: whichever of its tasks takes longer, the finish moves by as much; and no sooner finish is had
    // by making shorter what is not on it.
    [Fact]
    public void What_is_on_the_chain_moves_the_finish_and_making_the_rest_shorter_does_not() => Steady.Sample(
        problem =>
        {
            var plan = new ListScheduler(problem).Run()!;
            var chain = HoldingChain.Of(problem, plan);

            // The longest path through what waits for what and through what each person does one after the other, written from the plan alone.
            int Finish(Func<int, string, int> length)
            {
                var ends = new Dictionary<string, int>();
                var free = new Dictionary<string, int>();
                foreach (var placed in plan.Tasks.OrderBy(t => t.Start))
                {
                    var task = problem.Tasks[problem.IndexOf(placed.Task)];
                    var start = task.After.Select(b => ends[b.Task] + b.Lag).Concat(placed.Crew.Select(w => free.GetValueOrDefault(w))).Append(0).Max();
                    ends[task.Id] = start + length(task.Duration, task.Id);
                    free[placed.Crew[0]] = ends[task.Id];
                }

                return ends.Values.Max();
            }

            Assert.Equal(plan.Finish, Finish((d, _) => d));
            Assert.All(chain, l => Assert.Equal(plan.Finish + 3, Finish((d, id) => id == l.Task ? d + 3 : d)));
            Assert.Equal(plan.Finish, Finish((d, id) => chain.Any(l => l.Task == id) ? d : Math.Min(d, 1)));
        },
        iter: 200, threads: 1);

    private static readonly Gen<Problem> Steady =
        from count in Gen.Int[1, 8]
        from tasks in Gen.Select(Gen.Int[1, 6], Gen.Int[0, 255], Gen.Int[0, 2], Gen.Int[0, 3]).Array[count]
        select new Problem(
            400,
            tasks.Select((t, i) => new Work($"T{i}", t.Item1, Enumerable.Range(0, i).Where(b => (t.Item2 >> b & 1) == 1 && b % 2 == 0).Select(b => new Predecessor($"T{b}", t.Item3)).ToSequence(), [new(t.Item4 < 2 ? "a" : "b", 1)])).ToSequence(),
            [new("P", ["a"], [new(0, 400)]), new("Q", ["a", "b"], [new(0, 400)])]);

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
