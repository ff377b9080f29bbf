using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>A duration as three times: the shortest, the most likely and the longest, in ticks.</summary>
public readonly record struct ThreePoint(double Least, double Likely, double Most)
{
    /// <summary>Mean of the triangular distribution: (a + m + b)/3.</summary>
    public double Mean => (Least + Likely + Most) / 3;

    /// <summary>The duration that is not exceeded with a probability: inverse of the triangular distribution.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not between 0 and 1.</exception>
    public double At(double probability)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        var (range, rise) = (Most - Least, Likely - Least);
        return range <= 0 ? Least
            : probability < rise / range ? Least + Math.Sqrt(probability * range * rise)
            : Most - Math.Sqrt((1 - probability) * range * (Most - Likely));
    }
}

/// <summary>Finishes of many runs of one plan, in order.</summary>
/// <param name="Finishes">Finish of each run, ascending; a run that does not end within the time looked at is not among them.</param>
/// <param name="Runs">How many runs were made.</param>
public sealed record Forecast(Sequence<int> Finishes, int Runs)
{
    /// <summary>Share of the runs that finish by then.</summary>
    public double ChanceBy(int tick) => Runs == 0 ? 0 : Finishes.Count(f => f <= tick) / (double)Runs;

    /// <summary>The finish that so many of the runs reach; null when fewer do within the time looked at.</summary>
    public int? By(double share) => (int)Math.Ceiling(share * Runs) is var rank && rank <= Finishes.Count && rank > 0 ? Finishes[rank - 1] : null;

    /// <summary>Runs a plan again and again, each time with durations drawn from their three points: the tasks keep their order and their people.</summary>
    /// <param name="problem">The problem that was planned.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="times">Three times for each task, in the order of the problem.</param>
    /// <param name="runs">How many runs.</param>
    /// <param name="random">Source of chance, seeded by the caller.</param>
    /// <param name="progress">Told how many runs are done.</param>
    /// <param name="cancel">Stops between runs; what is done so far counts.</param>
    public static Forecast Of(Problem problem, Schedule plan, Sequence<ThreePoint> times, int runs, Random random, IProgress<int>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(random);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(runs);
        if (times.Count != problem.Tasks.Count)
        {
            throw new ArgumentOutOfRangeException(nameof(times), times.Count, $"expected one for each of {NumberFormat.Text(problem.Tasks.Count)} tasks");
        }

        var replay = new PlanReplay(problem, plan);
        var (finishes, made) = (new List<int>(), 0);
        for (; made < runs && !cancel.IsCancellationRequested; made++)
        {
            int[] durations = [.. times.Select(t => (int)Math.Round(t.At(random.NextDouble()), MidpointRounding.AwayFromZero))];
            if (replay.Run(overtime: plan.Overtime > 0, durations) is { } run)
            {
                finishes.Add(run.Finish);
            }

            progress?.Report(made + 1);
        }

        finishes.Sort();
        return new(finishes.ToSequence(), made);
    }
}
