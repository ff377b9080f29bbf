using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Whether all bundles of a segment, with what was there before, fit into it. Never changed after it was worked out.</summary>
internal sealed record SegmentFill(SegmentUse Use, Shown? Shown, Finding? Finding)
{
    private static readonly Source Stated = new("This job", "", "capacity of the raceway segment", Basis.Stated);

    public static SegmentFill Of(string id, IEnumerable<BundleState> bundles, Memo memo, WiringContext context)
    {
        var segment = context.Aircraft.Segments?.Find(id);
        if (segment is null)
        {
            return new(new(id, null, null), null, null);
        }

        // The cores of one cable are one circle.
        var circuits = bundles.SelectMany(b => b.Members).OrderBy(m => m.Order).ToArray();
        var diameters = circuits.Where(c => c.Cable is null || c.Circuit.Cable.Length == 0).Concat(circuits.Where(c => c.Cable is not null && c.Circuit.Cable.Length > 0).DistinctBy(c => c.Circuit.Cable))
            .Select(c => c.Cable?.Diameter ?? c.Coax?.Diameter ?? c.WireIn(context.Candidates, start: false)?.Diameter).OfType<Length>()
            .Concat(segment.Existing is { Wires: > 0 } there ? [there.Diameter] : []);
        var input = new BundleDiameterInput(diameters.GroupBy(d => d).OrderBy(g => g.Key).Select(g => new BundleWires(g.Key, g.Count())).ToSequence());
        if (input.Wires.Count == 0 || segment.Capacity is not { } capacity)
        {
            return new(new(id, null, segment.Capacity), null, null);
        }

        var subject = $"segment/{id}";
        var outcome = memo.Run<BundleDiameter, BundleDiameterInput>(input, "D");
        var check = outcome.Value(0) is { } metres ? new Check("diameter", new Length(metres).As("in"), Sense.AtMost, capacity.As("in"), "", Stated) : null;
        return new(
            new(id, outcome.Value(0) is { } d ? new Length(d) : null, capacity),
            new Shown($"{subject}/fill", outcome),
            check is { Holds: false } ? new("raceway-fill", Verdict.Fails, subject, $"The wires do not fit into segment {id}.", Findings.Figures(check), Stated, "Take circuits another way, or use thinner wires.", $"aircraft/segments/{id}")
                : Findings.Of(outcome, subject, $"aircraft/segments/{id}", "Take circuits another way."));
    }
}
