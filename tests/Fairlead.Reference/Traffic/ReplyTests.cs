using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Reference.Traffic;

/// <summary>Frames and words that equipment must send: frames published in "The 1090 megahertz riddle" (299a40cc, read), and words laid out by ARINC 429 part 1-17,
/// attachment 6 (read), computed outside the project.</summary>
public sealed class ReplyTests
{
    [Fact]
    public void All_call_reply_to_interrogator_22() => Assert.Equal("5D484FDEA248F5", ModeSFrame.AllCall(0x484FDE, 5, 22));

    [Fact]
    public void Altitude_reply_at_36000_ft()
    {
        Assert.Equal("2000171806A983", ModeSFrame.Surveillance(4, 0x4CA7E8, 0x1718, 0));
        Assert.Equal("2000171806A983", Frame(ModeSReply.Run(new("4CA7E8", Length.Of(36000, "ft"))), "altitude reply, DF 4"));
    }

    [Theory]
    [InlineData(0x4840D6, "KLM1023", 0, "8D4840D6202CC371C32CE0576098")]
    [InlineData(0x406B90, "EZY85MH", 0, "8D406B902015A678D4D220AA4BDA")]
    public void Identification_squitter(int address, string flight, int category, string frame) => Assert.Equal(frame, ModeSFrame.Identification(address, 5, flight, category));

    // 38,000 ft; the position is that of the published pair, even and odd.
    [Theory]
    [InlineData(52.2572021484375, 3.91937255859375, false, "8D40621D58C382D690C8AC2863A7")]
    [InlineData(52.26578017412606, 3.938912527901786, true, "8D40621D58C386435CC412692AD6")]
    public void Position_squitter(double latitude, double longitude, bool odd, string frame)
    {
        var sheet = ModeSReply.Run(new("40621D", Length.Of(38000, "ft"), Latitude: Angle.Of(latitude, "°"), Longitude: Angle.Of(longitude, "°")));
        Assert.Equal(frame, Frame(sheet, odd ? "position squitter, DF 17, odd" : "position squitter, DF 17, even"));
    }

    // A law: what is sent is read back with the address it was sent for, whatever is set.
    [Theory]
    [InlineData("F00A31", 10000, "1200", false)]
    [InlineData("000001", -1000, "7777", true)]
    [InlineData("FFFFFE", 60000, "0356", true)]
    public void Every_frame_carries_its_address_and_content(string address, double feet, string squawk, bool ident)
    {
        var sheet = ModeSReply.Run(new(address, Length.Of(feet, "ft"), squawk, "X9FGS", Angle.Of(-33, "°"), Angle.Of(151, "°"), ident));
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.All(sheet.Tables.Single(t => t.Title == "Frames expected").Rows, row => Assert.Equal(Verdict.Holds, Parity24.Run(new(row[1].Words!, address)).Verdict));
        int Field(string frame) => Convert.ToInt32(frame[4..8], 16) & 0x1FFF;
        Assert.Equal((int)feet, AltitudeEncoding.FromField13(Field(Frame(sheet, "altitude reply, DF 4"))));
        Assert.Equal(squawk, ModeACode.Text(ModeACode.FromField(Field(Frame(sheet, "identity reply, DF 5")))));
    }

    [Theory]
    [InlineData("000000", null, null)]
    [InlineData("FFFFFF", null, null)]
    [InlineData("X9", null, null)]
    [InlineData("F00A31", "1280", null)]
    [InlineData("F00A31", null, "x9-fgs")]
    [InlineData("F00A31", null, "X9FGSABCD")]
    public void What_cannot_be_set_cannot_be_told(string address, string? squawk, string? flight) => Assert.Equal(Verdict.CannotTell, ModeSReply.Run(new(address, Squawk: squawk, Flight: flight)).Verdict);

    [Fact]
    public void Words_of_intruder_3()
    {
        Assert.Equal(0x61400C1Au, IntruderWords.Range(3, Length.Of(5, "nmi"), 0));
        Assert.Equal(0x6151141Au, IntruderWords.Range(5, Length.Of(5.25, "nmi"), 2)); // table 6-21 of the document
        Assert.Equal(0xE1700C9Au, IntruderWords.Altitude(3, Length.Of(1100, "ft"), Speed.Of(-600, "ft/min")));
        Assert.Equal(0x7EE00C9Au, IntruderWords.Altitude(3, Length.Of(-900, "ft"), default));
        Assert.Equal(0xFC008C5Au, IntruderWords.Bearing(3, Angle.Of(-45, "°"), 1));
        Assert.Equal(0x68018C5Au, IntruderWords.Bearing(3, Angle.Of(90, "°"), 3));
    }

    [Fact]
    public void A_word_that_cannot_carry_the_value_is_not_made_up()
    {
        Assert.Null(IntruderWords.Range(1, Length.Of(128, "nmi"), 0));
        Assert.NotNull(IntruderWords.Range(1, Length.Of(127.9375, "nmi"), 0));
        Assert.Null(IntruderWords.Altitude(1, Length.Of(12900, "ft"), default));
        Assert.Equal(1, Arinc429.Ssm(IntruderWords.Altitude(1, null, default)!.Value)); // no computed data
        Assert.Equal(IntruderWords.Bearing(1, Angle.Of(180, "°"), 0), IntruderWords.Bearing(1, Angle.Of(-180, "°"), 0));
    }

    // 10 nmi ahead, closing at 300 kt (computed): 88.612 s by modified and 90.000 s by plain time, level B.
    [Theory]
    [InlineData(AdvisoryKind.Traffic, 89.0, 0, Verdict.Caution)]
    [InlineData(AdvisoryKind.Traffic, 88.0, 0, Verdict.Fails)]
    [InlineData(AdvisoryKind.Traffic, 92.0, 0, Verdict.Fails)]
    [InlineData(AdvisoryKind.Traffic, 109.0, 20, Verdict.Caution)]
    [InlineData(AdvisoryKind.Resolution, null, 0, Verdict.Fails)]
    [InlineData(AdvisoryKind.None, null, 0, Verdict.Fails)]
    public void An_advisory_is_held_against_what_the_scenario_wants(AdvisoryKind expect, double? at, double appears, Verdict verdict)
    {
        var sheet = TrafficScenario.Run(Ahead(10) with { Expect = expect, ExpectAt = at is { } t ? Duration.Of(t, "s") : null, From = Duration.Of(appears, "s") });
        Assert.Equal(verdict, sheet.Verdict);
        Assert.Equal(Duration.Of(appears, "s").As("s"), sheet.Tables.Single(t => t.Title == "Expected on the display").Rows[0][0].Number);
    }

    [Fact]
    public void A_target_beyond_the_sensor_fails()
    {
        Assert.Equal(Verdict.Fails, TrafficScenario.Run(Ahead(10) with { SensorRange = Length.Of(9, "nmi") }).Verdict);
        Assert.Equal(Verdict.Fails, TrafficScenario.Run(Ahead(10) with { Climb = Speed.Of(6000, "ft/min"), SensorAltitude = Length.Of(10000, "ft") }).Verdict);
        Assert.Equal(Verdict.Caution, TrafficScenario.Run(Ahead(10) with { SensorRange = Length.Of(10, "nmi"), SensorAltitude = Length.Of(10000, "ft") }).Verdict);
    }

    private static TrafficScenarioInput Ahead(double miles) => new(Length.Of(miles, "nmi"), default, Speed.Of(300, "kt"), Angle.Of(180, "°"));

    private static string Frame(Sheet sheet, string what) => sheet.Tables.Single(t => t.Title == "Frames expected").Rows.Single(r => r[0].Words == what)[1].Words!;
}
