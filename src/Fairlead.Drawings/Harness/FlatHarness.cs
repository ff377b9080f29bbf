using Fairlead.Calculations;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Harness;

/// <summary>A branch laid flat at true length.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">The raceway segment, or what a lead goes to.</param>
/// <param name="From">The point where it begins.</param>
/// <param name="To">The point where it ends.</param>
/// <param name="Wires">Circuits in it.</param>
/// <param name="Clamps">Clamps along it.</param>
/// <param name="Line">Its line, mm; the length of the line is the length of the branch.</param>
public sealed record FlatBranch(BranchKind Kind, string Name, string From, string To, int Wires, int Clamps, Sequence<Point> Line)
{
    /// <summary>The length of the line, mm.</summary>
    public double Length => Line.Zip(Line.Skip(1)).Sum(p => Math.Abs(p.First.X - p.Second.X) + Math.Abs(p.First.Y - p.Second.Y));

    /// <summary>The line without the piece in which it still lies beside the trunk.</summary>
    internal Point[] Free => [.. Line.Skip(Line.Count > 2 ? 1 : 0)];

    /// <summary>The point at a distance along the line, and whether the line is level there.</summary>
    public (Point At, bool Level) Along(double distance)
    {
        for (var i = 1; i < Line.Count; i++)
        {
            var (a, b) = (Line[i - 1], Line[i]);
            var length = Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);
            if (distance <= length && length > 0)
            {
                var t = distance / length;
                return (new(a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t)), a.Y == b.Y);
            }

            distance -= length;
        }

        return (Line[^1], true);
    }
}

/// <summary>The harness of one bundle laid flat: branches with level and upright runs of true length, of which none crosses another.</summary>
/// <param name="Bundle">The bundle.</param>
/// <param name="Branches">The branches.</param>
public sealed record FlatHarness(string Bundle, Sequence<FlatBranch> Branches)
{
    /// <summary>The harnesses of a change, bundle by bundle.</summary>
    public static IEnumerable<FlatHarness> Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        foreach (var bundle in assessment.Circuits.Where(c => c.Way is { Nodes.Length: > 0 }).GroupBy(c => c.Circuit.Bundle, StringComparer.Ordinal))
        {
            var trees = HarnessTree.Of(assessment, bundle).Where(k => k.Limbs.Count > 0).ToArray();
            for (var i = 0; i < trees.Length; i++)
            {
                yield return new FlatHarness(trees.Length == 1 ? bundle.Key : $"{bundle.Key}-{NumberFormat.Text(i + 1)}", FlatLayout.Of(trees[i]));
            }
        }
    }
}
