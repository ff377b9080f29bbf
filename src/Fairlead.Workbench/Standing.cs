using System.Collections.Frozen;
using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Model.Editing;
using Fairlead.Model.Reading;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>Texts with what follows from them.</summary>
internal sealed record Standing
{
    private Standing(JobTexts texts, LoadResult read, Assessment? assessment, Standing? before)
    {
        (Texts, Read, Assessment, Last) = (texts, read, assessment, before?.Assessment ?? before?.Last);
        var paths = read.Problems.IsEmpty ? null : read.Sources.All.ToLookup(p => p.Value, p => p.Key);
        Problems = paths is null ? [] : [.. read.Problems.Select(p => new ProblemView(PathOf(paths, p.Location), p.Location.ToString(), Text(p)))];
        ProblemsByPath = Problems.Where(p => p.Path.Length > 0).GroupBy(p => p.Path).ToFrozenDictionary(g => g.Key, g => g.First().Message, StringComparer.Ordinal);
        Findings = assessment is null ? [] : Views(assessment.Findings, before);
        Figures = assessment is null ? [] : Workbench.Figures.Of(assessment);
    }

    /// <summary>What follows from some texts.</summary>
    public static Standing Of(JobTexts texts, Standing? before, ReadMemory memory, Assessor assessor, IProgress<WorkDone>? progress, CancellationToken stop)
    {
        progress?.Report(new WorkDone("reading", 0, texts.Files.Count, "files"));
        var read = JobReader.Read(texts.ToFiles(), memory);
        var runs = assessor.Runs;
        var assessment = read.Job is { } job ? assessor.Assess(job, progress, stop) : null;
        var next = new Standing(texts, read, assessment, before);
        return before is null ? next : next with { Change = Comparison.Of(before, next, assessor.Runs - runs) };
    }

    public JobTexts Texts { get; }

    public LoadResult Read { get; }

    /// <summary>What follows; null while the text has problems.</summary>
    public Assessment? Assessment { get; }

    /// <summary>What followed from the last text that could be read.</summary>
    public Assessment? Last { get; }

    public ImmutableArray<FindingView> Findings { get; }

    public ImmutableArray<ProblemView> Problems { get; }

    public IReadOnlyDictionary<string, string> ProblemsByPath { get; }

    public ImmutableArray<FigureView> Figures { get; }

    public ChangeView? Change { get; init; }

    public static FindingView Of(Finding f) =>
        new(f.Rule, VerdictWords.Of(f.Severity), f.Subject, f.Message, f.Figures, f.Source.ToString(), f.Remedy, f.Path, f.Accepted?.Id ?? "");

    // Of thousands of findings an edit touches a few: the others stay the objects they were, and so do their views.
    private static ImmutableArray<FindingView> Views(ImmutableArray<Finding> findings, Standing? before)
    {
        if (before?.Assessment is not { } known)
        {
            return [.. findings.Select(Of)];
        }

        var (views, more) = (ImmutableArray.CreateBuilder<FindingView>(findings.Length), known.Findings.Length - findings.Length);
        for (var i = 0; i < findings.Length; i++)
        {
            views.Add(Known(i) ?? Known(i + more) ?? Of(findings[i]));

            FindingView? Known(int at) => at >= 0 && at < known.Findings.Length && ReferenceEquals(known.Findings[at], findings[i]) ? before.Findings[at] : null;
        }

        return views.MoveToImmutable();
    }

    // The deepest path that stands where the problem is.
    private static string PathOf(ILookup<Location, string> paths, Location at) => paths[at].MaxBy(p => p.Length) ?? "";

    // Where it stands is told beside it.
    private static string Text(Problem p) => p.ToString()[(p.Location.ToString().Length + ": ".Length)..];
}
