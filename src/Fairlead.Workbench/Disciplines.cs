using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>The sheets, findings and pictures of one discipline.</summary>
internal static class Disciplines
{
    private static readonly FrozenDictionary<string, Discipline> ByCalculation = CalculationCatalog.All.ToFrozenDictionary(e => e.Info.Name, e => e.Info.Discipline, StringComparer.Ordinal);

    public static DisciplineView Of(Assessment? assessment, Discipline discipline)
    {
        if (assessment is null)
        {
            return new DisciplineView(discipline.ToString(), "unreadable", [], [], []);
        }

        var sheets = assessment.Sheets.Where(s => ByCalculation.TryGetValue(s.Sheet.Calculation, out var d) && d == discipline).ToArray();
        var subjects = sheets.Select(s => s.Subject).ToArray();
        var findings = assessment.Findings.Where(f => subjects.Any(s => s == f.Subject || s.StartsWith(f.Subject + "/", StringComparison.Ordinal))).Select(Standing.Of).ToImmutableArray();
        var worst = sheets.Length == 0 ? Verdict.Holds : sheets.Max(s => s.Sheet.Verdict);
        return new DisciplineView(discipline.ToString(), VerdictWords.Of(worst), findings, Pictures.Of(assessment, discipline), [.. sheets.Select(Line)]);
    }

    public static SheetLine Line(SubjectSheet s)
    {
        var tightest = s.Sheet.Checks.OrderBy(c => c.Holds).ThenBy(c => Math.Abs(c.Limit.Si) > 0 ? c.MarginSi / Math.Abs(c.Limit.Si) : c.MarginSi).FirstOrDefault();
        return new SheetLine(s.Subject, s.Sheet.Title, VerdictWords.Of(s.Sheet.Verdict), tightest is null ? "" : $"{tightest.Name}: {tightest.Demand}, {(tightest.Sense == Sense.AtMost ? "at most" : "at least")} {tightest.Limit}, margin {tightest.MarginText}", tightest?.MarginText ?? "", tightest is null ? "" : Brief(tightest.Margin));
    }

    // Down, so that no table promises more than its sheet.
    private static string Brief(double margin) => (Math.Floor(margin * 10) / 10).ToString("0.0", CultureInfo.InvariantCulture);
}
