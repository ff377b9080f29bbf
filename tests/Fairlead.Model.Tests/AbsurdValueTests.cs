using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;

namespace Fairlead.Tests.Model;

/// <summary>Values that no aircraft has are problems where they stand, and never reach a calculation.</summary>
public sealed class AbsurdValueTests
{
    // What may lie on the negative side: coordinates, corrections and gains. (Temperatures count from absolute zero.)
    private static readonly string[] Signed =
    [
        "FuselageSection.fs", "FuselageSection.bottom", "FuselageSection.top", "Place.fs", "Place.bl", "Place.wl", "WeighingRecord.fs", "WeighingRecord.bl", "WeighingRecord.wl", "WeighingPoint.fs", "WeighingPoint.bl", "WeighingAdjustment.mass", "WeighingAdjustment.fs",
        "WeighingAdjustment.bl", "Envelope.lateral-left", "Envelope.lateral-right", "EnvelopePoint.fs", "MeanChord.leading-edge", "LoadingStation.fs", "LoadingStation.bl", "LoadingStation.wl", "Tank.fs",
        "Tank.bl", "MountingHole.x", "MountingHole.y", "AntennaPart.gain", "RadioPort.damage", "RadioPort.desense", "RadioPort.threshold", "RampCheck.level", "RampCheck.test-gain",
        "ExpectedReplies.altitude", "ExpectedReplies.latitude", "ExpectedReplies.longitude", "Scenario.altitude", "SimulatedTarget.bearing", "SimulatedTarget.closing", "SimulatedTarget.above", "SimulatedTarget.climb",
    ];

    [Theory]
    [InlineData("NaN")]
    [InlineData(".nan")]
    [InlineData("NaN ft")]
    [InlineData("inf ft")]
    [InlineData(".inf")]
    [InlineData("-Infinity ft")]
    [InlineData("∞ ft")]
    [InlineData("1e308 ft")]
    [InlineData("1e999 ft")]
    [InlineData("-1 ft")]
    [InlineData("-1e-9 ft")]
    [InlineData("12 ft ft")]
    [InlineData("12 in 3 ft")]
    [InlineData("12 A A")]
    [InlineData("1,5 m")]
    [InlineData("1.000,5 m")]
    [InlineData("1_000 m")]
    [InlineData("--5 m")]
    [InlineData("5 5 m")]
    [InlineData("0x10 m")]
    [InlineData("٣ m")]
    [InlineData("１２ m")]
    [InlineData("12 M")]
    [InlineData("ft")]
    [InlineData("yes")]
    [InlineData("99999999999999999999999999 m")]
    public void An_absurd_altitude_is_one_problem_where_it_stands(string value)
    {
        var result = Jobs.With("aircraft.yaml", Jobs.Replaced(Jobs.Text("aircraft.yaml"), "ceiling: 18000 ft", "ceiling: " + value));
        var problem = Assert.Single(result.Problems);
        Assert.Equal(new Location("aircraft.yaml", 10, 10), problem.Location);
        Assert.True(problem.Code is "bad-value" or "out-of-range", problem.ToString());
        Assert.Null(result.Job);
    }

    [Theory]
    [InlineData("99999999999999999999")]
    [InlineData("2147483648")]
    [InlineData("-1")]
    [InlineData("6.0")]
    [InlineData("6e0")]
    [InlineData("0x6")]
    [InlineData("1,000")]
    public void An_absurd_count_is_one_problem_where_it_stands(string value)
    {
        var problem = Assert.Single(Jobs.With("aircraft.yaml", Jobs.Replaced(Jobs.Text("aircraft.yaml"), "    fasteners: 6\n", $"    fasteners: {value}\n")).Problems);
        Assert.Equal("aircraft.yaml:26:16", problem.Location.ToString());
    }

    [Fact]
    public void Minus_nought_is_nought()
    {
        var job = Jobs.With("aircraft.yaml", Jobs.Replaced(Jobs.Text("aircraft.yaml"), "compass: { fs: 55 in, bl: 0 in,", "compass: { fs: 55 in, bl: -0 in,")).Job!;
        Assert.False(double.IsNegative(job.Aircraft.Compass!.Bl.Si));
        Assert.Equal(Jobs.Load(Jobs.Starting()).Job, job);
    }

    public static TheoryData<string> Numbers =>
        [.. Records.All.SelectMany(r => RecordShape.Of(r).Fields.Where(f => IsNumber(Records.Item(f.Type))).Select(f => $"{r.Name}.{f.Key}"))];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Every_number_of_a_job_has_a_sensible_range(string name)
    {
        var field = FieldOf(name);
        Assert.False(ScalarReader.OutOfRange(field, Of(field.Type, Middle(field))), "the middle of its range is refused");
        var absurd = field.Type == typeof(int) ? int.MaxValue : 1e15;
        Assert.True(ScalarReader.OutOfRange(field, Of(field.Type, absurd)), "any number is taken");
        Assert.True(ScalarReader.OutOfRange(field, Of(field.Type, -absurd)), "any number below nought is taken");
        Assert.Equal(Signed.Contains(name), !ScalarReader.OutOfRange(field, Of(field.Type, -1)));
    }

    [Fact]
    public void The_list_of_signed_values_names_no_other() => Assert.Empty(Signed.Except(Numbers.Select(n => n.Data), StringComparer.Ordinal));

    private static bool IsNumber(Type type) => type == typeof(int) || type == typeof(double) || RecordShape.IsQuantity(type);

    private static Field FieldOf(string name)
    {
        var parts = name.Split('.');
        var field = RecordShape.Of(Records.All.Single(r => r.Name == parts[0])).Fields.Single(f => f.Key == parts[1]);
        return field with { Type = Records.Item(field.Type) };
    }

    private static double Middle(Field field)
    {
        var dimension = RecordShape.IsQuantity(field.Type) ? RecordShape.DimensionOf(field.Type) : Dimension.Number;
        Assert.True(QuantityReader.TryRead(dimension, field.Min, out var min, out _), $"'{field.Min}' is no least value");
        Assert.True(QuantityReader.TryRead(dimension, field.Max, out var max, out _), $"'{field.Max}' is no greatest value");
        Assert.True(min < max);
        return (min + max) / 2;
    }

    private static object Of(Type type, double si) => type == typeof(int) ? (int)si : type == typeof(double) ? si : Activator.CreateInstance(type, si)!;
}
