using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Routing;

namespace Fairlead.Substantiation.Wiring;

/// <summary>The wiring of a job, kept between assessments. While only circuits change, the work goes to what they touch; anything else
/// that changes has every circuit taken off anew, and then it is the memo that spares the calculations.</summary>
internal sealed class WiringStage(Memo memo)
{
    private const int CircuitsBetween = 64;

    private WiringContext? context;
    private Network network = null!;
    private CircuitState[] circuits = [];
    private Dictionary<string, CircuitState> byId = [];
    private FeedState[] feeds = [];
    private Dictionary<Endpoint, HashSet<FeedState>> watchers = [];
    private readonly SortedDictionary<int, SegmentState> segments = [];
    private readonly HashSet<string> full = new(StringComparer.Ordinal);
    private readonly RoutingGroups ways = new();
    private RoutingSolution? routed;

    // While ways are chosen together: the same wiring with every circuit on its shortest way. Each choice starts from it, so that what an edit
    // leaves alone is moved in neither.
    private WiringStage? shortest;
    private int rounds;
    private Watch watch;

    public WiringContext Context => context!;

    public IReadOnlyList<CircuitState> Circuits => circuits;

    public IReadOnlyList<FeedState> Feeds => feeds;

    /// <summary>The segments that circuits run in, in their order.</summary>
    public IReadOnlyCollection<SegmentState> Segments => segments.Values;

    /// <summary>Whether everything fits into each of them, and what the choice of ways has to say where it does not.</summary>
    public IEnumerable<SegmentFill> Fills => segments.Values.Select(s => WithWaysOut(s.Fill));

    /// <summary>Contacts on which more than one circuit ends, with those circuits.</summary>
    public IEnumerable<(Endpoint Contact, CircuitState[] Circuits)> Crowded => network.Crowded
        .Select(c => (c, network.At(c).OrderBy(x => x.Order).ToArray())).OrderBy(x => x.Item2[0].Order).ThenBy(x => x.c.ToString(), StringComparer.Ordinal);

    /// <summary>The ground studs with the circuits that end on each.</summary>
    public IEnumerable<(GroundStud Stud, int Circuits)> Studs => context!.Aircraft.Grounds.OrEmpty().Concat(context.Change.Grounds.OrEmpty()).Select(g => (g, network.At(new Endpoint(g.Id)).Count));

    /// <summary>How good the ways are together.</summary>
    public RoutingResult Routing => routed is { } r
        ? new(r.Mass, r.Bound, r.Proved, [.. circuits.Where(c => r.Detours.ContainsKey(c.Circuit.Id)).Select(c => c.Circuit.Id)], r.Steps, rounds)
        : Shortest();

    /// <summary>What no way round was found for.</summary>
    public ImmutableArray<Clash> Clashes => routed?.Clashes ?? [];

    /// <summary>Brings the work up to date with a job.</summary>
    public void Update(Job job, Watch watch)
    {
        this.watch = watch;
        try
        {
            Bring(job);
        }
        catch (OperationCanceledException)
        {
            // Half of the work is done: the next assessment begins afresh.
            context = null;
            throw;
        }
    }

    private void Bring(Job job)
    {
        var edit = new Edit();
        Follow(job, edit);
        if (shortest is null && HasNothingToChoose)
        {
            (routed, rounds) = (null, 0);
        }
        else
        {
            Route(job, edit);
        }

        Check(edit);
    }

    private bool HasNothingToChoose => full.Count == 0 && !context!.Routing.HasRules && !Array.Exists(circuits, c => c.Circuit.Redundant.Length > 0);

    private void Follow(Job job, Edit edit)
    {
        var joints = job.Change.Joints.OrEmpty().Any(j => j.Node is null);
        if (context?.Serves(job) != true || (joints && !context.Places(job)) || IsReordered(job.Change.Circuits.OrEmpty()))
        {
            Reset(job);
            edit.Feeds.UnionWith(feeds);
        }

        Link(job.Change.Circuits.OrEmpty(), edit);
        Work(edit);
    }

