using System.Globalization;

namespace Fairlead.Records;

/// <summary>A part of the handover sheet.</summary>
/// <param name="Title">What its lines have in common.</param>
/// <param name="Lines">The lines, in plain words.</param>
public sealed record HandoverPart(string Title, IReadOnlyList<string> Lines);

/// <summary>The sheet one shift hands to the next, filled from the log: what is half done, open, loose, not torqued, pulled, and what to watch out for.
/// It is read face to face at the aircraft; it does not replace that.</summary>
public static class Handover
{
    private const int Named = 12;

    private static readonly (string Title, string[] Classes)[] Parts =
    [
        ("Tasks begun, done or waiting for a signature", ["task"]),
        ("Open panels and furnishings, and what still has to be signed or checked", ["panel", "controls"]),
        ("Loose or not torqued", ["fastening"]),
        ("Connectors apart", ["connector"]),
        ("Pipes and hoses apart", ["line"]),
        ("Breakers pulled and tagged", ["breaker"]),
        ("Tools at the aircraft", ["tool"]),
        ("Permits to radiate", ["radiation"]),
        ("Tests begun, failed or not signed", ["test"]),
        ("Defects", ["defect"]),
        ("Sealant curing", ["sealant"]),
    ];

    /// <summary>The parts of the sheet; a part without lines says so by having none.</summary>
    public static IReadOnlyList<HandoverPart> Of(HangarState state, Required required, DateTimeOffset now) => Of(state, Gate.WhatStandsOpen(state, required, now));

    /// <summary>The parts of the sheet by the log alone, for when the job cannot be read: what the job requires and nobody has begun is not in it.</summary>
    public static IReadOnlyList<HandoverPart> Of(HangarState state, DateTimeOffset now) => Of(state, Gate.WhatWasLeft(state, now));

    private static IReadOnlyList<HandoverPart> Of(HangarState state, IReadOnlyList<OpenItem> open)
    {
        var begun = open.Where(o => o.Entry is not null).ToLookup(o => Kinds.ClassOf(o.Subject));
        var titled = Parts.SelectMany(p => p.Classes).ToHashSet(StringComparer.Ordinal);
        return
        [
            new("Watch out", [.. Watch(state)]),
            .. Parts.Select(part => new HandoverPart(part.Title, [.. part.Classes.SelectMany(c => begun[c]).Select(o => o.Text)])),
            new("Other", [.. begun.Where(g => !titled.Contains(g.Key)).SelectMany(g => g).Select(o => o.Text)]),
            new("Not begun", [.. NotBegun([.. open.Where(o => o.Entry is null)])]),
        ];
    }

    // What nobody touched yet is the plan's business: few things are named, many are counted, so that what was touched is not lost among them.
    private static IEnumerable<string> NotBegun(OpenItem[] items) => items.Length <= Named ? items.Select(o => o.Text)
        : [string.Join(", ", items.GroupBy(o => Kinds.ClassOf(o.Subject)).Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Count()} {g.Key}{(g.Count() == 1 ? "" : "s")}"))) + ": the plan says what comes next, and the release gate names each."];

    // Notes are few: they are read from the stories, newest last.
    private static IEnumerable<string> Watch(HangarState state)
    {
        var since = state.HandedOver?.Sequence ?? 0;
        if (state.HandedOver is { } last)
        {
            yield return PlainText.Shown($"Handed over by {last.Who} to {last.Payload.Text("to")} at {Instant.Text(last.At)}" + (last.Payload.Text("watch") is { Length: > 0 } watch ? $": {watch}" : "."));
        }

        foreach (var note in state.Subjects.SelectMany(s => state.Story(s)).Where(e => e.Kind == "noted" && e.Sequence > since).OrderBy(e => e.Sequence))
        {
            yield return PlainText.Shown(string.Create(CultureInfo.InvariantCulture, $"{note.Subject}: {note.Payload.Text("text")} (entry {note.Sequence}, {note.Who})."));
        }
    }
}
