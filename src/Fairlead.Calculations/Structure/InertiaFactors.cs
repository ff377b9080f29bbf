using System.Collections.Frozen;

namespace Fairlead.Calculations.Structure;

/// <summary>Which rule the inertia factors of an item come from: the certification basis of the aircraft decides.</summary>
public enum InertiaRule
{
    /// <summary>14 CFR 23.561(b)(3) before amendment 23-64: an item of mass in the cabin that could injure an occupant.</summary>
    Part23Item,

    /// <summary>14 CFR 23.561(b)(2): an occupant, and what restrains one.</summary>
    Part23Occupant,

    /// <summary>14 CFR 23.561(b)(2): an occupant of an acrobatic aeroplane.</summary>
    Part23OccupantAcrobatic,

    /// <summary>14 CFR 23.787(a)(3): baggage aft of the occupants and behind structure.</summary>
    Part23Baggage,

    /// <summary>14 CFR part 23 from amendment 23-64: the rule gives no factors, the means of compliance does.</summary>
    Part23Amendment64,

    /// <summary>CAR 3.386 and 14 CFR 23.561 before amendment 23-36, normal and utility.</summary>
    Car3,

    /// <summary>CAR 3.386 and 14 CFR 23.561 before amendment 23-36, acrobatic.</summary>
    Car3Acrobatic,

    /// <summary>CS-23 before amendment 5: an item of mass in the cabin.</summary>
    Cs23Item,

    /// <summary>CS-23 before amendment 5: an occupant.</summary>
    Cs23Occupant,

    /// <summary>CS-23 before amendment 5: an occupant of an aerobatic aeroplane.</summary>
    Cs23OccupantAcrobatic,

    /// <summary>CS-VLA 561.</summary>
    CsVla,

    /// <summary>14 CFR 25.561(b)(3): airframe and items of mass.</summary>
    Part25,

    /// <summary>14 CFR 25.561(b)(3): seats and their attachments.</summary>
    Part25Seat,

    /// <summary>14 CFR 27.561(b)(3): occupants and items inside the cabin.</summary>
    Part27Inside,

    /// <summary>14 CFR 27.561(c): items above or behind the cabin.</summary>
    Part27AboveOrBehind,

    /// <summary>14 CFR 27.561(d): fuselage around internal fuel tanks.</summary>
    Part27Tanks,

    /// <summary>14 CFR 29.561(b)(3): occupants and items inside the cabin.</summary>
    Part29Inside,

    /// <summary>14 CFR 29.561(c): items above or behind the cabin.</summary>
    Part29AboveOrBehind,

    /// <summary>14 CFR 29.561(d): fuselage around internal fuel tanks.</summary>
    Part29Tanks,

    /// <summary>AC 43.13-2B table 1-1: items of mass in the cabin.</summary>
    CircularItem,

    /// <summary>AC 43.13-2B table 1-1: occupant, normal and utility.</summary>
    CircularOccupant,

    /// <summary>AC 43.13-2B table 1-1: occupant, acrobatic.</summary>
    CircularOccupantAcrobatic,

    /// <summary>AC 43.13-2B table 1-1: rotorcraft.</summary>
    CircularRotorcraft,

    /// <summary>The factors are stated by the user.</summary>
    Stated,
}

/// <summary>Ultimate inertia factors by direction of the load on the item, in g; null where the rule gives none.</summary>
/// <param name="Up">Load upward.</param>
/// <param name="Forward">Load forward.</param>
/// <param name="Side">Load to either side.</param>
/// <param name="Down">Load downward.</param>
/// <param name="Aft">Load aft.</param>
public readonly record struct InertiaFactors(double? Up, double? Forward, double? Side, double? Down, double? Aft)
{
    private static readonly FrozenDictionary<string, TableFile> Tables =
        new[] { "part23", "car3", "cs23", "cs-vla", "part25", "part27", "part29", "circular" }.ToFrozenDictionary(name => name, name => TableFile.Load("inertia-" + name));

    /// <summary>The factors of a rule and where they are printed. Check value: 14 CFR 23.561(b)(3) gives 3 up, 18 forward, 4.5 sideward.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a known rule.</exception>
    public static (InertiaFactors Factors, Source Source) Of(InertiaRule rule) => rule switch
    {
        InertiaRule.Part23Amendment64 => (default, new Source("14 CFR part 23", "amendment 23-64", "23.2270 and 23.2230")),
        InertiaRule.Stated => (default, new Source("Load factors of the approved data", "", "", Basis.Stated)),
        _ => Read(rule),
    };

    private static (InertiaFactors Factors, Source Source) Read(InertiaRule rule)
    {
        var (name, number, paragraph) = Place(rule);
        var table = Tables[name];
        var row = table.RowWhere("case", number) ?? throw new ArgumentOutOfRangeException(nameof(rule), rule, $"Table '{name}' lacks the case of this rule.");
        double? Cell(string column) => table.Rows[row][table.Column(column)];
        return (new(Cell("up"), Cell("forward"), Cell("side"), Cell("down"), Cell("aft")), table.SourceOf(row) with { Paragraph = paragraph });
    }

    private static (string Table, int Case, string Paragraph) Place(InertiaRule rule) => rule switch
    {
        InertiaRule.Part23Item => ("part23", 1, "23.561(b)(3)"),
        InertiaRule.Part23Occupant => ("part23", 2, "23.561(b)(2)"),
        InertiaRule.Part23OccupantAcrobatic => ("part23", 3, "23.561(b)(2)"),
        InertiaRule.Part23Baggage => ("part23", 4, "23.787(a)(3)"),
        InertiaRule.Car3 => ("car3", 1, "emergency landing, normal and utility"),
        InertiaRule.Car3Acrobatic => ("car3", 2, "emergency landing, acrobatic"),
        InertiaRule.Cs23Item => ("cs23", 1, "CS 23.561(b)(3)"),
        InertiaRule.Cs23Occupant => ("cs23", 2, "CS 23.561(b)(2)"),
        InertiaRule.Cs23OccupantAcrobatic => ("cs23", 3, "CS 23.561(b)(2)"),
        InertiaRule.CsVla => ("cs-vla", 1, "CS-VLA 561"),
        InertiaRule.Part25 => ("part25", 1, "25.561(b)(3)"),
        InertiaRule.Part25Seat => ("part25", 2, "25.561(b)(3), seats"),
        InertiaRule.Part27Inside => ("part27", 1, "27.561(b)(3)"),
        InertiaRule.Part27AboveOrBehind => ("part27", 2, "27.561(c)"),
        InertiaRule.Part27Tanks => ("part27", 3, "27.561(d)"),
        InertiaRule.Part29Inside => ("part29", 1, "29.561(b)(3)"),
        InertiaRule.Part29AboveOrBehind => ("part29", 2, "29.561(c)"),
        InertiaRule.Part29Tanks => ("part29", 3, "29.561(d)"),
        InertiaRule.CircularItem => ("circular", 1, "table 1-1, items of mass in the cabin"),
        InertiaRule.CircularOccupant => ("circular", 2, "table 1-1, normal and utility"),
        InertiaRule.CircularOccupantAcrobatic => ("circular", 3, "table 1-1, acrobatic"),
        InertiaRule.CircularRotorcraft => ("circular", 4, "table 1-1, rotorcraft"),
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a known rule of inertia factors."),
    };
}