    private void Work(Edit edit)
    {
        Trace(edit);
        Sum(edit);
        Size(edit);
        foreach (var segment in edit.Bundles.Select(b => b.Segment).Distinct(StringComparer.Ordinal))
        {
            _ = context!.Routing.Fits(segment, network.In(segment), context) ? full.Remove(segment) : full.Add(segment);
        }
    }

    // Ways and wire sizes are worked in turn until both settle: room is kept for the thickest wire that a circuit had in any round, so each round
    // but the last makes a wire thicker, and there are only so many wires. The first round has the sizes of the shortest ways.
    private void Route(Job job, Edit edit)
    {
        var free = Shadow(job);
        (routed, rounds) = (null, 0);
        ways.NextEdit();
        if (free.HasNothingToChoose)
        {
            shortest = null;
            Take([], edit);
            return;
        }

        var kept = new Dictionary<string, int>(StringComparer.Ordinal);
        while (Thicker(rounds == 0 ? free.circuits : circuits, kept))
        {
            rounds++;
            var problem = free.context!.Routing.Problem(free.circuits, c => c.IsAuto && !free.context.Candidates.IsEmpty ? free.context.Candidates[kept[c.Circuit.Id]] : c.WireIn(free.context.Candidates, start: false));
            routed = ways.Solve(problem, watch);
            Take(routed.Detours, edit);
        }
    }

    private WiringStage Shadow(Job job)
    {
        if (shortest is null)
        {
            shortest = new WiringStage(memo) { context = context };
            shortest.Reset(job);
        }

        shortest.watch = watch;
        shortest.Follow(job, new Edit());
        return shortest;
    }

    private void Take(Dictionary<string, Way> detours, Edit edit)
    {
        var round = new Edit();
        Move(detours, round);
        Work(round);
        edit.Absorb(round);
    }

    private bool Thicker(CircuitState[] now, Dictionary<string, int> kept)
    {
        var grown = rounds == 0;
        foreach (var circuit in now.Where(c => c.IsAuto))
        {
            var wire = circuit.Chosen < 0 ? context!.Candidates.Length - 1 : circuit.Chosen;
            if (!kept.TryGetValue(circuit.Circuit.Id, out var before) || wire > before)
            {
                kept[circuit.Circuit.Id] = wire;
                grown = true;
            }
        }

        return grown;
    }

    private void Move(Dictionary<string, Way> detours, Edit edit)
    {
        for (var i = 0; i < circuits.Length; i++)
        {
            var state = circuits[i];
            var way = detours.GetValueOrDefault(state.Circuit.Id) ?? state.Free;
            if (way is null || Same(way, state.Way))
            {
                continue;
            }

            Touch(state, edit);
            network.Remove(state);
            circuits[i] = TakeOff.Of(state.Circuit, context!, way);
            circuits[i].Order = i;
            Hang(circuits[i], edit);
        }
    }

    private static bool Same(Way one, Way? other) => ReferenceEquals(one, other) || (other is not null && one.Segments.AsSpan().SequenceEqual(other.Segments.AsSpan()));

    private void Hang(CircuitState state, Edit edit)
    {
        network.Add(state);
        byId[state.Circuit.Id] = state;
        Touch(state, edit);
        edit.Currents.Add(state);
        edit.Starts.Add(state);
    }

    private SegmentFill WithWaysOut(SegmentFill fill) => fill.Finding is { Rule: "raceway-fill" } finding && Clashes.FirstOrDefault(c => c.Kind == ClashKind.Full && c.Segment == fill.Use.Segment) is { } clash
        ? fill with { Finding = finding with { Remedy = RoutingFindings.Full(clash, routed!.Proved) } } : fill;

