using Fairlead.Calculations;
using Fairlead.Documents.Tables;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Documents;

/// <summary>The kit: whether the aircraft may be opened, what is missing, and every line with how its quantity came about.</summary>
internal static class KitSection
{
    public static IEnumerable<Block> Of(KitList kit)
    {
        yield return PageBreak.Soft;
        yield return new Heading(1, "Kit");
        yield return new VerdictLine(kit.IsComplete ? Verdict.Holds : Verdict.Fails, kit.Verdict, Large: true);
        if (!kit.IsComplete)
        {
            yield return new Bullets(kit.Missing.ToSequence());
        }

        yield return new Paragraph($"{(kit.UseDate is { } use ? $"Everything is needed on {Figures.Day(use)}, {kit.UseDateOrigin}." : "The day of use is not stated.")} Shelf lives and calibrations are judged on the last day of use. Each quantity is what the change uses, and a spare by its rule.", Voice.Remark);
        foreach (var kind in kit.Lines.GroupBy(l => l.Kind))
        {
            yield return new Heading(2, Figures.Capital(Title(kind.Key)));
            yield return new Table(
                [new("Part"), new("What"), new("Used", Right: true), new("Spare", Right: true), new("On hand", Right: true), new("Unit"), new("Needed on"), new("For", Most: 50), new("State")],
                kind.Select(Line).ToSequence());
        }
    }

    private static Sequence<Cell> Line(KitLine l) =>
    [
        new Cell(l.PartText, Strong: true), new Cell(l.Name, string.Join('\n', new[] { l.How, l.Remark }.Where(t => t.Length > 0))), Number(l.Used), Number(l.Spare), l.OnHand is { } hand ? Number(hand) : "–", l.Unit, l.NeededOn is { } on ? Figures.Day(on) : "–", string.Join(", ", l.For),
        new Cell(SupplyTables.State(l.State), l.OrderBy is { } by ? $"order by {Figures.Day(by)}" : "", l.State switch { KitState.Covered => Verdict.Holds, KitState.Short or KitState.CalibrationEnds => Verdict.Fails, _ => Verdict.CannotTell }, l.State == KitState.Short),
    ];

    private static string Number(double value) => NumberFormat.Text(Math.Round(value, 2));

    private static string Title(KitKind kind) => kind switch
    {
        KitKind.Equipment => "equipment",
        KitKind.Antenna => "antennas",
        KitKind.Wire => "wire, cable and coax",
        KitKind.Plug => "sealing plugs",
        KitKind.Terminal => "terminals and splices",
        KitKind.Junction => "terminal boards, ground studs and disconnects",
        KitKind.Shield => "shield terminations",
        KitKind.Marking => "sleeves and labels",
        KitKind.AnchorNut => "anchor nuts",
        KitKind.Drill => "drills and countersinks",
        KitKind.TestGear => "test gear",
        KitKind.Material => "materials of tasks",
        _ => Words.Kebab(kind.ToString()) + "s",
    };
}
