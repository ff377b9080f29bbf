using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Reference.Traffic;

/// <summary>Frames, codes and positions published in "The 1090 megahertz riddle" (299a40cc, read), each recomputed by a second implementation outside the project.</summary>
public sealed class ModeSTests
{
    [Theory]
    [InlineData("8D4840D6202CC371C32CE0576098", "000000", Verdict.Holds)]
    [InlineData("8D406B902015A678D4D220AA4BDA", "000000", Verdict.Holds)]
    [InlineData("8D40621D58C382D690C8AC2863A7", "000000", Verdict.Holds)]
    [InlineData("8D40621D58C386435CC412692AD6", "000000", Verdict.Holds)]
    [InlineData("8D485020994409940838175B284F", "000000", Verdict.Holds)]
    [InlineData("8DA05F219B06B6AF189400CBC33F", "000000", Verdict.Holds)]
    [InlineData("8D451DBD9905B5018004005979C5", "000000", Verdict.Holds)]
    [InlineData("8D4CA251204994B1C36E60A5343D", "000010", Verdict.Fails)] // disturbed on purpose in the book: A5342D is right
    [InlineData("8D4CA251204994B1C36E60A5342D", "000000", Verdict.Holds)]
    [InlineData("5D484FDEA248F5", "000016", Verdict.Holds)] // all-call reply to interrogator code 22
    [InlineData("A0001838CA380031440000F24177", "3C6DD0", Verdict.Holds)]
    [InlineData("2A00516D492B80", "510AF9", Verdict.Holds)]
    [InlineData("2000171806A983", "4CA7E8", Verdict.Holds)]
    public void Remainder_of_a_frame(string frame, string remainder, Verdict verdict)
    {
        var sheet = Parity24.Run(new(frame));
        Assert.Equal(remainder, Word(sheet, "remainder"));
        Assert.Equal(verdict, sheet.Verdict);
    }

    [Theory]
    [InlineData("8D4840D6202CC371C32CE0", "576098")]
    [InlineData("5D484FDE", "A248E3")]
    [InlineData("A0001838CA380031440000", "CE2CA7")]
    public void Parity_of_data(string data, string parity) => Assert.Equal(parity, Word(Parity24.Run(new(data)), "parity"));

    [Theory]
    [InlineData("8D4840D6202CC371C32CE0576098", "4840D6")]
    [InlineData("5D484FDEA248F5", "484FDE")]
    [InlineData("A0001838CA380031440000F24177", "3C6DD0")]
    public void Address_of_a_frame(string frame, string address)
    {
        Assert.Equal(address, Word(Parity24.Run(new(frame)), "aircraft"));
        Assert.Equal(Verdict.Holds, Parity24.Run(new(frame, address)).Verdict);
        Assert.Equal(Verdict.Fails, Parity24.Run(new(frame, "ABCDEF")).Verdict);
    }

    // Syndromes of one disturbed bit (computed); equal for any frame of 112 bits.
    [Theory]
    [InlineData(1, 0x3935EA)]
    [InlineData(2, 0x1C9AF5)]
    [InlineData(41, 0x91C77F)]
    [InlineData(88, 0xFFF409)]
    [InlineData(89, 0x800000)]
    [InlineData(112, 0x000001)]
    public void Syndrome_of_one_disturbed_bit(int bit, int syndrome)
    {
        var frame = Convert.FromHexString("8D4840D6202CC371C32CE0576098");
        frame[(bit - 1) / 8] ^= (byte)(0x80 >> ((bit - 1) % 8));
        Assert.Equal(syndrome, ModeSParity.Remainder(frame));
    }

    [Theory]
    [InlineData(LatestFrame.Even, 52.2572021484375, 3.91937255859375)]
    [InlineData(LatestFrame.Odd, 52.26578017412606, 3.938912527901786)] // computed
    public void Position_from_a_pair(LatestFrame latest, double latitude, double longitude)
    {
        var sheet = PositionDecode.Run(new(93000, 51372, 74158, 50194, latest));
        Assert.Equal(latitude, sheet["lat"].Value, 1e-12);
        Assert.Equal(longitude, sheet["lon"].Value, 1e-12);
        Assert.Equal(36, sheet["NL"].Value);
        Assert.Equal(8, sheet["j"].Value);
    }

    [Fact]
    public void Position_from_one_frame_near_a_known_place()
    {
        var sheet = PositionDecode.Run(new(93000, 51372, ReferenceLatitude: Angle.Of(52.258, "°"), ReferenceLongitude: Angle.Of(3.918, "°")));
        Assert.Equal(52.2572021484375, sheet["latn"].Value, 1e-12);
        Assert.Equal(3.91937255859375, sheet["lonn"].Value, 1e-12);
    }

