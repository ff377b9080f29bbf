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
    public Standing(JobTexts texts, LoadResult read, Assessment? assessment, Assessment? last)
    {
        (Texts, Read, Assessment, Last) = (texts, read, assessment, last);
        var paths = read.Sources.All.ToLookup(p => p.Value, p => p.Key);
        Problems = [.. read.Problems.Select(p => new ProblemView(PathOf(paths, p.Location), p.Location.ToString(), Text(p)))];
        ProblemsByPath = Problems.Where(p => p.Path.Length > 0).GroupBy(p => p.Path).ToFrozenDictionary(g => g.Key, g => g.First().Message, StringComparer.Ordinal);
        Findings = assessment is null ? [] : [.. assessment.Findings.Select(Of)];
        Figures = assessment is null ? [] : Workbench.Figures.Of(assessment);
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

    // The deepest path that stands where the problem is.
    private static string PathOf(ILookup<Location, string> paths, Location at) => paths[at].MaxBy(p => p.Length) ?? "";

    private static string Text(Problem p) => (p with { Location = new Location("", 0, 0) }).ToString()[": ".Length..].Replace(":0:0: ", "", StringComparison.Ordinal);
}
