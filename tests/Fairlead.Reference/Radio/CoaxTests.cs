using Fairlead.Calculations;
using Fairlead.Calculations.Radio;

namespace Fairlead.Tests.Reference.Radio;

/// <summary>Attenuation, velocity and delay of coaxial cable. Maxima: MIL-C-17G, /28C and /74C (read, as quoted by an engineer). Nominal: handbook tables from memory, to 15 %.</summary>
public sealed class CoaxTests
{
    // Worked from the textbook formulae (computed): smooth copper, loss tangent 2e-4.
    [Theory]
    [InlineData(0.037, 0.116, 2.07, 1000, 11.0436)]
    [InlineData(0.037, 0.116, 2.07, 1090, 11.567)]
    [InlineData(0.037, 0.116, 2.07, 400, 6.799)]
    [InlineData(0.037, 0.116, 2.07, 3000, 20.140)]
    [InlineData(0.0345, 0.116, 2.30, 1000, 11.577)]
    [InlineData(0.035, 0.116, 2.30, 1000, 11.586)]
    public void Least_loss_of_a_smooth_line(double inner, double outer, double permittivity, double megahertz, double loss) =>
        Assert.Equal(loss, CoaxGeometry.Run(Line(inner, outer, permittivity, megahertz))["amin"].Value, 0.0006 * loss);

    // Impedance by 138·log10(D/d)/√er, 47.599 Ω, and capacitance by 7.36·er/log10(D/d), 30.700 pF/ft, of a published calculator (read); exact constants 47.6198 Ω and 30.72 pF/ft,
    // 34.07 GHz (computed).
    [Fact]
    public void Impedance_and_capacitance_of_a_line()
    {
        var sheet = CoaxGeometry.Run(Line(0.037, 0.116, 2.07, 1000));
        Assert.Equal(47.6198, sheet["Z0"].Value, 5e-4);
        Assert.Equal(47.599, sheet["Z0"].Value, 0.03);
        Assert.Equal(30.72, sheet["C"].Value, 0.006);
        Assert.Equal(30.700, sheet["C"].Value, 0.03);
        Assert.Equal(69.505, sheet["v"].Value, 6e-4);
        Assert.Equal(34.07, sheet["fc"].Value, 0.006);
        Assert.Equal(2.08981e-3, sheet["delta"].Value, 6e-9);
    }

    // symplyphysics, attenuation_coefficient_in_dielectric_test (caa76064, read): er 2.2, loss tangent 1e-4, 100 MHz: 155.4e-6 Np/m.
    [Fact]
    public void Loss_in_a_dielectric() =>
        Assert.Equal(155.4e-6, CoaxGeometry.Run(Line(0.037, 0.116, 2.2, 100) with { LossTangent = 1e-4 })["ad"].Value / 8.685889638, 1e-7);

    // A law: no real cable loses less than smooth conductors of its size; RG-142's nominal 13.5 dB stands 22 % above, and 10 dB is impossible.
    [Fact]
    public void A_cable_that_loses_less_than_smooth_copper_fails()
    {
        Assert.Equal(Verdict.Holds, CoaxGeometry.Run(Line(0.037, 0.116, 2.07, 1000) with { Stated = 13.5 }).Verdict);
        Assert.Equal(Verdict.Fails, CoaxGeometry.Run(Line(0.037, 0.116, 2.07, 1000) with { Stated = 10 }).Verdict);
    }

    // Computed: fb = (2h/c) · dF/T. Critical height about 0.75 m (read); c / (4 · 100 MHz) = 0.7495 m.
    [Theory]
    [InlineData(50, 100, 10, 1016.70)]
    [InlineData(100, 100, 10, 2033.41)]
    [InlineData(500, 100, 10, 10_167.03)]
    [InlineData(2500, 100, 10, 50_835.17)]
    [InlineData(100, 123, 20, 1250.55)]
    public void Beat_of_a_radio_altimeter(double feet, double megahertz, double milliseconds, double hertz)
    {
        var sheet = AltimeterBeat.Run(new(Length.Of(feet, "ft"), Frequency.Of(megahertz, "MHz"), Duration.Of(milliseconds, "ms")));
        Assert.Equal(hertz, sheet["fb"].Value, 0.0051);
        Assert.Equal(74.95 / megahertz, sheet["hs"].Value, 0.0001);
    }

    private static CoaxGeometryInput Line(double inner, double outer, double permittivity, double megahertz) =>
        new(Length.Of(inner, "in"), Length.Of(outer, "in"), permittivity, Frequency.Of(megahertz, "MHz"));

