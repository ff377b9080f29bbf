using System.Globalization;

namespace Fairlead.Records;

/// <summary>Why a panel may not be closed: whatever is still open behind it.</summary>
internal static class Closing
{
    public static IEnumerable<string> Of(Candidate c)
    {
        var panel = Kinds.IdOf(c.Entry.Subject);
        foreach (var subject in c.State.Open)
        {
            if (Behind(c, subject, panel) is { } what)
            {
                yield return what;
            }
        }

        foreach (var task in c.Register.Required.Tasks.Where(t => t.Sealant && t.Panels.Contains(panel)))
        {
            if (Mixing.Wet(c, task.Id) is { } wet)
            {
                yield return $"The sealant of {task.Id} behind {panel}, mix {wet.Mix}, is not cured until {Instant.Text(wet.Cured)}.";
            }
        }

        var (taken, back) = (c.State.Last(c.Entry.Subject, "opened")?.Payload.Number("fasteners"), c.Entry.Payload.Number("fasteners"));
        if (taken is not null && taken != back)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{taken} fasteners came out of {c.Entry.Subject} and {back ?? 0} are told to be back: tell how many, and raise a defect for one that is lost.");
        }
    }

    private static string? Behind(Candidate c, string subject, string panel)
    {
        var (kind, id) = (Kinds.ClassOf(subject), Kinds.IdOf(subject));
        var told = c.State.Standing(subject)!;
        var behind = Panels(c, kind, id, subject).Contains(panel, StringComparer.Ordinal);
        return !behind ? null : kind switch
        {
            "task" => $"Task {id} behind {panel} is not done: entry {told.Sequence.ToString(CultureInfo.InvariantCulture)}, {told.Kind} by {told.Who}.",
            "tool" => $"Tool {id} was carried in behind {panel} by {told.Who} and is not back.",
            "connector" => $"Connector {id} behind {panel} is unplugged.",
            "fastening" => $"Fastening {id} behind {panel} is loose or not torqued.",
            _ => null,
        };
    }

    private static IEnumerable<string> Panels(Candidate c, string kind, string id, string subject) =>
        c.State.Story(subject).Select(e => e.Payload.Text("behind")).Concat(kind == "task" ? c.Register.Required.Tasks.Where(t => t.Id == id).SelectMany(t => t.Panels) : []);
}
