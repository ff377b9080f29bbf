using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Graphs;

/// <summary>How far <see cref="SteinerTree.Solve"/> goes. Limits count work, not time, so that a result is the same on every machine.</summary>
/// <param name="BranchLimit">Most parts of the search space looked at after the first bound; 0 stops at the first bound.</param>
/// <param name="SubsetLimit">Most combinations of subsets of terminals with nodes in the exact dynamic programme.</param>
public sealed record SteinerOptions(int BranchLimit = 300, long SubsetLimit = 200_000_000);

/// <summary>A tree that joins all terminals, and how far it can be from the lightest.</summary>
/// <param name="Edges">Numbers of the tree's edges, ascending.</param>
/// <param name="Weight">Sum of their weights.</param>
/// <param name="LowerBound">No tree that joins the terminals is lighter than this.</param>
/// <param name="IsOptimal">Whether no lighter tree exists: the bound meets the weight, within rounding.</param>
/// <param name="Unreached">Terminals without a path to the first terminal; where there are any no tree exists and <paramref name="Edges"/> is empty.</param>
public sealed record SteinerResult(Sequence<int> Edges, double Weight, double LowerBound, bool IsOptimal, Sequence<int> Unreached)
{
    /// <summary>How much heavier the tree can be than the lightest, as a share of the bound; 0 where it is optimal.</summary>
    public double Gap => IsOptimal || Weight <= LowerBound ? 0 : (Weight - LowerBound) / Math.Max(LowerBound, double.Epsilon);
}

/// <summary>How far the search has come.</summary>
/// <param name="Weight">Weight of the best tree yet.</param>
/// <param name="LowerBound">Bound proved so far.</param>
public readonly record struct SteinerProgress(double Weight, double LowerBound);