    // Computed from the maxima of MIL-C-17G /28C: (50 MHz, 4.0) and (1000 MHz, 28.0); /74C: (50, 1.2) and (1000, 9.0).
    [Theory]
    [InlineData(Coax.Rg58Maximum, 50, 4.0)]
    [InlineData(Coax.Rg58Maximum, 1000, 28.0)]
    [InlineData(Coax.Rg58Maximum, 100, 6.0383)]
    [InlineData(Coax.Rg58Maximum, 118, 6.6813)]
    [InlineData(Coax.Rg58Maximum, 136, 7.2942)]
    [InlineData(Coax.Rg58Maximum, 400, 14.6813)]
    [InlineData(Coax.Rg58Maximum, 1030, 28.6137)]
    [InlineData(Coax.Rg58Maximum, 1090, 29.8315)]
    [InlineData(Coax.Rg58Maximum, 1575.42, 39.3154)]
    [InlineData(Coax.Rg213Maximum, 100, 1.8341)]
    [InlineData(Coax.Rg213Maximum, 400, 4.6042)]
    [InlineData(Coax.Rg213Maximum, 1030, 9.2047)]
    [InlineData(Coax.Rg213Maximum, 1090, 9.6114)]
    public void Attenuation_through_the_procurement_maxima(Coax cable, double megahertz, double loss) => Assert.Equal(loss, Alpha(cable, megahertz), 6e-5);

    [Fact]
    public void Constants_through_the_procurement_maxima()
    {
        var (k1, k2) = Fit(Coax.Rg58Maximum);
        Assert.Equal(0.4735945, k1, 5e-8);
        Assert.Equal(0.01302363, k2, 5e-9);
        (k1, k2) = Fit(Coax.Rg213Maximum);
        Assert.Equal(0.1366138, k1, 5e-8);
        Assert.Equal(0.00467989, k2, 5e-9);
    }

    // Nominal values from memory at 100 and 1000 MHz; the others computed through them by the same form.
    [Theory]
    [InlineData(Coax.Rg58, 4.9, 11.56, 21.5, 22.85)]
    [InlineData(Coax.Rg142, 3.9, 8.14, 13.5, 14.17)]
    [InlineData(Coax.Rg400, 4.1, 8.27, 13.2, 13.80)]
    [InlineData(Coax.Rg393, 1.7, 3.61, 6.1, 6.42)]
    [InlineData(Coax.Rg223, 4.1, 8.65, 14.5, 15.24)]
    [InlineData(Coax.Rg214, 1.9, 4.38, 8.0, 8.49)]
    [InlineData(Coax.Rg316, 8.3, 17.41, 29.0, 30.46)]
    [InlineData(Coax.Rg178, 14.0, 28.51, 46.0, 48.14)]
    [InlineData(Coax.Rg174, 8.4, 18.98, 34.0, 36.00)]
    public void Nominal_attenuation_at_100_400_1000_and_1090_MHz(Coax cable, double at100, double at400, double at1000, double at1090)
    {
        Assert.Equal(at100, Alpha(cable, 100), 6e-3);
        Assert.Equal(at400, Alpha(cable, 400), 6e-3);
        Assert.Equal(at1000, Alpha(cable, 1000), 6e-3);
        Assert.Equal(at1090, Alpha(cable, 1090), 6e-3);
    }

    // The same form carried to 1030 and 3000 MHz; the last is beyond the rating of two of them.
    [Theory]
    [InlineData(Coax.Rg58, 21.95, null)]
    [InlineData(Coax.Rg142, 13.73, 25.55)]
    [InlineData(Coax.Rg400, 13.40, 23.30)]
    [InlineData(Coax.Rg393, 6.21, 11.91)]
    [InlineData(Coax.Rg223, 14.75, 27.96)]
    [InlineData(Coax.Rg214, 8.16, 17.55)]
    [InlineData(Coax.Rg316, 29.49, 55.33)]
    [InlineData(Coax.Rg178, 46.72, 82.88)]
    [InlineData(Coax.Rg174, 34.67, null)]
    public void Nominal_attenuation_at_1030_and_3000_MHz(Coax cable, double at1030, double? at3000)
    {
        Assert.Equal(at1030, Alpha(cable, 1030), 6e-3);
        var high = CoaxLoss.Run(new(Frequency.Of(3000, "MHz"), Length.Of(1, "ft"), cable));
        Assert.Equal(at3000 is null, high.Verdict == Verdict.CannotTell);
        if (at3000 is { } loss)
        {
            Assert.Equal(loss, high["alpha"].Value, 6e-3);
        }
    }

