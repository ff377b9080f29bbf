namespace Fairlead.Calculations.Traffic;

/// <summary>How the data of a word are written.</summary>
public enum WordForm
{
    /// <summary>Binary, two's complement: bit 29 is the sign, bit 28 half the range.</summary>
    Binary,

    /// <summary>Binary without sign: bit 29 is half the range.</summary>
    BinaryUnsigned,

    /// <summary>Five decimal digits, the first of three bits; the sign is in the SSM.</summary>
    Decimal,

    /// <summary>Bits that each mean something of their own.</summary>
    Discrete,
}

/// <summary>The data field of a word as a value, and back. Halves round away from zero.</summary>
/// <remarks>Check values: −2,200 ft/min over 16,384 in 10 bits is −138; 257.86 in steps of 0.01 is the digits 2 5 7 8 6.</remarks>
public static class BusField
{
    private const int DataBits = 19;

    /// <summary>What one step of the field is worth: range / 2^bits, or the resolution of decimal digits.</summary>
    public static double Step(WordForm form, double rangeOrResolution, int bits) => form == WordForm.Decimal ? rangeOrResolution : rangeOrResolution / Math.Pow(2, bits);

    /// <summary>The lowest bit number that the field uses; the bits from 11 up to it are free for other things.</summary>
    public static int LowestBit(WordForm form, int bits) => form switch
    {
        WordForm.Binary => 29 - bits,
        WordForm.BinaryUnsigned => 30 - bits,
        WordForm.Decimal => 11,
        _ => 30,
    };

    /// <summary>The 19 data bits of a value; null when it does not fit.</summary>
    public static int? Encode(WordForm form, double value, double step, int bits)
    {
        var count = Math.Round((form == WordForm.Decimal ? Math.Abs(value) : value) / step, MidpointRounding.AwayFromZero);
        var limit = Math.Pow(2, bits);
        return form switch
        {
            WordForm.Binary when count >= -limit && count < limit => ((int)count & ((2 << bits) - 1)) << (DataBits - 1 - bits),
            WordForm.BinaryUnsigned when count >= 0 && count < limit => (int)count << (DataBits - bits),
            WordForm.Decimal when count <= 79999 => Digits((int)count),
            _ => null,
        };
    }

    /// <summary>The value of 19 data bits; null when a decimal digit is above 9 or the form is discrete.</summary>
    public static double? Decode(WordForm form, int data, double step, int bits, bool minus)
    {
        switch (form)
        {
            case WordForm.Binary:
                var code = data >> (DataBits - 1 - bits);
                return step * ((code >> bits) != 0 ? code - (2 << bits) : code);
            case WordForm.BinaryUnsigned:
                return step * (data >> (DataBits - bits));
            case WordForm.Decimal when Number(data) is { } number:
                return step * (minus ? -number : number);
            default:
                return null;
        }
    }

    private static int Digits(int number)
    {
        var data = 0;
        for (var place = 0; place < 5; place++, number /= 10)
        {
            data |= number % 10 << (4 * place);
        }

        return data;
    }

    private static int? Number(int data)
    {
        var number = 0;
        for (var place = 4; place >= 0; place--)
        {
            var digit = data >> (4 * place) & 0xF;
            if (digit > 9)
            {
                return null;
            }

            number = (10 * number) + digit;
        }

        return number;
    }
}
