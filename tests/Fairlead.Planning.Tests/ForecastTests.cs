using CsCheck;
using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Planning;

public sealed class ForecastTests
{
    // The triangular distribution: F(m) = (m - a)/(b - a); mean (a + m + b)/3; F^-1(0) = a, F^-1(1) = b.
    [Fact]
    public void The_inverse_of_the_triangular_distribution_gives_its_probability_back() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0, 10], Gen.Double[0, 10], Gen.Double[0, 1]).Sample((least, up, further, p) =>
        {
            var (a, m, b) = (least, least + up, least + up + further);
            var x = new ThreePoint(a, m, b).At(p);
            Assert.InRange(x, a - 1e-9, b + 1e-9);
            if (up > 0.1 && further > 0.1)
            {
                Assert.Equal(p, x < m ? (x - a) * (x - a) / ((b - a) * (m - a)) : 1 - ((b - x) * (b - x) / ((b - a) * (b - m))), 6);
            }
        });

    [Fact]
    public void One_task_alone_finishes_with_the_chance_of_its_distribution()
    {
        var problem = new Problem(10_000, [new("A", 400, default, [new("a", 1)], Piece: 1)], [new("P", ["a"], [new(0, 10_000)])]);
        var forecast = Forecast.Of(problem, new ListScheduler(problem).Run()!, [new(200, 400, 900)], 4000, new Random(5));
        // (400 - 200)/(900 - 200) = 2/7. Standard error of a share over 4000 runs: below 0.008.
        Assert.Equal(2.0 / 7, forecast.ChanceBy(400), 0.03);
        Assert.Equal(500, forecast.Finishes.Average(), 10.0);
        Assert.Equal(1, forecast.ChanceBy(900));
        Assert.Equal(0, forecast.ChanceBy(199));
    }

    // A second simulation with the same law, written from the network alone: durations by rejection in the triangle, finishes by the recursion of longest paths.
    [Fact]
    public void The_chances_are_those_of_a_second_simulation()
    {
        var problem = new Problem(
            20_000,
            [new("A", 400, default, [new("a", 1)]), new("B", 300, [new("A")], [new("a", 1)]), new("C", 350, [new("A", 50)], [new("b", 1)]), new("D", 200, [new("B"), new("C")], [new("a", 1)])],
            [new("P", ["a"], [new(0, 20_000)]), new("Q", ["b"], [new(0, 20_000)])]);
        Sequence<ThreePoint> times = [new(200, 300, 700), new(100, 300, 500), new(250, 300, 500), new(100, 150, 350)];
        const int runs = 20_000;
        var forecast = Forecast.Of(problem, new ListScheduler(problem).Run()!, times, runs, new Random(5));
        var random = new Random(77);
        double Drawn(ThreePoint t)
        {
            while (true)
            {
                var (x, y) = (t.Least + (random.NextDouble() * (t.Most - t.Least)), random.NextDouble());
                if (y <= (x < t.Likely ? (x - t.Least) / (t.Likely - t.Least) : (t.Most - x) / (t.Most - t.Likely)))
                {
                    return x;
                }
            }
        }

        var second = Enumerable.Range(0, runs).Select(_ => Drawn(times[0]) + Math.Max(Drawn(times[1]), 50 + Drawn(times[2])) + Drawn(times[3])).Order().ToArray();
        // Standard error of the difference of two shares over 20 000 runs each: at most 0.005.
        Assert.All(new[] { 0.05, 0.2, 0.5, 0.8, 0.95 }, q => Assert.Equal(q, forecast.ChanceBy((int)second[(int)(q * runs)]), 0.02));
        Assert.Equal(second.Average(), forecast.Finishes.Average(), 5.0);
    }

    [Fact]
    public void Without_spread_every_run_is_the_plan() => Problems.Any.Sample(
        problem =>
        {
            if (Optimiser.Run(problem, new(5) { Searchers = 1 }).Schedule is { } plan)
            {
                var forecast = Forecast.Of(problem, plan, problem.Tasks.Select(t => new ThreePoint(t.Duration, t.Duration, t.Duration)).ToSequence(), 3, new Random(1));
                Assert.Equal([plan.Finish, plan.Finish, plan.Finish], forecast.Finishes);
            }
        },
        iter: 30, threads: 1);

    [Fact]
    public void The_same_seed_gives_the_same_forecast()
    {
        var problem = new Problem(500, [new("A", 40, default, [new("a", 1)], Piece: 1), new("B", 20, [new("A", 8)], [new("a", 1)], Piece: 2)], [new("P", ["a"], [new(0, 30), new(96, 126), new(192, 222)])]);
        Forecast Run() => Forecast.Of(problem, new ListScheduler(problem).Run()!, [new(20, 40, 90), new(10, 20, 30)], 200, new Random(11));
        Assert.Equal(Run(), Run());
    }
}