    // Smooth copper and low-loss dielectric are the least any real cable can lose: textbook skin effect and dielectric loss, computed outside the project (1000 MHz).
    [Theory]
    [InlineData(Coax.Rg142, 0.037, 0.116, 2.07)]
    [InlineData(Coax.Rg58, 0.0345, 0.116, 2.30)]
    [InlineData(Coax.Rg223, 0.035, 0.116, 2.30)]
    [InlineData(Coax.Rg214, 0.0888 * 0.939, 0.285, 2.30)]
    [InlineData(Coax.Rg393, 0.094 * 0.95, 0.285, 2.07)]
    [InlineData(Coax.Rg316, 0.0201 * 0.939, 0.060, 2.07)]
    [InlineData(Coax.Rg178, 0.012 * 0.939, 0.033, 2.07)]
    public void No_cable_of_the_table_loses_less_than_smooth_copper(Coax cable, double innerInches, double outerInches, double permittivity)
    {
        var least = SmoothCopper(innerInches * 0.0254, outerInches * 0.0254, permittivity, 1000e6);
        Assert.True(Alpha(cable, 1000) >= least, $"{cable}: {least}");
    }

    // Worked beside these tests by the same textbook formulas: 0.037 in and 0.116 in, permittivity 2.07, loss tangent 0.0002.
    [Theory]
    [InlineData(400, 6.799)]
    [InlineData(1000, 11.0436)]
    [InlineData(1090, 11.567)]
    [InlineData(3000, 20.140)]
    public void Smooth_copper_of_the_worked_example(double megahertz, double loss)
    {
        Assert.Equal(loss, SmoothCopper(0.037 * 0.0254, 0.116 * 0.0254, 2.07, megahertz * 1e6), 1e-3);
        Assert.True(Alpha(Coax.Rg142, megahertz) > loss);
    }

    // A unit test of a public physics library (read): permittivity 2.2, loss tangent 1e-4, 100 MHz: 155.4e-6 Np/m. The bound used here agrees with it.
    [Fact]
    public void Dielectric_loss_of_a_second_source() => Assert.Equal(155.4e-6, Dielectric(2.2, 1e-4, 100e6), 0.05e-6);

    // A second opinion on the nominal values: 11.461 dB/100 ft at 750 MHz for RG-223 in a public encyclopaedia; the table's own accuracy is 15 %.
    [Fact]
    public void RG_223_is_within_15_percent_of_a_second_source() => Assert.InRange(Alpha(Coax.Rg223, 750) / 11.461, 0.85, 1.15);

    // Delay: L/(vf·c), computed. The velocities of the table are from memory.
    [Theory]
    [InlineData(65.9, 1.54280)]
    [InlineData(66, 1.54046)]
    [InlineData(69.5, 1.46288)]
    [InlineData(70, 1.45243)]
    public void Delay_of_a_foot(double percent, double nanoseconds) =>
        Assert.Equal(nanoseconds, CoaxDelay.Run(new(Length.Of(1, "ft"), Velocity: Fraction.Of(percent, "%")))["t"].Value, 6e-6);

    // MIL-DTL-28830E para 4.7.10.2 (read); velocities and capacitances from memory.
    [Theory]
    [InlineData(69.5, 29.4, 49.758)]
    [InlineData(65.9, 30.8, 50.091)]
    [InlineData(69.5, 19.5, 75.019)]
    [InlineData(69.5, 15.4, 94.992)]
    public void Impedance_from_velocity_and_capacitance(double percent, double picofarads, double ohms) =>
        Assert.Equal(ohms, CoaxDelay.Run(new(Length.Of(1, "ft"), Velocity: Fraction.Of(percent, "%"), Capacitance: picofarads))["Z0"].Value, 6e-4);

    // Radio height h delays by 2h/c (computed): so 139.0 ft or 131.8 ft of cable stand for 100 ft.
    [Theory]
    [InlineData(139.0, 69.5)]
    [InlineData(131.8, 65.9)]
    public void Cable_that_stands_for_100_ft_of_radio_height(double feet, double percent)
    {
        var sheet = CoaxDelay.Run(new(Length.Of(feet, "ft"), Velocity: Fraction.Of(percent, "%")));
        Assert.Equal(100, sheet["h"].Value, 0.04);
        Assert.Equal(203.341, sheet["t"].Value, 0.08);
    }

