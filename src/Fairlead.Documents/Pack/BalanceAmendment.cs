using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The amendment to the weight and balance report and to the equipment list. It begins on a page of its own: it is filed with the aircraft's records.</summary>
internal static class BalanceAmendment
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        var (weighing, order) = (assessment.Job.Aircraft.Weighing, assessment.Job.Order);
        var record = $"report {weighing.Reference} of {Figures.Day(weighing.Date)}";
        yield return new PageBreak();
        yield return new Heading(1, "Weight and balance");
        yield return new Paragraph(
            $"Amends {record} by work order {order.Number}, revision {order.Revision}. From the release of the change these figures supersede the empty weight of that report: "
            + "mark it superseded, with the date and this work order, and keep it with the aircraft's records. Stations are positive aft, buttock lines to the right, waterlines up.");
        yield return Amendment(assessment, options);
        if (assessment.EmptyAfter is not { } after)
        {
            yield return new Paragraph("The empty weight after the change cannot be told; the findings say why. The record stands as it was.", Voice.Caution);
        }
        else
        {
            yield return new KeyValues([.. Summary(assessment, after, options)]);
        }

        foreach (var block in LoadingLimits.Of(assessment, options))
        {
            yield return block;
        }

        yield return new Heading(2, "Equipment list");
        yield return Equipment(assessment, options);
    }

    private static Table Amendment(Assessment assessment, PackOptions options)
    {
        var before = assessment.EmptyBefore;
        var rows = new List<Sequence<Cell>> { Row("Empty aircraft before", new ItemRow("", before.Mass, before.Fs, before.Bl, before.Wl), 1, options, strong: true) };
        rows.AddRange(assessment.MassOut.Select(i => Row("out: " + i.Name, i, -1, options)));
        rows.AddRange(assessment.MassIn.Select(i => Row("in: " + i.Name, i, 1, options)));
        if (assessment.EmptyAfter is { } after)
        {
            rows.Add(Row("Empty aircraft after", new ItemRow("", after.Mass, after.Fs, after.Bl, after.Wl), 1, options, strong: true));
        }

        Column Arm(string axis) => new($"{axis}, {options.ArmUnit}", Right: true);
        var moment = new Column($"Moment, {options.MomentUnit}", Right: true);
        return new Table([new(""), new($"Mass, {options.MassUnit}", Right: true), Arm("FS"), moment, Arm("BL"), moment, Arm("WL"), moment], rows.ToSequence(), "Amendment to the empty weight");
    }

    private static Sequence<Cell> Row(string name, ItemRow item, int sign, PackOptions options, bool strong = false)
    {
        IEnumerable<string> Axis(Length? arm) =>
        [
            Figures.Fixed(arm, options.ArmUnit, 2),
            arm is { } x ? Figures.Fixed(new MassMoment(sign * item.Mass.Si * x.Si), options.MomentUnit, 1) : "–",
        ];
        string[] cells = [name, Figures.Fixed(sign * item.Mass, options.MassUnit, 2), .. Axis(item.Fs), .. Axis(item.Bl), .. Axis(item.Wl)];
        return cells.Select(c => new Cell(c, Strong: strong)).ToSequence();
    }

    private static IEnumerable<KeyValue> Summary(Assessment assessment, EmptyWeight after, PackOptions options)
    {
        var before = assessment.EmptyBefore;
        yield return new("Change of empty weight", Signed(after.Mass - before.Mass, options.MassUnit));
        yield return new("Change of its centre of gravity", $"{Signed(after.Fs - before.Fs, options.ArmUnit)} of station");
        if (assessment.Job.Aircraft.Envelope.Mac is { } mac)
        {
            string Chord(EmptyWeight empty) => Figures.Fixed(100 * ((empty.Fs - mac.LeadingEdge) / mac.Length), 2) + " %";
            yield return new("On the mean aerodynamic chord", $"{Chord(before)} before, {Chord(after)} after");
        }

        if (assessment.Sheet("balance/negligible") is { } negligible)
        {
            yield return new("Negligible change", Said(negligible, "yes", "no"));
        }

        if (assessment.Sheet("balance/revision") is { } revision)
        {
            yield return new("New figures for the mass record", Said(revision, "not called for by size alone; this amendment gives them in any case", "called for: this amendment gives them"));
        }
    }

    private static string Said(Sheet sheet, string holds, string not) =>
        $"{(sheet.Verdict switch { Verdict.Holds => holds, Verdict.CannotTell => "cannot tell", _ => not })} ({sheet.Sources[0]})";

    private static string Signed<TKind>(Quantity<TKind> change, string unit)
        where TKind : IKind => (change.Si > 0 ? "+" : "") + Figures.With(change, unit, 2);

    private static Table Equipment(Assessment assessment, PackOptions options) => new(
        [
            new("Item"), new("Name"), new("Category"), new($"Mass, {options.MassUnit}", Right: true),
            new($"FS, {options.ArmUnit}", Right: true), new($"BL, {options.ArmUnit}", Right: true), new($"WL, {options.ArmUnit}", Right: true), new("After the change"),
        ],
        (assessment.Equipment.IsEmpty ? [["–", "The equipment list is empty.", "", "", "", "", "", ""]] : assessment.Equipment.Select(e => (Sequence<Cell>)
        [
            new Cell(e.Id, Strong: true), e.Name, Words.Kebab(e.Category.ToString()), Figures.Fixed(e.Mass, options.MassUnit, 2),
            Figures.Fixed(e.Place.Fs, options.ArmUnit, 1), Figures.Fixed(e.Place.Bl, options.ArmUnit, 1), Figures.Fixed(e.Place.Wl, options.ArmUnit, 1),
            new Cell(Words.Kebab(e.Action.ToString()), Strong: e.Action != ListAction.Kept),
        ])).ToSequence());
}
