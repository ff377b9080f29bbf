using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Substantiation.Tests;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Work;

/// <summary>The test cards with what the log has of their results.</summary>
internal static class TestsView
{
    public static ImmutableArray<TestView> Of(AssessedJob job, TimeProvider clock)
    {
        var (plan, state) = (TestPlan.Of(job.Assessment), job.State(clock));
        var (tasks, cards, today) = (job.Tasks.Where(t => t.Card is not null).ToDictionary(t => t.Id, StringComparer.Ordinal), new CardEntries(job, state, clock.GetUtcNow()), DateOnly.FromDateTime(clock.GetLocalNow().Date));
        return [.. plan.Cards.Select(c => tasks.GetValueOrDefault(c.Id) is { } task
            ? View(plan, c, state, job.Required.Tests.FirstOrDefault(t => t.Id == c.Id)) with { Instruments = Instruments(job.Job.Aircraft, task, today), Entries = cards.Of(task), Signatures = cards.Signatures(task) }
            : View(plan, c, state, null))];
    }

    public static DiagnosisView Diagnosis(AssessedJob job, TimeProvider clock)
    {
        var (plan, state) = (TestPlan.Of(job.Assessment), job.State(clock));
        var report = TestReport.Of(plan, plan.Cards.SelectMany(c => c.Lines.Select(l => Result(c, l, state)).OfType<TestResult>()));
        return new DiagnosisView(
            [.. report.Connectors.Select(c => new ConnectorView(c.Connector, [.. c.Left.Select(f => f.Text)], c.Next is { } next ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{next.Id} ({c.Bits:0.0} bits)") : ""))],
            report.Signatures);
    }

    // Those for the test first; what is out of calibration measures nothing.
    private static ImmutableArray<InstrumentView> Instruments(Aircraft aircraft, JobTask task, DateOnly today) =>
    [
        .. (aircraft.Instruments ?? Catalog<Instrument>.Empty).Where(i => i.CalibrationDue >= today).Select(i => new InstrumentView(i.Id, i.Name, task.Tools.Contains(i.Id)))
            .Concat((aircraft.Tools ?? Catalog<Tool>.Empty).Where(t => t.CalibrationDue >= today).Select(t => new InstrumentView(t.Id, t.Name, task.Tools.Contains(t.Id)))).OrderBy(i => i.Named ? 0 : 1),
    ];

    private static TestView View(TestPlan plan, TestCard card, HangarState state, RequiredTest? required)
    {
        var lines = card.Lines.Select(l => Line(plan, card, l, state)).ToImmutableArray();
        var results = lines.Count(l => l.Result.Length > 0);
        var open = required is null ? [] : Fairlead.Records.Results.WhatStandsOpen(state, required).ToArray();
        var word = results == 0 ? "not begun" : lines.Any(l => l.Verdict == "fails") ? "fails" : results < lines.Length ? "begun" : open.Length > 0 ? "to be signed" : "signed";
        return new TestView(
            card.Id, Words.Kebab(card.Kind.ToString()), card.Title, card.System, card.Instrument, word, card.Radiates, card.SecondPerson, [.. card.Preconditions], [.. card.Cautions], lines);
    }

    private static TestLineView Line(TestPlan plan, TestCard card, TestLine line, HangarState state)
    {
        var result = Result(card, line, state);
        return new TestLineView(
            line.Id, line.From, line.To, line.Limits, line.Unit, line.Source.ToString(), result is null ? "" : $"{result.Value} {result.Unit}".Trim(),
            result is null ? "" : VerdictWords.Of(Judging.Judge(plan, result).Verdict)) { Due = new TestDue(line.Least, line.Most, line.Expected) };
    }

    private static TestResult? Result(TestCard card, TestLine line, HangarState state) =>
        Fairlead.Records.Results.Last(state, card.Id, line.Id, only: card.Lines.Count == 1) is { } entry ? ToldResult.Read((int)entry.Sequence, card.Id, line, entry.Who, entry.Payload.Text) : null;
}
