using Fairlead.Calculations;
using Fairlead.Calculations.Radio;

namespace Fairlead.Tests.Reference.Radio;

/// <summary>Free-space loss, wavelengths, field regions, isolation, links, harmonics. Rows computed from the formula named beside them; c = 299 792 458 m/s, 1 nmi = 1852 m.</summary>
public sealed class AntennaTests
{
    // 32.4478 + 20 log f(MHz) + 20 log d(km), printed as 32.44 and 32.45 (read in two radio pages); a third prints the constant with the wrong sign.
    [Theory]
    [InlineData("5 ft", 36.364, 36.856)]
    [InlineData("10 ft", 42.385, 42.877)]
    [InlineData("25 ft", 50.344, 50.835)]
    [InlineData("50 ft", 56.364, 56.856)]
    [InlineData("100 ft", 62.385, 62.877)]
    [InlineData("150 ft", 65.907, 66.398)]
    [InlineData("0.5 nmi", 92.037, 92.529)]
    [InlineData("1 nmi", 98.057, 98.549)]
    [InlineData("2 nmi", 104.078, 104.570)]
    [InlineData("5 nmi", 112.037, 112.529)]
    [InlineData("10 nmi", 118.057, 118.549)]
    [InlineData("14 nmi", 120.980, 121.472)]
    [InlineData("20 nmi", 124.078, 124.570)]
    [InlineData("30 nmi", 127.600, 128.092)]
    [InlineData("40 nmi", 130.099, 130.590)]
    public void Free_space_loss_at_1030_and_1090_MHz(string distance, double at1030, double at1090)
    {
        var length = QuantityReader.Read<LengthKind>(distance);
        Assert.Equal(at1030, Propagation.FreeSpaceLoss(Frequency.Of(1030, "MHz"), length), 6e-4);
        Assert.Equal(at1090, Propagation.FreeSpaceLoss(Frequency.Of(1090, "MHz"), length), 6e-4);
    }

    [Theory]
    [InlineData(75, 75.302)]
    [InlineData(113, 78.862)]
    [InlineData(127.5, 79.911)]
    [InlineData(332, 88.223)]
    [InlineData(406.037, 89.972)]
    [InlineData(978, 97.607)]
    [InlineData(1575.42, 101.749)]
    [InlineData(4300, 110.470)]
    public void Free_space_loss_of_a_nautical_mile(double megahertz, double loss) =>
        Assert.Equal(loss, Propagation.FreeSpaceLoss(Frequency.Of(megahertz, "MHz"), Length.Of(1, "nmi")), 6e-4);

    [Fact]
    public void The_constant_of_the_usual_form_is_32_45_and_not_its_opposite() =>
        Assert.Equal(32.45, Propagation.FreeSpaceLoss(Frequency.Of(1, "MHz"), Length.Of(1, "km")), 0.011);

    // The constants of the form by unit of distance (computed), and one metre at 1090 MHz.
    [Theory]
    [InlineData(1, "1 km", 32.4478)]
    [InlineData(1, "1 nmi", 37.8006)]
    [InlineData(1, "1 ft", -37.8719)]
    [InlineData(1090, "1 m", 33.196)]
    public void The_constant_by_unit_of_distance(double megahertz, string distance, double loss) =>
        Assert.Equal(loss, Propagation.FreeSpaceLoss(Frequency.Of(megahertz, "MHz"), QuantityReader.Read<LengthKind>(distance)), 6e-4);

    // Links of 0 dBi at both ends (computed): 54 dBm at 1030 MHz and 51 dBm at 1090 MHz.
    [Theory]
    [InlineData(1030, 54, 1, -44.06)]
    [InlineData(1030, 54, 10, -64.06)]
    [InlineData(1030, 54, 14, -66.98)]
    [InlineData(1030, 54, 20, -70.08)]
    [InlineData(1030, 54, 30, -73.60)]
    [InlineData(1090, 51, 10, -67.55)]
    [InlineData(1090, 51, 14, -70.47)]
    [InlineData(1090, 51, 20, -73.57)]
    public void Level_at_a_range(double megahertz, double sent, double miles, double level) =>
        Assert.Equal(level, sent - Propagation.FreeSpaceLoss(Frequency.Of(megahertz, "MHz"), Length.Of(miles, "nmi")), 6e-3);

