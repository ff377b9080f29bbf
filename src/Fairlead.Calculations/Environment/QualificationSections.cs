using System.Collections.Immutable;

namespace Fairlead.Calculations.Environment;

/// <summary>How a category compares with the one asked for.</summary>
public enum Covering
{
    /// <summary>It covers what is asked for.</summary>
    Covers,

    /// <summary>It is milder than what is asked for.</summary>
    Milder,

    /// <summary>Nothing is known that orders the two.</summary>
    Unknown,
}

/// <summary>The sections of the environmental standard after temperature and altitude, and which of their categories cover which.</summary>
public static class QualificationSections
{
    private const int First = 4;
    private const int Lightning = 22;

    private static readonly TableFile Table = TableFile.Load("do160-covers");

    /// <summary>Where the order of categories comes from.</summary>
    public static Source Order => Table.Source;

    /// <summary>Names of sections 4 to 26, in their order.</summary>
    public static ImmutableArray<string> Names { get; } =
    [
        "temperature-altitude", "temperature-variation", "humidity", "shock", "vibration", "explosive-atmosphere", "waterproofness", "fluids", "sand-dust", "fungus", "salt", "magnetic-effect",
        "power-input", "voltage-spike", "audio-frequency", "induced-signals", "radio-susceptibility", "radio-emission", "lightning-induced", "lightning-direct", "icing", "electrostatic-discharge", "fire",
    ];

    /// <summary>Number of a section by its name or number; null when there is none. Check value: vibration is section 8.</summary>
    public static int? Number(string section)
    {
        ArgumentNullException.ThrowIfNull(section);
        var name = section.Trim();
        for (var i = 0; i < Names.Length; i++)
        {
            if (string.Equals(Names[i], name, StringComparison.OrdinalIgnoreCase) || name == NumberFormat.Text(First + i))
            {
                return First + i;
            }
        }

        return null;
    }

    /// <summary>Compares two categories of a section that differ. Check value: in section 12 S, sand and dust, covers D, dust (from memory).</summary>
    /// <param name="section">Number of the section.</param>
    /// <param name="has">Category shown.</param>
    /// <param name="need">Category asked for.</param>
    public static Covering Compare(int section, string has, string need)
    {
        ArgumentNullException.ThrowIfNull(has);
        ArgumentNullException.ThrowIfNull(need);
        var (shown, asked) = (has.Trim().ToUpperInvariant(), need.Trim().ToUpperInvariant());
        return section == Lightning ? ByLevels(shown, asked)
            : Listed(section, shown, asked) ? Covering.Covers
            : Listed(section, asked, shown) ? Covering.Milder
            : Covering.Unknown;
    }

    private static bool Listed(int section, string covers, string covered) =>
        covers.Length == 1 && covered.Length == 1 && Table.Rows.Any(r => r[0] == section && r[1] == covers[0] - 'A' + 1 && r[2] == covered[0] - 'A' + 1);

    // Codes of induced lightning such as A3J33 or A3J3L3: letters name the waveforms, digits the levels 1 to 5, X a test not made. Levels compare only for the same waveforms.
    private static Covering ByLevels(string has, string need)
    {
        if (has.Length != need.Length || has.Zip(need).Any(c => c.Second != 'X' && c.First != 'X' && c.First != c.Second && !(char.IsAsciiDigit(c.First) && char.IsAsciiDigit(c.Second))))
        {
            return Covering.Unknown;
        }

        return has.Zip(need).Any(c => c.Second != 'X' && (c.First == 'X' || c.First < c.Second)) ? Covering.Milder : Covering.Covers;
    }
}
