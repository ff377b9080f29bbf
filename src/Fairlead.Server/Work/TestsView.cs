using System.Collections.Immutable;
using Fairlead.Calculations;
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
        return [.. plan.Cards.Select(c => View(plan, c, state, job.Required.Tests.FirstOrDefault(t => t.Id == c.Id)))];
    }

    public static DiagnosisView Diagnosis(AssessedJob job, TimeProvider clock)
    {
        var (plan, state) = (TestPlan.Of(job.Assessment), job.State(clock));
        var report = TestReport.Of(plan, plan.Cards.SelectMany(c => c.Lines.Select(l => Result(c, l, state)).OfType<TestResult>()));
        return new DiagnosisView(
            [.. report.Connectors.Select(c => new ConnectorView(c.Connector, [.. c.Left.Select(f => f.Text)], c.Next is { } next ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{next.Id} ({c.Bits:0.0} bits)") : ""))],
            report.Signatures);
    }

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

    // Of a line entered twice the last result counts: that is the one after the repair.
    private static TestResult? Result(TestCard card, TestLine line, HangarState state)
    {
        var entry = state.Story("test/" + card.Id).LastOrDefault(e => e.Kind is "measured" or "observed" && (e.Payload.Text("line") == line.Id || (e.Payload.Text("line").Length == 0 && card.Lines.Count == 1)));
        return entry is null ? null : new TestResult((int)entry.Sequence, card.Id, line.Id, entry.Payload.Text("value") is { Length: > 0 } value ? (entry.Payload.Text("beyond") == "yes" ? ">" : "") + value : entry.Payload.Text("found"), entry.Payload.Text("unit"), entry.Payload.Text("instrument"), entry.Who, entry.Payload.Text("outside"));
    }
}
