using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Drawings.Views;
using Fairlead.Model;
using Fairlead.Model.Editing;
using Fairlead.Model.Reading;
using Fairlead.Substantiation;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>A job on the desk: its text is edited, and everything that follows from it follows at once. Edits can be taken back. It works alike in the
/// browser and on the server. Not safe for use by several threads at once.</summary>
public sealed class Desk
{
    private const int MostSteps = 500;

    // Of edits that put in whole files: some tens of them can be taken back, and not hundreds.
    private const long MostRemembered = 8 * 1024 * 1024;
    private readonly Assessor assessor;
    private readonly ReadMemory memory;
    private readonly IProgress<WorkDone>? progress;
    private readonly LinkedList<TextStep> undo = [];
    private readonly Stack<TextStep> redo = new();
    private JobTexts kept;
    private Standing now;
    private long stamp;

    /// <summary>Opens a job.</summary>
    /// <param name="files">Its files.</param>
    /// <param name="progress">Is told how far reading and assessing have come, now and at every edit.</param>
    /// <param name="steps">Edits that are made at once, step by step: so a desk that stood elsewhere goes on. They can be taken back like any other.</param>
    /// <param name="stop">Asks for an end.</param>
    /// <exception cref="FormatException">One of the edits cannot be made.</exception>
    public Desk(IJobFiles files, IProgress<WorkDone>? progress = null, IReadOnlyList<IReadOnlyList<JobEdit>>? steps = null, CancellationToken stop = default)
    {
        (memory, assessor, this.progress) = (new(), new(), progress);
        kept = JobTexts.Of(files);
        now = Standing.Of((steps ?? []).Aggregate(kept, Step), null, memory, assessor, progress, stop);
    }

    internal Desk(Standing standing, ReadMemory memory, Assessor assessor, IReadOnlyList<IReadOnlyList<JobEdit>> steps, CancellationToken stop)
    {
        (kept, this.memory, this.assessor) = (standing.Texts, memory, assessor);
        now = steps.Count == 0 ? standing : Standing.Of(steps.Aggregate(kept, Step), null, memory, assessor, null, stop);
    }

    /// <summary>How the job stands.</summary>
    public DeskView View => new(
        now.Read.Job?.Order.Number ?? "", now.Read.Job?.Change.Title ?? "", now.Read.Job is { } job ? $"{job.Aircraft.Registration}, {job.Aircraft.Type}" : "", now.Read.Job?.Order.Revision ?? "",
        now.Assessment is { } a ? VerdictWords.Of(a.Verdict) : "unreadable", now.Read.Hash, now.Findings, now.Problems, now.Figures, now.Change, undo.Count > 0, redo.Count > 0, Edited, stamp);

    /// <summary>The assessment of the last text that could be read; null when none could.</summary>
    public Assessment? Assessment => now.Assessment ?? now.Last;

    /// <summary>The texts as they stand.</summary>
    public JobTexts Texts => now.Texts;

    /// <summary>Files that differ from those that were opened or last kept.</summary>
    public ImmutableArray<string> Edited => [.. now.Texts.Files.Where(f => kept.Files.GetValueOrDefault(f.Key) != f.Value).Select(f => f.Key)];

    /// <summary>How many characters it holds beside those that were opened or last kept: files that differ, and what is needed to take edits back.</summary>
    public long Held => Edited.Sum(f => (long)now.Texts.Files[f].Length) + undo.Concat(redo).Sum(s => s.Length);

    /// <summary>The forms and grids.</summary>
    public JobForm Form => new(now.Texts, now.ProblemsByPath);

    /// <summary>Makes some edits as one step.</summary>
    /// <exception cref="FormatException">One of them cannot be made; then none is.</exception>
    public DeskView Apply(IReadOnlyList<JobEdit> edits, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(edits);
        var before = now.Texts;
        Turn(On(before, edits), stop);
        redo.Clear();
        Remember(before, now.Texts);
        return View;
    }

