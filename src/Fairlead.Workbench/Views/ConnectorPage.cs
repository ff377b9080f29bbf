using System.Collections.Immutable;

namespace Fairlead.Workbench.Views;

/// <summary>A connector.</summary>
/// <param name="Item">What it belongs to.</param>
/// <param name="Name">Name of that.</param>
/// <param name="Designator">Its designator.</param>
/// <param name="Part">Its part.</param>
/// <param name="Face">Its face from the rear, as SVG; empty when the positions of its cavities are not stated.</param>
/// <param name="Rows">Its cavities.</param>
public sealed record ConnectorPage(string Item, string Name, string Designator, string Part, string Face, ImmutableArray<ContactRow> Rows);

/// <summary>A cavity, once for each circuit that ends in it.</summary>
public sealed record ContactRow(string Cavity, string Circuit, string Wire, string To, string Signal, ImmutableArray<FindingView> Findings);
