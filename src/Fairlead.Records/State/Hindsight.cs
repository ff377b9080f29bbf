using System.Globalization;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>Looks back over a log for what stands in it though by the job as it is now it would not be taken: because the log came from elsewhere or was
/// written by other means, because something it rests on was struck out, or because the job was changed since. The rules are those for adding.
/// What was done anew in its order is forgiven, so of each thing the last time counts.</summary>
internal static class Hindsight
{
    /// <summary>Each such entry.</summary>
    public static IEnumerable<OpenItem> Of(HangarState state, Required required)
    {
        var register = new Register(Catalog<Person>.Empty, Catalog<Instrument>.Empty, Catalog<Tool>.Empty, required);
        var judged = state.Subjects.SelectMany(s => Judged(state, s)).ToHashSet();
        if (judged.Count == 0)
        {
            yield break;
        }

        var past = HangarState.Empty;
        foreach (var entry in state.Counted)
        {
            if (judged.Contains(entry.Sequence))
            {
                foreach (var reason in Reasons(new Candidate(past, register, entry)))
                {
                    yield return new OpenItem(entry.Subject, string.Create(CultureInfo.InvariantCulture,
                        $"Entry {entry.Sequence} ({entry.Kind} {entry.Subject}, {entry.Who}) is out of its order: {reason} Do it again in its order, or let whoever may certify accept it: 'conceded finding/ENTRY-{entry.Sequence} reason=', signed."), entry.Sequence);
                }
            }

            past = past.Passed(entry);
        }
    }

    private static IEnumerable<string> Reasons(Candidate c) => c.Entry.Kind switch
    {
        "started" or "opened" or "plugged" => Order.Of(c),
        "measured" or "observed" => Order.Of(c).Concat(Order.Radiating(c)),
        "done" => Order.Finishing(c),
        "removed" or "fitted" => Fitting.Of(c).Concat(Order.Of(c)),
        "closed" => Order.Of(c).Concat(Closing.Of(c)),
        "signed" => Signing.Worker(c, c.Entry.Payload.Text("role")) is { } worker ? [worker] : [],
        _ => [],
    };

    private static IEnumerable<long> Judged(HangarState state, string subject)
    {
        var story = state.Story(subject);
        return Kinds.ClassOf(subject) switch
        {
            "panel" => Last(story, "opened").Concat(Last(story, "closed")),
            "part" => story.Where(e => e.Kind is "removed" or "fitted").TakeLast(1).Select(e => e.Sequence),
            "connector" => Last(story, "plugged"),
            "task" => Begun(story).Concat(Last(story, "done")),
            "test" => story.Where(Results.Is).GroupBy(e => e.Payload.Text("line")).Select(g => g.Last().Sequence),
            _ => [],
        }
        is var work ? work.Concat(state.Signatures(subject).Select(s => s.Sequence)) : [];
    }

    private static IEnumerable<long> Last(IReadOnlyList<Entry> story, string kind) => story.Where(e => e.Kind == kind).TakeLast(1).Select(e => e.Sequence);

    // The beginning of the last round of work: a task taken up again after a pause goes on with what was begun.
    private static IEnumerable<long> Begun(IReadOnlyList<Entry> story)
    {
        var rounds = story.Where(e => e.Kind is "started" or "done").ToList();
        if (rounds.Count > 0 && rounds[^1].Kind == "done")
        {
            rounds.RemoveAt(rounds.Count - 1);
        }

        return rounds.Skip(rounds.FindLastIndex(e => e.Kind == "done") + 1).Take(1).Select(e => e.Sequence);
    }
}
