using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Reference.Traffic;

/// <summary>Printed example words of ARINC 429 part 1-17 (17 May 2004, with errata), attachment 6, tables 6-21 to 6-25 and 6-27 (read), re-encoded bit by bit outside the project.
/// The parity printed in 6-22, 6-23 and one of 6-27 is even: misprints.</summary>
public sealed class BusWordTests
{
    private const int Intruder3 = 3, Intruder5 = 5;

    // Label, value, range, bits, rest, SDI, word. The rest holds sensitivity level or display code and intruder number.
    [Theory]
    [InlineData("130", WordForm.BinaryUnsigned, 5.25, 128, 11, (2 << 5) | Intruder5, 0, 0x6151141A)] // 6-21
    [InlineData("131", WordForm.Binary, 2500, 12800, 7, Intruder5, 1, 0xE320159A)] // 6-22
    [InlineData("132", WordForm.Binary, 0, 180, 10, 1, 0, 0x6000045A)] // 6-23
    [InlineData("203", WordForm.Binary, 21059, 131072, 17, 1, 1, 0x62921DC1)] // 6-24
    [InlineData("203", WordForm.Binary, 45000, 131072, 17, 0, 0, 0xE57E40C1)] // 6-27 from here
    [InlineData("102", WordForm.Binary, 41000, 65536, 16, 0, 0, 0xEA028042)]
    [InlineData("103", WordForm.Binary, 423, 512, 11, 0, 0, 0x6D3800C2)]
    [InlineData("104", WordForm.Binary, -2200, 16384, 10, 0, 0, 0xFDD80022)]
    [InlineData("164", WordForm.Binary, 2450, 8192, 16, 0, 0, 0x64C9002E)]
    [InlineData("206", WordForm.Binary, 425, 1024, 14, 0, 0, 0xE6A40061)]
    [InlineData("210", WordForm.Binary, 565, 2048, 15, 0, 0, 0x646A0011)]
    [InlineData("212", WordForm.Binary, -15250, 32768, 11, 0, 0, 0x788E0051)]
    [InlineData("312", WordForm.Binary, 650, 4096, 15, 0, 0, 0xE28A0053)]
    [InlineData("130", WordForm.BinaryUnsigned, 5.0, 128, 11, Intruder3, 0, 0x61400C1A)] // computed from here
    [InlineData("131", WordForm.Binary, 1100, 12800, 7, (2 << 9) | Intruder3, 0, 0xE1700C9A)]
    [InlineData("131", WordForm.Binary, -900, 12800, 7, Intruder3, 0, 0x7EE00C9A)]
    [InlineData("132", WordForm.Binary, -45, 180, 10, (1 << 5) | Intruder3, 0, 0xFC008C5A)]
    [InlineData("132", WordForm.Binary, 315, 180, 10, (1 << 5) | Intruder3, 0, 0xFC008C5A)]
    [InlineData("132", WordForm.Binary, 90, 180, 10, (3 << 5) | Intruder3, 0, 0x68018C5A)]
    [InlineData("203", WordForm.Binary, 5000, 131072, 17, 0, 0, 0xE09C40C1)]
    [InlineData("203", WordForm.Binary, -1000, 131072, 17, 0, 0, 0x7FE0C0C1)]
    public void Binary_word(string label, WordForm form, double value, double range, int bits, int rest, int sdi, uint word)
    {
        Assert.Equal(Arinc429.Text(word), Encoded(new(label, form, value, Range: range, Bits: bits, Rest: rest, Sdi: sdi)));
        var sheet = BusWord.Run(new(label, form, Word: Arinc429.Text(word), Range: range, Bits: bits));
        Assert.Equal(Verdict.Holds, sheet.Verdict);
        Assert.Equal(value > 180 && range == 180 ? value - 360 : value, sheet["carried"].Value, range / Math.Pow(2, bits) / 2);
    }

