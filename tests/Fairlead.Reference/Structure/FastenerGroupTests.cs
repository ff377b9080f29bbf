using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using static Fairlead.Tests.Reference.Structure.Typed;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Textbook fastener groups and the tray under inertia worked by NASA RP-1228's method.</summary>
public sealed class FastenerGroupTests
{
    private static readonly Sequence<FastenerRow> Tray = At("in", (3, 2.5), (3, -2.5), (-3, -2.5), (-3, 2.5));

    // Textbook exercise (read): 10 kN at 100 mm from four bolts at (±40, ±30) mm, the worst takes 7.16 kN. The other side derived.
    [Fact]
    public void Four_bolts_with_an_eccentric_load()
    {
        var forces = InPlane(At("mm", (40, 30), (40, -30), (-40, 30), (-40, -30)), Newton(-10_000), Mm(100));
        Assert.Equal([7.16, 7.16], forces.Take(2).Select(f => f.Shear.In("kN")), (a, b) => Math.Abs(a - b) <= 0.005);
        Assert.Equal([3.35, 3.35], forces.Skip(2).Select(f => f.Shear.In("kN")), (a, b) => Math.Abs(a - b) <= 0.005);
    }

    // Shigley, example 8-7: 16 kN at 425 mm, bolts 120 and 150 mm apart, the wider way along the bar. Inputs read in a secondary copy; 21.0 and 14.8 kN from memory, derived 20.97 and 14.79.
    [Fact]
    public void Cantilever_bar_with_four_bolts()
    {
        var forces = InPlane(At("mm", (75, 60), (75, -60), (-75, 60), (-75, -60)), Newton(-16_000), Mm(425));
        Assert.Equal([20.97, 20.97, 14.79, 14.79], forces.Select(f => f.Shear.In("kN")), (a, b) => Math.Abs(a - b) <= 0.006);
    }

    // Textbook exercise (read): direct 70/6 kN and torsional 16.82 kN at 75.96 degrees to each other make 22.67 kN as printed: 22.677, cut instead of rounded.
    [Fact]
    public void Direct_and_torsional_shear_add_as_vectors()
    {
        var (sin, cos) = Math.SinCos(75.96 * Math.PI / 180);
        Assert.Equal(22.67, new FastenerForce("", new(1000 * ((70.0 / 6) + (16.82 * cos))), new(16_820 * sin), default).Shear.In("kN"), 0.01);
    }

    // Derived: six rivets, 600 lb down 4 in right of their centroid.
    [Fact]
    public void Six_rivets_with_an_eccentric_load()
    {
        var forces = InPlane(At("in", (0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1)), Lbf(-600), In(5), In(0.5));
        Assert.Equal([400.93, 240.01, 579.04, 400.93, 240.01, 579.04], forces.Select(f => f.Shear.In("lbf")), (a, b) => Math.Abs(a - b) <= 0.006);
        Assert.Equal(-536.36, forces[2].Y.In("lbf"), 0.005);
        Assert.Equal(218.18, Math.Abs(forces[2].X.In("lbf")), 0.005);
    }

    // Derived follow-up: with 388 lb a rivet the margin is -0.330.
    [Fact]
    public void Six_rivets_fail_with_a_capacity_of_388_pounds()
    {
        var rivets = At("in", (0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1)).Select(f => f with { Shear = Lbf(388), Tension = Lbf(388) }).ToSequence();
        var sheet = FastenerGroup.Run(new(rivets, Lbf(0), Lbf(-600), Lbf(0), In(5), In(0.5), In(0), Tilt.Centroid));
        Assert.Equal(-0.330, sheet["MS"].Value, 0.0005);
        Assert.Equal(Verdict.Fails, sheet.Verdict);
    }

