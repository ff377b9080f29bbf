using Fairlead.Calculations;

namespace Fairlead.Drawings.Harness;

/// <summary>Lays a harness flat. From every point the longest branch runs straight on; the others turn off into lanes above or below it and are placed from the
/// far end backwards. So a branch turns off before all that lie in its way, and crosses none of them.</summary>
internal sealed class FlatLayout
{
    private const double Widest = 26;
    private const double Step = 4;

    private readonly double pitch;
    private readonly List<FlatBranch> branches = [];
    private readonly Dictionary<Limb, (int Lane, double Shift)> lanes = new(ReferenceEqualityComparer.Instance);

    private FlatLayout(double pitch) => this.pitch = pitch;

    // A rectangle of lanes that is taken: from and to along the trunk, lanes counted downwards from it.
    private sealed record Block(double From, double To, int Low, int High);

    /// <summary>The branches at true length. Lanes come closer until every branch is long enough to reach its own.</summary>
    public static Sequence<FlatBranch> Of(Knot root)
    {
        for (var apart = Widest; ; apart /= 2)
        {
            var layout = new FlatLayout(apart);
            layout.Plan(root);
            if (layout.Draw(root, new Point(0, 0)))
            {
                return layout.branches.ToSequence();
            }
        }
    }

    // Gives every branch beside the trunk its lane, and returns all that the knot's subtree takes.
    private List<Block> Plan(Knot knot)
    {
        var trunk = Trunk(knot).ToArray();
        List<Block> taken = [new(0, trunk.Sum(t => t.Straight.Length), 0, 0)];
        foreach (var (limb, at, shift) in trunk.SelectMany(Sides).OrderByDescending(s => s.At + s.Shift))
        {
            var inner = Plan(limb.End);
            var (low, high) = (inner.Min(b => b.Low), inner.Max(b => b.High));
            var (start, end) = (at + shift, at + limb.Reach);
            var lane = Free(taken, start, end, low, high);
            lanes[limb] = (lane, shift);
            taken.Add(new(start, end, lane + low, lane + high));
            taken.Add(new(start, start, Math.Min(1, lane), Math.Max(-1, lane)));
        }

        return taken;
    }

    private bool Draw(Knot knot, Point at)
    {
        foreach (var (here, straight, distance) in Trunk(knot))
        {
            var start = at.Moved(distance, 0);
            Add(here, straight, start, start.Moved(straight.Length, 0));
            foreach (var (limb, _, shift) in Sides((here, straight, 0)))
            {
                var off = lanes[limb].Lane * pitch;
                var rest = limb.Length - shift - Math.Abs(off);
                if (rest < 0)
                {
                    return false;
                }

                var end = start.Moved(shift + rest, off);
                Add(here, limb, start, start.Moved(shift, 0), start.Moved(shift, off), end);
                if (!Draw(limb.End, end))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private void Add(Knot from, Limb limb, params Point[] line) => branches.Add(new FlatBranch(limb.Kind, limb.Name, from.Name, limb.End.Name, limb.Wires, limb.Clamps, [.. line]));

    // The nearest lane, above or below the trunk, where a block of lanes is free.
    private static int Free(List<Block> taken, double start, double end, int low, int high)
    {
        bool Fits(int lane) => (lane + low > 0 || lane + high < 0)
            && !taken.Exists(b => b.From < end + Step && start < b.To + Step && lane + low <= b.High && b.Low <= lane + high);
        var lane = 1;
        while (!Fits(-lane) && !Fits(lane))
        {
            lane++;
        }

        return Fits(-lane) ? -lane : lane;
    }

    // What runs straight on from a knot, with the distance where each begins.
    private static IEnumerable<(Knot Knot, Limb Straight, double At)> Trunk(Knot knot)
    {
        var at = 0.0;
        while (knot.Limbs.MaxBy(l => l.Reach) is { } straight)
        {
            yield return (knot, straight, at);
            at += straight.Length;
            knot = straight.End;
        }
    }

    // Branches beside the trunk turn off a little apart from one another.
    private static IEnumerable<(Limb Limb, double At, double Shift)> Sides((Knot Knot, Limb Straight, double At) here) =>
        here.Knot.Limbs.Where(l => !ReferenceEquals(l, here.Straight)).Select((l, i) => (l, here.At, (i + 1) * Math.Min(Step, here.Straight.Length / (here.Knot.Limbs.Count + 1))));
}
