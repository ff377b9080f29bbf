using Fairlead.Calculations;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Plans;

/// <summary>A stretch of wall time.</summary>
public readonly record struct Stretch(DateTime From, DateTime To);

/// <summary>A second person's look at a task: before the work where a stage is looked at, after it where the whole is.</summary>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
public sealed record PlannedLook(Stretch When, string Who);

/// <summary>A task with its times and people.</summary>
/// <param name="Task">The task.</param>
/// <param name="Pieces">When it is worked on.</param>
/// <param name="People">Who does it.</param>
/// <param name="Actual">Whether it is done already, and the times are those of the log.</param>
public sealed record PlannedTask(JobTask Task, Sequence<Stretch> Pieces, Sequence<string> People, bool Actual = false)
{
    /// <summary>The look of a second person; null where none is due, or it is in the past.</summary>
    public PlannedLook? Second { get; init; }

    /// <summary>When it starts.</summary>
    public DateTime Start => Pieces[0].From;

    /// <summary>When it ends.</summary>
    public DateTime End => Pieces[^1].To;
}

/// <summary>A task that no plan can hold.</summary>
/// <param name="Task">The task.</param>
/// <param name="Why">Why, in words.</param>
/// <param name="Follows">Whether it could be done but for what it waits for.</param>
public sealed record UnplannedTask(JobTask Task, string Why, bool Follows);

/// <summary>What one thing more would buy.</summary>
/// <param name="What">The thing, in words.</param>
/// <param name="Finish">The finish with it.</param>
/// <param name="Hours">Wall time gained, h.</param>
/// <param name="Excluded">Whether it is proved that nothing can be gained.</param>
public sealed record WhatIf(string What, DateTime Finish, double Hours, bool Excluded = false);

/// <summary>Share of the runs of the forecast that finish by the end of a day.</summary>
public sealed record DayChance(DateOnly Day, double Chance);

/// <summary>The plan of a job.</summary>
/// <param name="Tasks">The tasks by their start.</param>
/// <param name="Finish">When the last ends.</param>
/// <param name="Bound">No plan with these people and hours finishes before this.</param>
/// <param name="Proved">Whether it is proved that none finishes sooner.</param>
/// <param name="OvertimeHours">Work outside shifts, h, over all people.</param>
/// <param name="Chain">What holds the finish, from the first task to the last, in words.</param>
/// <param name="WhatIfs">What one more person, or Saturdays, would buy.</param>
/// <param name="Chances">Chance of being finished, day by day.</param>
/// <param name="Promised">The day the aircraft was promised for.</param>
/// <param name="Findings">What needs a person.</param>
/// <param name="Why">Why there is no plan; empty when there is one.</param>
public sealed record JobPlan(
    Sequence<PlannedTask> Tasks, DateTime Finish, DateTime Bound, bool Proved, double OvertimeHours, Sequence<string> Chain,
    Sequence<WhatIf> WhatIfs, Sequence<DayChance> Chances, DateOnly? Promised, Sequence<Finding> Findings, string Why = "")
{
    /// <summary>The tasks on the chain that holds the finish.</summary>
    public Sequence<string> Holding { get; init; }

    /// <summary>What is not in the plan, since no plan can hold it, and what follows from it: the finish is that of the rest.</summary>
    public Sequence<UnplannedTask> Unplanned { get; init; }

    /// <summary>The chain in one sentence.</summary>
    public string Held { get; init; } = "";

    /// <summary>Whether there is a plan, and its finish keeps the promised day.</summary>
    public bool Holds => Why.Length == 0 && (Promised is not { } day || Finish <= day.AddDays(1).ToDateTime(TimeOnly.MinValue)) && Findings.All(f => f.Severity <= Verdict.Caution);

    /// <summary>Chance of keeping the promised day; null when none was promised or no forecast was made.</summary>
    public double? PromisedChance => Promised is not { } day || Chances.Count == 0 ? null : Chances.LastOrDefault(c => c.Day <= day)?.Chance ?? 0;
}

/// <summary>What the log says of a task.</summary>
/// <param name="Task">The task.</param>
/// <param name="Started">When work on it began, by the hangar's wall clock.</param>
/// <param name="Done">When it was done; null while it is not.</param>
/// <param name="People">Who works on it.</param>
public sealed record TaskProgress(string Task, DateTime Started, DateTime? Done = null, Sequence<string> People = default)
{
    /// <summary>When the sealant it was done with is cured, by the mix in the log; null where it tells of none.</summary>
    public DateTime? Cured { get; init; }

    /// <summary>The stretches in which work on it was on; empty where all the time since it began counts.</summary>
    public Sequence<Stretch> On { get; init; }
}

/// <summary>How a plan is made.</summary>
/// <param name="Start">First day of work, where the job does not say.</param>
/// <param name="Effort">Effort of the search, in the solver's own count of work: the same on every machine.</param>
/// <param name="Runs">Runs of the forecast; 0 for none.</param>
/// <param name="Seed">Seed of search and forecast.</param>
/// <param name="WhatIfs">Whether to work out what more people or hours would buy.</param>
/// <param name="Seconds">Limit on the clock for all searches together; null for none. A plan that is cut off by it may differ from run to run.</param>
public sealed record PlanOptions(DateOnly Start, double Effort = 1, int Runs = 500, int Seed = 7, bool WhatIfs = true, double? Seconds = null)
{
    /// <summary>What is done and begun: a plan with it is made anew from <see cref="Now"/> on.</summary>
    public Sequence<TaskProgress> Progress { get; init; }

    /// <summary>The present, by the hangar's wall clock; null to plan from the first day.</summary>
    public DateTime? Now { get; init; }
}

/// <summary>How far the planning is.</summary>
/// <param name="Finish">Finish of the best plan so far.</param>
/// <param name="Bound">No plan finishes before this.</param>
public readonly record struct PlanProgress(DateTime Finish, DateTime Bound);
