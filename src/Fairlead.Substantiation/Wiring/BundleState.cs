using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>The finished work of a bundle, never changed afterwards.</summary>
internal sealed record BundleWork(BundleResult Result, Finding? Finding, Shown? Shown);

/// <summary>The wires of one name in one segment, between two assessments.</summary>
internal sealed class BundleState(string segment, string name, WiringContext context)
{
    private readonly ExistingBundle? existing = context.Aircraft.Segments?.Find(segment)?.Existing is { } there && there.Bundle == name && there.Wires > 0 ? there : null;

    public string Segment { get; } = segment;

    public string Name { get; } = name;

    public Surroundings At { get; } = context.AtSegment(segment);

    public HashSet<CircuitState> Members { get; } = [];

    /// <summary>Wires that may carry current; coax does not count.</summary>
    public int Wires { get; private set; }

    /// <summary>The lowest temperature rating of its wires: none of them may get hotter (AC 43.13-1B 11-67, from memory).</summary>
    public Temperature? Coolest { get; private set; }

    /// <summary>Sum of the currents.</summary>
    public Current Current { get; private set; }

    /// <summary>The loading at the start of sizing and after it; null when it cannot be told.</summary>
    public Outcome? Started { get; private set; }

    public Outcome? Loaded { get; private set; }

    public Fraction? StartLoading => Loading(Started);

    public Fraction? FinalLoading => Loading(Loaded);

    public BundleWork? Work { get; private set; }

    public string Subject => $"bundle/{Segment}/{Name}";

    /// <summary>Counts the wires. Returns whether their number or their lowest rating changed.</summary>
    public bool Count()
    {
        var (wires, current, coolest) = (existing?.Wires ?? 0, existing?.Current.Si ?? 0, existing?.Rating);
        foreach (var member in Ordered())
        {
            if (member.Coax is null)
            {
                wires++;
                current += member.Current.Si;
                coolest = member.WireIn(context.Candidates, start: true)?.Rating is { } rating && !(coolest <= rating) ? rating : coolest;
            }
        }

        var changed = wires != Wires || coolest != Coolest;
        (Wires, Current, Coolest) = (wires, new Current(current), coolest);
        return changed;
    }

    /// <summary>Works the loading out. Returns whether members see another loading than before.</summary>
    public bool Load(Memo memo, WiringContext context, bool start)
    {
        var before = start ? StartLoading : FinalLoading;
        var input = Input(context, start);
        var outcome = input.Groups.Count == 0 ? null : memo.Run<BundleLoading, BundleLoadingInput>(input, "p");
        (Started, Loaded) = start ? (outcome, Loaded) : (Started, outcome);
        return before != (start ? StartLoading : FinalLoading);
    }

    /// <summary>Puts the result together.</summary>
    public void Check()
    {
        var finding = Loaded is null ? null : Findings.Of(Loaded, Subject, $"aircraft/segments/{Segment}", "Split the bundle, move circuits to another one, or use thicker wires.");
        Work = new BundleWork(
            new BundleResult(Segment, Name, [.. Ordered().Select(m => m.Circuit.Id)], Wires, Current, FinalLoading), finding, Loaded is null ? null : new Shown($"{Subject}/loading", Loaded));
    }

    /// <summary>The members in the order of the change, so that sums do not depend on the order of edits.</summary>
    public IEnumerable<CircuitState> Ordered() => Members.OrderBy(m => m.Order);

    private static Fraction? Loading(Outcome? outcome) => outcome?.Value(0) is { } p ? new Fraction(p) : null;

    private BundleLoadingInput Input(WiringContext context, bool start)
    {
        var groups = Ordered().Select(m => (wire: m.WireIn(context.Candidates, start), m.Current))
            .Where(m => m.wire is not null)
            .Select(m => new BundleGroup(m.wire!.Gauge, m.wire.Rating, 1, m.Current, WiringContext.MaterialOf(m.wire)))
            .Concat(existing is null ? [] : [new BundleGroup(existing.Gauge, existing.Rating, existing.Wires, existing.Current)])
            .GroupBy(g => (g.Gauge, g.Rating, g.Conductor))
            .OrderBy(g => g.Key.Gauge).ThenBy(g => g.Key.Rating).ThenBy(g => g.Key.Conductor)
            .Select(g => new BundleGroup(g.Key.Gauge, g.Key.Rating, g.Sum(x => x.Count), new Current(g.Sum(x => x.Current.Si)), g.Key.Conductor));
        return new BundleLoadingInput(groups.ToSequence(), At.Ambient, At.Altitude);
    }
}
