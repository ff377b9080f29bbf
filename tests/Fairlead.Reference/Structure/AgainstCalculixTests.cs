using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using static Fairlead.Tests.Reference.Structure.Typed;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Fastener groups and plates against the finite element program CalculiX.</summary>
public sealed class AgainstCalculixTests
{
    private static readonly (double X, double Y)[] Bolts = [(60, 40), (-60, 40), (-60, -40), (60, -40)];

    // A rigid block on four springs: the rigid-plate method is exact, whatever the direction and height of the load.
    [Theory]
    [InlineData(150, 0, 0, -1000, 0)]
    [InlineData(0, 0, 800, 0, 0)]
    [InlineData(-80, 60, 300, -450, 700)]
    [InlineData(160, -60, -200, 500, -900)]
    public void A_rigid_base_shares_the_load_as_the_method_says(double x, double y, double px, double py, double pz)
    {
        var (spring, method) = Both(60, 7e8, 5000, (x, y, 60), (px, py, pz));
        for (var i = 0; i < Bolts.Length; i++)
        {
            Assert.Equal(method[i].X.Si, spring[i][0], 0.1);
            Assert.Equal(method[i].Y.Si, spring[i][1], 0.1);
            Assert.Equal(method[i].Tension.Si, spring[i][2], 0.1);
        }
    }

    // A plate of 5 mm aluminium is not rigid: the sums still agree, the sharing differs. How much is told, not asserted.
    [Theory]
    [InlineData(5000)]
    [InlineData(50_000)]
    public void A_soft_base_carries_the_same_total_and_shares_it_otherwise(double stiffness)
    {
        var (spring, method) = Both(5, 70_000, stiffness, (150, 0, 5), (0, -1000, 0));
        Assert.Equal(-1000, spring.Sum(s => s[1]), 0.05);
        Assert.Equal(0, spring.Sum(s => s[0]), 0.05);
        Assert.Equal(-150_000, spring.Zip(Bolts, (s, b) => (b.X * s[1]) - (b.Y * s[0])).Sum(), 10.0);
        var worst = spring.Max(s => Math.Sqrt((s[0] * s[0]) + (s[1] * s[1])));
        TestContext.Current.TestOutputHelper!.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"springs of {stiffness} N/mm: worst shear {worst:F1} N, rigid method {method.Max(m => m.Shear.Si):F1} N"));
    }

    // Deflection within 1 % and frequency within 1 %: plate theory leaves out shear, the handbook's coefficients (from memory) have three digits.
    [Theory]
    [InlineData(304.8, 203.2, false)]
    [InlineData(203.2, 203.2, false)]
    [InlineData(243.84, 203.2, true)]
    [InlineData(203.2, 203.2, true)]
    [InlineData(325.12, 203.2, true)]
    public void Plates_bend_and_swing_as_the_elements_say(double a, double b, bool clamped)
    {
        Tools.Need("ccx");
        const double Thickness = 1.6, Modulus = 72_400, Poisson = 0.33, Pressure = 0.0005, TonnesPerCubicMillimetre = 2.77e-9;
        var (bend, centre) = CalculixDeck.QuarterPlate(a, b, Thickness, Modulus, Poisson, clamped, Pressure, TonnesPerCubicMillimetre, 10);
        var (swing, _) = CalculixDeck.QuarterPlate(a, b, Thickness, Modulus, Poisson, clamped, 0, TonnesPerCubicMillimetre, 10);
        var deflection = Math.Abs(CalculixDeck.Displacements(Run(bend))[centre][2]);
        var (la, lb, lt) = (Mm(a), Mm(b), Mm(Thickness));
        var ours = clamped
            ? PlateFormulas.AllClamped(la, lb, lt, new(Modulus * 1e6), Poisson, new(Pressure * 1e6)).Answer.Deflection
            : PlateFormulas.SimplySupported(la, lb, lt, new(Modulus * 1e6), Poisson, new(Pressure * 1e6)).Deflection;
        Assert.Equal(1, ours.In("mm") / deflection, 0.01);

        var rigidity = PlateFormulas.Rigidity(new(Modulus * 1e6), lt, Poisson);
        var area = 2770 * Thickness / 1000;
        var frequency = clamped ? PlateFormulas.FirstClamped(la, lb, rigidity, area) : PlateFormulas.FirstSimplySupported(la, lb, rigidity, area);
        Assert.Equal(1, frequency.Si / CalculixDeck.FirstFrequency(Run(swing)), 0.01);
    }

    private static (double[][] Springs, Sequence<FastenerForce> Method) Both(double height, double modulus, double stiffness, (double X, double Y, double Z) at, (double X, double Y, double Z) load)
    {
        Tools.Need("ccx");
        var (deck, springs) = CalculixDeck.Block((-80, 160, 12), (-60, 60, 6), (0, height, 1), modulus, stiffness, Bolts, at, load);
        var moved = CalculixDeck.Displacements(Run(deck));
        var method = FastenerForces.Of(new(
            At("mm", Bolts), Newton(load.X), Newton(load.Y), Newton(load.Z), Mm(at.X), Mm(at.Y), Mm(at.Z), Tilt.Centroid)).Forces;
        return ([.. springs.Select(n => moved[n].Select(u => u * stiffness).ToArray())], method);
    }

    private static string Run(string deck) =>
        Tools.Run("ccx", "inp", deck, file => ["-i", Path.ChangeExtension(file, null)], file => File.ReadAllText(Path.ChangeExtension(file, "dat")));
}
