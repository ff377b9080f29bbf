using Fairlead.Calculations;

namespace Fairlead.Records;

/// <summary>Why an entry about something the job does not know is not taken: under a mistyped name it would stay open for good, and what was meant would have
/// no entry. What stands in the log already, because it was imported or the job was changed since, can still be told of and ended.</summary>
internal static class Naming
{
    public static IEnumerable<string> Of(Candidate c)
    {
        var (entry, kind, id) = (c.Entry, Kinds.ClassOf(c.Entry.Subject), Kinds.IdOf(c.Entry.Subject));
        if (!c.State.Subjects.Contains(entry.Subject) && Unknown(kind, id, Names(c.Register, kind, entry)) is { } stranger)
        {
            yield return stranger;
        }

        if (entry.Payload.Text("behind") is { Length: > 0 } panel && !c.State.Subjects.Contains("panel/" + panel) && Unknown("panel", panel, c.Register.Panels) is { } place)
        {
            yield return place;
        }

        if (kind == "test" && Results.Is(entry) && c.Register.Required.Tests.FirstOrDefault(t => t.Id == id) is { } test && Line(test, entry.Payload.Text("line")) is { } line)
        {
            yield return line;
        }
    }

    // Of a class that the job does not list by name, as defects and mixes, every name is a new one.
    private static IEnumerable<string> Names(Register register, string of, Entry entry) => of switch
    {
        "panel" => register.Panels,
        "part" when entry.Kind is "removed" or "fitted" => register.Items,
        "tool" when entry.Kind == "carried-in" && entry.Payload.Text("what").Trim().Length == 0 => register.Tools.Select(t => t.Id).Concat(register.Instruments.Select(i => i.Id)).Concat(register.Gear),
        "task" => register.Required.Tasks.Select(t => t.Id),
        "test" => register.Required.Tests.Select(t => t.Id),
        _ => [],
    };

    private static string? Unknown(string kind, string id, IEnumerable<string> names)
    {
        string[] known = [.. names];
        return known.Length == 0 || known.Contains(id, StringComparer.Ordinal) ? null
            : $"This job knows no {kind} '{id}'.{(Words.Nearest(id, known) is { } near ? $" Did you mean '{kind}/{near}'?" : "")} {Otherwise(kind)}";
    }

    private static string Otherwise(string kind) => kind switch
    {
        "panel" => "A panel that is missing is described in aircraft.yaml first, so that it is known whether flight controls are behind it.",
        "part" => "An item that is missing is added to the equipment list or to the change first.",
        "tool" => "A tool that the job does not know is carried in with what it is, 'what=torch', and counted out again by the same name.",
        "task" => "Work that is missing is added to the tasks of change.yaml first; what is found on the way is raised as a defect.",
        _ => "A test that is missing is added to the tests of change.yaml first.",
    };

    // A measurement beyond the card, which serves to find a fault, names its terminals: A+B>C.
    private static string? Line(RequiredTest test, string line)
    {
        string[] known = [.. test.Lines.Select(l => l.Id)];
        return known.Contains(line, StringComparer.Ordinal) || line.Contains('>', StringComparison.Ordinal) || (line.Length == 0 && known.Length <= 1) ? null
            : line.Length == 0 ? $"Test {test.Id} has {NumberFormat.Text(known.Length)} lines: tell which, 'line={known[0]}'."
            : $"Test {test.Id} has no line '{line}'.{(Words.Nearest(line, known) is { } near ? $" Did you mean '{near}'?" : "")}";
    }
}
