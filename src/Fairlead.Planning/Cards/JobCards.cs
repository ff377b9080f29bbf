using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Cards;

/// <summary>The cards of a job: one for each derived task, in the order of the tasks.</summary>
public static class JobCards
{
    /// <summary>All cards.</summary>
    public static Sequence<JobCard> Of(Assessment assessment) => Of(assessment, TaskList.Of(assessment));

    /// <summary>The cards of tasks that were derived before.</summary>
    public static Sequence<JobCard> Of(Assessment assessment, Sequence<JobTask> tasks)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var figures = new CardFigures(assessment, tasks);
        return tasks.Select(t => new JobCard(t, SubjectOf(t), Facts(assessment.Job, t), CardSteps.Of(t), figures.Of(t).ToSequence(), Signatures(t))).ToSequence();
    }

    /// <summary>The steps of a task, in order.</summary>
    public static Sequence<string> Steps(JobTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        return CardSteps.Of(task);
    }

    /// <summary>What the log calls a task: panels and the controls behind them by themselves, tests by their card, the release by its work order, the rest as tasks.</summary>
    public static string SubjectOf(JobTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        return task.Kind switch
        {
            TaskKind.Open or TaskKind.Close => "panel/" + task.Panels[0],
            TaskKind.Controls => "controls/" + task.Id["CONTROLS-".Length..],
            TaskKind.Release => "release/" + task.Releases,
            _ when task.Card is not null => "test/" + task.Id,
            _ => "task/" + task.Id,
        };
    }

    private static Sequence<CardFact> Facts(Job job, JobTask task)
    {
        var zone = job.Aircraft.Zones.Find(task.Zone);
        return
        [
            .. zone is null ? Array.Empty<CardFact>() : [new CardFact("Zone", $"{zone.Id}, {zone.Name}")],
            .. task.Panels.Count == 0 || task.Kind is TaskKind.Open or TaskKind.Close ? Array.Empty<CardFact>() : [new CardFact("Open", string.Join(", ", task.Panels))],
            new("People", string.Join(", ", task.Crew.GroupBy(c => c).Select(g => g.Count() > 1 ? $"{NumberFormat.Text(g.Count())} {g.Key}" : g.Key)) + (task.Authorisation.Length > 0 ? $"; signed under {task.Authorisation}" : "")),
            new("Time", $"{Hours(task.Time.Low)} to {Hours(task.Time.High)}, likely {Hours(task.Time.Likely)} ({Words.Kebab(task.Time.Basis.ToString()).Replace('-', ' ')})"),
            .. task.Tools.Count == 0 ? Array.Empty<CardFact>() : [new CardFact("Tools", string.Join("; ", task.Tools.Select(t => Tool(job, t))))],
            .. task.After.Count == 0 ? Array.Empty<CardFact>() : [new CardFact("Before it", Before(task))],
            new("From", task.Source),
        ];
    }

    // What holds is named; of the rest a few, so that the card of the release does not list the whole job.
    private static string Before(JobTask task)
    {
        const int most = 8;
        var named = task.After.OrderByDescending(w => w.Hold).Take(most).Select(w => w.Lag > 0 ? $"{w.Task} and {Hours(w.Lag)} of cure" : w.Task);
        return string.Join(", ", named) + (task.After.Count > most ? string.Create(CultureInfo.InvariantCulture, $" and {task.After.Count - most} more") : "");
    }

    private static string Tool(Job job, string id) =>
        job.Aircraft.Instruments?.Find(id) is { } i ? $"{id} {i.Name}, calibrated until {Day(i.CalibrationDue)}" : job.Aircraft.Tools?.Find(id) is { } t ? $"{id} {t.Name}{(t.CalibrationDue is { } due ? $", calibrated until {Day(due)}" : "")}" : id;

    /// <summary>The signatures of a task. One thing, one line, one signature: each stage, the work, and the second person where one is due.</summary>
    public static Sequence<CardSignature> Signatures(JobTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var subject = SubjectOf(task);
        return
        [
            .. task.Stages.Select(s => new CardSignature(s.Text, "stage, second person", "", $"stage/{task.Id}/{s.Id}")),
            .. task.Kind == TaskKind.Open ? Array.Empty<CardSignature>() : [new CardSignature(task.Kind == TaskKind.Release ? "Released to service" : task.LooksBehind ? "Seen, and fit to be covered" : task.Card is null ? "Work done" : "Results are as written", task.LooksBehind ? "work, if it can be by another than who did what is behind it" : "work", task.Authorisation, subject)],
            .. task.Independent ? [new CardSignature(task.Kind is TaskKind.Controls or TaskKind.ZoneControls ? "Controls full, free and in the correct sense, seen again" : "Compared independently", "inspection, second person", "", subject)] : Array.Empty<CardSignature>(),
        ];
    }

    private static string Hours(double hours) => hours < 1 ? $"{NumberFormat.Text(Math.Round(hours * 60))} min" : $"{NumberFormat.Text(Math.Round(hours, 1))} h";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
