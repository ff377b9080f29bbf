using System.Collections.Immutable;

namespace Fairlead.Substantiation.Wiring;

/// <summary>The bundles of one segment and how full it is, put together again only when one of them changes.</summary>
internal sealed class SegmentState(string id)
{
    public string Id { get; } = id;

    /// <summary>What was found of its bundles, by name.</summary>
    public ImmutableArray<BundleResult> Bundles { get; private set; } = [];

    public ImmutableArray<Finding> Findings { get; private set; } = [];

    public ImmutableArray<Shown> Shown { get; private set; } = [];

    /// <summary>Whether everything fits.</summary>
    public SegmentFill Fill { get; private set; } = null!;

    /// <summary>Puts checked bundles together.</summary>
    public void Check(IEnumerable<BundleState> bundles, Memo memo, WiringContext context)
    {
        var ordered = bundles.OrderBy(b => b.Name, StringComparer.Ordinal).ToArray();
        Bundles = [.. ordered.Select(b => b.Work!.Result)];
        Findings = [.. ordered.Select(b => b.Work!.Finding).OfType<Finding>()];
        Shown = [.. ordered.Select(b => b.Work!.Shown).OfType<Shown>()];
        Fill = SegmentFill.Of(Id, ordered, memo, context);
    }
}
