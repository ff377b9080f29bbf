using System.Globalization;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Structure;

/// <summary>A layer of a stack that is bolted together.</summary>
/// <param name="Name">Name.</param>
/// <param name="Thickness">Its thickness.</param>
public sealed record LayerRow(
    [In("name", "layer")] string Name,
    [In("t", "thickness", "in", Min = 0, Max = 10)] Length Thickness);

/// <summary>Input of <see cref="GripLength"/>.</summary>
/// <param name="Layers">Everything between head and nut but the washers.</param>
/// <param name="Washers">Total thickness of the washers, under the nut.</param>
/// <param name="Nut">Height of the nut.</param>
/// <param name="ThreadsPerInch">Threads per inch.</param>
/// <param name="Bolt">Bolt of the table, such as AN3-5.</param>
/// <param name="Grip">Grip of the bolt.</param>
/// <param name="Length">Its overall length under the head.</param>
public sealed record GripLengthInput(
    [In("layers", "layers between head and nut, washers not counted")] Sequence<LayerRow> Layers,
    [In("tw", "total thickness of the washers under the nut", "in", Min = 0, Max = 1)] Length Washers,
    [In("hn", "height of the nut", "in", Min = 0.02, Max = 2)] Length Nut,
    [In("tpi", "threads per inch", Min = 4, Max = 100)] double ThreadsPerInch,
    [In("bolt", "bolt of the table, such as AN3-5", Default = "none")] string Bolt = "",
    [In("g", "grip of the bolt", "in", Min = 0, Max = 10, Default = "by the bolt")] Length? Grip = null,
    [In("L", "length of the bolt under the head", "in", Min = 0.05, Max = 12, Default = "by the bolt")] Length? Length = null);

/// <summary>Grip of a bolt against its stack-up: no threads in the hole, no shank in the nut, washers at most 1/8 in, at least one thread through the nut.</summary>
/// <remarks>Check value: AN3-5 (grip .250 in, length .656 in, as a supplier lists them) through .250 in, one washer .063 in, nut .250 in: .093 in, three threads of 32 per inch, through.</remarks>
public sealed class GripLength : ICalculation<GripLengthInput>
{
    private static readonly TableFile Table = TableFile.Load("bolt-grips");
    private static readonly Source Rule = StructureSources.Repair("7-37");
    private static readonly Source Threads = new("Builder's guidance", "", "at most 1.5 threads in the material", Basis.CommonPractice);

    /// <inheritdoc/>
    public static CalculationInfo<GripLengthInput> Info { get; } = new(
        "grip-length", "Grip of a bolt", Discipline.Structure,
        "Whether a bolt's grip and length suit the stack it clamps", "layers='skin,0.040 in;doubler,0.050 in;rail,0.160 in' tw='0.063 in' hn='0.25 in' tpi=32 bolt=AN3-5", Rule);

    /// <inheritdoc/>
    public static Sheet Run(GripLengthInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var listed = Find(input.Bolt);
        if (listed.WhyNot is { } why && (input.Grip is null || input.Length is null))
        {
            s.CannotTell(why);
            return;
        }

        var stack = s.Step("S", "stack, which is the grip wanted", "sum of the layers", new Length(input.Layers.Sum(l => l.Thickness.Si)), "in", Rule);
        var grip = s.Step("G", "grip of the bolt", input.Grip is null ? "by the bolt" : "g", input.Grip ?? listed.Value.Grip, "in", input.Grip is null ? listed.Source : null);
        var length = s.Step("Lb", "length of the bolt", input.Length is null ? "by the bolt" : "L", input.Length ?? listed.Value.Length, "in", input.Length is null ? listed.Source : null);
        if (length <= grip)
        {
            s.CannotTell("The bolt is no longer than its grip: it has no thread.");
            return;
        }

        s.Check("shank clear of the nut", grip.As("in"), Sense.AtMost, (stack + input.Washers).As("in"), "the nut must not run out of thread before it clamps", Rule);
        var inHole = s.Step("th", "threads in the hole", "(S − G) · tpi, not below 0", Math.Max(0, (stack - grip).In("in") * input.ThreadsPerInch));
        s.Check("threads in the hole", Measure.Number(inHole), Sense.AtMost, Measure.Number(1.5), "threads bear and cut: grip equal to the stack is wanted", Threads, Verdict.Caution);
        s.Check("washers", input.Washers.As("in"), Sense.AtMost, Length.Of(0.125, "in").As("in"), "washers 1/8 in in all at most", Rule);
        var through = s.Step("o", "bolt beyond the nut", "Lb − S − tw − hn", length - stack - input.Washers - input.Nut, "in");
        var threads = s.Step("no", "threads beyond the nut", "o · tpi", through.In("in") * input.ThreadsPerInch);
        s.Check("threads through the nut", Measure.Number(threads), Sense.AtLeast, Measure.Number(1), "one thread at least through the nut", StructureSources.Repair("7-37 and 7-64"));
        s.Caution("Washers under the head move the shank out of the hole: put them under the nut. A short stack on an anchor nut is shimmed below it.");
        s.DeferToApprovedData();
    });

    /// <summary>Grip and length of "AN3-5" and alike.</summary>
    public static Looked<(Length Grip, Length Length)> Find(string bolt)
    {
        ArgumentNullException.ThrowIfNull(bolt);
        var parts = bolt.Split('-');
        if (parts.Length == 2 && parts[0].StartsWith("AN", StringComparison.Ordinal) && Number(parts[0][2..]) is { } series && Number(parts[1]) is { } dash)
        {
            foreach (var row in Enumerable.Range(0, Table.Rows.Length).Where(r => Table.Rows[r][0] == series && Table.Rows[r][1] == dash))
            {
                return new((Length.Of(Table.Rows[row][2]!.Value, "in"), Length.Of(Table.Rows[row][3]!.Value, "in")), Table.SourceOf(row));
            }
        }

        return new(default, Table.Source, $"The table has no bolt '{bolt}': give grip g and length L from its standard.");
    }

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