    /// <summary>Takes the last edit back.</summary>
    public DeskView Undo(CancellationToken stop = default)
    {
        if (undo.Last is { } last)
        {
            Turn(last.Value.Back(now.Texts), stop);
            undo.RemoveLast();
            redo.Push(last.Value);
        }

        return View;
    }

    /// <summary>Makes the edit again that was taken back last.</summary>
    public DeskView Redo(CancellationToken stop = default)
    {
        if (redo.TryPeek(out var next))
        {
            Turn(next.Forth(now.Texts), stop);
            redo.Pop();
            undo.AddLast(next);
        }

        return View;
    }

    /// <summary>Says that the texts, as they stand, were kept elsewhere.</summary>
    public DeskView Keep()
    {
        kept = now.Texts;
        return View;
    }

    /// <summary>The sheet of a subject; null when there is none.</summary>
    public SheetView? Sheet(string subject) => Assessment?.Sheet(subject) is { } sheet ? SheetView.Of(subject, sheet) : null;

    /// <summary>What was found, drawn and worked in a discipline.</summary>
    public DisciplineView Discipline(Discipline discipline) => Disciplines.Of(now.Assessment ?? now.Last, discipline);

    /// <summary>The drawings of a kind.</summary>
    public ImmutableArray<PictureView> Drawings(DrawingKind kind) => Assessment is not { } a ? []
        : [.. DrawingSet.Of(a, now.Read.Hash, kind).Where(d => !d.Tile).Select(d => new PictureView(d.Name, d.Picture.Title, SvgWriter.Write(d.Picture)))];

    /// <summary>The aircraft from one side, with what can be picked and moved; null while nothing could be read.</summary>
    public MapView? Map(Aspect aspect, MapLook look) => Assessment is { } a ? AircraftMap.Of(a, aspect, look, StationUnit(a.Job)) : null;

    /// <summary>What is known of something on the map; null while nothing could be read.</summary>
    public MapAbout? About(string path) => Assessment is { } a ? AircraftMap.About(a, path) : null;

    /// <summary>What a traffic display must show in the scenarios of the job.</summary>
    public ImmutableArray<ScenarioView> TrafficScenarios => Assessment is { } a ? Scenarios.Of(a) : [];

    /// <summary>The connectors that new circuits end in.</summary>
    public ImmutableArray<ConnectorPage> Connectors => Assessment is { } a ? ConnectorPages.Of(a) : [];

    // Stations are shown, and written back, in the unit in which the job writes the first of them.
    private string StationUnit(Job job)
    {
        var first = job.Change.Fit is { Count: > 0 } fit ? $"change/fit/{fit[0].Id}/place" : job.Change.Antennas is { Count: > 0 } antennas ? $"change/antennas/{antennas[0].Id}/place" : "";
        var words = first.Length == 0 ? "" : Form.Fields(first).FirstOrDefault(f => f.Key == "fs")?.Text ?? "";
        return words.Split(' ')[^1] is "m" or "cm" or "mm" or "ft" ? words.Split(' ')[^1] : "in";
    }

    private static JobTexts On(JobTexts texts, IReadOnlyList<JobEdit> edits) => edits.Aggregate(texts, (t, edit) => edit.On(t));

    private JobTexts Step(JobTexts before, IReadOnlyList<JobEdit> edits)
    {
        var after = On(before, edits);
        Remember(before, after);
        return after;
    }

    private void Remember(JobTexts before, JobTexts after)
    {
        undo.AddLast(TextStep.Between(before, after));
        while (undo.Count > MostSteps || (undo.Count > 1 && undo.Sum(s => s.Length) > MostRemembered))
        {
            undo.RemoveFirst();
        }
    }

    private void Turn(JobTexts texts, CancellationToken stop)
    {
        now = Standing.Of(texts, now, memory, assessor, progress, stop);
        stamp++;
    }
}
