using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Planning.Plans;

/// <summary>The kit with the days on which a plan made at once uses each line. The clock has no part in it: where the job states no first day, no line has a day of its own.</summary>
public static class PlannedKit
{
    /// <summary>The kit of an assessed job.</summary>
    public static KitList Of(Assessment assessment, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        return (assessment.Job.Order.Plan?.Start ?? assessment.Job.Stock?.Use) is { } start
            && KitDays.Of(assessment, Planner.Run(TaskList.Of(assessment), assessment.Job, new PlanOptions(start, Effort: 0, Runs: 0, WhatIfs: false), null, cancellation)) is { } dates
            ? assessment.KitOn(dates) : assessment.Kit;
    }
}
