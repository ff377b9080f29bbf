using Fairlead.Calculations;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Records;

namespace Fairlead.Server.Work;

/// <summary>What the log says of the tasks of a job: tasks started and done, panels opened and closed, tests measured.</summary>
public static class LogProgress
{
    /// <summary>The progress of each task the log knows of.</summary>
    /// <param name="state">How things stand.</param>
    /// <param name="tasks">The tasks.</param>
    /// <param name="required">What the job requires: a check that later work made void comes again.</param>
    /// <param name="zone">Time zone of the hangar.</param>
    public static Sequence<TaskProgress> Of(HangarState state, Sequence<JobTask> tasks, Required required, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(required);
        var again = required.Tasks.Where(t => Gate.Voids(state, t) is not null).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        return tasks.Where(t => !again.Contains(t.Id)).Select(t => Of(state, t, zone)).OfType<TaskProgress>().ToSequence();
    }

    private static TaskProgress? Of(HangarState state, JobTask task, TimeZoneInfo zone)
    {
        var subject = JobCards.SubjectOf(task);
        var story = state.Story(subject);
        return task.Kind switch
        {
            TaskKind.Open => Span(task, [.. story.Where(e => e.Kind == "opened")], done: true, zone),

            // A panel that was opened again has its closing before it, and its controls are checked anew.
            TaskKind.Close => state.Standing(subject) is { Kind: "closed" } closed ? Span(task, [closed], done: true, zone) : null,
            TaskKind.Controls => Span(task, [.. state.Signatures(subject)], state.Signatures(subject).Count > 1, zone),
            _ when task.Card is not null => Span(task, [.. story.Where(Fairlead.Records.Results.Is)], !Fairlead.Records.Results.WhatStandsOpen(state, Requirements.Test(task)).Any(), zone),
            _ => Worked(task, story, zone) is { } worked ? worked with { Cured = worked.Done is null ? null : Cured(state, story, zone) } : null,
        };
    }

    private static TaskProgress? Span(JobTask task, IReadOnlyList<Entry> entries, bool done, TimeZoneInfo zone) => entries.Count == 0 ? null
        : new(task.Id, Wall(entries[0].At, zone), done ? Wall(entries[^1].At, zone) : null, People(task, entries));

    // Started, stopped, begun again, done; and when it is begun again after it was done, only what came since counts.
    private static TaskProgress? Worked(JobTask task, IReadOnlyList<Entry> story, TimeZoneInfo zone)
    {
        var entries = story.Where(e => e.Kind is "started" or "staged" or "stopped" or "done").ToList();
        var last = entries.FindLastIndex(e => e.Kind == "done");
        if (last >= 0 && last < entries.Count - 1)
        {
            entries.RemoveRange(0, last + 1);
        }

        if (entries.Count == 0)
        {
            return null;
        }

        var (on, since) = (new List<Stretch>(), (DateTime?)null);
        foreach (var entry in entries)
        {
            var at = Wall(entry.At, zone);
            if (entry.Kind is "stopped" or "done")
            {
                on.Add(new(since ?? at, at));
                since = null;
            }
            else
            {
                since ??= at;
            }
        }

        on.AddRange(since is { } begun ? [new Stretch(begun, DateTime.MaxValue)] : Array.Empty<Stretch>());
        return new(task.Id, Wall(entries[0].At, zone), entries[^1].Kind == "done" ? Wall(entries[^1].At, zone) : null, People(task, entries)) { On = on.ToSequence() };
    }

    private static DateTime? Cured(HangarState state, IReadOnlyList<Entry> story, TimeZoneInfo zone) =>
        story.LastOrDefault(e => e.Kind == "done")?.Payload.Text("sealant") is { Length: > 0 } mix && state.Last("sealant/" + mix, "mixed")?.Payload.Time("cured") is { } cured ? Wall(cured, zone) : null;

    private static Sequence<string> People(JobTask task, IEnumerable<Entry> entries) => entries.Select(e => e.Who).Distinct(StringComparer.Ordinal).Take(task.People).ToSequence();

    // Log times are UTC; plans are by the hangar's wall clock.
    private static DateTime Wall(DateTimeOffset at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at, zone).DateTime;
}
