using System.Globalization;

namespace Fairlead.Records;

/// <summary>Something that keeps the release gate shut.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Text">What stands open, in plain words.</param>
/// <param name="Entry">The entry it rests on; null when there is none.</param>
public sealed record OpenItem(string Subject, string Text, long? Entry = null)
{
    /// <summary>What stands open, in plain words and on one line, whatever the log holds.</summary>
    public string Text { get; } = PlainText.Shown(Text);
}

/// <summary>The release gate: shut until everything that was disturbed and everything that is required is accounted for. It opens by the log alone;
/// what the log was not told it does not know.</summary>
public static class Gate
{
    private static readonly Required Nothing = new();

    /// <summary>All that stands open; nothing when the gate is open.</summary>
    public static IReadOnlyList<OpenItem> WhatStandsOpen(HangarState state, Required required, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(required);
        return
        [
            .. OfAnother(state, required.Job) is { } other ? [new OpenItem("release/" + required.Job, other)] : Array.Empty<OpenItem>(),
            .. state.Open.Select(subject => Standing(state.Standing(subject)!)),
            .. required.Tasks.SelectMany(task => Tasks(state, task)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) == "task" && required.Tasks.All(t => "task/" + t.Id != s)).SelectMany(s => Unsigned(state, s, independent: false)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) is "finding" or "clock").SelectMany(s => Accepted(state, s)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) is "panel" or "defect").SelectMany(s => Unsigned(state, s, independent: false)),
            .. required.Controls.SelectMany(panel => Controls(state, panel)),
            .. required.Removed.SelectMany(id => Part(state, id, "removed", "still has to come out")),
            .. required.Fitted.SelectMany(id => Part(state, id, "fitted", "still has to go in")),
            .. required.Connectors.Where(id => state.Standing("connector/" + id) is null).Select(id => new OpenItem("connector/" + id, $"Connector {id} has to be plugged in, and the log does not say that it was.")),
            .. required.Tests.SelectMany(test => Results.WhatStandsOpen(state, test)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) is "line" or "connector").SelectMany(subject => Side(state, required, subject)),
            .. Verified(state, required),
            .. required.Tasks.SelectMany(Against),
            .. Hindsight.Of(state, required).Where(o => !Conceded(state, o, now)),
            .. Strangers(state, required),
            .. state.Subjects.SelectMany(subject => Timed(state, subject, now)),
            .. state.Unknown.Select(Unknown),
        ];
    }

    /// <summary>What stands open by the log alone, for when the job cannot be read: what was begun, opened or taken apart and is not ended or signed. What the job requires is not in it.</summary>
    public static IReadOnlyList<OpenItem> WhatWasLeft(HangarState state, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(state);
        return
        [
            .. state.Open.Select(subject => Standing(state.Standing(subject)!)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) is "task" or "panel" or "defect").SelectMany(s => Unsigned(state, s, independent: false)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) == "test" && state.Signatures(s).Count == 0).Select(s => Results.Last(state, s)).OfType<Entry>()
                .Select(e => new OpenItem(e.Subject, $"Test {Kinds.IdOf(e.Subject)} has results, the last by {e.Who}, and nobody has signed for it.", e.Sequence)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) is "finding" or "clock").SelectMany(s => Accepted(state, s)),
            .. state.Subjects.Where(s => Kinds.ClassOf(s) == "line").SelectMany(s => Side(state, Nothing, s)),
            .. state.Subjects.SelectMany(s => Timed(state, s, now)),
            .. state.Unknown.Select(Unknown),
        ];
    }

    private static OpenItem Unknown(Entry e) =>
        new(e.Subject, string.Create(CultureInfo.InvariantCulture, $"Entry {e.Sequence} is of a kind this version does not know ('{e.Kind}'), so what it leaves open cannot be told."), e.Sequence);

    private static OpenItem Standing(Entry e)
    {
        var id = Kinds.IdOf(e.Subject);
        var text = (Kinds.ClassOf(e.Subject), e.Kind) switch
        {
            ("panel", _) => $"Panel {id} is open",
            ("connector", _) => $"Connector {id} is unplugged",
            ("line", _) => $"Line {id} is open",
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

    internal static bool Independent(IReadOnlyList<Entry> signatures) =>
        signatures.Any(s => s.Payload.Text("role") == "work" && signatures.Any(i => i.Payload.Text("role") == "inspection" && i.Who != s.Who));

    /// <summary>Why a log is not that of a job; null when it may be.</summary>
    public static string? OfAnother(HangarState state, string job)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(job);
        return state.Job.Length == 0 || job.Length == 0 || state.Job == job ? null
            : $"This is the log of work order {state.Job}, and the job here is {job}: put the log of this job in its place, or its number back in job.yaml.";
    }

    // What somebody accepted, and a clock that was set, are answered for by a signature.
    private static IEnumerable<OpenItem> Accepted(HangarState state, string subject)
    {
        if (state.Last(subject, "conceded", Kinds.ClockSet) is { } told && state.Signatures(subject).Count == 0)
        {
            yield return new OpenItem(subject, $"{Name(subject)} was {(told.Kind == "conceded" ? "conceded" : "set")} by {told.Who} ({told.Payload.Text("reason")}) and nobody has signed for it.", told.Sequence);
        }
    }

    private static bool Conceded(HangarState state, OpenItem item, DateTimeOffset now)
    {
        var finding = string.Create(CultureInfo.InvariantCulture, $"finding/ENTRY-{item.Entry}");
        return state.Last(finding, "conceded") is { } conceded && state.Signatures(finding).Count > 0 && !(conceded.Payload.Time("until") < now);
    }

    // The papers name whoever signed, so the job has to know them, also when they have left.
    private static IEnumerable<OpenItem> Strangers(HangarState state, Required required) => required.People.Count == 0 ? []
        : state.Subjects.SelectMany(state.Signatures).Where(s => !required.People.Contains(s.Who)).GroupBy(s => s.Who, StringComparer.Ordinal)
            .Select(g => new OpenItem(g.First().Subject, string.Create(CultureInfo.InvariantCulture, $"{g.Key}, who signed {g.First().Subject} (entry {g.First().Sequence}), is no person of job.yaml: write the person in again, so that the papers say who it was."), g.First().Sequence));

    private static IEnumerable<OpenItem> Part(HangarState state, string id, string kind, string what)
    {
        if (state.Last("part/" + id, "removed", "fitted")?.Kind != kind)
        {
            yield return new OpenItem("part/" + id, $"{id} {what}.");
        }
    }

    // A pipe that was opened leaks until it is shown that it does not; another system's connector that was parted may not have come back as it was.
    private static IEnumerable<OpenItem> Side(HangarState state, Required required, string subject)
    {
        var id = Kinds.IdOf(subject);
        if (state.IsOpen(subject) || state.Standing(subject) is not { } last || Proved(state, subject, last))
        {
            yield break;
        }

        if (last.Kind == "joined")
        {
            yield return new OpenItem(subject, $"Line {id} was opened and joined again: it has to pass its leak test ('measured {subject} value= unit= instrument=') and be signed.", last.Sequence);
        }
        else if (last.Kind == "plugged" && !required.Connectors.Contains(id) && !required.Fitted.Contains(id.Split('/')[0]))
        {
            yield return new OpenItem(subject, $"Connector {id} is no part of the change and was parted: its system has to be tested ('observed {subject} found=') and signed.", last.Sequence);
        }
    }

    private static bool Proved(HangarState state, string subject, Entry last) =>
        state.Story(subject).Any(e => Results.Is(e) && e.Sequence > last.Sequence) && state.Signatures(subject).Count > 0;

    /// <summary>The entry that made a task void that was done: what is opened after the general verification, and work in a zone after the check of its controls. Null where it stands.</summary>
    /// <param name="state">How things stand.</param>
    /// <param name="task">The task.</param>
    public static Entry? Voids(HangarState state, RequiredTask task)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(task);
        return state.Standing("task/" + task.Id) is { Kind: "done" } done
            ? (task.Clear ? state.Subjects.Where(Order.Disturbed) : task.VoidAfter).Select(state.Standing).FirstOrDefault(e => e?.Sequence > done.Sequence) : null;
    }

    private static IEnumerable<OpenItem> Verified(HangarState state, Required required) => required.Tasks.Select(t => (Task: t, By: Voids(state, t))).Where(t => t.By is not null)
        .Select(t => new OpenItem("task/" + t.Task.Id, $"Task {t.Task.Id} was done before {t.By!.Subject} was {t.By.Kind}: {(t.Task.Clear ? "verify" : "check")} again.", state.Standing("task/" + t.Task.Id)!.Sequence));

    private static IEnumerable<OpenItem> Against(RequiredTask task) => task.Against.Length == 0 ? [] : [new OpenItem("task/" + task.Id, $"Task {task.Id} ({task.Name}): {task.Against}.")];

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
