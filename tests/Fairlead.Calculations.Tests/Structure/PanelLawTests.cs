using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Structure;

namespace Fairlead.Tests.Calculations.Structure;

/// <summary>Laws of strips and plates.</summary>
public sealed class PanelLawTests
{
    private static readonly Gen<PanelBendingInput> Panel =
        from support in Gen.Enum<Support>()
        from length in Gen.Double[2, 30]
        from width in Gen.Double[2, 30]
        from thickness in Gen.Double[0.02, 0.25]
        from item in Gen.Double[0.1, 50]
        select new PanelBendingInput(
            support, Length.Of(length, "in"), Length.Of(width, "in"), Length.Of(thickness, "in"), Pressure.Of(10_500, "ksi"), Mass.Of(item, "lb"), 6.6);

    [Fact]
    public void Stress_and_deflection_follow_the_load_and_frequency_the_root_of_the_mass() => Panel.Sample(panel =>
    {
        var (one, four) = (PanelBending.Run(panel), PanelBending.Run(panel with { Item = panel.Item * 4 }));
        Close(4 * one["d"].Si, four["d"].Si);
        Close(4 * one["f"].Si, four["f"].Si);
        Close(one["fn"].Si, 2 * four["fn"].Si);
    });

    [Fact]
    public void Twice_as_thick_is_eight_times_as_stiff_and_four_times_as_strong() => Panel.Sample(panel =>
    {
        var (thin, thick) = (PanelBending.Run(panel), PanelBending.Run(panel with { Thickness = panel.Thickness * 2 }));
        Close(thin["d"].Si, 8 * thick["d"].Si);
        Close(thin["f"].Si, 4 * thick["f"].Si);
    });

    [Fact]
    public void A_plate_turned_round_is_the_same_plate() => Panel.Sample(panel =>
    {
        foreach (var support in new[] { Support.PlateSimple, Support.PlateClamped })
        {
            var one = PanelBending.Run(panel with { Support = support });
            var turned = PanelBending.Run(panel with { Support = support, Length = panel.Width, Width = panel.Length });
            Close(one["d"].Si, turned["d"].Si);
            Close(one["f"].Si, turned["f"].Si);
            Close(one["fn"].Si, turned["fn"].Si);
        }
    });

    [Fact]
    public void Clamping_the_edges_makes_a_panel_stiffer() => Panel.Sample(panel =>
    {
        var (simple, clamped) = (PanelBending.Run(panel with { Support = Support.PlateSimple }), PanelBending.Run(panel with { Support = Support.PlateClamped }));
        Assert.True(clamped["d"].Si < simple["d"].Si);
        Assert.True(clamped["fn"].Si > simple["fn"].Si);
    });

    // A plate much longer than wide bends like a strip between its long edges, stiffer by 1 - mu2 since it cannot narrow.
    [Fact]
    public void A_long_plate_is_a_wide_strip()
    {
        var (length, width, thickness, modulus) = (new Length(6), new Length(0.6), new Length(0.002), new Pressure(70e9));
        var rigidity = PlateFormulas.Rigidity(modulus, thickness, 0.3).Si;
        var simple = PlateFormulas.SimplySupported(length, width, thickness, modulus, 0.3, new(100));
        var clamped = PlateFormulas.AllClamped(length, width, thickness, modulus, 0.3, new(100)).Answer;
        Assert.Equal(1, simple.Deflection.Si / (5.0 / 384 * 100 * Math.Pow(0.6, 4) / rigidity), 0.001);
        Assert.Equal(1, clamped.Deflection.Si / (100 * Math.Pow(0.6, 4) / (384 * rigidity)), 0.003);
        Assert.Equal(1, simple.Stress.Si / (6 * 100 * 0.36 / 8 / 4e-6), 0.002);
        Assert.Equal(1, clamped.Stress.Si / (6 * 100 * 0.36 / 12 / 4e-6), 0.001);
    }

    [Fact]
    public void A_panel_that_bends_more_than_half_its_thickness_is_a_caution() =>
        Assert.Equal(Verdict.Caution, PanelBending.Run(new(Support.PlateSimple, new(0.6), new(0.6), new(0.001), new(70e9), new(5), 9)).Verdict);

    [Fact]
    public void A_panel_without_mass_has_no_frequency() =>
        Assert.Null(PanelBending.Run(new(Support.PlateSimple, new(0.3), new(0.3), new(0.001), new(70e9), default, 9)).Find("fn"));

    private static void Close(double expected, double actual) => Assert.Equal(1, actual / expected, 1e-9);
}
