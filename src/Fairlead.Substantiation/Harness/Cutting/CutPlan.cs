using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>A piece to cut.</summary>
/// <param name="Circuits">The circuits it is for: one, or those that share a cable.</param>
/// <param name="Name">What it is called on the list: its mark, or the name of the cable.</param>
/// <param name="Millimetres">Cut length in whole millimetres, rounded up.</param>
/// <param name="MaySplice">Whether it may be made up of two pieces.</param>
public sealed record CutPiece(Sequence<string> Circuits, string Name, long Millimetres, bool MaySplice);

/// <summary>What is cut of one kind of wire, cable or coax.</summary>
/// <param name="Part">The part.</param>
/// <param name="Pieces">The pieces, in the order of the change.</param>
/// <param name="Unknown">Circuits whose length is not known, so that nothing can be cut for them.</param>
/// <param name="Plan">Which piece from which reel or remnant; null when the job does not say what is on hand.</param>
/// <param name="Splices">Splices that the plan makes, each where the change allows it.</param>
public sealed record CutPlan(string Part, Sequence<CutPiece> Pieces, Sequence<string> Unknown, CuttingPlan? Plan, int Splices = 0)
{
    /// <summary>Length of all pieces together.</summary>
    public Length Used => new(Pieces.Sum(p => p.Millimetres) / 1000.0);

    /// <summary>Length of the pieces that the stock does not suffice for.</summary>
    public Length Missing => new(Plan is null ? 0 : Plan.TooLong.Concat(Plan.NotPlaced).Sum(i => Pieces[i].Millimetres) / 1000.0);
}
