using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>AC 43.13-1B CHG 1 table 11-9 (page 11-23, read in two copies) and what other documents say of the same wires.</summary>
public sealed class WireTableTests
{
    [Theory]
    [InlineData("24", 2.5, 4, 5, 28.40, 475)]
    [InlineData("22", 3, 5, 6, 16.20, 755)]
    [InlineData("20", 4, 7, 9, 9.88, 1216)]
    [InlineData("18", 6, 9, 12, 6.23, 1900)]
    [InlineData("16", 7, 11, 14, 4.81, 2426)]
    [InlineData("14", 10, 14, 18, 3.06, 3831)]
    [InlineData("12", 13, 19, 25, 2.02, 5874)]
    [InlineData("10", 17, 26, 32, 1.26, 9354)]
    [InlineData("8", 38, 57, 71, 0.70, 16983)]
    [InlineData("6", 50, 76, 97, 0.44, 26818)]
    [InlineData("4", 68, 103, 133, 0.28, 42615)]
    [InlineData("2", 95, 141, 179, 0.18, 66500)]
    [InlineData("1", 113, 166, 210, 0.15, 81700)]
    [InlineData("0", 128, 192, 243, 0.12, 104500)]
    [InlineData("00", 147, 222, 285, 0.09, 133000)]
    [InlineData("000", 172, 262, 335, 0.07, 166500)]
    [InlineData("0000", 204, 310, 395, 0.06, 210900)]
    public void Table_11_9_is_reproduced_at_its_own_conditions(string gauge, double at105, double at150, double at200, double ohmPer1000Ft, double circularMils)
    {
        var size = Gauge.Read(gauge);
        var wires = size.Number >= 10 ? 33 : 9;
        foreach (var (rating, printed) in new[] { (105, at105), (150, at150), (200, at200) })
        {
            var sheet = WireCurrent.Run(new(size, Temperature.Of(rating, "°C"), Temperature.Of(70, "°C"), Length.Of(60000, "ft"), wires, Fraction.Of(20, "%")));
            Assert.Equal(printed, sheet["Imax"].Value, printed * 1e-9);
        }

        var resistance = WireResistance.Run(new(size, Temperature.Of(20, "°C"), Length.Of(1000, "ft")));
        Assert.Equal(ohmPer1000Ft, resistance["R"].Si, 1e-9);
        Assert.Equal(circularMils, WireTable.Area(size, Conductor.Copper).Value.In("cmil"), 1e-6);
    }

    // Strand counts: table 11-13 (read); strand diameters: the stranding that reproduces the area, by arithmetic.
    [Theory]
    [InlineData("24", 19, 5.0)]
    [InlineData("22", 19, 6.3)]
    [InlineData("20", 19, 8.0)]
    [InlineData("18", 19, 10.0)]
    [InlineData("16", 19, 11.3)]
    [InlineData("14", 19, 14.2)]
    [InlineData("12", 37, 12.6)]
    [InlineData("10", 37, 15.9)]
    [InlineData("8", 133, 11.3)]
    [InlineData("6", 133, 14.2)]
    [InlineData("4", 133, 17.9)]
    [InlineData("2", 665, 10)]
    [InlineData("1", 817, 10)]
    [InlineData("0", 1045, 10)]
    [InlineData("00", 1330, 10)]
    [InlineData("000", 1665, 10)]
    [InlineData("0000", 2109, 10)]
    public void The_area_is_that_of_the_strands(string gauge, int strands, double strandMils) =>
        Assert.Equal(strands * strandMils * strandMils, WireTable.Area(Gauge.Read(gauge), Conductor.Copper).Value.In("cmil"), 1.1);

    // FAA powerplant handbook tables 4-3 and 4-4, read in a summary: 100 ft of No. 18 carrying 10 A drops 6.23 V.
    [Fact]
    public void One_hundred_feet_of_size_18_at_10_A_drop_6_23_V()
    {
        var resistance = WireResistance.Run(new(Gauge.Read("18"), Temperature.Of(20, "°C"), Length.Of(100, "ft")))["R"].Si;
        Assert.Equal(6.23, resistance * 10, 0.005);
    }

    // AC 43.13-1B 11-66 d, the factor by which a resistance grows from 20 °C: arithmetic of (234.5 + T)/254.5.
    [Theory]
    [InlineData(50, 1.1179)]
    [InlineData(70, 1.1965)]
    [InlineData(105, 1.3340)]
    [InlineData(150, 1.5108)]
    [InlineData(160, 1.5501)]
    [InlineData(182, 1.6365)]
    [InlineData(200, 1.7073)]
    public void Copper_grows_in_resistance_by_the_circulars_formula(double celsius, double factor) =>
        Assert.Equal(factor, WireTable.HotFactor(Conductor.Copper, Temperature.Of(celsius, "°C")), 5e-5);

    // IEC 60287-1-1 (read in a quotation): α20 = 0.00393 /K copper, 0.00403 /K aluminium.
    [Fact]
    public void The_circular_agrees_with_IEC_60287_on_copper_and_not_on_aluminium()
    {
        var at120 = Temperature.Of(120, "°C");
        Assert.Equal(1 + (0.00393 * 100), WireTable.HotFactor(Conductor.Copper, at120), 2e-4);
        Assert.NotEqual(1 + (0.00403 * 100), WireTable.HotFactor(Conductor.Aluminium, at120), 1e-2);
        var sheet = WireResistance.Run(new(Gauge.Read("4"), at120, Length.Of(10, "ft"), Conductor.Aluminium));
        Assert.Equal(Verdict.Caution, sheet.Verdict);
    }

    // Stranded wire chart (read): copper weight per 1000 ft of 19-strand conductors.
    [Theory]
    [InlineData("20", 3.68)]
    [InlineData("18", 5.75)]
    [InlineData("16", 7.35)]
    public void Bare_copper_weighs_what_a_stranded_wire_chart_prints(string gauge, double poundsPer1000Ft)
    {
        var sheet = WireMass.Run(new(Gauge.Read(gauge), LinearMass.Of(10, "lb/1000ft"), Length.Of(1000, "ft")));
        Assert.Equal(poundsPer1000Ft, sheet["mCu"].Value, 0.012);
    }

    // AC 43.13-1B table 11-13 (page 11-62, read).
    [Theory]
    [InlineData("24", 2, 0)]
    [InlineData("14", 2, 0)]
    [InlineData("12", 4, 0)]
    [InlineData("10", 4, 0)]
    [InlineData("8", 6, 6)]
    [InlineData("4", 6, 6)]
    [InlineData("2", 6, 6)]
    [InlineData("00", 6, 6)]
    [InlineData("000", 6, 6)]
    [InlineData("0000", 6, 6)]
    public void Table_11_13_allows_so_many_damaged_strands_and_no_more(string gauge, int nicked, int broken)
    {
        var size = Gauge.Read(gauge);
        Assert.Equal(Verdict.Holds, StrandDamage.Run(new(size, nicked, broken)).Verdict);
        Assert.Equal(Verdict.Fails, StrandDamage.Run(new(size, nicked + 1, broken)).Verdict);
        Assert.Equal(Verdict.Fails, StrandDamage.Run(new(size, nicked, broken + 1)).Verdict);
        Assert.Equal(Verdict.Fails, StrandDamage.Run(new(size, 1, 0, Conductor.Aluminium)).Verdict);
    }
}
