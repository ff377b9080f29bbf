using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>What comes out and what goes in: items, antennas, power, settings, tests.</summary>
internal static class ChangeSummary
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        var change = assessment.Job.Change;
        yield return new Heading(1, "Change summary");
        yield return new Paragraph(change.Title);
        yield return Items("Comes out", assessment, ListAction.Removed, options, e => !IsAntenna(assessment.Job, e.Id));
        yield return Items("Goes in", assessment, ListAction.Fitted, options, e => !IsAntenna(assessment.Job, e.Id));
        yield return Items("Antennas", assessment, null, options, e => e.Action != ListAction.Kept && IsAntenna(assessment.Job, e.Id));
        yield return Power(assessment);
        yield return new KeyValues(
        [
            new("Circuits", Count(change.Circuits)),
            new("New breakers", Names(change.Breakers, b => $"{b.Id} '{b.Name}' ({assessment.Job.Parts.Breakers?.Find(b.Part)?.Rating.As("A").ToString() ?? b.Part}) on {b.Bus}")),
            new("New ground studs", Names(change.Grounds, g => g.Id)),
            new("New joints", Names(change.Joints, j => $"{j.Id} ({Words.Kebab(j.Kind.ToString())})")),
            new("Wire family", change.Wiring.Family),
        ]);
        yield return Settings(change.Settings);
        yield return Tests(change.Tests);
    }

    private static bool IsAntenna(Job job, string id) => job.Aircraft.Antennas?.Find(id) is not null || job.Change.Antennas?.Find(id) is not null;

    private static Block Items(string title, Assessment assessment, ListAction? action, PackOptions options, Func<EquipmentLine, bool> only)
    {
        var lines = assessment.Equipment.Where(e => (action is null || e.Action == action) && only(e)).ToArray();
        return lines.Length == 0 ? new Paragraph($"{title}: nothing.") : new Table(
            [
                new("Item"), new("Name"), new($"Mass, {options.MassUnit}", Right: true),
                new($"FS, {options.ArmUnit}", Right: true), new($"BL, {options.ArmUnit}", Right: true), new($"WL, {options.ArmUnit}", Right: true),
            ],
            lines.Select(e => (Sequence<Cell>)
            [
                new Cell(e.Id, action is null ? Words.Kebab(e.Action.ToString()) : "", Strong: true), e.Name, Figures.Fixed(e.Mass, options.MassUnit, 2),
                Figures.Fixed(e.Place.Fs, options.ArmUnit, 1), Figures.Fixed(e.Place.Bl, options.ArmUnit, 1), Figures.Fixed(e.Place.Wl, options.ArmUnit, 1),
            ]).ToSequence(),
            title);
    }

    private static Block Power(Assessment assessment)
    {
        var (change, aircraft) = (assessment.Job.Change, assessment.Job.Aircraft);
        string Bus(string breaker) => assessment.Job.BreakerOf(breaker)?.Bus ?? "–";
        return change.Power is not { Count: > 0 } feeds ? new Paragraph("Power: no new power input.") : new Table(
            [new("Feed"), new("Input"), new("Breaker"), new("Bus"), new("State by operating condition"), new("Shed after", Right: true)],
            feeds.Select(f => (Sequence<Cell>)
            [
                new Cell(f.Id, Strong: true), $"{f.Item} {f.Input}", f.Breaker, Bus(f.Breaker),
                string.Join("; ", f.Conditions.GroupBy(c => c.State, StringComparer.Ordinal).Select(s => $"{s.Key}: {string.Join(", ", s.Select(c => c.Condition))}")),
                f.ShedAt is { } time ? time.As("min").ToString().Replace(' ', '\u00a0') : "not\u00a0shed",
            ]).ToSequence(),
            "Power");
    }

    private static Block Settings(Catalog<Setting>? settings) => settings is not { Count: > 0 } ? new Paragraph("Settings to verify: none.") : new Table(
        [new("Setting to verify"), new("Item"), new("Expected")],
        settings.Select(s => (Sequence<Cell>)[s.Pin.Length == 0 ? s.Name : $"{s.Name}, strap at {s.Pin}", s.Item, s.Expected]).ToSequence(),
        "Settings");

    private static Block Tests(Catalog<ExtraTest>? tests) => tests is not { Count: > 0 } ? new Paragraph("Tests stated with the change: none.") : new Table(
        [new("Test"), new("What is tested"), new("Expected")],
        tests.Select(t => (Sequence<Cell>)[new Cell(t.Id, Strong: true), t.Name, new Cell(t.Expected, t.Source)]).ToSequence(),
        "Tests stated with the change");

    private static string Count<T>(Catalog<T>? catalog)
        where T : class, IEntity => catalog is { Count: > 0 } ? NumberFormat.Text(catalog.Count) : "none";

    private static string Names<T>(Catalog<T>? catalog, Func<T, string> name)
        where T : class, IEntity => catalog is { Count: > 0 } ? string.Join("; ", catalog.Select(name)) : "none";
}
