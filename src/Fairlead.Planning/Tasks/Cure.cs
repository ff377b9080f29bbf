using Fairlead.Model;

namespace Fairlead.Planning.Tasks;

/// <summary>How long something cures before what follows may be done.</summary>
/// <param name="Hours">Wall time, h.</param>
/// <param name="CannotTell">Why the time is not known; empty when it is.</param>
internal sealed record Cure(double Hours, string CannotTell)
{
    /// <summary>Epoxy primer and top coat at 25 degC before anything touches them, h: common practice, the longer end of 8 to 16 h.</summary>
    public const double Paint = 16;

    /// <summary>Epoxy primer (MIL-PRF-23377) at 75 degF before anything is laid on it, h: dry after 5 h (USAF T.O. 1-1-8).</summary>
    public const double Primer = 5;

    /// <summary>The cure of the sealant of a task: the time its data give for the nearest temperature that is no warmer than the structure is kept, so that it is never taken too short.</summary>
    public static Cure Of(Job job, JobTask task)
    {
        var points = task.Parts.Select(p => job.Parts.Sealants?.Find(p)).OfType<SealantPart>().SelectMany(s => s.Cure).OrderBy(p => p.At.Si).ToArray();
        if (points.Length == 0)
        {
            return new(0, $"no cure times are known for {task.Id}");
        }

        return Kept(job) is not { } kept ? new(points[0].Time.In("h"), "the job does not say how warm the structure is kept")
            : points.LastOrDefault(p => p.At <= kept) is { } point ? new(point.Time.In("h"), "")
            : new(points[0].Time.In("h"), $"the structure is kept at {kept.As("degC")}, and the cure times of the sealant begin at {points[0].At.As("degC")}");
    }

    private static Temperature? Kept(Job job) => job.Order.Plan?.Cure ?? job.Order.Site.Coldest;
}
