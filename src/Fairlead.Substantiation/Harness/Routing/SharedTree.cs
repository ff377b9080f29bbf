using System.Collections.Immutable;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>What a net of three or more ends would take if its wires shared one tree through the raceways, joined where they part.</summary>
/// <param name="Circuits">The circuits as drawn.</param>
/// <param name="Ends">The raceway points that are to be joined.</param>
/// <param name="Drawn">The ways of the circuits together, without slack and what lies at ends.</param>
/// <param name="Tree">Length of the shared tree. Room in segments is not counted.</param>
/// <param name="Bound">No tree that joins the ends is shorter.</param>
/// <param name="Proved">Whether it is proved that none is shorter than this one.</param>
/// <param name="Branches">Raceway points where the tree parts in three or more: there its joints would stand.</param>
/// <param name="Loose">The joints of the net without a point of their own, and where they stand: where its wires as drawn weigh least.</param>
/// <param name="Segments">The segments of the tree.</param>
public sealed record SharedTree(
    ImmutableArray<string> Circuits, ImmutableArray<string> Ends, Length Drawn, Length Tree, Length Bound, bool Proved,
    ImmutableArray<string> Branches, ImmutableArray<(string Joint, string Point)> Loose, ImmutableArray<string> Segments)
{
    /// <summary>What the tree saves, as a share of the length drawn; negative where the drawn ways are shorter, as where circuits may use
    /// segments that others of the net may not.</summary>
    public Fraction Saving => new(Drawn.Si > 0 ? 1 - (Tree.Si / Drawn.Si) : 0);
}
