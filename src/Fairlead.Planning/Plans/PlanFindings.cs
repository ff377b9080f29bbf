using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Plans;

/// <summary>What of a plan needs a person: the promised day, skills, authorisations and calibrations on the day, cures and labour times that are not known.</summary>
internal static class PlanFindings
{
    // Common practice: a promise that is kept four times in five may be given.
    private const double SafeChance = 0.8;

    /// <summary>What the job itself says.</summary>
    public static readonly Source Job = new("This job", "", "plan", Basis.Stated);

    /// <summary>What the tasks show before they are planned.</summary>
    public static IEnumerable<Finding> OfTasks(Sequence<JobTask> tasks, Job job)
    {
        Sequence<string>[] people = [.. (job.Order.People ?? Catalog<Person>.Empty).Select(Manning.Skills)];
        var lacking = tasks.Select(t => (Task: t, Missing: Manning.Without(t.Crew, Manning.Filled(t.Crew, people)))).SelectMany(x => x.Missing.Select(m => (m, x.Task))).ToLookup(x => x.m, x => x.Task);
        foreach (var skill in lacking.Where(l => l.Key != Skills.Second))
        {
            yield return new("skill-missing", Verdict.Fails, $"skill/{skill.Key}", $"Nobody, or too few, have the skill '{skill.Key}', which is needed for {Names(skill)}; the plan is made as if somebody came, {PlanTakeOff.CalledHours(job)}.", "", Job, "Give the skill to a person of the job who has it, or call somebody in.", "job/people");
        }

        if (SecondPerson(tasks, job) is { } alone)
        {
            yield return alone;
        }

        if (TooShortForRamp(tasks, job) is { } never)
        {
            yield return never;
        }

        foreach (var seal in tasks.Where(t => t.Kind == TaskKind.Seal))
        {
            if (Cure.Of(job, seal).CannotTell is { Length: > 0 } why)
            {
                yield return new("cure-time", Verdict.CannotTell, $"task/{seal.Id}", $"How long {seal.Id} cures cannot be told: {why}.", "", Job, "Keep the structure warmer, say so under 'plan: cure', or add the cure times of the maker.", seal.Source);
            }
        }

        foreach (var outlived in tasks.Where(t => t.Kind == TaskKind.Seal && t.Unbroken).SelectMany(t => t.Parts.Select(p => job.Parts.Sealants?.Find(p)).OfType<SealantPart>().Where(s => t.Time.Mean > s.ApplicationLife.In("h")).Select(s => (Sealant: s, Task: t))).GroupBy(x => x.Sealant, x => x.Task))
        {
            yield return new(
                "sealant-life", Verdict.Caution, $"sealant/{outlived.Key.Id}",
                $"{Names(outlived)} would go on without a pause for longer than a mix of {outlived.Key.Id}, {outlived.Key.Name}, may be used: the log does not take work with a mix whose application life is over.",
                string.Create(CultureInfo.InvariantCulture, $"found {outlived.Max(t => t.Time.Mean):0.##} h, limit at most {outlived.Key.ApplicationLife.In("h"):0.##} h"), Job,
                "Split the work so that each part takes its own mix, or name a sealant of that kind with a longer application life, if the approved data allow it; state the shop's own time under 'labour' where it is shorter.", outlived.First().Source);
        }

        foreach (var labour in (job.Order.Labour ?? Catalog<LabourTime>.Empty).Where(l => LabourTable.Rows.All(r => r.Activity != l.Id) && tasks.All(t => t.Id != l.Id)))
        {
            yield return new("labour-unknown", Verdict.Caution, $"labour/{labour.Id}", $"'{labour.Id}' is neither an activity of the labour table nor a task, so its time counts nowhere.", "", Job, "Name an activity or a task; 'fairlead plan' lists the tasks.", $"job/labour/{labour.Id}");
        }
    }

