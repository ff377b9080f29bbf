using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation;

/// <summary>Makes findings of outcomes, and orders them.</summary>
internal static class Findings
{
    // What mends a broken rule need not bring the method back into its range.
    private const string OutOfRange = "Correct the value if it is a slip; otherwise bring it into the range of the method, or take the answer from the approved data.";

    /// <summary>The one finding of an outcome: its worst broken check, or why it cannot tell, or its caution. None when it holds.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <param name="subject">What it is about.</param>
    /// <param name="path">Where that stands in the files.</param>
    /// <param name="remedy">What would mend a broken check.</param>
    /// <param name="only">Names of the checks that count here; the others of the sheet have findings of their own elsewhere.</param>
    public static Finding? Of(Outcome outcome, string subject, string path, string remedy, params ReadOnlySpan<string> only)
    {
        var worst = Worst(outcome, only);
        if (worst is not null && worst.Verdict >= (outcome.CannotTell.IsEmpty ? Verdict.Caution : Verdict.CannotTell))
        {
            return new(outcome.Calculation, worst.Verdict, subject, NotMet(worst), Figures(worst), worst.Source, remedy, path);
        }

        return outcome.CannotTell is [var why, ..] ? new(outcome.Calculation, Verdict.CannotTell, subject, why, "", outcome.Source, OutOfRange, path)
            : outcome.Cautions is [var caution, ..] && outcome.Broken.IsEmpty ? new(outcome.Calculation, Verdict.Caution, subject, caution, "", outcome.Source, "Confirm the values marked on the sheet.", path)
            : null;
    }

    /// <summary>The rule that a check does not meet, in a sentence.</summary>
    public static string NotMet(Check check) => $"Not met: {check.Rule} ({check.Name}).";

    /// <summary>What was found, the limit and on which side of it one must stay, and the margin, in words.</summary>
    public static string Figures(Check check) =>
        $"found {check.Demand}, limit {(check.Sense == Sense.AtMost ? "at most" : "at least")} {check.Limit}, margin {check.MarginText}";

    /// <summary>How much a finding weighs: an accepted one no more than a caution.</summary>
    public static Verdict Weight(this Finding finding) => finding.Accepted is not null && finding.Severity > Verdict.Caution ? Verdict.Caution : finding.Severity;

    /// <summary>Applies the concessions, reports those that apply to nothing, and puts the most serious first.</summary>
    public static ImmutableArray<Finding> Settle(List<Finding> found, Catalog<Concession> concessions)
    {
        var unused = new HashSet<Concession>(concessions, ReferenceEqualityComparer.Instance);
        var byKey = new Dictionary<(string Rule, string Subject), Concession>();
        foreach (var concession in concessions)
        {
            byKey.TryAdd((concession.Rule, concession.Subject), concession);
        }

        for (var i = 0; i < found.Count && byKey.Count > 0; i++)
        {
            if (byKey.TryGetValue((found[i].Rule, found[i].Subject), out var concession))
            {
                found[i] = found[i] with { Accepted = concession };
                unused.Remove(concession);
            }
        }

        found.AddRange(concessions.Where(unused.Contains).Select(c => new Finding(
            "concession-unused", Verdict.Caution, $"concession/{c.Id}", $"The concession accepts '{c.Rule}' of '{c.Subject}', which is not a finding.", "",
            new Source("This job", "", $"concession {c.Id}", Basis.Stated), "Remove the concession, or correct its rule or subject.", $"change/concessions/{c.Id}")));
        return [.. found.OrderByDescending(Weight)];
    }

    private static Check? Worst(Outcome outcome, ReadOnlySpan<string> only)
    {
        Check? worst = null;
        foreach (var check in outcome.Broken)
        {
            if ((only.IsEmpty || only.Contains(check.Name)) && (worst is null || check.Verdict > worst.Verdict))
            {
                worst = check;
            }
        }

        return worst;
    }
}
