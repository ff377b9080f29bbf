using System.Globalization;
using Fairlead.Planning.Plans;

namespace Fairlead.Cli.Output;

/// <summary>A plan as JSON: times by the hangar's wall clock, work in hours.</summary>
internal static class PlanJson
{
    public static object Of(JobPlan plan) => new
    {
        plan.Holds,
        plan.Why,
        Finish = Time(plan.Finish),
        Bound = Time(plan.Bound),
        plan.Proved,
        plan.OvertimeHours,
        Promised = plan.Promised?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        plan.PromisedChance,
        Tasks = plan.Tasks.Select(t => new
        {
            t.Task.Id, Kind = Calculations.Words.Kebab(t.Task.Kind.ToString()), t.Task.Title, t.Task.Zone, Start = Time(t.Start), End = Time(t.End), t.Actual, t.People,
            Pieces = t.Pieces.Select(p => new { From = Time(p.From), To = Time(p.To) }),
            Second = t.Second is { } second ? new { second.Who, From = Time(second.When.From), To = Time(second.When.To) } : null,
            Hours = new { t.Task.Time.Low, t.Task.Time.Likely, t.Task.Time.High, Basis = Calculations.Words.Kebab(t.Task.Time.Basis.ToString()) },
            t.Task.Authorisation, t.Task.Panels, t.Task.Tools, t.Task.Parts, t.Task.Cautions, t.Task.Independent, t.Task.Outside, t.Task.Source,
            After = t.Task.After.Select(w => new { w.Task, LagHours = w.Lag, w.Why }),
        }),
        Unplanned = plan.Unplanned.Select(u => new { u.Task.Id, u.Task.Title, u.Why }),
        plan.Chain,
        WhatIfs = plan.WhatIfs.Select(w => new { w.What, Finish = Time(w.Finish), w.Hours }),
        Chances = plan.Chances.Select(c => new { Day = c.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), c.Chance }),
        Findings = plan.Findings.Select(f => new { f.Rule, Verdict = VerdictWord.Of(f.Severity), f.Subject, f.Message, f.Figures, f.Remedy, f.Path }),
    };

    private static string Time(DateTime at) => at.ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);
}
