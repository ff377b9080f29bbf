using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Calculations.Traffic;

/// <summary>What is encoded decodes to itself, over the whole domain where that can be counted.</summary>
public sealed class CodeRoundTripTests
{
    [Fact]
    public void Every_altitude_has_one_code_and_a_step_of_100_ft_changes_one_pulse()
    {
        var codes = Enumerable.Range(AltitudeEncoding.Lowest, 1280).Select(AltitudeEncoding.Gillham).ToArray();
        Assert.Equal(1280, codes.Distinct().Count());
        Assert.Equal(Enumerable.Range(AltitudeEncoding.Lowest, 1280), codes.Select(c => AltitudeEncoding.FromGillham(c)!.Value));
        Assert.All(codes.Zip(codes.Skip(1)), pair => Assert.Equal(1, int.PopCount(pair.First ^ pair.Second)));
    }

    [Fact]
    public void Codes_of_no_altitude_are_known_as_such() =>
        Assert.Equal(4096 - 1280, Enumerable.Range(0, 4096).Count(c => AltitudeEncoding.FromGillham(c) is null));

    [Fact]
    public void Every_squawk_goes_to_its_field_and_back()
    {
        var fields = Enumerable.Range(0, 4096).Select(ModeACode.ToField).ToArray();
        Assert.Equal(4096, fields.Distinct().Count());
        Assert.Equal(Enumerable.Range(0, 4096), fields.Select(ModeACode.FromField));
        Assert.All(Enumerable.Range(0, 4096), c => Assert.Equal(c, ModeACode.Read(ModeACode.Text(c))));
        Assert.All(Enumerable.Range(0, 4096), c => Assert.Equal(int.PopCount(c), ModeACode.Pulses(c).Length));
    }

    [Fact]
    public void Every_25_ft_code_goes_to_its_altitude_and_back() => Assert.All(Enumerable.Range(0, 2048), n =>
    {
        var feet = (25 * n) - 1000;
        Assert.Equal(feet, AltitudeEncoding.FromField13(AltitudeEncoding.Field13(AltitudeEncoding.Field12(feet)!.Value)));
    });

    [Theory]
    [InlineData("7500")]
    [InlineData("7600")]
    [InlineData("7700")]
    public void Emergency_codes_are_never_without_a_caution(string code) => Assert.Equal(Verdict.Caution, Squawk.Run(new(code)).Verdict);

    [Theory]
    [InlineData("7800")]
    [InlineData("12345")]
    [InlineData("")]
    [InlineData("12a4")]
    public void What_is_no_code_is_said_to_be_none(string code)
    {
        Assert.Equal(Verdict.CannotTell, Squawk.Run(new(code)).Verdict);
        Assert.Equal(Verdict.CannotTell, AltitudeCode.Run(new(Code: code)).Verdict);
        Assert.Equal(Verdict.CannotTell, Parity24.Run(new(code + "x")).Verdict);
    }

    [Fact]
    public void Any_word_comes_apart_into_its_fields_and_together_again() => Gen.UInt.Sample(word =>
    {
        var again = Arinc429.Word(Arinc429.Label(word), Arinc429.Sdi(word), Arinc429.Data(word), Arinc429.Ssm(word));
        Assert.Equal(word & 0x7FFFFFFF, again & 0x7FFFFFFF);
        Assert.True(Arinc429.ParityIsOdd(again));
        Assert.Equal(Arinc429.ParityIsOdd(word), word == again);
    });

    [Fact]
    public void Any_one_bit_disturbed_in_a_word_is_seen_by_its_parity()
    {
        var inputs = from data in Gen.Int[0, 0x7FFFF] from label in Gen.Int[0, 255] from bit in Gen.Int[0, 31] select (data, label, bit);
        inputs.Sample(x => Assert.False(Arinc429.ParityIsOdd(Arinc429.Word(x.label, 0, x.data, 3) ^ (1u << x.bit))));
    }

    [Fact]
    public void Binary_values_come_back_to_half_a_step()
    {
        var inputs = from bits in Gen.Int[1, 18] from range in Gen.Double[1, 200000] from share in Gen.Double[-1, 1] select (bits, range, share);
        inputs.Sample(x =>
        {
            var step = BusField.Step(WordForm.Binary, x.range, x.bits);
            var value = x.share * (x.range - step);
            Assert.Equal(value, BusField.Decode(WordForm.Binary, BusField.Encode(WordForm.Binary, value, step, x.bits)!.Value, step, x.bits, false)!.Value, step * 0.5000001);
            var unsigned = Math.Abs(value);
            Assert.Equal(unsigned, BusField.Decode(WordForm.BinaryUnsigned, BusField.Encode(WordForm.BinaryUnsigned, unsigned, step, x.bits)!.Value, step, x.bits, false)!.Value, step * 0.5000001);
        });
    }

    [Fact]
    public void Decimal_digits_come_back_as_they_were() => Gen.Int[0, 79999].Sample(n =>
        Assert.Equal(n, BusField.Decode(WordForm.Decimal, BusField.Encode(WordForm.Decimal, n, 1, 0)!.Value, 1, 0, false)!.Value));

    [Fact]
    public void A_value_beyond_its_field_cannot_be_told()
    {
        Assert.Equal(Verdict.CannotTell, BusWord.Run(new("203", WordForm.Binary, 131072, Range: 131072, Bits: 17)).Verdict);
        Assert.Equal(Verdict.CannotTell, BusWord.Run(new("130", WordForm.BinaryUnsigned, -1, Range: 128, Bits: 11)).Verdict);
        Assert.Equal(Verdict.CannotTell, BusWord.Run(new("201", WordForm.Decimal, 80000)).Verdict);
        Assert.Equal(Verdict.CannotTell, BusWord.Run(new("400", WordForm.Binary, 1, Range: 128)).Verdict);
        Assert.Equal(Verdict.CannotTell, BusWord.Run(new("203", WordForm.Binary, 1, Range: 131072, Bits: 17, Rest: 2)).Verdict);
    }

    [Fact]
    public void A_frame_with_its_parity_leaves_nothing_and_one_disturbed_leaves_something()
    {
        var inputs = from data in Gen.Byte.Array[11] from bit in Gen.Int[0, 111] select (data, bit);
        inputs.Sample(x =>
        {
            var parity = ModeSParity.Parity(x.data);
            byte[] frame = [.. x.data, (byte)(parity >> 16), (byte)(parity >> 8 & 0xFF), (byte)(parity & 0xFF)];
            Assert.Equal(0, ModeSParity.Remainder(frame));
            frame[x.bit / 8] ^= (byte)(0x80 >> (x.bit % 8));
            Assert.NotEqual(0, ModeSParity.Remainder(frame));
        });
    }
}
