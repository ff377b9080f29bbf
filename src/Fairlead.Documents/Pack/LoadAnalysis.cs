using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The load analysis before and after: sources, buses, breakers and batteries.</summary>
internal static class LoadAnalysis
{
    // Two sources with their tables share a page.
    private const double ChartHeight = 55;

    public static IEnumerable<Block> Of(Assessment assessment)
    {
        yield return PageBreak.Soft;
        yield return new Heading(1, "Load analysis");
        if (assessment.SourceLoads.IsEmpty)
        {
            yield return new Paragraph("The load on no source of power was worked out: the job describes none, or no operating condition in which one supplies.");
        }

        foreach (var block in assessment.SourceLoads.GroupBy(l => l.Source.Id, StringComparer.Ordinal).SelectMany(g => Source([.. g])))
        {
            yield return block;
        }

        yield return new Heading(2, "Buses");
        yield return assessment.BusLoads.IsEmpty ? new Paragraph("No bus load was worked out.") : Buses(assessment);
        yield return new Heading(2, "Breakers that feed new equipment");
        yield return !assessment.BreakerLoads.IsEmpty ? Breakers(assessment)
            : new Paragraph(assessment.Job.Change.Power is { Count: > 0 } ? "No breaker's load was worked out." : "No breaker feeds new equipment.");
        if (assessment.Batteries.IsEmpty)
        {
            yield return new Heading(2, "Batteries");
            yield return new Paragraph(assessment.Job.Aircraft.Batteries is { Count: > 0 } ? "No battery's endurance was worked out." : "The aircraft record describes no battery.");
        }

        foreach (var block in assessment.Batteries.SelectMany(Battery))
        {
            yield return block;
        }
    }

    private static IEnumerable<Block> Source(SourceLoad[] loads)
    {
        var source = loads[0].Source;
        yield return new Heading(2, $"{source.Name}: {source.Rating.As("A")} continuous");
        yield return new Figure(
            LoadChart.Draw(AssessmentPlots.Load(loads) with { Height = ChartHeight }));
        yield return new Table(
            [
                new("Condition"), new("Before, A", Right: true), new("After, A", Right: true), new("Rating, A", Right: true),
                new("Margin, A", Right: true), new("Share of rating", Right: true), new("Verdict"),
            ],
            loads.Select(l => (Sequence<Cell>)
            [
                l.Condition.Name, Figures.Fixed(l.Before, "A", 2), Figures.Fixed(l.After, "A", 2), Figures.Fixed(source.Rating, "A", 1),
                Figures.Fixed(source.Rating - l.After, "A", 2), Figures.Fixed(100 * (l.After / source.Rating), 1) + " %", Mark(l.Verdict),
            ]).ToSequence());
    }

    private static Table Buses(Assessment assessment) => new(
        [new("Bus"), new("Condition"), new("Before, A", Right: true), new("After, A", Right: true), new("Change, A", Right: true)],
        assessment.BusLoads.Select(l => (Sequence<Cell>)
        [
            new Cell(l.Bus.Id, Strong: true), l.Condition.Name, Figures.Fixed(l.Before, "A", 2), Figures.Fixed(l.After, "A", 2), Figures.Fixed(l.After - l.Before, "A", 2),
        ]).ToSequence());

    private static Table Breakers(Assessment assessment) => new(
        [new("Breaker"), new("Label"), new("Bus"), new("Rating, A", Right: true), new("Worst load, A", Right: true), new("Margin, A", Right: true), new("Verdict")],
        assessment.BreakerLoads.Select(l => (Sequence<Cell>)
        [
            new Cell(l.Breaker.Id, Strong: true), l.Breaker.Name, l.Breaker.Bus, Figures.Fixed(l.Part.Rating, "A", 1), Figures.Fixed(l.Load, "A", 2),
            Figures.Fixed(l.Part.Rating - l.Load, "A", 2), Mark(l.Verdict),
        ]).ToSequence());

    private static IEnumerable<Block> Battery(BatteryResult result)
    {
        yield return new Heading(2, $"{result.Battery.Name}: all generators lost");
        yield return new VerdictLine(result.Verdict, result.Endurance is { } lasts
            ? $"Lasts {Figures.Fixed(Math.Floor((lasts.In("min") * 10) + 1e-9) / 10, 1)} min; {result.Battery.Required.As("min")} are required."
            : "How long it lasts cannot be told; the findings say why.");
        if (!result.Timeline.IsEmpty)
        {
            yield return new Table(
                [new("From, min", Right: true), new("To, min", Right: true), new("Current, A", Right: true), new("What happens")],
                result.Timeline.Select(s => (Sequence<Cell>)[Figures.Fixed(s.From, "min", 1), Figures.Fixed(s.To, "min", 1), Figures.Fixed(s.Current, "A", 2), s.What]).ToSequence());
        }

        if (result.Endurance is { } endurance && !result.Timeline.IsEmpty)
        {
            yield return new Figure(SheddingTimeline.Draw(AssessmentPlots.Discharge(result, endurance)));
        }
    }

    private static Cell Mark(Verdict verdict) => new(VerdictMark.Word(verdict), Mark: verdict, Strong: verdict == Verdict.Fails);
}
