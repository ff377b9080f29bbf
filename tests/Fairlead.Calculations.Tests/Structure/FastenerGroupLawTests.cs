using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Structure;

namespace Fairlead.Tests.Calculations.Structure;

/// <summary>Statics: whatever the method, what the fasteners and edges take balances the load.</summary>
public sealed class FastenerGroupLawTests
{
    private static readonly Gen<FastenerRow> Fastener =
        from x in Gen.Double[-10, 10]
        from y in Gen.Double[-8, 8]
        from area in Gen.Double[0.01, 0.1]
        select new FastenerRow("f", Length.Of(x, "in"), Length.Of(y, "in"), Area.Of(area, "in²"));

    // Three that never stand on a line, and more anywhere.
    private static readonly Gen<FastenerRow[]> Fasteners =
        from corners in Fastener.Array[3]
        from more in Fastener.Array[0, 5]
        select (FastenerRow[])[.. corners.Select((f, i) => f with { X = (f.X * 0.2) + Length.Of(i == 0 ? 7 : -7, "in"), Y = (f.Y * 0.2) + Length.Of(i == 1 ? 6 : -6, "in") }), .. more];

    private static readonly Gen<double> Load = Gen.Double[-500, 500];

    private static readonly Gen<FastenerGroupInput> Any =
        from fasteners in Fasteners
        from load in Load.Array[3]
        from at in Gen.Double[-12, 12].Array[3]
        from tilt in Gen.Enum<Tilt>()
        select new FastenerGroupInput(
            fasteners.ToSequence(), new(load[0]), new(load[1]), new(tilt == Tilt.Edge ? Math.Abs(load[2]) : load[2]),
            Length.Of(at[0], "in"), Length.Of(at[1], "in"), Length.Of(at[2], "in"), tilt, Interaction.Squares,
            Length.Of(-11, "in"), Length.Of(11, "in"), Length.Of(-9, "in"), Length.Of(9, "in"));

    [Fact]
    public void Forces_and_moments_balance_in_all_three_axes() => Any.Sample(input =>
    {
        var shared = FastenerForces.Of(input);
        Assert.Null(shared.WhyNot);
        var pairs = input.Fasteners.Zip(shared.Forces).ToArray();
        double Sum(Func<FastenerRow, FastenerForce, double> term) => pairs.Sum(p => term(p.First, p.Second));
        var (x, y, z) = (input.X.Si, input.Y.Si, input.Z.Si);
        var (px, py, pz) = (input.Px.Si, input.Py.Si, input.Pz.Si);
        var press = shared.Edges;

        Close(px, Sum((_, f) => f.X.Si));
        Close(py, Sum((_, f) => f.Y.Si));
        Close(pz, Sum((_, f) => f.Tension.Si) - press.Sum(e => e.Press.Si));
        Close((x * py) - (y * px), Sum((p, f) => (p.X.Si * f.Y.Si) - (p.Y.Si * f.X.Si)));
        Close((y * pz) - (z * py), Sum((p, f) => p.Y.Si * f.Tension.Si) - press.Sum(e => e.Y.Si * e.Press.Si));
        Close((x * pz) - (z * px), Sum((p, f) => p.X.Si * f.Tension.Si) - press.Sum(e => e.X.Si * e.Press.Si));
    });

    [Fact]
    public void About_the_centroid_loads_superpose() => Gen.Select(Any, Any).Sample((one, other) =>
    {
        var a = one with { Tilt = Tilt.Centroid };
        var b = a with { Px = other.Px, Py = other.Py, Pz = other.Pz };
        var both = a with { Px = a.Px + b.Px, Py = a.Py + b.Py, Pz = a.Pz + b.Pz };
        var (fa, fb, sum) = (FastenerForces.Of(a).Forces, FastenerForces.Of(b).Forces, FastenerForces.Of(both).Forces);
        for (var i = 0; i < sum.Count; i++)
        {
            Close(fa[i].X.Si + fb[i].X.Si, sum[i].X.Si);
            Close(fa[i].Y.Si + fb[i].Y.Si, sum[i].Y.Si);
            Close(fa[i].Tension.Si + fb[i].Tension.Si, sum[i].Tension.Si);
        }
    });

