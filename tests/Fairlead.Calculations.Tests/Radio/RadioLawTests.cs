using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Radio;

namespace Fairlead.Tests.Calculations.Radio;

/// <summary>Laws that lines, antennas and links obey, whatever the numbers.</summary>
public sealed class RadioLawTests
{
    private static readonly Gen<Coax> Cable = Gen.OneOf(Coax.Rg58, Coax.Rg142, Coax.Rg174, Coax.Rg178, Coax.Rg214, Coax.Rg223, Coax.Rg316, Coax.Rg393, Coax.Rg400);
    private static readonly Gen<Frequency> Band = Gen.Double[100, 1500].Select(f => Frequency.Of(f, "MHz"));

    [Fact]
    public void Loss_adds_along_a_cable_and_grows_with_frequency()
    {
        var inputs = from cable in Cable from f in Band from a in Gen.Double[0, 200] from b in Gen.Double[0, 200] select (cable, f, a, b);
        inputs.Sample(x =>
        {
            double Loss(double feet, Frequency f) => CoaxLoss.Run(new(f, Length.Of(feet, "ft"), x.cable, Pairs: 0))["A"].Value;
            Assert.Equal(Loss(x.a, x.f) + Loss(x.b, x.f), Loss(x.a + x.b, x.f), 1e-9);
            Assert.True(Loss(x.a, x.f) <= Loss(x.a, x.f * 1.05));
        });
    }

    [Fact]
    public void A_cable_through_its_own_points_is_the_cable_of_the_table()
    {
        var inputs = from cable in Cable from f in Gen.Double[100, 1000] select (cable, f: Frequency.Of(f, "MHz"));
        inputs.Sample(x => Assert.Equal(
            CoaxLoss.Run(new(x.f, Length.Of(10, "ft"), x.cable))["A"].Value,
            CoaxLoss.Run(new(x.f, Length.Of(10, "ft"), Points: CoaxTable.Points(x.cable).ToSequence()))["A"].Value, 1e-12));
    }

    [Fact]
    public void Between_points_the_attenuation_lies_between_theirs()
    {
        var inputs = from a in Gen.Double[0.1, 20] from more in Gen.Double[0.1, 20] from share in Gen.Double[0, 1] select (a, b: a + more, share);
        inputs.Sample(x =>
        {
            var alpha = CoaxLoss.Run(new(Frequency.Of(400 + (600 * x.share), "MHz"), Length.Of(1, "ft"), Points: [new(Frequency.Of(400, "MHz"), x.a), new(Frequency.Of(1000, "MHz"), x.b)]));
            Assert.True(alpha.Verdict != Verdict.Holds || alpha["alpha"].Value <= x.b + 1e-9, $"{x}");
            Assert.True(alpha.Verdict != Verdict.Holds || alpha["alpha"].Value >= x.a - 1e-9, $"{x}");
        });
    }

    [Fact]
    public void A_length_at_the_edge_of_its_window_has_the_loss_of_the_edge()
    {
        var inputs = from cable in Cable from f in Band from least in Gen.Double[1, 3] from more in Gen.Double[0, 3] select (cable, f, least, most: least + more);
        inputs.Sample(x =>
        {
            var window = CoaxWindow.Run(new(x.f, x.cable, MinLoss: x.least, MaxLoss: x.most));
            double Loss(string edge) => CoaxLoss.Run(new(x.f, new(window[edge].Si), x.cable))["A"].Value;
            Assert.Equal(x.least, Loss("Lmin"), 1e-9);
            Assert.Equal(x.most, Loss("Lmax"), 1e-9);
        });
    }

    [Fact]
    public void A_window_without_a_greatest_length_cannot_be_told_and_an_empty_one_fails()
    {
        var f = Frequency.Of(1090, "MHz");
        Assert.Equal(Verdict.CannotTell, CoaxWindow.Run(new(f, Coax.Rg142, MinLoss: 1)).Verdict);
        Assert.Equal(Verdict.CannotTell, CoaxWindow.Run(new(f, Coax.Rg142, MaxLoss: 0.1)).Verdict);
        Assert.Equal(Verdict.Fails, CoaxWindow.Run(new(f, Coax.Rg142, MinLoss: 3, MaxDelay: Duration.Of(5, "ns"))).Verdict);
    }

    [Fact]
    public void Equal_cables_match_and_the_difference_does_not_depend_on_which_is_first()
    {
        var inputs = from a in Gen.Double[0, 100] from b in Gen.Double[0, 100] from v in Gen.Double[60, 90] select (a: Length.Of(a, "ft"), b: Length.Of(b, "ft"), v: Fraction.Of(v, "%"));
        inputs.Sample(x =>
        {
            double Difference(Length first, Length second) => MatchedPair.Run(new(first, second, Velocity: x.v))["dt"].Si;
            Assert.Equal(0, Difference(x.a, x.a));
            Assert.Equal(Difference(x.a, x.b), Difference(x.b, x.a), 1e-20);
        });
    }

