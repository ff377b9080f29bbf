namespace Fairlead.Calculations.Traffic;

/// <summary>The three ARINC 429 words in which a traffic sensor tells of one intruder: label 130 range, 131 relative altitude, 132 bearing (SDI 0).</summary>
/// <remarks>
/// ARINC 429 part 1-17, attachment 6. Bits 11 to 15 hold the number of the intruder, 1 to 31. Check values, intruder 3: 5 nmi with no sensitivity level
/// is 0x61400C1A; 1,100 ft above and descending 0xE1700C9A; 45° left under a traffic advisory 0xFC008C5A.
/// </remarks>
public static class IntruderWords
{
    private const int NoComputedData = 1, Normal = 3;
    private const double Miles = 128, Feet = 12800, HalfTurn = 180;

    /// <summary>Label 130: range up to 127 15/16 nmi in steps of 1/16 nmi, and the sensitivity level in bits 16 to 18 (0: not reported). Null beyond.</summary>
    public static uint? Range(int number, Length range, int level) =>
        BusField.Encode(WordForm.BinaryUnsigned, range.In("nmi"), BusField.Step(WordForm.BinaryUnsigned, Miles, 11), 11) is { } field ? Word(0b001_011_000, field | (level << 5) | number, Normal) : null;

    /// <summary>Label 131: relative altitude up to 12,700 ft in steps of 100 ft, and in bits 20 and 21 whether it climbs (1) or descends (2). Null beyond;
    /// without a reported altitude the word says no computed data.</summary>
    public static uint? Altitude(int number, Length? above, Speed climb)
    {
        if (above is not { } height)
        {
            return Word(0b001_011_001, (3 << 9) | number, NoComputedData);
        }

        var sense = TrafficTag.Arrow(climb) switch { "up" => 1, "down" => 2, _ => 0 };
        return BusField.Encode(WordForm.Binary, Math.Round(height.In("ft"), 6), BusField.Step(WordForm.Binary, Feet, 7), 7) is { } field ? Word(0b001_011_001, field | (sense << 9) | number, Normal) : null;
    }

    /// <summary>Label 132: bearing from −180° to 180° in steps of 180°/1024, and in bits 16 to 18 how it is shown: 0 no threat, 1 traffic advisory, 2 resolution advisory, 3 proximate.</summary>
    public static uint Bearing(int number, Angle bearing, int display)
    {
        var degrees = bearing.In("°");
        var field = BusField.Encode(WordForm.Binary, degrees, BusField.Step(WordForm.Binary, HalfTurn, 10), 10)
            ?? BusField.Encode(WordForm.Binary, degrees - (2 * HalfTurn), BusField.Step(WordForm.Binary, HalfTurn, 10), 10)!.Value;
        return Word(0b001_011_010, field | (display << 5) | number, Normal);
    }

    private static uint Word(int label, int data, int ssm) => Arinc429.Word(label, 0, data, ssm);
}