    /// <summary>What the days of the plan show.</summary>
    /// <param name="plan">The tasks in time.</param>
    /// <param name="job">The job.</param>
    /// <param name="finish">When all is done; null where not all could be planned.</param>
    /// <param name="chance">Chance of keeping the promised day.</param>
    public static IEnumerable<Finding> OfPlan(Sequence<PlannedTask> plan, Job job, DateTime? finish, double? chance)
    {
        if (job.Order.Promised is { } promised && finish is { } end)
        {
            var late = end > promised.AddDays(1).ToDateTime(TimeOnly.MinValue);
            if (late || chance < SafeChance)
            {
                yield return new(
                    "promised-date", late ? Verdict.Fails : Verdict.Caution, "plan/promised", late ? "The plan does not keep the promised day." : "The plan keeps the promised day, but work that takes longer than its mean may not.",
                    string.Create(CultureInfo.InvariantCulture, $"found {end:yyyy-MM-dd HH:mm}, limit at most {promised:yyyy-MM-dd}, chance {chance ?? 0:0 %}"), Job, "See what holds the finish and what one more person would buy, or agree another day.", "job/promised");
            }
        }

        if (job.Stock is { } stock && plan.Count > 0 && (stock.Use ?? job.Order.Promised) is { } use && KitDays.Opening(plan) is var opening && use > opening)
        {
            yield return new("kit-day", Verdict.Caution, "plan/kit", "The kit is judged for a day after the one on which the plan opens the aircraft: what is not there by then, or is due in between, goes unseen.",
                string.Create(CultureInfo.InvariantCulture, $"found {use:yyyy-MM-dd}, limit at most {opening:yyyy-MM-dd}"), Job, $"State 'use: {Day(opening)}' in the stock file, or begin the work later.", "job/files/stock");
        }

        var left = plan.Where(t => !t.Actual).ToArray();
        if (OwnInspections(plan).ToLookup(x => x.Who, x => x.Task) is { Count: > 0 } own)
        {
            foreach (var who in own)
            {
                yield return new("own-inspection", Verdict.Caution, $"person/{who.Key}", $"{who.Key} would look at work of {who.Key}'s own before it is covered: {Names(who)}. Nobody inspects what he did himself.", "", Job, "Give one of both to another person, or call in a second inspector.", "job/people");
            }
        }

        foreach (var scope in left.Where(t => t.Task.Authorisation.Length > 0).GroupBy(t => t.Task.Authorisation, StringComparer.Ordinal))
        {
            var until = (job.Order.People ?? Catalog<Person>.Empty).SelectMany(p => p.Authorisations).Where(a => a.Scope == scope.Key).Select(a => (DateOnly?)a.Until).Max();
            var unsigned = scope.Where(t => until is not { } last || DateOnly.FromDateTime(t.End) > last).ToArray();
            if (unsigned.Length > 0)
            {
                yield return new("authorisation-on-day", Verdict.Fails, $"authorisation/{scope.Key}", $"{(until is null ? $"Nobody of the job is authorised for '{scope.Key}', and so nobody may sign for" : $"On the day of the work nobody may sign any more for '{scope.Key}':")} {Names(unsigned.Select(t => t.Task))}.", until is { } day ? string.Create(CultureInfo.InvariantCulture, $"found {unsigned.Max(t => t.End):yyyy-MM-dd}, limit at most {day:yyyy-MM-dd}") : "", Job, "Renew the authorisation, or call in a person who holds it.", "job/people");
            }
        }

        foreach (var tool in left.SelectMany(t => t.Task.Tools.Select(id => (id, t))).ToLookup(x => x.id, x => x.t))
        {
            var (due, path) = job.Aircraft.Instruments?.Find(tool.Key) is { } instrument ? (instrument.CalibrationDue, $"aircraft/instruments/{tool.Key}") : (job.Aircraft.Tools?.Find(tool.Key)?.CalibrationDue, $"aircraft/tools/{tool.Key}");
            if (due is { } day && tool.Where(t => DateOnly.FromDateTime(t.End) > day).ToArray() is { Length: > 0 } after)
            {
                yield return new("calibration-on-day", Verdict.Fails, $"tool/{tool.Key}", $"On the day it is used the calibration of {tool.Key} has run out: {Names(after.Select(t => t.Task))}.", string.Create(CultureInfo.InvariantCulture, $"found {after.Max(t => t.End):yyyy-MM-dd}, limit at most {day:yyyy-MM-dd}"), Job, "Have it calibrated, or book another.", path);
            }
        }
    }

