using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;
using Problem = Fairlead.Planning.Scheduling.Problem;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Plans;

/// <summary>Plans a job: first at once, then as well as the effort allows; and says what holds the finish, what would help and how sure it is.</summary>
public static class Planner
{
    private const int FirstDays = 60;
    private const int MostDays = 1920;
    private const double WhatIfShare = 3;

    // Of a limit on the clock the plan has half, as where what more would buy is asked for; the second look a sixth; the rest goes to what more would buy.
    private const double PlanShare = 1.0 / 2;
    private const double AgainShare = 1.0 / 6;

    /// <summary>The plan of the tasks of a job. The same input gives the same plan, unless a limit on the clock or a stop cuts the search off.</summary>
    /// <param name="tasks">The tasks, as <see cref="TaskList"/> gives them.</param>
    /// <param name="job">The job.</param>
    /// <param name="options">How.</param>
    /// <param name="progress">Told each better plan, the first at once.</param>
    /// <param name="cancel">Ends the search: the best plan so far is the plan.</param>
    public static JobPlan Run(Sequence<JobTask> tasks, Job job, PlanOptions options, IProgress<PlanProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(options);
        var (takeOff, unplanned, apart) = HoursApart.Sift(new(tasks, job, options), job, FirstDays, MostDays);
        var (calendar, problem) = Sized(takeOff);
        var told = new Told(progress, calendar);
        var asked = options.WhatIfs && unplanned.Count == 0;
        var result = Searched(problem, options, asked, told, cancel);
        Finding[] early = [.. apart, .. PlanFindings.OfTasks(tasks, job)];
        JobPlan None(DateTime bound, string why) => new([], calendar.At(0), bound, Proved: false, 0, [], [], [], job.Order.Promised, early.ToSequence(), why) { Unplanned = unplanned };
        if (result.Schedule is not { } schedule)
        {
            return None(calendar.At(result.Bound), result.Why);
        }

        // What more would buy, and how sure a day is, cannot be told of work that is not all there.
        var whole = unplanned.Count == 0;
        var forecast = options.Runs > 0 && whole ? Forecast.Of(problem, schedule, takeOff.Times(problem), options.Runs, new Random(options.Seed), null, cancel) : new([], 0);
        var chances = Chances(forecast, calendar);
        var plan = Planned(takeOff, schedule, calendar, tasks, options);
        if (plan.Count == 0 && unplanned.Count > 0)
        {
            return None(calendar.At(result.Bound), "none of its tasks can be planned");
        }

        DateTime Latest(int tick) => plan.Where(t => t.Actual).Select(t => t.End).Append(calendar.At(tick)).Max();
        var byId = takeOff.Left.ToDictionary(t => t.Id, StringComparer.Ordinal);
        JobTask Named(string id) => byId[SecondLook.TaskOf(id)];
        var chain = HoldingChain.Of(problem, schedule);
        var bare = new JobPlan(
            plan, Latest(schedule.Finish), Latest(result.Bound), result.Proved, schedule.Overtime / (double)PlanCalendar.PerHour,
            chain.Select(l => ChainWords.Of(l, Named(l.Task), calendar)).ToSequence(),
            asked && !cancel.IsCancellationRequested ? WhatIfs(takeOff, calendar, schedule, options, cancel) : [], chances, job.Order.Promised, [])
        {
            Holding = chain.Select(l => Named(l.Task).Id).Distinct(StringComparer.Ordinal).ToSequence(), Held = ChainWords.Short(chain), Unplanned = unplanned,
        };
        return bare with { Findings = early.Concat(PlanFindings.OfPlan(plan, job, whole ? bare.Finish : null, bare.PromisedChance)).OrderByDescending(f => f.Severity).ToSequence() };
    }

    // What more people would buy is looked for from the plan on: so the plan itself is looked at as long again first, or the search would be taken for the people.
    private static ScheduleResult Searched(Problem problem, PlanOptions options, bool asked, Told told, CancellationToken cancel)
    {
        var result = Optimiser.Run(problem, new OptimiserOptions(options.Effort, options.Seconds * (asked ? PlanShare : 1), options.Seed), told, cancel);
        return asked && result is { Schedule: { } known, Proved: false } ? Optimiser.Run(problem, WhatIfOptions(options, AgainShare), known, told, cancel) : result;
    }

