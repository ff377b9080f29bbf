using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="BusWord"/>.</summary>
/// <param name="Label">Label in octal.</param>
/// <param name="Form">How the data are written.</param>
/// <param name="Value">Value to encode, in the unit of the label.</param>
/// <param name="Word">Word to decode, in hexadecimal.</param>
/// <param name="Range">Range of a binary field: half of it is the most significant bit.</param>
/// <param name="Bits">Significant bits of a binary field, sign not counted.</param>
/// <param name="Resolution">What one of the last decimal digit is worth.</param>
/// <param name="Rest">The bits from bit 11 up that the value leaves free, as a number.</param>
/// <param name="Sdi">Source/destination identifier.</param>
/// <param name="Ssm">Sign/status matrix.</param>
public sealed record BusWordInput(
    [In("label", "label (octal)")] string Label,
    [In("form", "how the data are written")] WordForm Form,
    [In("value", "value to encode", Min = -1e9, Max = 1e9, Default = "by word")] double? Value = null,
    [In("word", "word to decode (hexadecimal)", Default = "by value")] string? Word = null,
    [In("range", "range of a binary field", Min = 1e-6, Max = 1e9, Default = "not binary")] double? Range = null,
    [In("bits", "significant bits of a binary field, sign not counted", Min = 1, Max = 18, Default = "18")] int Bits = 18,
    [In("res", "what one of the last decimal digit is worth", Min = 1e-6, Max = 1e6, Default = "1")] double Resolution = 1,
    [In("rest", "bits from bit 11 up that the value leaves free", Min = 0, Max = 524287, Default = "0")] int Rest = 0,
    [In("sdi", "source/destination identifier", Min = 0, Max = 3, Default = "0")] int Sdi = 0,
    [In("ssm", "sign/status matrix (bits 31, 30)", Min = 0, Max = 3, Default = "normal, or the sign")] int? Ssm = null);

/// <summary>A word of an ARINC 429 bus: label, identifier, data, status and parity, encoded from a value or decoded from hexadecimal; with both, compared.</summary>
/// <remarks>
/// Binary: step = range / 2^bits. Check value: label 203, 21,059 ft, range 131,072, 17 bits, bit 11 set, SDI 1: 0x62921DC1 (ARINC 429 part 1-17 table 6-24).
/// Two of that document's printed examples (tables 6-22 and 6-23) have even parity: misprints that this rejects.
/// </remarks>
public sealed class BusWord : ICalculation<BusWordInput>
{
    private static readonly Source Document = new("ARINC 429 part 1-17", "17 May 2004, with errata 1", "2.1 to 2.3 and attachment 6");

    private static readonly ImmutableArray<string> BinaryStatus = ["failure warning", "no computed data", "functional test", "normal operation"];
    private static readonly ImmutableArray<string> DecimalStatus = ["plus, north, east, right, to, above", "no computed data", "functional test", "minus, south, west, left, from, below"];

    /// <inheritdoc/>
    public static CalculationInfo<BusWordInput> Info { get; } = new(
        "bus-word", "Word of an ARINC 429 bus", Discipline.Traffic,
        "Which word carries a value, and what a word says", "label=203 form=binary value=21059 range=131072 bits=17 rest=1 sdi=1", Document);

    /// <inheritdoc/>
    public static Sheet Run(BusWordInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Problem(input) is { } why)
        {
            s.CannotTell(why);
            return;
        }

