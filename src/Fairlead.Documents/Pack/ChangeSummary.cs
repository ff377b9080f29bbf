using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>What comes out and what goes in.</summary>
internal static class ChangeSummary
{
    public static IEnumerable<Block> Of(Assessment assessment)
    {
        var (change, parts) = (assessment.Job.Change, assessment.Job.Parts);
        yield return new Heading(1, "Change summary");
        yield return new Paragraph(change.Title);
        yield return List("Comes out", assessment.Equipment.Where(e => e.Action == ListAction.Removed).Select(e => Line(e.Id, e.Name, e.Place)));
        yield return List("Goes in", assessment.Equipment.Where(e => e.Action == ListAction.Fitted).Select(e => Line(e.Id, e.Name, e.Place)));
        yield return new KeyValues(
        [
            new("Circuits", Count(change.Circuits)),
            new("Power feeds", Count(change.Power)),
            new("New breakers", Names(change.Breakers, b => $"{b.Name} ({parts.Breakers?.Find(b.Part)?.Rating.As("A").ToString() ?? b.Part}) on {b.Bus}")),
            new("New ground studs", Names(change.Grounds, g => g.Id)),
            new("New joints", Names(change.Joints, j => j.Id)),
            new("Wire family", change.Wiring.Family),
        ]);
        if (change.Settings is { Count: > 0 } settings)
        {
            yield return new Table(
                [new("Setting to verify"), new("Item"), new("Expected")],
                settings.Select(s => (Sequence<Cell>)[s.Pin.Length == 0 ? s.Name : $"{s.Name}, strap at {s.Pin}", s.Item, s.Expected]).ToSequence());
        }
    }

    private static Table List(string title, IEnumerable<Sequence<Cell>> lines)
    {
        Sequence<Sequence<Cell>> rows = lines.ToSequence();
        return new Table(
            [new("Item"), new("Name"), new("FS, in", Right: true), new("BL, in", Right: true), new("WL, in", Right: true)],
            rows.Count > 0 ? rows : [["–", "nothing", "", "", ""]],
            title);
    }

    private static Sequence<Cell> Line(string id, string name, Place place) =>
        [new Cell(id, Strong: true), name, Figures.Fixed(place.Fs, "in", 1), Figures.Fixed(place.Bl, "in", 1), Figures.Fixed(place.Wl, "in", 1)];

    private static string Count<T>(Catalog<T>? catalog)
        where T : class, IEntity => NumberFormat.Text(catalog?.Count ?? 0);

    private static string Names<T>(Catalog<T>? catalog, Func<T, string> name)
        where T : class, IEntity => catalog is { Count: > 0 } ? string.Join("; ", catalog.Select(name)) : "none";
}