    // Twice the days that the first plan takes, so that a run of the forecast that goes badly still ends within them.
    private static (PlanCalendar Calendar, Problem Problem) Sized(PlanTakeOff takeOff)
    {
        for (var days = FirstDays; ; days *= 2)
        {
            var calendar = takeOff.Calendar(days);
            var problem = takeOff.Problem(calendar);
            if (days >= MostDays || (new ListScheduler(problem).Run() is { } first && first.Finish - takeOff.Now(calendar) < (calendar.Horizon - takeOff.Now(calendar)) / 2))
            {
                return (calendar, problem);
            }
        }
    }

    private static Sequence<PlannedTask> Planned(PlanTakeOff takeOff, Schedule schedule, PlanCalendar calendar, Sequence<JobTask> tasks, PlanOptions options)
    {
        var done = options.Progress.GroupBy(p => p.Task, StringComparer.Ordinal).Select(g => g.Last()).Where(p => p.Done is not null).ToDictionary(p => p.Task, StringComparer.Ordinal);
        var people = takeOff.People;
        var looks = schedule.Tasks.Where(t => SecondLook.IsLook(t.Task)).ToDictionary(t => SecondLook.TaskOf(t.Task), t => new PlannedLook(new(calendar.At(t.Start), calendar.At(t.End)), t.Crew[0]), StringComparer.Ordinal);
        return tasks.Where(t => done.ContainsKey(t.Id)).Select(t => new PlannedTask(t, [new(done[t.Id].Started, done[t.Id].Done!.Value)], done[t.Id].People, Actual: true))
            .Concat(takeOff.Left.Zip(schedule.Tasks).Select(x => new PlannedTask(x.First, x.Second.Pieces.Select(p => new Stretch(calendar.At(p.From), calendar.At(p.To))).ToSequence(), x.Second.Crew.Where(people.Contains).ToSequence()) { Second = looks.GetValueOrDefault(x.First.Id) }))
            .OrderBy(t => t.Start).ToSequence();
    }

    private static Sequence<DayChance> Chances(Forecast forecast, PlanCalendar calendar)
    {
        if (forecast.Finishes.Count == 0)
        {
            return [];
        }

        var (first, last) = (calendar.DayOfEnd(forecast.Finishes[0]), calendar.DayOfEnd(forecast.Finishes[^1]));
        return Enumerable.Range(0, last.DayNumber - first.DayNumber + 1).Select(first.AddDays)
            .Select(d => new DayChance(d, forecast.ChanceBy(calendar.Tick(d.AddDays(1).ToDateTime(TimeOnly.MinValue))))).ToSequence();
    }

    // Each is planned anew from the plan as it is, and what the bound rules out is not looked for.
    private static Sequence<WhatIf> WhatIfs(PlanTakeOff takeOff, PlanCalendar calendar, Schedule schedule, PlanOptions options, CancellationToken cancel)
    {
        var skills = takeOff.Left.SelectMany(t => t.Crew).Distinct(StringComparer.Ordinal).Where(s => s is not (Skills.Release or Skills.Second)).Order(StringComparer.Ordinal);
        var variations = skills.Select(s => (What: $"one more person with the skill '{s}'", Variation: new Variation(s))).Append((What: "work on Saturdays", Variation: new Variation(null, Saturdays: true)));
        var rounds = Math.Ceiling(variations.Count() / (double)Environment.ProcessorCount);
        return variations.AsParallel().AsOrdered().Select(v =>
        {
            var result = Optimiser.Run(takeOff.Problem(calendar, v.Variation), WhatIfOptions(options, (1 - PlanShare - AgainShare) / rounds), schedule, null, cancel);
            var finish = Math.Min(schedule.Finish, result.Schedule?.Finish ?? int.MaxValue);
            return new WhatIf(v.What, calendar.At(finish), (schedule.Finish - finish) / (double)PlanCalendar.PerHour, result.Bound >= schedule.Finish);
        }).ToSequence();
    }

    private static OptimiserOptions WhatIfOptions(PlanOptions options, double share) => new(options.Effort / WhatIfShare, options.Seconds * share, options.Seed);

    private sealed class Told(IProgress<PlanProgress>? to, PlanCalendar calendar) : IProgress<OptimiserProgress>
    {
        public void Report(OptimiserProgress value) => to?.Report(new(calendar.At(value.Finish), calendar.At(value.Bound)));
    }
}
