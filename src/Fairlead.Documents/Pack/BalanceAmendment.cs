using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The amendment to the weight and balance report and to the equipment list, with the loadings on the envelope.</summary>
internal static class BalanceAmendment
{
    // Loadings closer than this are one mark with two names.
    private const double SamePlace = 0.05;

    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        var weighing = assessment.Job.Aircraft.Weighing;
        yield return new Heading(1, "Weight and balance");
        yield return new Paragraph($"From the weighing or amendment of {Figures.Day(weighing.Date)}, report {weighing.Reference}. Stations are positive aft.");
        yield return Amendment(assessment, options);
        if (assessment.EmptyAfter is null)
        {
            yield return new Paragraph("The empty weight after the change cannot be told; the findings say why.", Voice.Caution);
        }

        yield return new Heading(2, "Loadings");
        yield return new Figure(EnvelopePlot.Draw(View(assessment, options)), "Envelope with the empty aircraft and the extreme loadings after the change");
        if (!assessment.LoadingAfter.IsEmpty || !assessment.LoadingBefore.IsEmpty)
        {
            yield return Loadings(assessment, options);
        }

        yield return new Heading(2, "Equipment list");
        yield return Equipment(assessment, options);
    }

    private static Table Amendment(Assessment assessment, PackOptions options)
    {
        var before = assessment.EmptyBefore;
        List<(string Name, double Sign, Mass Mass, Length Fs)> lines =
        [
            .. assessment.Equipment.Where(e => e.Action == ListAction.Removed).Select(e => ($"{e.Id}, {e.Name}: removed", -1.0, e.Mass, e.Place.Fs)),
            .. assessment.Equipment.Where(e => e.Action == ListAction.Fitted).Select(e => ($"{e.Id}, {e.Name}: fitted", 1.0, e.Mass, e.Place.Fs)),
        ];
        var rows = new List<Sequence<Cell>> { Row("Empty aircraft before", before.Mass, before.Fs, options, strong: true) };
        rows.AddRange(lines.Select(l => Row(l.Name, l.Sign * l.Mass, l.Fs, options)));
        if (assessment.EmptyAfter is { } after)
        {
            // Wiring, contacts and other small parts: what the listed items leave between before and after.
            var mass = after.Mass - before.Mass - new Mass(lines.Sum(l => l.Sign * l.Mass.Si));
            var moment = (after.Mass.Si * after.Fs.Si) - (before.Mass.Si * before.Fs.Si) - lines.Sum(l => l.Sign * l.Mass.Si * l.Fs.Si);
            rows.Add(["Wiring and small parts, net", Figures.Fixed(mass, options.MassUnit, 2), "", Figures.Fixed(new MassMoment(moment), options.MomentUnit, 1)]);
            rows.Add(Row("Empty aircraft after", after.Mass, after.Fs, options, strong: true));
        }

        return new Table(
            [new(""), new($"Mass, {options.MassUnit}", Right: true), new($"Arm FS, {options.ArmUnit}", Right: true), new($"Moment, {options.MomentUnit}", Right: true)],
            rows.ToSequence(),
            "Amendment to the empty weight");
    }

    private static Sequence<Cell> Row(string name, Mass mass, Length arm, PackOptions options, bool strong = false) =>
    [
        new Cell(name, Strong: strong),
        new Cell(Figures.Fixed(mass, options.MassUnit, 2), Strong: strong),
        new Cell(Figures.Fixed(arm, options.ArmUnit, 2), Strong: strong),
        new Cell(Figures.Fixed(new MassMoment(mass.Si * arm.Si), options.MomentUnit, 1), Strong: strong),
    ];

    private static Table Loadings(Assessment assessment, PackOptions options)
    {
        IEnumerable<Sequence<Cell>> Rows(string when, IEnumerable<LoadingExtreme> loadings) => loadings.Select(l => (Sequence<Cell>)
        [
            l.Name, when, Figures.Fixed(l.Mass, options.MassUnit, 1), Figures.Fixed(l.Fs, options.ArmUnit, 2),
            new Cell(Figures.Fixed(l.Margin, options.ArmUnit, 2), Strong: l.Margin < Length.Zero),
            l.Margin < Length.Zero ? new Cell("outside", Mark: Verdict.Fails, Strong: true) : new Cell("inside", Mark: Verdict.Holds),
        ]);
        return new Table(
            [new("Extreme loading"), new("When"), new($"Mass, {options.MassUnit}", Right: true), new($"FS, {options.ArmUnit}", Right: true), new($"Margin, {options.ArmUnit}", Right: true), new("Envelope")],
            [.. Rows("before", assessment.LoadingBefore), .. Rows("after", assessment.LoadingAfter)],
            "Worst loadings that the limits allow");
    }

    private static EnvelopeView View(Assessment assessment, PackOptions options)
    {
        var aircraft = assessment.Job.Aircraft;
        BalancePoint At(EmptyWeight w) => new(w.Fs, w.Mass);
        var loadings = assessment.LoadingAfter
            .GroupBy(l => (Math.Round(l.Fs.In("in") / SamePlace), Math.Round(l.Mass.In("lb") / SamePlace)))
            .Select(g => new EnvelopeMark(string.Join("; ", g.Select(l => l.Name)), new BalancePoint(g.First().Fs, g.First().Mass), EnvelopeMarkKind.Loading, g.Any(l => l.Margin < Length.Zero)));
        return new EnvelopeView(
            $"{aircraft.Registration}: envelope and loadings",
            [new EnvelopeOutline($"{aircraft.Certification.Category} category", aircraft.Envelope.Points.Select(p => new BalancePoint(p.Fs, p.Mass)).ToSequence())],
            [
                new EnvelopeMark("empty before", At(assessment.EmptyBefore), EnvelopeMarkKind.EmptyBefore),
                .. assessment.EmptyAfter is { } after ? [new EnvelopeMark("empty after", At(after), EnvelopeMarkKind.EmptyAfter)] : Array.Empty<EnvelopeMark>(),
                .. loadings,
            ],
            ArmUnit: options.ArmUnit, MassUnit: options.MassUnit);
    }

    private static Table Equipment(Assessment assessment, PackOptions options) => new(
        [new("Item"), new("Name"), new("Category"), new($"Mass, {options.MassUnit}", Right: true), new($"FS, {options.ArmUnit}", Right: true), new("After the change")],
        assessment.Equipment.Select(e => (Sequence<Cell>)
        [
            new Cell(e.Id, Strong: true), e.Name, Words.Kebab(e.Category.ToString()), Figures.Fixed(e.Mass, options.MassUnit, 2), Figures.Fixed(e.Place.Fs, options.ArmUnit, 1),
            new Cell(Words.Kebab(e.Action.ToString()), Strong: e.Action != ListAction.Kept),
        ]).ToSequence());
}