    // The-1090-megahertz book (read): 27.5 cm and a quarter wave of 6.875 cm at 1090 MHz. The others computed.
    [Theory]
    [InlineData(75, 39.343)]
    [InlineData(108, 27.321)]
    [InlineData(113, 26.113)]
    [InlineData(117.95, 25.017)]
    [InlineData(127.5, 23.143)]
    [InlineData(118, 25.006)]
    [InlineData(136.975, 21.542)]
    [InlineData(121.5, 24.286)]
    [InlineData(243, 12.143)]
    [InlineData(406.037, 7.267)]
    [InlineData(332, 8.888)]
    [InlineData(978, 3.017)]
    [InlineData(1030, 2.865)]
    [InlineData(1060, 2.784)]
    [InlineData(1090, 2.707)]
    [InlineData(1575.42, 1.873)]
    [InlineData(4300, 0.686)]
    public void Quarter_wave_in_inches(double megahertz, double inches) => Assert.Equal(inches, GroundPlane.Run(new(Frequency.Of(megahertz, "MHz")))["Rmin"].Value, 6e-4);

    [Theory]
    [InlineData(1090, "11 in", 1.862)]
    [InlineData(1090, "12 in", 2.216)]
    [InlineData(1090, "0.5 m", 5.964)]
    [InlineData(1090, "1 m", 23.857)]
    [InlineData(4300, "6 in", 2.186)]
    public void Far_field_by_aperture(double megahertz, string size, double feet) =>
        Assert.Equal(feet, NearField.Run(new(Frequency.Of(megahertz, "MHz"), QuantityReader.Read<LengthKind>(size)))["r2"].Value, 6e-4);

    [Fact]
    public void Of_a_small_monopole_three_wavelengths_govern()
    {
        Assert.Equal(0.825, NearField.FarField(Frequency.Of(1090, "MHz"), Length.Of(0.0688, "m")).Si, 6e-4);
        Assert.Equal(7.054, NearField.FarField(Frequency.Of(127.5, "MHz"), Length.Of(0.1, "m")).Si, 6e-4);
    }

    // 20 log(4π d/λ) − G1 − G2 at 1060 MHz (form from memory, computed): 0 + 0, 2.15 + 2.15 and 5.15 + 5.15 dBi.
    [Theory]
    [InlineData(12, 22.63, 18.33, 12.33)]
    [InlineData(20, 27.07, 22.77, 16.77)]
    [InlineData(24, 28.65, 24.35, 18.35)]
    [InlineData(30, 30.59, 26.29, 20.29)]
    [InlineData(36, 32.18, 27.88, 21.88)]
    [InlineData(48, 34.68, 30.38, 24.38)]
    [InlineData(60, 36.61, 32.31, 26.31)]
    [InlineData(72, 38.20, 33.90, 27.90)]
    [InlineData(120, 42.63, 38.33, 32.33)]
    public void Isolation_by_spacing(double inches, double isotropic, double monopoles, double doubled)
    {
        Assert.Equal(isotropic, Stated(inches, 0), 6e-3);
        Assert.Equal(monopoles, AntennaIsolation.Run(new(Frequency.Of(1060, "MHz"), Length.Of(inches, "in")))["I"].Value, 6e-3);
        Assert.Equal(doubled, Stated(inches, 5.15), 6e-3);
    }

    private static double Stated(double inches, double gain) =>
        AntennaIsolation.Run(new(Frequency.Of(1060, "MHz"), Length.Of(inches, "in"), AntennaPair.GainsStated, gain, gain))["I"].Value;

    // Spacing for an isolation with 5.15 dBi each (computed).
    [Theory]
    [InlineData(1030, 20, 29.85)]
    [InlineData(1060, 20, 29.00)]
    [InlineData(1090, 20, 28.21)]
    [InlineData(1060, 30, 91.72)]
    [InlineData(1060, 40, 290.05)]
    public void Spacing_that_gives_an_isolation(double megahertz, double isolation, double inches)
    {
        var sheet = AntennaIsolation.Run(new(Frequency.Of(megahertz, "MHz"), Length.Of(48, "in"), AntennaPair.GainsStated, 5.15, 5.15, MinIsolation: isolation));
        Assert.Equal(inches, sheet["dmin"].Value, 6e-3);
        Assert.Equal(Verdict.Caution, AntennaIsolation.Run(new(Frequency.Of(megahertz, "MHz"), Length.Of(48, "in"), AntennaPair.GainsStated, 5.15, 5.15)).Verdict);
    }

