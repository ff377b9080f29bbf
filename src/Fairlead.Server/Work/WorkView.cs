using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Server.Jobs;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Work;

/// <summary>Kit, tasks, handover and gate as they are shown.</summary>
internal static class WorkView
{
    public static KitView Kit(AssessedJob job) => new(
        job.Kit.Verdict, job.Kit.IsComplete, job.Kit.Missing,
        [.. job.Kit.Lines.Select(l => new KitLineView(
            Words.Kebab(l.Kind.ToString()).Replace('-', ' '), l.PartText, l.Name, $"{NumberFormat.Text(l.Need)} {l.Unit}", l.OnHand is { } has ? $"{NumberFormat.Text(has)} {l.Unit}" : "", l.Shortage > 0 ? $"{NumberFormat.Text(l.Shortage)} {l.Unit}" : "",
            Words.Kebab(l.State.ToString()).Replace('-', ' '), l.OrderBy is { } day ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "", string.Join(", ", l.For), l.Remark))]);

    public static ImmutableArray<TaskView> Tasks(AssessedJob job, TimeProvider clock)
    {
        var state = job.State(clock);
        var (byId, cards) = (job.Tasks.ToDictionary(t => t.Id, StringComparer.Ordinal), new CardEntries(job, state, clock.GetUtcNow()));
        return [.. job.Tasks.Select(t => View(t, byId, state, cards))];
    }

    public static HandoverView Handover(AssessedJob job, TimeProvider clock) =>
        View(Fairlead.Records.Handover.Of(job.State(clock), job.Required, clock.GetUtcNow()));

    /// <summary>The sheet of a job whose text has problems.</summary>
    public static HandoverView Handover(string folder, TimeProvider clock)
    {
        using var store = JobStore.OpenLog(folder);
        return View(Fairlead.Records.Handover.Of(new LogBook(store, Register.Nobody, clock).CatchUp(), clock.GetUtcNow())) with
        {
            LeftOut = "The text of the job has problems, so this is what the log says by itself: what was begun, opened or taken apart and is not ended or signed. What has not been begun, which signatures are due, and whether results hold, stands here again when the text is mended.",
        };
    }

    private static HandoverView View(IEnumerable<HandoverPart> parts) => new([.. parts.Select(p => new HandoverPartView(p.Title, [.. p.Lines]))]);

    public static ReleaseView Release(AssessedJob job, TimeProvider clock)
    {
        using var store = JobStore.OpenLog(job.Folder);
        var check = ChainCheck.Check(store.Lines(0));
        var state = HangarState.Of(check.Entries);
        var items = Gate.WhatStandsOpen(state, job.Required, clock.GetUtcNow());
        var fault = check.Fault is { } f ? string.Create(CultureInfo.InvariantCulture, $"Entry {f.Sequence}: {f.What}") : "";
        return new ReleaseView(items.Count == 0 && fault.Length == 0, [.. items.Select(i => new OpenItemView(i.Subject, i.Text))], check.Head.ToString(), fault)
        {
            Signatures = [.. job.Tasks.Where(t => t.Kind == TaskKind.Release).SelectMany(t => new CardEntries(job, state, clock.GetUtcNow()).Signatures(t))],
        };
    }

    /// <summary>The log for the pack of a release; null while anything stands open.</summary>
    public static ReleaseRecord? Record(AssessedJob job, TimeProvider clock)
    {
        using var store = JobStore.OpenLog(job.Folder);
        var (check, lines) = (ChainCheck.Check(store.Lines(0)), store.Lines(0));
        var state = HangarState.Of(check.Entries);
        return check.Fault is not null || Gate.WhatStandsOpen(state, job.Required, clock.GetUtcNow()).Count > 0 ? null
            : new ReleaseRecord(state, job.Required, check.Head, [.. LogFile.Write(lines.Take(check.Entries.Count))]) { Pictures = Pictures.Of(state, store) };
    }

    private static TaskView View(JobTask t, Dictionary<string, JobTask> byId, HangarState state, CardEntries cards)
    {
        var signatures = cards.Signatures(t);
        var waits = t.After.Where(w => !Finished(byId[w.Task], state)).Select(w => $"{w.Task}: {w.Why}").ToImmutableArray();
        return new TaskView(
            t.Id, Words.Kebab(t.Kind.ToString()).Replace('-', ' '), t.Title, t.Zone, State(t, state, waits.IsEmpty, signatures), JobCards.SubjectOf(t), waits, [.. t.Panels], [.. t.Tools], [.. t.Parts], [.. t.Cautions], t.Authorisation, t.Independent,
            [.. t.Stages.Select(s => new StageView(s.Id, s.Text, state.Signatures($"stage/{t.Id}/{s.Id}").Count > 0))], t.Card is not null, t.Source)
        {
            Steps = [.. JobCards.Steps(t)], Entries = cards.Of(t), Signatures = signatures,
        };
    }

    private static string State(JobTask task, HangarState state, bool ready, ImmutableArray<SignatureView> signatures)
    {
        var subject = JobCards.SubjectOf(task);
        return Finished(task, state) ? signatures.All(s => s.By.Length > 0) ? "signed" : "done"
            : (state.IsOpen(subject) && task.Kind != TaskKind.Close) || (task.Card is not null && Fairlead.Records.Results.Last(state, subject) is not null) ? "begun"
            : ready ? "ready" : "waiting";
    }

    private static bool Finished(JobTask task, HangarState state)
    {
        var subject = JobCards.SubjectOf(task);
        return task.Kind switch
        {
            TaskKind.Open => state.Last(subject, "opened") is not null,
            TaskKind.Close => state.Last(subject, "closed") is not null && !state.IsOpen(subject),
            TaskKind.Controls or TaskKind.Release => state.Signatures(subject).Count > 0,
            _ when task.Card is not null => state.Signatures(subject).Count > 0,
            _ => state.Last(subject, "done") is not null && !state.IsOpen(subject),
        };
    }
}