    // Transition latitudes computed from the defining formula; the first is the widely printed 10.47047130.
    [Theory]
    [InlineData(59, 10.47047130)]
    [InlineData(58, 14.82817437)]
    [InlineData(57, 18.18626357)]
    [InlineData(50, 33.53993436)]
    [InlineData(40, 48.16039128)]
    [InlineData(36, 53.09516153)]
    [InlineData(30, 59.95459277)]
    [InlineData(20, 70.45451075)]
    [InlineData(10, 80.24923213)]
    [InlineData(5, 84.89166191)]
    [InlineData(4, 85.75541621)]
    [InlineData(3, 86.53536998)]
    [InlineData(2, 87.0)]
    public void Zones_of_longitude_change_at_their_latitude(int zones, double latitude)
    {
        Assert.Equal(zones, Cpr.LongitudeZones(latitude - 1e-8));
        Assert.Equal(zones - 1, Cpr.LongitudeZones(latitude + 1e-8));
        Assert.Equal(zones, Cpr.LongitudeZones(-latitude + 1e-8));
    }

    // Velocity squitters of the book (read); its arctangent line prints −9 and −160, its results use −8 and −159.
    [Fact]
    public void Velocity_over_ground()
    {
        var sheet = VelocityDecode.Run(new("8D485020994409940838175B284F"));
        Assert.Equal([-8, -159, 159.2011, 182.8804, -832, 550], new[] { "Vx", "Vy", "V", "track", "VR", "dh" }.Select(x => Math.Round(sheet[x].Value, 4)));
        Assert.Equal("satellite navigation", Word(sheet, "source"));
        var other = VelocityDecode.Run(new("8D451DBD9905B5018004005979C5"));
        Assert.Equal(271.4, other["track"].Value, 0.05);
        Assert.Equal(436.1, other["V"].Value, 0.05);
        Assert.Equal(0, other["VR"].Value);
    }

    [Fact]
    public void Velocity_through_the_air()
    {
        var sheet = VelocityDecode.Run(new("9B06B6AF189400"));
        Assert.Equal(243.984375, sheet["heading"].Value, 1e-9);
        Assert.Equal(375, sheet["V"].Value, 1e-9);
        Assert.Equal(-2304, sheet["VR"].Value, 1e-9);
    }

    [Theory]
    [InlineData("8D485020994409940838175B284E")] // disturbed
    [InlineData("8D4840D6202CC371C32CE0576098")] // an identification
    [InlineData("99000000000000")] // subtype 1 that says nothing
    [InlineData("xyz")]
    public void No_velocity_cannot_be_told(string frame) => Assert.Equal(Verdict.CannotTell, VelocityDecode.Run(new(frame)).Verdict);