    // Vertical spacing 28 + 40 log(d/λ): worked in a radio club's note (read), 147 MHz and 3 m, about 35 dB; table 1, 2, 5, 10, 20 λ.
    [Theory]
    [InlineData(1, 28)]
    [InlineData(2, 40)]
    [InlineData(5, 56)]
    [InlineData(10, 68)]
    [InlineData(20, 80)]
    public void One_antenna_above_the_other(double wavelengths, double isolation)
    {
        var f = Frequency.Of(147, "MHz");
        Assert.Equal(isolation, AntennaIsolation.Run(new(f, Propagation.Wavelength(f) * wavelengths, AntennaPair.OneAboveTheOther))["I"].Value, 0.51);
        Assert.Equal(35, AntennaIsolation.Run(new(f, Length.Of(3, "m"), AntennaPair.OneAboveTheOther))["I"].Value, 0.5);
    }

    // Links at 0 dBi (computed): 54 dBm to −74 dBm at 1030 MHz, and 51, 57 and 48.45 dBm to −74 dBm at 1090 MHz.
    [Theory]
    [InlineData(54, 51, 31.415, 21.016)]
    [InlineData(54, 57, 31.415, 41.932)]
    [InlineData(54, 48.45, 31.415, 15.669)]
    public void A_link_closes_at_its_range(double out0, double back, double first, double second)
    {
        var sheet = SurveillanceRange.Run(new(Propagation.FromDbm(out0), TargetPower: Propagation.FromDbm(back)));
        Assert.Equal(first, sheet["R1"].Value, 1.1e-3);
        Assert.Equal(second, sheet["R2"].Value, 1.1e-3);
        Assert.Equal(Math.Min(first, second), sheet["R"].Value, 1.1e-3);
    }

    [Theory]
    [InlineData(20, 43.010)]
    [InlineData(40, 46.021)]
    [InlineData(70, 48.451)]
    [InlineData(125, 50.969)]
    [InlineData(158.489, 52.000)]
    [InlineData(250, 53.979)]
    [InlineData(500, 56.990)]
    [InlineData(501.19, 57.000)]
    public void Watts_as_dBm(double watts, double dbm) => Assert.Equal(dbm, Propagation.Dbm(Wattage.Of(watts, "W")), 6e-4);

    [Fact]
    public void On_the_ramp_minus_22_66_dBm_at_25_ft_put_minus_73_dBm_at_the_antenna() =>
        Assert.Equal(-22.66, RampTest.Run(new(Length.Of(25, "ft"), Frequency.Of(1030, "MHz"), -73))["X"].Value, 6e-3);

    // Harmonics into 1575.42 ± 1.023 MHz (computed): the 25-kHz channels of the VHF band that have one.
    [Fact]
    public void Channels_whose_harmonic_falls_into_the_satellite_navigation_band()
    {
        var band = new RadioBand("L1", Frequency.Of(1575.42 - 1.023, "MHz"), Frequency.Of(1575.42 + 1.023, "MHz"));
        var channels = Enumerable.Range(0, 760).Select(i => 118 + (0.025 * i)).Select(f => new RadioBand(f.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture), Frequency.Of(f, "MHz"), Frequency.Of(f, "MHz")));
        var hits = channels.SelectMany(c => Harmonics.Find(new([c], [band]))).Select(h => h.Product).ToArray();
        Assert.Equal(
            [
                .. new[] { "121.125", "121.150", "121.175", "121.200", "121.225", "121.250" }.Select(c => "13 × " + c),
                .. new[] { "131.200", "131.225", "131.250", "131.275", "131.300", "131.325", "131.350" }.Select(c => "12 × " + c),
            ],
            hits);
    }

    [Theory]
    [InlineData(121.150, 13, -0.470)]
    [InlineData(121.175, 13, -0.145)]
    [InlineData(121.200, 13, 0.180)]
    [InlineData(131.250, 12, -0.420)]
    [InlineData(131.275, 12, -0.120)]
    [InlineData(131.300, 12, 0.180)]
    [InlineData(157.542, 10, 0)]
    public void A_harmonic_and_its_offset(double megahertz, int order, double offset)
    {
        var f = Frequency.Of(megahertz, "MHz");
        var hit = Assert.Single(Harmonics.Find(new([new("com", f, f)], [new("L1", Frequency.Of(1574.397, "MHz"), Frequency.Of(1576.443, "MHz"))])));
        Assert.Equal(order, hit.Order);
        Assert.Equal(offset, hit.From.In("MHz") - 1575.42, 1e-6);
    }
}