    // Resolutions printed in the label tables of attachment 2 (read): range over two to the number of bits.
    [Theory]
    [InlineData(WordForm.BinaryUnsigned, 128, 11, 0.0625)] // 130 intruder range, nmi
    [InlineData(WordForm.Binary, 12800, 7, 100)] // 131 relative altitude, ft
    [InlineData(WordForm.Binary, 180, 10, 0.17578125)] // 132 bearing, degrees
    [InlineData(WordForm.Binary, 131072, 17, 1)] // 203, 204 altitude, ft
    [InlineData(WordForm.Binary, 8192, 16, 0.125)] // 164 radio height, ft
    [InlineData(WordForm.Binary, 1024, 14, 0.0625)] // 206 airspeed, kt
    [InlineData(WordForm.Binary, 2048, 15, 0.0625)] // 210 true airspeed, kt
    [InlineData(WordForm.Binary, 32768, 11, 16)] // 212 altitude rate, ft/min
    [InlineData(WordForm.Binary, 4096, 15, 0.125)] // 312 ground speed, kt
    [InlineData(WordForm.Binary, 180, 15, 0.0055)] // 314, 320 heading, degrees
    [InlineData(WordForm.Binary, 65536, 16, 1)] // 102 selected altitude, ft
    public void Step_of_a_label(WordForm form, double range, int bits, double step) => Assert.Equal(step, BusField.Step(form, range, bits), 1e-5);

    [Theory]
    [InlineData("201", 257.86, 0.01, 0x095E1881)]
    [InlineData("025", 41000, 1, 0x104000A8)]
    [InlineData("165", 2450.5, 0.1, 0x091414AE)]
    [InlineData("235", 29.92, 0.001, 0x0A6480B9)]
    [InlineData("001", 2750.4, 0.1, 0x89D41080)]
    [InlineData("020", -2200, 0.1, 0x68800008)]
    [InlineData("232", -15250, 1, 0xE5494059)]
    public void Decimal_word(string label, double value, double resolution, uint word)
    {
        Assert.Equal(Arinc429.Text(word), Encoded(new(label, WordForm.Decimal, value, Resolution: resolution)));
        Assert.Equal(value, BusWord.Run(new(label, WordForm.Decimal, Word: Arinc429.Text(word), Resolution: resolution))["carried"].Value, 1e-9);
    }

    [Theory]
    [InlineData("131", 0x6320159A, 12800, 7)] // 6-22 as printed
    [InlineData("132", 0xE000045A, 180, 10)] // 6-23 as printed
    [InlineData("203", 0x657E40C1, 131072, 17)] // 6-27, label 203 as printed
    public void Words_printed_with_even_parity_are_rejected(string label, uint printed, double range, int bits)
    {
        Assert.False(Arinc429.ParityIsOdd(printed));
        Assert.Equal(Verdict.Fails, BusWord.Run(new(label, WordForm.Binary, Word: Arinc429.Text(printed), Range: range, Bits: bits)).Verdict);
    }

    // Bearing not computed: SSM 01, a traffic advisory, intruder 3 (computed).
    [Fact]
    public void A_word_without_computed_data_carries_no_value()
    {
        Assert.Equal("0xA0008C5A", Encoded(new("132", WordForm.Binary, 0, Range: 180, Bits: 10, Rest: (1 << 5) | Intruder3, Ssm: 1)));
        Assert.Equal(Verdict.Caution, BusWord.Run(new("132", WordForm.Binary, Word: "0xA0008C5A", Range: 180, Bits: 10)).Verdict);
    }

    // 203 octal is 10 000 011, sent first digit first: bits 1 to 8 are 1 0 0 0 0 0 1 1, the low byte 0xC1.
    [Fact]
    public void The_label_is_sent_first_digit_first() => Assert.Equal(0xC1u, Arinc429.Word(131, 0, 0, 0) & 0xFF);

    private static string? Encoded(BusWordInput input) => BusWord.Run(input).Given.Single(g => g.Symbol == "W").Value.Words;
}