    // The book (read): register 44 over the parity DD33AA gives 9933AA. The frame is made to leave that remainder.
    [Fact]
    public void A_register_lies_over_the_parity()
    {
        var data = Convert.FromHexString("A0001838CA380031440000");
        var parity = Convert.ToInt32(Word(Parity24.Run(new(Convert.ToHexString(data))), "parity"), 16) ^ 0x9933AA;
        var frame = Convert.ToHexString(data) + parity.ToString("X6", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal("DD33AA", Word(Parity24.Run(new(frame, Register: "44")), "aircraft"));
        Assert.Equal("9933AA", Word(Parity24.Run(new(frame)), "aircraft"));
    }

    // 14 CFR 43 appendix F (a), (b), (d), (e) (2014 annual edition and a national copy, read; the floors of class A from memory), both sides of each.
    [Theory]
    [InlineData(TransponderKind.ModeACHigh, 1092.9, 200, 1, 90, 20, Verdict.Holds)]
    [InlineData(TransponderKind.ModeACHigh, 1093.1, 200, 1, 90, 20, Verdict.Fails)]
    [InlineData(TransponderKind.ModeSLow, 1087.1, 71, 1, 90, 20, Verdict.Holds)]
    [InlineData(TransponderKind.ModeSHigh, 1090.9, 200, 1, 90, 20, Verdict.Holds)]
    [InlineData(TransponderKind.ModeSHigh, 1091.1, 200, 1, 90, 20, Verdict.Fails)]
    [InlineData(TransponderKind.ModeSHigh, 1090, 125, 1, 90, 20, Verdict.Fails)] // 20.97 dBW: 125 W as printed, 21.0 dBW is 125.9 W
    [InlineData(TransponderKind.ModeSHigh, 1090, 126, 1, 90, 20, Verdict.Holds)]
    [InlineData(TransponderKind.ModeSLow, 1090, 70, 1, 90, 20, Verdict.Fails)] // 18.45 dBW
    [InlineData(TransponderKind.ModeSHigh, 1090, 501, 1, 90, 20, Verdict.Holds)]
    [InlineData(TransponderKind.ModeSHigh, 1090, 502, 1, 90, 20, Verdict.Fails)]
    [InlineData(TransponderKind.ModeSHigh, 1090, 200, 1.1, 90, 20, Verdict.Fails)]
    [InlineData(TransponderKind.ModeSHigh, 1090, 200, 1, 89, 20, Verdict.Fails)]
    [InlineData(TransponderKind.ModeSHigh, 1090, 200, 1, 90, 19.9, Verdict.Fails)]
    public void Limits_of_the_two_year_test(TransponderKind kind, double megahertz, double watts, double equal, double weak, double diversity, Verdict verdict) => Assert.Equal(
        verdict, TransponderLimits.Run(new(kind, Frequency.Of(megahertz, "MHz"), Wattage.Of(watts, "W"), Fraction.Of(equal, "%"), Fraction.Of(weak, "%"), diversity)).Verdict);

    // Squawks: 0356 read in the book; 5502, 1000 and 0635 read in unit tests of a public decoder; pulse lists computed.
    [Theory]
    [InlineData("1200", "0x0808", "A1 B2")]
    [InlineData("7500", "0x0AA2", "A1 A2 A4 B1 B4")]
    [InlineData("7600", "0x0A8A", "A1 A2 A4 B2 B4")]
    [InlineData("7700", "0x0AAA", "A1 A2 A4 B1 B2 B4")]
    [InlineData("7777", "0x1FBF", "A1 A2 A4 B1 B2 B4 C1 C2 C4 D1 D2 D4")]
    [InlineData("0000", "0x0000", "")]
    [InlineData("0356", "0x112D", "B1 B2 C1 C4 D2 D4")]
    [InlineData("4321", "0x04B8", "A4 B1 B2 C2 D1")]
    [InlineData("5502", "0x08A6", "A1 A4 B1 B4 D2")]
    [InlineData("0635", "0x141B", "B2 B4 C1 C2 D1 D4")]
    [InlineData("1000", "0x0800", "A1")]
    public void Pulses_of_a_squawk(string code, string field, string pulses)
    {
        Assert.Equal(field, Word(Squawk.Run(new(code)), "ID"));
        Assert.Equal(pulses, string.Join(' ', ModeACode.Pulses(ModeACode.Read(code)!.Value)));
        Assert.Equal(code, Word(Squawk.Run(new(Field: field)), "squawk"));
    }

    [Theory]
    [InlineData("0x116D", "0356")] // as sent in 2A00516D492B80, X pulse set
    [InlineData("0x08A6", "5502")] // 2214
    [InlineData("0x0800", "1000")] // 2048
    [InlineData("0x141B", "0635")] // 5147
    public void Squawk_of_a_field(string field, string code) => Assert.Equal(code, Word(Squawk.Run(new(Field: field)), "squawk"));

    // ICAO Annex 10 Vol IV 3.1.1.6.2 (read): multiples of 1.45 µs. A training text prints 10.5 µs for X: a misprint of 10.15.
    [Fact]
    public void Pulses_stand_at_multiples_of_1_45_microseconds()
    {
        Assert.Equal(Enumerable.Range(1, 13).Select(i => Math.Round(1.45 * i, 2)), ModeACode.Sent.Select(p => p.Microseconds));
        Assert.Equal(10.15, ModeACode.Sent.Single(p => p.Name == "X").Microseconds);
    }

    // 38,000 ft (0xC38) and 36,000 ft (0x1718) read in the book, the others computed.
    [Theory]
    [InlineData(-1000, 0x0010, 0x010)]
    [InlineData(0, 0x0098, 0x058)]
    [InlineData(25, 0x0099, 0x059)]
    [InlineData(1000, 0x0130, 0x0B0)]
    [InlineData(5000, 0x03B0, 0x1F0)]
    [InlineData(12500, 0x083C, 0x43C)]
    [InlineData(36000, 0x1718, 0xB98)]
    [InlineData(38000, 0x1838, 0xC38)]
    [InlineData(50175, 0x1FBF, 0xFFF)]
    public void Twenty_five_foot_code(int feet, int field13, int field12)
    {
        Assert.Equal(field12, AltitudeEncoding.Field12(feet));
        Assert.Equal(field13, AltitudeEncoding.Field13(field12));
        Assert.Equal(feet, AltitudeEncoding.FromField13(field13));
    }

    private static string? Word(Sheet sheet, string symbol) => sheet.Given.Single(g => g.Symbol == symbol).Value.Words;
}
