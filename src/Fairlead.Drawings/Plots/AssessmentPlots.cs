using Fairlead.Calculations;
using Fairlead.Substantiation;

namespace Fairlead.Drawings;

/// <summary>What the plots of a job show: the same on paper and on screen.</summary>
public static class AssessmentPlots
{
    // Points closer than this share of the envelope's extent are one mark with two names.
    private const double SamePlace = 0.02;

    /// <summary>The load on one source by operating condition, before and after.</summary>
    /// <param name="loads">The loads of one source.</param>
    public static LoadView Load(IReadOnlyCollection<SourceLoad> loads)
    {
        ArgumentNullException.ThrowIfNull(loads);
        var source = loads.First().Source;
        return new LoadView($"{source.Name}: load by operating condition", loads.Select(l => new ConditionLoad(l.Condition.Name, l.Before, l.After, source.Rating)).ToSequence());
    }

    /// <summary>A battery after the loss of all generators. It is empty when its endurance is over: what it has drawn until then is what it had.</summary>
    public static TimelineView Discharge(BatteryResult result, Duration endurance)
    {
        ArgumentNullException.ThrowIfNull(result);
        Charge Drawn(Duration until) => new(result.Timeline.Sum(s => s.Current.Si * Math.Max(0, Math.Min(s.To.Si, until.Si) - s.From.Si)));
        var usable = Drawn(endurance);
        return new TimelineView(
            $"{result.Battery.Name}: discharge after the last generator is lost",
            usable,
            result.Timeline.Select(s => new DischargeInterval(s.What, s.From, s.To, s.Current, new Charge(Math.Max(0, usable.Si - Drawn(s.To).Si)))).ToSequence(),
            result.Battery.Required);
    }

    /// <summary>The envelope with the empty aircraft and the worst loadings on it, before and after.</summary>
    public static EnvelopeView Envelope(Assessment assessment, string armUnit, string massUnit)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var aircraft = assessment.Job.Aircraft;
        var corners = aircraft.Envelope.Points.Select(p => new BalancePoint(p.Fs, p.Mass)).ToArray();
        var near = (Arm: SamePlace * Extent(corners.Select(c => c.Arm.Si)), Mass: SamePlace * Extent(corners.Select(c => c.Mass.Si)));
        return new EnvelopeView(
            $"{aircraft.Registration}: envelope and loadings",
            [new EnvelopeOutline($"{aircraft.Certification.Category} category", corners.ToSequence())],
            [
                .. assessment.LoadingBefore.Select(l => new EnvelopeMark("", new(l.Fs, l.Mass), EnvelopeMarkKind.LoadingBefore)),
                .. Empty(assessment, near),
                .. Together(assessment.LoadingAfter, near),
            ],
            ArmUnit: armUnit, MassUnit: massUnit);
    }

    private static IEnumerable<EnvelopeMark> Empty(Assessment assessment, (double Arm, double Mass) near)
    {
        var (before, after) = (assessment.EmptyBefore, assessment.EmptyAfter);
        var same = after is not null && Near(before.Fs, before.Mass, after.Fs, after.Mass, near);
        yield return new EnvelopeMark(same ? "" : "empty before", new(before.Fs, before.Mass), EnvelopeMarkKind.EmptyBefore);
        if (after is not null)
        {
            yield return new EnvelopeMark(same ? "empty before and after" : "empty after", new(after.Fs, after.Mass), EnvelopeMarkKind.EmptyAfter);
        }
    }

    private static IEnumerable<EnvelopeMark> Together(IEnumerable<LoadingExtreme> loadings, (double Arm, double Mass) near)
    {
        var groups = new List<List<LoadingExtreme>>();
        foreach (var loading in loadings)
        {
            var group = groups.Find(g => Near(g[0].Fs, g[0].Mass, loading.Fs, loading.Mass, near) && g[0].Margin < Length.Zero == loading.Margin < Length.Zero);
            if (group is null)
            {
                groups.Add(group = []);
            }

            group.Add(loading);
        }

        return groups.Select(g => new EnvelopeMark(string.Join("; ", g.Select(l => l.Name)), new(g[0].Fs, g[0].Mass), EnvelopeMarkKind.Loading, g[0].Margin < Length.Zero));
    }

    private static bool Near(Length arm, Mass mass, Length otherArm, Mass otherMass, (double Arm, double Mass) near) =>
        Math.Abs(arm.Si - otherArm.Si) <= near.Arm && Math.Abs(mass.Si - otherMass.Si) <= near.Mass;

    private static double Extent(IEnumerable<double> values) => values.DefaultIfEmpty(0).Max() - values.DefaultIfEmpty(0).Min();
}