    // Delay of a radio height, 2h/c (computed); each foot of PTFE cable, both legs together, adds 0.7194 ft of it.
    [Theory]
    [InlineData(1, 2.0334)]
    [InlineData(10, 20.334)]
    [InlineData(20, 40.668)]
    [InlineData(50, 101.670)]
    [InlineData(100, 203.341)]
    [InlineData(200, 406.681)]
    [InlineData(500, 1016.703)]
    [InlineData(1000, 2033.407)]
    [InlineData(2500, 5083.517)]
    public void Delay_of_a_radio_height(double feet, double nanoseconds)
    {
        Assert.Equal(nanoseconds, Propagation.Delay(Length.Of(2 * feet, "ft")).In("ns"), nanoseconds < 10 ? 6e-5 : 6e-4);
        Assert.Equal(0.7194, CoaxDelay.Run(new(Length.Of(1, "ft"), Velocity: Fraction.Of(69.5, "%")))["h"].Value, 6e-5);
    }

    // Loss of connectors 0.1·√(f in GHz), a design rule from memory: computed values.
    [Theory]
    [InlineData(127, 0.0356)]
    [InlineData(330, 0.0574)]
    [InlineData(1030, 0.1015)]
    [InlineData(1090, 0.1044)]
    [InlineData(1575.42, 0.1255)]
    [InlineData(4300, 0.2074)]
    public void Loss_of_a_mated_pair(double megahertz, double loss) => Assert.Equal(loss, CoaxAttenuation.PairRule(Frequency.Of(megahertz, "MHz")), 6e-5);

    [Fact]
    public void Twelve_feet_and_two_pairs_lose_1_9092_dB() =>
        Assert.Equal(1.9092, CoaxLoss.Run(new(Frequency.Of(1090, "MHz"), Length.Of(12, "ft"), Coax.Rg142))["A"].Value, 6e-4);

    // 250 W at the box (computed).
    [Theory]
    [InlineData(1.0, 198.58)]
    [InlineData(1.5, 176.99)]
    [InlineData(2.0, 157.74)]
    [InlineData(2.5, 140.59)]
    [InlineData(3.0, 125.30)]
    public void Power_left_at_the_antenna_end(double loss, double watts) =>
        Assert.Equal(watts, Run(loss, 250)["Pa"].Value, 6e-3);

    // Regulations print both 125 W and 21.0 dBW (125.89 W), 70 W and 18.5 dBW (70.79 W); the greatest line losses are those for the watts.
    [Theory]
    [InlineData(150, 125, 0.792)]
    [InlineData(200, 125, 2.041)]
    [InlineData(240, 125, 2.833)]
    [InlineData(250, 125, 3.010)]
    [InlineData(150, 70, 3.310)]
    [InlineData(200, 70, 4.559)]
    [InlineData(250, 70, 5.528)]
    public void Greatest_loss_that_keeps_the_power(double watts, double least, double loss)
    {
        Assert.Equal(Verdict.Holds, Run(loss - 1e-3, watts, least).Verdict);
        Assert.Equal(Verdict.Fails, Run(loss + 1e-3, watts, least).Verdict);
    }

    private static Sheet Run(double loss, double watts, double? least = null) => CoaxLoss.Run(new(
        Frequency.Of(1090, "MHz"), Length.Zero, Coax.Rg142, Pairs: 2, PairLoss: loss / 2, Power: Wattage.Of(watts, "W"), MinPower: least is { } p ? Wattage.Of(p, "W") : null));

    private static (double K1, double K2) Fit(Coax cable) => CoaxAttenuation.Fit(CoaxTable.Points(cable)[0], CoaxTable.Points(cable)[1]);

    private static double Alpha(Coax cable, double megahertz) => CoaxLoss.Run(new(Frequency.Of(megahertz, "MHz"), Length.Of(1, "ft"), cable))["alpha"].Value;

    private static double SmoothCopper(double inner, double outer, double permittivity, double hertz)
    {
        var skin = Math.Sqrt(Math.PI * hertz * 4e-7 * Math.PI / 5.8e7);
        var impedance = 59.9585 / Math.Sqrt(permittivity) * Math.Log(outer / inner);
        var conductor = skin / Math.PI * ((1 / inner) + (1 / outer)) / (2 * impedance);
        return 8.685890 * (conductor + Dielectric(permittivity, 2e-4, hertz)) * 30.48;
    }

    // Np/m.
    private static double Dielectric(double permittivity, double tangent, double hertz) => Math.PI * hertz * Math.Sqrt(permittivity) * tangent / 299792458;
}
