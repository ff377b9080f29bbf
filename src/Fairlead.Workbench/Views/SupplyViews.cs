using System.Collections.Immutable;

namespace Fairlead.Workbench.Views;

/// <summary>What is cut of one kind of wire, cable or coax.</summary>
/// <param name="Part">The part.</param>
/// <param name="Words">How good the plan is, and what it could not place.</param>
/// <param name="Total">Length of all pieces together.</param>
/// <param name="Lengths">The reels and remnants that are cut, in the order of cutting.</param>
/// <param name="Whole">Whether every piece is cut from something.</param>
public sealed record CutPlanView(string Part, string Words, string Total, ImmutableArray<CutLengthView> Lengths, bool Whole);

/// <summary>A reel or remnant and what is cut from it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Left">What is left over, mm.</param>
/// <param name="IsNew">Whether a new reel is opened.</param>
/// <param name="Pieces">The pieces, in the order of cutting.</param>
public sealed record CutLengthView(string Name, long Left, bool IsNew, ImmutableArray<CutPieceView> Pieces);

/// <summary>A piece.</summary>
/// <param name="Name">Its mark, or the name of the cable.</param>
/// <param name="Millimetres">Its length.</param>
/// <param name="For">The circuits it is for.</param>
public sealed record CutPieceView(string Name, long Millimetres, string For);

/// <summary>A sleeve or label to print.</summary>
public sealed record MarkView(string Text, int Copies, string Kind, string For);

/// <summary>What came of results that were entered from a table.</summary>
/// <param name="Entered">How many are in the log.</param>
/// <param name="Refused">Which were not, and why.</param>
public sealed record EnteredView(int Entered, ImmutableArray<string> Refused);