    [Fact]
    public void A_reading_at_the_box_taken_back_to_the_antenna_is_the_antenna()
    {
        var inputs = from vswr in Gen.Double[1.01, 20] from loss in Gen.Double[0, 8] select (vswr, loss);
        inputs.Sample(x =>
        {
            var box = Mismatch.Run(new(x.vswr, Loss: x.loss))["Sb"].Value;
            Assert.True(box <= x.vswr + 1e-9);
            Assert.Equal(x.vswr, Mismatch.Run(new(box, At: MeasuredAt.Box, Loss: x.loss))["Sa"].Value, 1e-5 * x.vswr);
            Assert.True(Reflection.LineLoss(x.loss, Reflection.OfVswr(x.vswr)) >= x.loss - 1e-12);
        });
    }

    [Fact]
    public void Reflected_and_accepted_power_are_all_of_it() => Gen.Double[0.001, 0.999].Sample(rho =>
    {
        Assert.Equal(1, Math.Pow(10, -Reflection.ReturnLoss(rho) / 10) + Math.Pow(10, -Reflection.MismatchLoss(rho) / 10), 1e-12);
        Assert.Equal(rho, Reflection.OfVswr(Reflection.Vswr(rho)), 1e-12);
    });

    [Fact]
    public void A_reading_worse_than_an_open_end_cannot_be_true() => Assert.Equal(Verdict.CannotTell, Mismatch.Run(new(4, At: MeasuredAt.Box, Loss: 3)).Verdict);

    [Fact]
    public void Isolation_is_reciprocal_and_grows_by_6_dB_with_twice_the_spacing()
    {
        var inputs = from f in Band from d in Gen.Double[1, 40] from g1 in Gen.Double[-5, 5] from g2 in Gen.Double[-5, 5] select (f, d: Propagation.Wavelength(f) * d, g1, g2);
        inputs.Sample(x =>
        {
            double Isolation(Length d, double g1, double g2) => AntennaIsolation.Run(new(x.f, d, AntennaPair.GainsStated, g1, g2))["I"].Value;
            Assert.Equal(Isolation(x.d, x.g1, x.g2), Isolation(x.d, x.g2, x.g1), 1e-12);
            Assert.Equal(Isolation(x.d, x.g1, x.g2) + (20 * Math.Log10(2)), Isolation(x.d * 2, x.g1, x.g2), 1e-9);
        });
    }

    [Fact]
    public void The_least_spacing_gives_the_isolation_asked_for()
    {
        var inputs = from f in Band from least in Gen.Double[18, 50] from pair in Gen.OneOf(AntennaPair.MonopolesOnOnePlane, AntennaPair.OneAboveTheOther) select (f, least, pair);
        inputs.Sample(x =>
        {
            var spacing = new Length(AntennaIsolation.Run(new(x.f, Propagation.Wavelength(x.f) * 5, x.pair, MinIsolation: x.least))["dmin"].Si);
            Assert.True(AntennaIsolation.Run(new(x.f, spacing, x.pair))["I"].Value >= x.least - 1e-9);
        });
    }

    [Fact]
    public void Antennas_nearer_than_a_wavelength_cannot_be_told() =>
        Assert.Equal(Verdict.CannotTell, AntennaIsolation.Run(new(Frequency.Of(121.5, "MHz"), Length.Of(3, "ft"))).Verdict);

    [Fact]
    public void A_receiver_too_near_is_damaged_and_a_little_farther_only_desensitised()
    {
        Sheet At(double inches) => AntennaIsolation.Run(new(Frequency.Of(1090, "MHz"), Length.Of(inches, "in"), Power: Wattage.Of(250, "W"), Damage: 30, Desense: 20));
        Assert.Equal(Verdict.Fails, At(15).Verdict);
        Assert.Equal(Verdict.Caution, At(60).Verdict);
        Assert.Equal(Verdict.Holds, At(200).Verdict);
    }

    [Fact]
    public void A_link_and_its_loss_are_inverse()
    {
        var inputs = from f in Band from loss in Gen.Double[25, 160] select (f, loss);
        inputs.Sample(x => Assert.Equal(x.loss, Propagation.FreeSpaceLoss(x.f, Propagation.DistanceForLoss(x.f, x.loss)), 1e-9));
    }

    [Fact]
    public void Six_decibels_more_line_loss_halve_the_range()
    {
        double Range(double loss) => SurveillanceRange.Run(new(Wattage.Of(250, "W"), LineLoss: loss))["R"].Si;
        Assert.Equal(Range(1) / 2, Range(1 + (20 * Math.Log10(2))), 1e-6);
    }