    // Each circuit on its shortest way: nothing weighs less with these wires.
    private RoutingResult Shortest()
    {
        var mass = new Mass(circuits.Select(c => c.Work!.Result).Sum(r => r is { Way: { } way, Length: { Si: > 0 } length } ? r.Mass.Si * Math.Min(1, way.Length.Si / length.Si) : 0));
        return new(mass, mass, true, [], 0, 0);
    }

    // Sums run in the order of the change; to move circuits about starts afresh rather than let sums depend on history.
    private bool IsReordered(Catalog<Circuit> wanted)
    {
        var last = -1;
        foreach (var circuit in wanted)
        {
            if (byId.TryGetValue(circuit.Id, out var state))
            {
                if (state.Order < last)
                {
                    return true;
                }

                last = state.Order;
            }
        }

        return false;
    }

    private void Reset(Job job)
    {
        context = new WiringContext(job, context?.Raceways);
        shortest = null;
        full.Clear();
        network = new Network(context);
        segments.Clear();
        (circuits, byId, watchers) = ([], new(StringComparer.Ordinal), []);
        feeds = [.. job.Change.Power.OrEmpty().Select((f, i) => new FeedState(f, i, context))];
    }

    private void Link(Catalog<Circuit> wanted, Edit edit)
    {
        var next = new CircuitState[wanted.Count];
        var fresh = new List<CircuitState>();
        for (var i = 0; i < next.Length; i++)
        {
            var known = i < circuits.Length && ReferenceEquals(circuits[i].Circuit, wanted[i]) ? circuits[i] : byId.GetValueOrDefault(wanted[i].Id);
            if (known is null || (!ReferenceEquals(known.Circuit, wanted[i]) && known.Circuit != wanted[i]))
            {
                watch.Stop.ThrowIfCancellationRequested();
                fresh.Add(known = TakeOff.Of(wanted[i], context!));
            }

            next[i] = known;
        }

        // Position and membership tell which states are gone: a state keeps its place only if the new list has it there.
        for (var i = 0; i < next.Length; i++)
        {
            next[i].Order = i;
        }

        foreach (var gone in circuits.Where(c => c.Order >= next.Length || !ReferenceEquals(next[c.Order], c)))
        {
            Touch(gone, edit);
            network.Remove(gone);
            byId.Remove(gone.Circuit.Id);
        }

        foreach (var state in fresh)
        {
            Hang(state, edit);
        }

        circuits = next;
    }

    private void Touch(CircuitState state, Edit edit)
    {
        edit.Points.Add(state.Circuit.From);
        edit.Points.Add(state.Circuit.To);
        edit.Bundles.UnionWith(state.Bundles);
        edit.Checks.UnionWith(network.CableOf(state));
    }

    private void Trace(Edit edit)
    {
        edit.Feeds.UnionWith(edit.Points.SelectMany(p => watchers.GetValueOrDefault(p) ?? []));
        foreach (var feed in edit.Feeds.OrderBy(f => f.Order))
        {
            watch.Stop.ThrowIfCancellationRequested();
            var before = feed.Carriers.ToDictionary(c => c, c => c.Shares.Where(s => s.Feed == feed).ToArray());
            foreach (var (circuit, _) in before)
            {
                circuit.Shares.RemoveAll(s => s.Feed == feed);
            }

            Watch(feed, watching: false);
            foreach (var (circuit, share) in FeedTrace.Run(feed, context!, network.At))
            {
                circuit.Shares.Add(share);
                circuit.Shares.Sort(static (a, b) => (a.Feed.Order, !a.Feeding).CompareTo((b.Feed.Order, !b.Feeding)));
            }

            Watch(feed, watching: true);
            var after = feed.Carriers.ToArray();
            edit.Currents.UnionWith(before.Keys.Union(after).Where(c => !c.Shares.Where(s => s.Feed == feed).SequenceEqual(before.GetValueOrDefault(c) ?? [])));
            if (feed.Budget())
            {
                edit.Starts.UnionWith(after);
            }
        }
    }