    // Of two signatures on one thing the second is a second person's, who had no part in the work: where nobody is left for it, it never comes.
    private static Finding? SecondPerson(Sequence<JobTask> tasks, Job job)
    {
        JobTask[] unseen = [.. SecondLooks.Unseen(tasks, job)];
        var signers = (job.Order.People ?? Catalog<Person>.Empty).Where(p => p.Authorisations.Count > 0).Select(p => p.Id).ToArray();
        var why = signers.Length switch
        {
            0 => "Nobody is authorised to sign anything",
            1 => $"{signers[0]} alone is authorised to sign anything",
            _ => $"Of {string.Join(", ", signers)}, who are authorised, none is left beside who does and signs the work",
        };
        var scopes = unseen.Select(t => t.Authorisation.Length > 0 ? t.Authorisation : Skills.Inspection).Distinct(StringComparer.Ordinal);
        return unseen.Length == 0 ? null : new(
            "second-person", Verdict.Fails, "plan/second-person", $"{why}, and a second person has to sign {Names(unseen)}. What is missing is one more person with an authorisation, such as that for {string.Join(" or ", scopes)}.",
            "", Job, "Call in a second person who is authorised; nobody signs twice, and nobody inspects what he had a part in.", "job/people");
    }

    // Hours without a whole quarter in them hold no work: the plan counts in quarters.
    private static Finding? TooShortForRamp(Sequence<JobTask> tasks, Job job)
    {
        if (job.Order.Plan is not { Ramp.Count: > 0 } basis)
        {
            return null;
        }

        var week = new PlanCalendar(basis.Start, 7);
        var none = basis.Ramp.Where(r => week.Hours(r.Days, r.From, r.To).Count == 0).Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.From:HH:mm} to {r.To:HH:mm}")).ToArray();
        var outside = none.Length == basis.Ramp.Count ? tasks.Where(t => t.Outside).ToArray() : [];
        return none.Length == 0 ? null : new(
            "ramp-hours", outside.Length > 0 ? Verdict.Fails : Verdict.Caution, "plan/ramp",
            outside.Length > 0 ? $"The hours of the ramp hold no whole quarter of an hour, so the plan is made as if the aircraft could stand outside at any time, for {Names(outside)}." : "Some hours of the ramp hold no whole quarter of an hour, so nothing is planned in them.",
            $"found {string.Join(", ", none)}", Job, "State hours of the ramp that are long enough for the tests outside.", "job/plan");
    }

    // Who looks behind a panel, where the same person is planned for work that stays behind it.
    private static IEnumerable<(string Who, JobTask Task)> OwnInspections(Sequence<PlannedTask> plan)
    {
        foreach (var look in plan.Where(t => t.Task.LooksBehind && !t.Actual))
        {
            var did = plan.Where(t => t.Task.Panels.Any(look.Task.Panels.Contains) && PlanTakeOff.LookedAt(t.Task, look.Task.Panels)).SelectMany(t => t.People);
            foreach (var who in look.People.Intersect(did, StringComparer.Ordinal))
            {
                yield return (who, look.Task);
            }
        }
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Some tasks by name, of many the first three.</summary>
    public static string Names(IEnumerable<JobTask> tasks)
    {
        var ids = tasks.Select(t => t.Id).Distinct(StringComparer.Ordinal).ToArray();
        return ids.Length <= 4 ? string.Join(", ", ids) : $"{string.Join(", ", ids.Take(3))} and {NumberFormat.Text(ids.Length - 3)} more";
    }
}
