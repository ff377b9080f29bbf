using Fairlead.Bench;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Tests.Substantiation;

/// <summary>Long work tells how far it is, ends when asked to, and leaves nothing half done.</summary>
public sealed class CancelTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;
    private static readonly Job Roomy = GeneratedJob.Of(200);
    private static readonly Job Crowded = Roomy with { Aircraft = Roomy.Aircraft with { Segments = new(Roomy.Aircraft.Segments!.Select((s, i) => s with { Capacity = Length.Of(i % 7 == 1 ? 0.3 : 15, "in") })) } };

    [Theory]
    [InlineData("choosing ways", 1)]
    [InlineData("choosing ways", 2)]
    [InlineData("checking circuits", 1)]
    [InlineData("checking circuits", 2)]
    public void An_assessment_stopped_half_way_can_be_made_again_whole(string what, int times)
    {
        var assessor = new Assessor();
        Assert.True(Stops(what, times, (watch, stop) => assessor.Assess(Crowded, watch, stop)));
        var (fresh, again) = (new Assessor().Assess(Crowded), assessor.Assess(Crowded));
        Assert.Equal(fresh.Findings, again.Findings);
        Assert.Equal(fresh.Circuits.Select(c => c.ToString()), again.Circuits.Select(c => c.ToString()));
        Assert.Equal(fresh.Routing.Mass, again.Routing.Mass);
    }

    [Fact]
    public void An_assessment_stopped_while_cutting_can_be_made_again_whole()
    {
        var assessor = new Assessor();
        var kind = new Assessor().Assess(Twin).Cuts.First(c => c.Plan is { Lengths.Count: > 0 }).Part;
        Assert.True(Stops($"cutting {kind}", 1, (watch, stop) => assessor.Assess(Twin, watch, stop)));
        Assert.Equal(new Assessor().Assess(Twin).Cuts, assessor.Assess(Twin).Cuts);
    }

    // Sizes without a common measure in reels of two lengths: a search of many steps.
    [Fact]
    public void A_cutting_search_tells_its_steps_and_ends_at_the_next_one_when_asked_to()
    {
        using var stop = new CancellationTokenSource();
        var told = new List<int>();
        var watch = new Callback<int>(steps =>
        {
            told.Add(steps);
            if (steps > 1000)
            {
                stop.Cancel();
            }
        });
        long[] pieces = [.. Enumerable.Range(0, 120).Select(i => 1009L + (i * 7919 % 3001))];
        Assert.Throws<OperationCanceledException>(() => CuttingStock.Solve(pieces, [new("a", 10_007, null, IsNew: true), new("b", 7_001, null, IsNew: true)], new CuttingOptions(Kerf: 3, Usable: 300), watch, stop.Token));
        Assert.Single(told, t => t > 1000);
        Assert.Equal(told.Order(), told);
    }

    [Fact]
    public void What_is_told_counts_up_to_its_whole()
    {
        var told = new List<WorkDone>();
        new Assessor().Assess(Crowded, new Callback<WorkDone>(told.Add), TestContext.Current.CancellationToken);
        Assert.Contains(told, t => t.What == "choosing ways");
        Assert.All(told, t => Assert.InRange(t.Done, 0, t.Of));
    }

    // Asks for an end at the given telling; nothing may be told after that.
    private static bool Stops(string what, int times, Action<IProgress<WorkDone>, CancellationToken> work)
    {
        using var stop = new CancellationTokenSource();
        var left = times;
        var watch = new Callback<WorkDone>(done =>
        {
            Assert.False(stop.IsCancellationRequested);
            if (done.What == what && --left == 0)
            {
                stop.Cancel();
            }
        });
        Assert.Throws<OperationCanceledException>(() => work(watch, stop.Token));
        return stop.IsCancellationRequested;
    }

    private sealed class Callback<T>(Action<T> told) : IProgress<T>
    {
        public void Report(T value) => told(value);
    }
}
