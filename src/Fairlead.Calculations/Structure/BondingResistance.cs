namespace Fairlead.Calculations.Structure;

/// <summary>What a bond is for.</summary>
public enum BondPurpose
{
    /// <summary>Equipment rack to structure: 3 mΩ (AC 43.13-2B 207i).</summary>
    Rack,

    /// <summary>Antenna base to skin: 3 mΩ (AC 43.13-2B 307b).</summary>
    Antenna,

    /// <summary>Exposed conducting frames of equipment: 2.5 mΩ (AC 43.13-1B 11-188f).</summary>
    Frame,

    /// <summary>Bonding jumper joint: 3 mΩ (AC 43.13-1B 11-189).</summary>
    Jumper,

    /// <summary>Static, parts over 3 in² and 3 in: 1 Ω (AC 43.13-1B 11-187c).</summary>
    Static,

    /// <summary>Fuel: 1 Ω (AC 43.13-1B 11-191).</summary>
    Fuel,

    /// <summary>Shock hazard: 10 mΩ (AC 43.13-1B 11-192).</summary>
    Shock,

    /// <summary>Lightning: 2.5 mΩ, 500 V at 200 kA (MIL-B-5087B).</summary>
    Lightning,
}

/// <summary>Metal of a strap.</summary>
public enum StrapMetal
{
    /// <summary>Aluminium, 61 % IACS.</summary>
    Aluminium,

    /// <summary>Copper, 100 % IACS.</summary>
    Copper,
}

/// <summary>A piece of a bonding path: measured, or a strap by its size.</summary>
/// <param name="Name">Name.</param>
/// <param name="Resistance">Its resistance, measured.</param>
/// <param name="Length">Length of a strap.</param>
/// <param name="Section">Its section.</param>
/// <param name="Metal">Its metal.</param>
public sealed record BondRow(
    [In("name", "piece")] string Name,
    [In("R", "resistance", "mΩ", Min = 0, Max = 1e6, Default = "by length and section")] Resistance? Resistance = null,
    [In("l", "length of the strap", "in", Min = 0.01, Max = 1000, Default = "not a strap")] Length? Length = null,
    [In("A", "section of the strap", "in²", Min = 1e-5, Max = 10, Default = "not a strap")] Area? Section = null,
    [In("metal", "metal of the strap", Default = "aluminium")] StrapMetal Metal = StrapMetal.Aluminium);

/// <summary>Input of <see cref="BondingResistance"/>.</summary>
/// <param name="Path">Pieces in series from the part to the structure.</param>
/// <param name="Purpose">What the bond is for.</param>
/// <param name="Limit">Limit of the maker, when stricter.</param>
public sealed record BondingResistanceInput(
    [In("path", "pieces in series from the part to the structure")] Sequence<BondRow> Path,
    [In("purpose", "what the bond is for")] BondPurpose Purpose,
    [In("Rmax", "limit of the maker", "mΩ", Min = 0.001, Max = 1e6, Default = "none")] Resistance? Limit = null);

/// <summary>Resistance of a bonding path against the published limit for its purpose: R = Σ of measured pieces and straps ρ · l / A.</summary>
/// <remarks>Check values: copper strap of 6 in and 0.016 in²: 0.2545 mΩ at 20 °C; limits 2.5 mΩ for frames, 3 mΩ for racks and antennas, 10 mΩ against shock, 1 Ω for static and fuel.</remarks>
public sealed class BondingResistance : ICalculation<BondingResistanceInput>
{
    private static readonly Source Metals = new("IEC 60028 and its aluminium counterpart", "", "copper 1.7241e-8 Ω·m, aluminium 61 % IACS, at 20 °C", Basis.Memory);
    private static readonly Source Lightning = new("MIL-B-5087B", "", "500 V at 200 kA, as told by a trade article");
    private static readonly TableFile Repair = TableFile.Load("bonding-repair");
    private static readonly TableFile Alteration = TableFile.Load("bonding-alteration");

    /// <inheritdoc/>
    public static CalculationInfo<BondingResistanceInput> Info { get; } = new(
        "bonding-resistance", "Bonding resistance", Discipline.Structure,
        "Whether a bonding path meets the published limit for its purpose", "path='rack joint,0.8 mohm;strap,,6 in,0.016 in2,copper;skin joint,0.9 mohm' purpose=rack",
        StructureSources.Repair("11-187 to 11-193"), StructureSources.Alteration("207i and 307b"));

    /// <inheritdoc/>
    public static Sheet Run(BondingResistanceInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Path.Count == 0 || input.Path.FirstOrDefault(b => b.Resistance is null && (b.Length is null || b.Section is null)) is { } unknown)
        {
            s.CannotTell(input.Path.Count == 0 ? "The path has no piece." : "A piece of the path has neither a resistance nor length and section.");
            return;
        }

        var measured = s.Step("Rm", "measured pieces", "sum of their resistances", new Resistance(input.Path.Sum(b => b.Resistance?.Si ?? 0)), "mΩ");
        var straps = s.Step("Rs", "straps", "sum of ρ · l / A", new Resistance(input.Path.Where(b => b.Resistance is null).Sum(b => Strap(b.Metal, b.Length!.Value, b.Section!.Value).Si)), "mΩ", input.Path.Any(b => b.Resistance is null) ? Metals : null);
        var total = s.Step("Rp", "resistance of the path", "Rm + Rs", measured + straps, "mΩ");
        var (limit, source) = Limit(input.Purpose);
        s.Check("bonding resistance", total.As("mΩ"), Sense.AtMost, limit.As("mΩ"), "within the published limit for this purpose", source);
        if (input.Limit is { } maker)
        {
            s.Check("bonding resistance, maker's limit", total.As("mΩ"), Sense.AtMost, maker.As("mΩ"), "within the maker's limit", new Source("Maker's installation manual", "", "", Basis.Stated));
        }

        s.Caution("Prove it by a four-wire measurement. Clean to bare metal, conversion coat and seal in time; aluminium jumper on aluminium; no self-tapping screws.");
        s.DeferToApprovedData();
    });

    /// <summary>The greatest resistance for a purpose.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a known purpose.</exception>
    public static (Resistance Limit, Source Source) Limit(BondPurpose purpose) => purpose switch
    {
        BondPurpose.Rack => Row(Alteration, 1, "207i"),
        BondPurpose.Antenna => Row(Alteration, 2, "307b"),
        BondPurpose.Frame => Row(Repair, 1, "11-188f"),
        BondPurpose.Jumper => Row(Repair, 2, "11-189"),
        BondPurpose.Static => Row(Repair, 3, "11-187c"),
        BondPurpose.Fuel => Row(Repair, 4, "11-191"),
        BondPurpose.Shock => Row(Repair, 5, "11-192"),
        BondPurpose.Lightning => (Resistance.Of(2.5, "mΩ"), Lightning),
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, "Not a known purpose of a bond."),
    };

    /// <summary>Resistance of a strap at 20 °C. Check value: copper, 6 in, 0.016 in²: 0.2545 mΩ.</summary>
    public static Resistance Strap(StrapMetal metal, Length length, Area section) =>
        new((metal == StrapMetal.Copper ? 1.7241e-8 : 1.7241e-8 / 0.61) * length.Si / section.Si);

    private static (Resistance Limit, Source Source) Row(TableFile table, int purpose, string paragraph)
    {
        var row = table.RowWhere("purpose", purpose)!.Value;
        return (new(table.Rows[row][table.Column("ohm")]!.Value), table.SourceOf(row) with { Paragraph = paragraph });
    }
}