    private void Watch(FeedState feed, bool watching)
    {
        foreach (var point in feed.Seen)
        {
            if (!watchers.TryGetValue(point, out var set))
            {
                watchers.Add(point, set = []);
            }

            _ = watching ? set.Add(feed) : set.Remove(feed);
        }
    }

    private void Sum(Edit edit)
    {
        foreach (var circuit in edit.Currents.Where(c => ReferenceEquals(byId.GetValueOrDefault(c.Circuit.Id), c)))
        {
            circuit.Current = new Current(Math.Max(circuit.Circuit.Current?.Si ?? 0, circuit.Shares.Sum(s => s.Current.Si)));
            edit.Starts.Add(circuit);
            edit.Bundles.UnionWith(circuit.Bundles);
        }

        foreach (var bundle in edit.Bundles.Where(b => b.Count()))
        {
            edit.Starts.UnionWith(bundle.Members);
        }
    }

    private void Size(Edit edit)
    {
        foreach (var circuit in edit.Starts.Where(c => c.IsAuto))
        {
            var start = Sizing.Start(circuit, context!, memo);
            if (start != circuit.Start)
            {
                circuit.Start = start;
                edit.Bundles.UnionWith(circuit.Bundles);
            }
        }

        edit.Choices.UnionWith(edit.Starts);
        foreach (var bundle in edit.Bundles.Where(b => b.Members.Count > 0 && b.Load(memo, context!, start: true)))
        {
            edit.Choices.UnionWith(bundle.Members);
        }

        foreach (var circuit in edit.Choices.Where(c => c.IsAuto))
        {
            watch.Stop.ThrowIfCancellationRequested();
            var chosen = Sizing.Settle(circuit, context!, memo);
            if (chosen != circuit.Chosen)
            {
                circuit.Chosen = chosen;
                edit.Bundles.UnionWith(circuit.Bundles);
            }
        }

        edit.Checks.UnionWith(edit.Choices);
        foreach (var bundle in edit.Bundles.Where(b => b.Members.Count > 0 && b.Load(memo, context!, start: false)))
        {
            edit.Checks.UnionWith(bundle.Members);
        }
    }

    private void Check(Edit edit)
    {
        // Circuits further along a feed see the resistance of those ahead.
        edit.Feeds.UnionWith(edit.Checks.SelectMany(c => c.Shares).Select(s => s.Feed));
        edit.Checks.UnionWith(edit.Feeds.SelectMany(f => f.Carriers));
        var done = 0;
        foreach (var circuit in edit.Checks.Where(c => ReferenceEquals(byId.GetValueOrDefault(c.Circuit.Id), c)))
        {
            if (done++ % CircuitsBetween == 0)
            {
                watch.Tell("checking circuits", done - 1, edit.Checks.Count, "circuits");
            }

            circuit.Work = new CircuitChecks(circuit, context!, memo).Run(network.CableOf(circuit).Count);
        }

        foreach (var feed in edit.Feeds)
        {
            feed.Work = new FeedChecks(feed, context!, memo).Run();
        }

        foreach (var bundle in edit.Bundles.Where(b => b.Members.Count > 0))
        {
            watch.Stop.ThrowIfCancellationRequested();
            bundle.Check();
        }

        foreach (var segment in edit.Bundles.Select(b => b.Segment).Distinct(StringComparer.Ordinal))
        {
            Fill(segment);
        }
    }

    private void Fill(string segment)
    {
        var (order, bundles) = (context!.SegmentOrder[segment], network.BundlesIn(segment));
        if (bundles.Count == 0)
        {
            segments.Remove(order);
            return;
        }

        if (!segments.TryGetValue(order, out var state))
        {
            segments.Add(order, state = new SegmentState(segment));
        }

        state.Check(bundles, memo, context);
    }
}
