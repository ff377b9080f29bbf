using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>What the results say of one connector's wiring.</summary>
/// <param name="Connector">The connector.</param>
/// <param name="Left">The single faults that agree with every reading; none when no single fault explains them.</param>
/// <param name="Next">The reading to make next; null when there is nothing left to tell apart.</param>
/// <param name="Bits">The information it gives.</param>
public sealed record ConnectorReport(string Connector, ImmutableArray<FaultClass> Left, Measurement? Next, double Bits);

/// <summary>How a card stands.</summary>
/// <param name="Card">The card.</param>
/// <param name="Holds">Lines that hold.</param>
/// <param name="Verdict">Holds when every line does; cannot-tell as long as one is missing.</param>
public sealed record CardReport(TestCard Card, int Holds, Verdict Verdict);

/// <summary>Results judged, cards summed up, and faults looked for.</summary>
/// <param name="Results">Each result against its limits.</param>
/// <param name="Cards">Each card that has a result.</param>
/// <param name="Connectors">Each connector whose readings are not those of sound wiring.</param>
/// <param name="Signatures">What single readings say that are neither through nor open.</param>
public sealed record TestReport(
    ImmutableArray<JudgedResult> Results, ImmutableArray<CardReport> Cards, ImmutableArray<ConnectorReport> Connectors, ImmutableArray<string> Signatures)
{
    // Beyond this a contact or a short is none: what lies between is a poor contact or a leak.
    private const double Through = 10;
    private const double Apart = 1000;

    /// <summary>The worst of the results that count: of a line measured twice the last, and not what was measured beyond the cards to find a fault.</summary>
    public Verdict Verdict => Results.Where(r => r.Line is not null || Measurement.Read(r.Result.Line) is null)
        .GroupBy(r => (r.Result.Card, r.Result.Line)).Select(g => g.Last().Verdict).DefaultIfEmpty(Verdict.CannotTell).Max();

    /// <summary>The report on results.</summary>
    public static TestReport Of(TestPlan plan, IEnumerable<TestResult> results)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ImmutableArray<JudgedResult> judged = [.. results.Select(r => Judging.Judge(plan, r))];
        var readings = judged.Select(j => (Judged: j, At: Measurement.Read(j.Result.Line))).Where(r => r.At is not null).Select(r => (r.Judged, At: r.At!, Closed: Closed(r.Judged))).ToArray();
        var known = readings.Where(r => r.Closed is not null).Select(r => new Reading(r.At, r.Closed!.Value)).ToArray();
        return new TestReport(
            judged,
            [.. plan.Cards.Select(c => Sum(c, judged)).OfType<CardReport>()],
            Connected(plan.Harnesses, known),
            [.. readings.Where(r => r.Closed is null).Select(r => Signature(r.Judged, r.At)).OfType<string>()]);
    }

    // Of a line measured twice the last reading counts: that is the one after the repair.
    private static CardReport? Sum(TestCard card, ImmutableArray<JudgedResult> judged)
    {
        var last = judged.Where(j => j.Result.Card == card.Id && j.Line is not null).GroupBy(j => j.Result.Line, StringComparer.Ordinal).Select(g => g.Last().Verdict).ToArray();
        var holds = last.Count(v => v == Verdict.Holds);
        return last.Length == 0 ? null : new CardReport(card, holds, last.Contains(Verdict.Fails) ? Verdict.Fails : holds == card.Lines.Count ? Verdict.Holds : Verdict.CannotTell);
    }

    private static ImmutableArray<ConnectorReport> Connected(ImmutableArray<HarnessUnderTest> harnesses, Reading[] readings)
    {
        var last = readings.GroupBy(r => r.Measurement.Id, StringComparer.Ordinal).Select(g => g.Last()).ToArray();
        var found = new List<ConnectorReport>();
        foreach (var harness in harnesses.Where(h => last.Any(r => r.Measurement.From.Concat(r.Measurement.To).Any(h.Contacts.Contains))))
        {
            var diagnosis = new Diagnosis(harness);
            if (last.Any(r => diagnosis.Reaches(r.Measurement) && diagnosis.Closes(r.Measurement, diagnosis.Classes[0]) != r.Closed))
            {
                var left = diagnosis.Consistent(last);
                var next = diagnosis.Next(left);
                found.Add(new ConnectorReport(harness.Connector, left, next?.Measurement, next?.Bits ?? 0));
            }
        }

        // A fault shows from the far ends too, where no fault of that end may explain it.
        return found.Any(f => !f.Left.IsEmpty) ? [.. found.Where(f => !f.Left.IsEmpty).DistinctBy(f => (f.Next?.Id, string.Join('|', f.Left.Select(l => l.Text))))] : [.. found];
    }

    private static bool? Closed(JudgedResult judged) => Judging.IsOpen(judged.Result) ? false
        : Judging.Value(judged.Result, "Ω") is not var (ohm, beyond) || ohm < 0 ? null
        : ohm <= Math.Max(Through * (judged.Line is { Unit: "Ω" } ? 0 : 1), Limit(judged.Line)) && !beyond ? true
        : ohm >= Apart ? false : null;

    private static double Limit(TestLine? line) => line is { Unit: "Ω", Most: { } most } ? Math.Max(most, TestSources.Run) : 0;

    private static string? Signature(JudgedResult judged, Measurement at) => Judging.Value(judged.Result, "Ω") is not var (ohm, _) || ohm < 0 ? null
        : judged.Line is { Unit: "Ω" } ? $"{at.Id}: {NumberFormat.Text(ohm)} Ω is neither through nor open: poor crimp, dirty contact or strands cut; measure the millivolt drop under load."
        : $"{at.Id}: {NumberFormat.Text(ohm)} Ω is no short and no isolation: moisture, dirt or damaged insulation.";
}