    // Derived by RP-1228 (read): a box of 10 lb whose centre of gravity is 4 in above four screws at (±3, ±2.5) in, fitting factor 1.15.
    [Theory]
    [InlineData(207.0, 0, 0, 51.75, 69.0)]
    [InlineData(103.5, 0, 0, 25.875, 34.5)]
    [InlineData(0, 51.75, 0, 12.9375, 20.7)]
    [InlineData(0, 0, 34.5, 0, 8.625)]
    [InlineData(0, 0, -75.9, 0, 0)]
    public void Tray_about_its_centroid(double x, double y, double z, double shear, double tension)
    {
        var sheet = FastenerGroup.Run(new(Tray, Lbf(x), Lbf(y), Lbf(z), In(0), In(0), In(4), Tilt.Centroid));
        Assert.Equal(shear, sheet["Vmax"].Value, 1e-9);
        Assert.Equal(tension, sheet["Tmax"].Value, 1e-9);
    }

    // Derived: the same tray tipping over an edge 0.5 in outside its front row, no factor.
    [Theory]
    [InlineData(90, 27.53, 2.12)]
    [InlineData(180, 55.06, 4.24)]
    public void Tray_over_its_edge(double forward, double rear, double front)
    {
        var forces = FastenerForces.Of(new(Tray, Lbf(forward), Lbf(0), Lbf(0), In(0), In(0), In(4), Tilt.Edge, Left: In(-3.5), Right: In(3.5))).Forces;
        Assert.Equal([front, front, rear, rear], forces.Select(f => f.Tension.In("lbf")), (a, b) => Math.Abs(a - b) <= 0.0051);
    }

    // Derived: AN3 shear 2,126 (AC 43.13-1B table 4-9 note, read), tension 2,210 (from memory): Rs .02434, Rt .03122.
    [Theory]
    [InlineData(Interaction.Linear, 17.0, 0.005)]
    [InlineData(Interaction.Squares, 24.26, 0.005)]
    public void Margin_of_the_trays_screws(Interaction interaction, double margin, double tolerance)
    {
        var screws = Tray.Select(f => f with { Bolt = "AN3" }).ToSequence();
        var sheet = FastenerGroup.Run(new(screws, Lbf(207), Lbf(0), Lbf(0), In(0), In(0), In(4), Tilt.Centroid, interaction));
        Assert.Equal(margin, sheet["MS"].Value, tolerance);
        Assert.Contains(sheet.Sources, s => s.Basis == Basis.Memory);
    }

    // Derived sums and margins of the interaction formulas (the exponents of RP-1228 and NASA-STD-5020 are from memory).
    [Theory]
    [InlineData(Interaction.Linear, 0.6, 0.5, 1.1, -0.0909)]
    [InlineData(Interaction.Squares, 0.6, 0.5, 0.61, 0.2804)]
    [InlineData(Interaction.CubeSquare, 0.6, 0.5, 0.466, 0.3569)]
    [InlineData(Interaction.FullBody, 0.6, 0.5, 0.6324, 0.2619)]
    [InlineData(Interaction.Squares, 0.8, 0.6, 1.0, 0.0)]
    [InlineData(Interaction.CubeSquare, 0.8, 0.6, 0.872, 0.0542)]
    [InlineData(Interaction.Linear, 0.8, 0.6, 1.4, -0.2857)]
    [InlineData(Interaction.FullBody, 0.8, 0.6, 1.0372, -0.0177)]
    [InlineData(Interaction.Linear, 0.5, 0.5, 1.0, 0.0)]
    [InlineData(Interaction.Squares, 0.5, 0.5, 0.5, 0.4142)]
    [InlineData(Interaction.CubeSquare, 0.5, 0.5, 0.375, 0.5098)]
    [InlineData(Interaction.FullBody, 0.5, 0.5, 0.5303, 0.4032)]
    public void Interaction_of_shear_and_tension(Interaction formula, double shear, double tension, double sum, double margin)
    {
        Assert.Equal(sum, Interactions.Sum(formula, shear, tension), 0.0001);
        Assert.Equal(margin, (1 / Interactions.Use(formula, shear, tension)) - 1, 0.0001);
    }

    private static Sequence<FastenerForce> InPlane(Sequence<FastenerRow> fasteners, Force down, Length x, Length y = default) =>
        FastenerForces.Of(new(fasteners, default, down, default, x, y, default, Tilt.Centroid)).Forces;
}