    [Fact]
    public void Turning_and_moving_the_axes_changes_nothing() => Gen.Select(Any, Gen.Double[0, 6.3], Gen.Double[-5, 5], Gen.Double[-5, 5]).Sample((made, angle, across, along) =>
    {
        var input = made with { Tilt = Tilt.Centroid };
        var (cos, sin) = (Math.Cos(angle), Math.Sin(angle));
        (double X, double Y) Turn(double x, double y) => ((x * cos) - (y * sin), (x * sin) + (y * cos));
        (Length X, Length Y) Move(Length x, Length y) => (new(Turn(x.Si, y.Si).X + across), new(Turn(x.Si, y.Si).Y + along));
        var load = Turn(input.Px.Si, input.Py.Si);
        var place = Move(input.X, input.Y);
        var turned = input with
        {
            Px = new(load.X), Py = new(load.Y), X = place.X, Y = place.Y,
            Fasteners = input.Fasteners.Select(f => f with { X = Move(f.X, f.Y).X, Y = Move(f.X, f.Y).Y }).ToSequence(),
        };
        foreach (var (before, after) in FastenerForces.Of(input).Forces.Zip(FastenerForces.Of(turned).Forces))
        {
            Close(before.Shear.Si, after.Shear.Si);
            Close(before.Tension.Si, after.Tension.Si);
        }
    });

    [Fact]
    public void Only_the_proportion_of_the_areas_matters() => Gen.Select(Any, Gen.Double[0.1, 10]).Sample((input, factor) =>
    {
        var scaled = input with { Fasteners = input.Fasteners.Select(f => f with { Area = f.Area!.Value * factor }).ToSequence() };
        foreach (var (a, b) in FastenerForces.Of(input).Forces.Zip(FastenerForces.Of(scaled).Forces))
        {
            Close(a.Shear.Si, b.Shear.Si);
            Close(a.Tension.Si, b.Tension.Si);
        }
    });

    [Fact]
    public void A_single_fastener_carries_force_but_no_moment()
    {
        FastenerGroupInput One(double height) => new([new("a", default, default)], new(10), default, new(20), default, default, new(height), Tilt.Centroid);
        Assert.Equal(new FastenerForce("a", new(10), default, new(20)), Assert.Single(FastenerForces.Of(One(0)).Forces));
        Assert.Equal(Verdict.CannotTell, FastenerGroup.Run(One(0.1)).Verdict);
    }

    [Fact]
    public void Fasteners_on_a_line_carry_tilt_along_it_and_say_so_when_it_is_across_it()
    {
        FastenerGroupInput Line(double x, double y) => new([new("a", new(0.1), new(0.1)), new("b", new(0.3), new(0.3))], new(x), new(y), default, new(0.2), new(0.2), new(0.5), Tilt.Centroid);
        Assert.Null(FastenerForces.Of(Line(10, 10)).WhyNot);
        Assert.Equal(Verdict.CannotTell, FastenerGroup.Run(Line(10, -10)).Verdict);
    }

    [Fact]
    public void The_edge_method_asks_for_the_edge_it_needs()
    {
        var input = new FastenerGroupInput([new("a", new(0.1), default), new("b", new(-0.1), default)], new(10), default, default, default, default, new(0.1), Tilt.Edge);
        Assert.Equal(Verdict.CannotTell, FastenerGroup.Run(input).Verdict);
        Assert.Null(FastenerForces.Of(input with { Right = new(0.15) }).WhyNot);
        Assert.Equal(Verdict.CannotTell, FastenerGroup.Run(input with { Right = new(0.05) }).Verdict);
    }

    [Fact]
    public void More_load_never_leaves_more_margin() => Gen.Select(Gen.Double[0, 3], Gen.Double[0, 3], Gen.Double[0, 1], Gen.Enum<Interaction>()).Sample((shear, tension, more, formula) =>
    {
        var use = Interactions.Use(formula, shear, tension);
        Assert.True(Interactions.Use(formula, shear + more, tension) >= use - 1e-12);
        Assert.True(Interactions.Use(formula, shear, tension + more) >= use - 1e-12);
        Assert.True(use <= Interactions.Use(Interaction.Linear, shear, tension) + 1e-12);
        Assert.Equal(2 * use, Interactions.Use(formula, 2 * shear, 2 * tension), 1e-9);
    });

    private static void Close(double expected, double actual) => Assert.True(Math.Abs(expected - actual) <= 1e-6 * (1000 + Math.Abs(expected)), $"{expected} against {actual}");
}
