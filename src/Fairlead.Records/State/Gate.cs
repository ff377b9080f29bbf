using System.Globalization;

namespace Fairlead.Records;

/// <summary>Something that keeps the release gate shut.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Text">What stands open, in plain words.</param>
/// <param name="Entry">The entry it rests on; null when there is none.</param>
public sealed record OpenItem(string Subject, string Text, long? Entry = null);

/// <summary>The release gate: shut until everything that was disturbed and everything that is required is accounted for. It opens by the log alone;
/// what the log was not told it does not know.</summary>
public static class Gate
{
    /// <summary>All that stands open; nothing when the gate is open.</summary>
    public static IReadOnlyList<OpenItem> WhatStandsOpen(HangarState state, Required required, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(required);
        return
        [
            .. state.Open.Select(subject => Standing(state.Standing(subject)!)),
            .. required.Tasks.SelectMany(task => Tasks(state, task)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) == "task" && required.Tasks.All(t => "task/" + t.Id != s)).SelectMany(s => Unsigned(state, s, independent: false)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) is "panel" or "defect").SelectMany(s => Unsigned(state, s, independent: false)),
            .. required.Controls.SelectMany(panel => Controls(state, panel)),
            .. required.Removed.SelectMany(id => Part(state, id, "removed", "still has to come out")),
            .. required.Fitted.SelectMany(id => Part(state, id, "fitted", "still has to go in")),
            .. required.Connectors.Where(id => state.Standing("connector/" + id) is null).Select(id => new OpenItem("connector/" + id, $"Connector {id} has to be plugged in, and the log does not say that it was.")),
            .. required.Tests.SelectMany(test => Test(state, test)),
            .. state.Subjects.SelectMany(subject => Timed(state, subject, now)),
            .. state.Unknown.Select(e => new OpenItem(e.Subject, string.Create(CultureInfo.InvariantCulture, $"Entry {e.Sequence} is of a kind this version does not know ('{e.Kind}'), so what it leaves open cannot be told."), e.Sequence)),
        ];
    }

    private static OpenItem Standing(Entry e)
    {
        var id = Kinds.IdOf(e.Subject);
        var text = (Kinds.ClassOf(e.Subject), e.Kind) switch
        {
            ("panel", _) => $"Panel {id} is open",
            ("connector", _) => $"Connector {id} is unplugged",
            ("fastening", _) => $"Fastening {id} is loose or not torqued",
            ("breaker", _) => $"Breaker {id} is pulled and tagged",
            ("tool", _) => $"Tool {id} is at the aircraft",
            ("task", "stopped") => $"Task {id} was left half done at '{e.Payload.Text("where")}'; next: {e.Payload.Text("next")}{Loose(e)}",
            ("task", _) => $"Task {id} is being worked on",
            ("defect", _) => $"Defect {id} is not cleared: {e.Payload.Text("text")}",
            ("radiation", _) => $"The permit to radiate {id} is not ended",
            _ => $"{e.Subject} is open",
        };
        return new OpenItem(e.Subject, string.Create(CultureInfo.InvariantCulture, $"{text} (entry {e.Sequence}, {e.Who}, {Instant.Text(e.At)})."), e.Sequence);
    }

    private static string Loose(Entry e) => e.Payload.Text("loose") is { Length: > 0 } loose ? $"; loose: {loose}" : "";

    private static IEnumerable<OpenItem> Tasks(HangarState state, RequiredTask task) =>
        state.Standing("task/" + task.Id) is null ? [new OpenItem("task/" + task.Id, $"Task {task.Id} ({task.Name}) was not started.")] : Unsigned(state, "task/" + task.Id, task.Independent);

    private static IEnumerable<OpenItem> Unsigned(HangarState state, string subject, bool independent)
    {
        if (state.IsOpen(subject) || state.Standing(subject) is not { } last)
        {
            yield break;
        }

        var signatures = state.Signatures(subject);
        if (signatures.Count == 0)
        {
            yield return new OpenItem(subject, $"{Name(subject)} was {last.Kind} by {last.Who} and nobody has signed for it.", last.Sequence);
        }
        else if (independent && !Independent(signatures))
        {
            yield return new OpenItem(subject, $"{Name(subject)} needs the inspection of a second person.", last.Sequence);
        }
    }

    private static IEnumerable<OpenItem> Controls(HangarState state, string panel)
    {
        if (state.Standing("panel/" + panel) is { Kind: "closed" } closed && !Independent(state.Signatures("controls/" + panel)))
        {
            yield return new OpenItem("controls/" + panel, $"The flight controls behind panel {panel} have to be checked, full, free and in the correct sense, and signed by two persons since it was closed.", closed.Sequence);
        }
    }

    private static bool Independent(IReadOnlyList<Entry> signatures) =>
        signatures.Any(s => s.Payload.Text("role") == "work") && signatures.Any(s => s.Payload.Text("role") == "inspection");

    private static IEnumerable<OpenItem> Part(HangarState state, string id, string kind, string what)
    {
        if (state.Last("part/" + id, "removed", "fitted")?.Kind != kind)
        {
            yield return new OpenItem("part/" + id, $"{id} {what}.");
        }
    }

    private static IEnumerable<OpenItem> Test(HangarState state, RequiredTest test)
    {
        var subject = "test/" + test.Id;
        if (state.Last(subject, "measured") is not { } measured)
        {
            yield return new OpenItem(subject, $"Test {test.Id} has no result: {test.Name}.");
            yield break;
        }

        var (value, unit) = (measured.Payload.Number("value")!.Value, measured.Payload.Text("unit"));
        if (test.Unit.Length > 0 && unit != test.Unit)
        {
            yield return new OpenItem(subject, $"Test {test.Id} was measured in {unit} and its limit is in {test.Unit}: it cannot be told whether it passed.", measured.Sequence);
        }
        else if (value < test.Least || value > test.Most)
        {
            yield return new OpenItem(subject, string.Create(CultureInfo.InvariantCulture, $"Test {test.Id} gave {value} {unit}, which is {(value < test.Least ? $"below {test.Least}" : $"above {test.Most}")}: {test.Name}."), measured.Sequence);
        }
        else if (state.Signatures(subject).Count == 0)
        {
            yield return new OpenItem(subject, $"The result of test {test.Id} is not signed.", measured.Sequence);
        }
    }

    private static IEnumerable<OpenItem> Timed(HangarState state, string subject, DateTimeOffset now)
    {
        if (Kinds.ClassOf(subject) == "sealant" && state.Last(subject, "mixed") is { } mixed && mixed.Payload.Time("cured") > now)
        {
            yield return new OpenItem(subject, $"Sealant {Kinds.IdOf(subject)} is not cured until {mixed.Payload.Text("cured")}.", mixed.Sequence);
        }

        if (Kinds.ClassOf(subject) == "finding" && state.Last(subject, "conceded") is { } conceded && conceded.Payload.Time("until") < now)
        {
            yield return new OpenItem(subject, $"The concession for {Kinds.IdOf(subject)} ended at {conceded.Payload.Text("until")}.", conceded.Sequence);
        }
    }

    private static string Name(string subject) => $"{char.ToUpperInvariant(subject[0])}{Kinds.ClassOf(subject)[1..]} {Kinds.IdOf(subject)}";
}