    [Fact]
    public void A_simulated_target_arrives_with_the_level_and_delay_of_a_true_one()
    {
        var inputs = from d in Gen.Double[10, 200] from range in Gen.Double[0.5, 40] from kind in Gen.OneOf(ReplyKind.ModeA, ReplyKind.ModeC, ReplyKind.ModeS) select (d: Length.Of(d, "ft"), range: Length.Of(range, "nmi"), kind);
        inputs.Sample(x =>
        {
            var f = Frequency.Of(1090, "MHz");
            var sheet = RampTest.Run(new(x.d, f, Range: x.range, Kind: x.kind));
            Assert.Equal(51 - Propagation.FreeSpaceLoss(f, x.range), sheet["X"].Value - Propagation.FreeSpaceLoss(f, x.d), 1e-9);
            var total = sheet["ts"].Si + (2 * Propagation.Delay(x.d).Si);
            Assert.Equal((2 * Propagation.Delay(x.range).Si) + RampTest.TurnRound(x.kind).Si, total, 1e-15);
        });
    }

    [Fact]
    public void A_test_antenna_in_the_near_field_cannot_be_told() =>
        Assert.Equal(Verdict.CannotTell, RampTest.Run(new(Length.Of(2, "ft"), Frequency.Of(1090, "MHz"), -70)).Verdict);

    [Fact]
    public void Mixing_products_do_not_depend_on_the_order_of_the_transmitters()
    {
        var bands = from f in Gen.Double[100, 1200] from w in Gen.Double[0, 2] select (f, w);
        var inputs = from a in bands from b in bands from r in bands select (a, b, r);
        inputs.Sample(x =>
        {
            RadioBand Band((double F, double W) b, string name) => new(name, Frequency.Of(b.F, "MHz"), Frequency.Of(b.F + b.W, "MHz"));
            var (a, b, r) = (Band(x.a, "a"), Band(x.b, "b"), Band(x.r, "r"));
            var one = Harmonics.Find(new([a, b], [r], 5, 5)).Select(h => (h.Order, Math.Round(h.From.Si), Math.Round(h.To.Si))).Order();
            Assert.Equal(one, Harmonics.Find(new([b, a], [r], 5, 5)).Select(h => (h.Order, Math.Round(h.From.Si), Math.Round(h.To.Si))).Order());
        });
    }

    [Fact]
    public void Every_product_found_can_be_made_of_frequencies_of_the_bands()
    {
        // Two carriers with a third-order product on the receiver: 2 × 120 − 118 = 122.
        RadioBand At(string name, double f) => new(name, Frequency.Of(f, "MHz"), Frequency.Of(f, "MHz"));
        var hit = Assert.Single(Harmonics.Find(new([At("a", 118), At("b", 120)], [At("r", 122)], 13, 3)));
        Assert.Equal((3, 122e6), (hit.Order, Math.Round(hit.From.Si, 3)));
        Assert.Equal("1 × a − 2 × b", hit.Product);
    }

    [Fact]
    public void Frequencies_beyond_what_is_known_of_a_cable_cannot_be_told()
    {
        Assert.Equal(Verdict.CannotTell, CoaxLoss.Run(new(Frequency.Of(4300, "MHz"), Length.Of(10, "ft"), Coax.Rg142)).Verdict);
        Assert.Equal(Verdict.CannotTell, CoaxLoss.Run(new(Frequency.Of(20, "MHz"), Length.Of(10, "ft"), Coax.Rg142)).Verdict);
        Assert.Equal(Verdict.CannotTell, CoaxLoss.Run(new(Frequency.Of(400, "MHz"), Length.Of(10, "ft"), Coax.Rg179)).Verdict);
        Assert.Equal(Verdict.CannotTell, CoaxLoss.Run(new(Frequency.Of(1200, "MHz"), Length.Of(10, "ft"), Points: CoaxTable.Points(Coax.Rg142).ToSequence())).Verdict);
        Assert.Equal(Verdict.CannotTell, CoaxLoss.Run(new(Frequency.Of(400, "MHz"), Length.Of(10, "ft"))).Verdict);
    }

    [Fact]
    public void Units_typed_do_not_change_the_result()
    {
        static Sheet Run(string f, string length) => CoaxLoss.Run(new(QuantityReader.Read<FrequencyKind>(f), QuantityReader.Read<LengthKind>(length), Coax.Rg142));
        Assert.Equal(Run("1090 MHz", "12 ft")["A"].Si, Run("1.09 GHz", "3.6576 m")["A"].Si, 1e-12);
    }
}
