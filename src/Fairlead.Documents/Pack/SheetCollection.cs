using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>Every sheet with its working: by kind of subject, and there by subject.</summary>
internal static class SheetCollection
{
    public static IEnumerable<Block> Of(Assessment assessment)
    {
        yield return new PageBreak();
        yield return new Heading(1, "Sheets with working");
        var sheets = assessment.Sheets.ToArray();
        if (sheets.Length == 0)
        {
            yield return new Paragraph("There is no sheet: nothing in this job was worked out.");
            yield break;
        }

        yield return new Paragraph(
            "Each formula is followed by the same formula with its numbers and by its value, so that it can be checked by hand. Margins are positive where something is left. "
            + "The name at the right of a heading is the subject by which findings and concessions refer to the sheet. A long table that stands on an earlier sheet in the same words is referred to by that name.");
        yield return new NarrowColumns();
        Dictionary<string, string> printed = new(StringComparer.Ordinal);
        foreach (var block in sheets.GroupBy(s => Part(s.Subject, 0), StringComparer.Ordinal).SelectMany(kind => Kind(kind.Key, kind, printed)))
        {
            yield return block;
        }

        yield return new FullWidth();
    }

    private static IEnumerable<Block> Kind(string kind, IEnumerable<SubjectSheet> sheets, Dictionary<string, string> printed)
    {
        yield return new Heading(2, Plural(kind));
        foreach (var subject in sheets.GroupBy(s => Part(s.Subject, 1), StringComparer.Ordinal))
        {
            // The sheets of weight and balance are of the aircraft; all others are of something that has a name.
            var named = kind != "balance";
            if (named)
            {
                yield return new Heading(3, $"{Figures.Capital(kind)} {subject.Key}", Brief: subject.Key);
            }

            foreach (var block in subject.SelectMany(s => SheetBlocks.Of(s.Sheet, named ? 4 : 3, named ? null : $"{Figures.Capital(subject.Key.Replace('-', ' '))}: {s.Sheet.Title}", s.Subject, printed)))
            {
                yield return block;
            }
        }
    }

    private static string Part(string subject, int index) => subject.Split('/') is var parts && index < parts.Length ? parts[index] : "";

    private static string Plural(string kind) => kind switch
    {
        "circuit" => "Circuits",
        "feed" => "Power feeds",
        "bundle" => "Bundles",
        "segment" => "Raceway segments",
        "balance" => "Weight and balance",
        "load" => "Loads on sources of power",
        "feeder" => "Main feeders",
        "breaker" => "Circuit breakers",
        "battery" => "Batteries",
        "antenna" => "Antennas",
        "radio" => "Radios",
        "ramp" => "Ramp tests",
        "scenario" => "Traffic scenarios",
        "equipment" => "Equipment",
        "zone" => "Zones",
        "structure" => "Structure",
        "network" => "Voltages in each condition",
        "connector" => "Connectors",
        "net" => "Lines of data buses",
        "ground" => "Ground studs",
        _ => Figures.Capital(kind),
    };
}
