using Fairlead.Calculations;
using Fairlead.Calculations.Environment;

namespace Fairlead.Tests.Reference.Environment;

public sealed class CompassTests
{
    // Handbook of Magnetic Compass Adjustment, par. 501: deviations read in the document, the coefficients it prints from memory; they also
    // follow by hand from its formulas.
    [Fact]
    public void The_handbooks_deviation_curve_has_its_coefficients()
    {
        var sheet = Swing([10.5, 20.0, 11.5, -1.2, -5.5, -8.0, -12.5, -6.8]);
        Assert.Equal(1.0, sheet["A"].Value, 0.05);
        Assert.Equal(12.0, sheet["B"].Value, 0.05);
        Assert.Equal(8.0, sheet["C"].Value, 0.05);
        Assert.Equal(5.0, sheet["D"].Value, 0.05);
        Assert.Equal(1.5, sheet["E"].Value, 0.05);
    }

    // Coefficient D as an aviation dictionary prints it (read) lacks a pair of brackets: 1/4 (NE + SW) − (NW + SE). The curve above tells.
    [Fact]
    public void The_formula_with_the_missing_brackets_is_a_misprint()
    {
        const double printed = ((20.0 - 8.0) / 4) - (-6.8 - 1.2);
        Assert.Equal(11.0, printed, 1e-9);
        Assert.Equal(5.0, Swing([10.5, 20.0, 11.5, -1.2, -5.5, -8.0, -12.5, -6.8])["D"].Value, 1e-9);
    }

    // Worked sheets of an aviation course on compensation (read in a secondary copy): correction swings on N, E, S, W.
    [Theory]
    [InlineData("359/3;91/85;178/170;267/265", -6, 2)]
    [InlineData("355/358;92/92;184/183;272/266", -2, -3)]
    [InlineData("2/355;88/84;182/185;268/272", 5, 4)]
    public void The_course_sheets_give_the_printed_coefficients(string swing, double c, double b)
    {
        var sheet = CompassDeviation.Run(new(Rows(swing), CompassCard.Part25));
        Assert.Equal(c, sheet["C"].Value, 1e-9);
        Assert.Equal(b, sheet["B"].Value, 1e-9);
    }

    // The check swings of the same sheets: coefficient A, found from the cardinal headings, printed 3 and 2.
    [Theory]
    [InlineData("317/316;0/358;47/42;93/89;135/134;179/177;225/220;273/269", 3)]
    [InlineData("318/316;1/0;49/47;92/89;137/135;182/181;229/227;276/273", 2)]
    public void The_check_swings_give_the_printed_coefficient_a(string swing, double a)
    {
        var rows = Rows(swing);
        var cardinal = rows.Where(r => r.Magnetic.In("°") % 90 is < 7 or > 83).ToSequence();
        Assert.Equal(a, CompassDeviation.Run(new(cardinal))["A"].Value, 1e-9);
        Assert.Equal(Verdict.Holds, CompassDeviation.Run(new(rows, CompassCard.Part25)).Verdict);
    }

    // 14 CFR 25.1327 (read), 23.1327 (read in a secondary copy): at most 10° on any heading.
    [Theory]
    [InlineData(10.0, Verdict.Holds)]
    [InlineData(-10.0, Verdict.Holds)]
    [InlineData(10.1, Verdict.Fails)]
    [InlineData(-10.1, Verdict.Fails)]
    public void Ten_degrees_on_any_heading_is_the_limit(double deviation, Verdict expected) =>
        Assert.Equal(expected, Swing([0, 0, 0, deviation, 0, 0, 0, 0]).Verdict);

    // 14 CFR 25.1547(d) (read): 45°; 23.1547 (from memory): 30°.
    [Theory]
    [InlineData(30, CompassCard.Part23, Verdict.Holds)]
    [InlineData(45, CompassCard.Part23, Verdict.Fails)]
    [InlineData(45, CompassCard.Part25, Verdict.Holds)]
    [InlineData(60, CompassCard.Part25, Verdict.Fails)]
    public void The_card_has_headings_close_enough(int step, CompassCard card, Verdict expected) =>
        Assert.Equal(expected, CompassDeviation.Run(new(Enumerable.Range(0, 360 / step).Select(i => new SwingRow(Degrees(i * step), Degrees(i * step))).ToSequence(), card)).Verdict);

    // RTCA DO-160 section 15, from memory: 1° at the compass-safe distance in 14.4 A/m. Falling with the cube, 1/8° at twice the distance.
    [Theory]
    [InlineData(0.3, 14.4, 1.0)]
    [InlineData(0.6, 14.4, 0.125)]
    [InlineData(0.6, 7.2, 0.25)]
    public void The_criterion_is_one_degree_and_falls_with_the_cube(double metres, double field, double degrees) =>
        Assert.Equal(degrees, CompassDistance.Run(new(new Length(metres), new Length(0.3), field))["phi"].Value, 1e-9);

    private static Sheet Swing(double[] deviations) => CompassDeviation.Run(new(
        deviations.Select((d, i) => new SwingRow(Degrees(45 * i), Degrees(((45 * i) - d + 360) % 360))).ToSequence(), CompassCard.Part25));

    private static Sequence<SwingRow> Rows(string text) => text.Split(';').Select(r => r.Split('/').Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture)).ToArray())
        .Select(p => new SwingRow(Degrees(p[0]), Degrees(p[1]))).ToSequence();

    private static Angle Degrees(double value) => Angle.Of(value, "°");
}