        var label = Arinc429.ReadLabel(input.Label)!.Value;
        var step = input.Form == WordForm.Discrete ? 1 : s.Step("step", "what one step is worth", input.Form == WordForm.Decimal ? "res" : "range / 2^bits", BusField.Step(input.Form, input.Form == WordForm.Decimal ? input.Resolution : input.Range!.Value, input.Bits), Document);
        if (input.Word is { } text)
        {
            Decode(s, input, label, step, Arinc429.ReadWord(text)!.Value);
        }
        else
        {
            Encode(s, input, label, step);
        }
    });

    private static void Encode(SheetBuilder s, BusWordInput input, int label, double step)
    {
        var value = input.Value ?? 0;

        // An angle from 180 to 360 is sent as that minus 360.
        value = input.Form == WordForm.Binary && input.Range is 180 && value is >= 180 and < 360 ? value - 360 : value;
        if ((input.Form == WordForm.Discrete ? 0 : BusField.Encode(input.Form, value, step, input.Bits)) is not { } field)
        {
            s.CannotTell("The value does not fit the field: check range, bits or resolution.");
            return;
        }

        var ssm = input.Ssm ?? (input.Form is WordForm.Binary or WordForm.BinaryUnsigned ? 3 : value < 0 ? 3 : 0);
        var word = Arinc429.Word(label, input.Sdi, field | input.Rest, ssm);
        Show(s, input, word);
        if (BusField.Decode(input.Form, field, step, input.Bits, ssm == 3) is { } carried)
        {
            s.Step("carried", "value carried", "rounded, halves away from zero", carried, Document);
        }
    }

    private static void Decode(SheetBuilder s, BusWordInput input, int label, double step, uint word)
    {
        Show(s, input, word);
        s.Check("ones in the word, modulo 2", Measure.Number(BitOperations.PopCount(word) % 2), Sense.AtLeast, Measure.Number(1), "the parity of a word is odd", Document);
        s.Check("bits in which the label differs", Measure.Number(int.PopCount(Arinc429.Label(word) ^ label)), Sense.AtMost, Measure.Number(0), "the word has the label expected", Document);
        var ssm = Arinc429.Ssm(word);
        if (input.Form == WordForm.Discrete)
        {
            return;
        }

        if (BusField.Decode(input.Form, Arinc429.Data(word), step, input.Bits, ssm == 3) is not { } carried)
        {
            s.CannotTell("A digit of the word is above 9: it is no decimal word.");
            return;
        }

        s.Step("carried", "value carried", "field · step", carried, Document);
        var valid = input.Form == WordForm.Decimal ? ssm is 0 or 3 : ssm == 3;
        if (!valid)
        {
            s.Caution($"The status is '{(input.Form == WordForm.Decimal ? DecimalStatus : BinaryStatus)[ssm]}': the value is not data.", affectsVerdict: true);
        }
        else if (input.Value is { } expected)
        {
            s.Check("difference from the value expected", Measure.Number(Math.Abs(carried - expected)), Sense.AtMost, Measure.Number(step / 2), "the word carries the value expected to half a step", Document);
        }
    }

    private static void Show(SheetBuilder s, BusWordInput input, uint word)
    {
        s.Note("W", "word, bit 32 first", Arinc429.Text(word), "working");
        var ssm = Arinc429.Ssm(word);
        var status = input.Form switch
        {
            WordForm.Decimal => DecimalStatus[ssm],
            WordForm.Discrete => "by its own label",
            _ => BinaryStatus[ssm],
        };
        s.Table("Word", ["bits", "field", "content", "meaning"],
        [
            ["1 to 8", "label", Bits(word, 1, 8), Convert.ToString(Arinc429.Label(word), 8).PadLeft(3, '0')],
            ["9, 10", "SDI", Bits(word, 9, 10), Arinc429.Sdi(word).ToString(CultureInfo.InvariantCulture)],
            ["11 to 29", "data", Bits(word, 11, 29), string.Create(CultureInfo.InvariantCulture, $"0x{Arinc429.Data(word):X5}")],
            ["30, 31", "SSM", Bits(word, 30, 31), status],
            ["32", "parity", Bits(word, 32, 32), Arinc429.ParityIsOdd(word) ? "odd" : "even: wrong"],
        ]);
    }

    // In the order they are sent: the lowest bit number first.
    private static string Bits(uint word, int from, int to) => string.Concat(Enumerable.Range(from, to - from + 1).Select(b => (word >> (b - 1) & 1) == 1 ? '1' : '0'));

    private static string? Problem(BusWordInput input) =>
        Arinc429.ReadLabel(input.Label) is null ? $"'{input.Label}' is not a label in octal (000 to 377)."
        : input.Value is null && input.Word is null && input.Form != WordForm.Discrete ? "Give a value to encode or a word to decode."
        : input.Word is not null && Arinc429.ReadWord(input.Word) is null ? $"'{input.Word}' is not a word of up to eight hexadecimal digits."
        : input.Form is WordForm.Binary or WordForm.BinaryUnsigned && input.Range is null ? "A binary field needs its range."
        : BusField.LowestBit(input.Form, input.Bits) is var lowest && input.Rest >> (lowest - 11) != 0
            ? string.Create(CultureInfo.InvariantCulture, $"The value leaves free the bits from 11 to {lowest - 1}; rest={input.Rest} does not fit there.")
        : null;
}
