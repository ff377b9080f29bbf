using System.Globalization;

namespace Fairlead.Calculations.Structure;

/// <summary>Which torque applies.</summary>
public enum TorqueUse
{
    /// <summary>Tension nut: MS20365, AN310.</summary>
    Tension,

    /// <summary>Shear nut: MS20364, AN320.</summary>
    Shear,

    /// <summary>Screw of an antenna: AC 43.13-2B 309b(5).</summary>
    AntennaScrew,
}

/// <summary>Input of <see cref="BoltTorque"/>.</summary>
/// <param name="Thread">Thread, such as 10-32 or 1/4-28.</param>
/// <param name="Use">Which torque applies.</param>
/// <param name="Drag">Friction drag of the nut, measured.</param>
/// <param name="Torque">Torque, to be checked.</param>
public sealed record BoltTorqueInput(
    [In("thread", "thread, such as 10-32 or 1/4-28")] string Thread,
    [In("use", "which torque applies")] TorqueUse Use,
    [In("drag", "friction drag of the nut, measured", "lbf·in", Min = 0, Max = 500, Default = "none")] Torque Drag = default,
    [In("T", "torque to be checked", "lbf·in", Min = 0, Max = 50000, Default = "not checked")] Torque? Torque = null);

/// <summary>Torque of a bolt or screw by AC 43.13-1B table 7-1, the measured drag of the nut added (7-40), or of an antenna screw by AC 43.13-2B.</summary>
/// <remarks>Check values: 10-32 tension nut 20 to 25 in-lb, greatest 40; shear nut 12 to 15; antenna screw at most 23 (8-32: 20).</remarks>
public sealed class BoltTorque : ICalculation<BoltTorqueInput>
{
    private static readonly TableFile Table = TableFile.Load("bolt-torque");
    private static readonly Source Antenna = StructureSources.Alteration("309b(5)");

    /// <inheritdoc/>
    public static CalculationInfo<BoltTorqueInput> Info { get; } = new(
        "bolt-torque", "Torque of a bolt", Discipline.Structure,
        "Which torque a bolt and nut get, the drag of the nut added", "thread=10-32 use=tension drag='6 lbf in'", StructureSources.Repair("7-40"));

    /// <inheritdoc/>
    public static Sheet Run(BoltTorqueInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Use == TorqueUse.AntennaScrew)
        {
            Screw(s, input);
        }
        else if (Row(input.Thread) is { } row)
        {
            var name = input.Use == TorqueUse.Tension ? "tension" : "shear";
            var least = s.Step("Tl", "least torque", "by thread and nut, plus drag", At(row, name + " least") + input.Drag, "lbf·in", Table.SourceOf(row));
            var most = s.Step("Tm", "greatest torque of the range", "by thread and nut, plus drag", At(row, name + " most") + input.Drag, "lbf·in", Table.SourceOf(row));
            s.Step("Tx", "limit when turning to the next slot of a castellated nut", "by thread and nut", At(row, name + " limit"), "lbf·in", Table.SourceOf(row));
            Range(s, input, least, most, Table.SourceOf(row));
        }
        else
        {
            s.CannotTell($"{Table.Source.Paragraph} has no thread '{input.Thread}': take the torque from the approved data.");
        }

        s.Caution("Oil-free cadmium-plated steel threads. Where the maintenance manual gives a torque, that one holds.");
        s.DeferToApprovedData();
    });

    private static void Screw(SheetBuilder s, BoltTorqueInput input)
    {
        if (input.Thread is not ("8-32" or "10-32"))
        {
            s.CannotTell($"AC 43.13-2B gives a torque for antenna screws 8-32 and 10-32 only, not for '{input.Thread}'.");
            return;
        }

        var most = s.Step("Tm", "greatest torque of an antenna screw", "by thread", Torque.Of(input.Thread == "8-32" ? 20 : 23, "lbf·in"), "lbf·in", Antenna);
        s.Caution("Antenna screws have a rule of their own: 20 (8-32) and 23 in-lb (10-32) at most, where table 7-1 of AC 43.13-1B gives 12 to 15 and 20 to 25 for a tension nut. Never pull the skin to shape with them.");
        Range(s, input, default, most, Antenna);
    }

    private static void Range(SheetBuilder s, BoltTorqueInput input, Torque least, Torque most, Source source)
    {
        if (input.Torque is { } torque)
        {
            s.Check("least torque", torque.As("lbf·in"), Sense.AtLeast, least.As("lbf·in"), "at least the lower end of the range", source);
            s.Check("greatest torque", torque.As("lbf·in"), Sense.AtMost, most.As("lbf·in"), "at most the upper end of the range", source);
        }
    }

    private static Torque At(int row, string column) => Torque.Of(Table.Rows[row][Table.Column(column)]!.Value, "lbf·in");

    private static int? Row(string thread)
    {
        var cut = thread.LastIndexOf('-');
        if (cut < 1 || Diameter(thread[..cut]) is not { } diameter || !int.TryParse(thread.AsSpan(cut + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var pitch))
        {
            return null;
        }

        foreach (var row in Enumerable.Range(0, Table.Rows.Length).Where(r => Math.Abs(Table.Rows[r][0]!.Value - diameter) < 1e-9 && Table.Rows[r][1] == pitch))
        {
            return row;
        }

        return null;
    }

    // "10" is a screw number of 0.060 in + 0.013 in a number; "1/4" and "1-1/4" are inches; "1" is one inch.
    private static double? Diameter(string size)
    {
        var parts = size.Split('-');
        var fraction = parts[^1].Split('/');
        if (!Array.TrueForAll([.. parts[..^1], .. fraction], p => int.TryParse(p, NumberStyles.None, CultureInfo.InvariantCulture, out _)) || fraction.Length > 2 || parts.Length > 2)
        {
            return null;
        }

        double Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);
        var whole = parts.Length == 2 ? Number(parts[0]) : 0;
        return fraction.Length == 2 ? Number(fraction[1]) > 0 ? whole + (Number(fraction[0]) / Number(fraction[1])) : null
            : parts.Length == 1 && Number(size) >= 2 ? 0.060 + (0.013 * Number(size)) : Number(size);
    }
}
