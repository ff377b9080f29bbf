using System.Collections.Immutable;
using Fairlead.Calculations.Power;
using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>A load of the load analysis, whether it was there, comes out or goes in.</summary>
/// <param name="Id">Id of the existing load or of the feed.</param>
/// <param name="Name">Name.</param>
/// <param name="Bus">Its bus.</param>
/// <param name="Breaker">Its breaker, if known.</param>
/// <param name="Action">What the change does to it.</param>
/// <param name="ShedAt">When it is switched off after the loss of all generators.</param>
/// <param name="Demands">Current by operating condition; none means off.</param>
internal sealed record LoadItem(string Id, string Name, string Bus, string? Breaker, ListAction Action, Duration? ShedAt, ImmutableArray<Demand> Demands)
{
    /// <summary>Every load of a job, existing ones first.</summary>
    public static ImmutableArray<LoadItem> Of(Job job)
    {
        var removed = job.Change.Remove.OrEmpty().SelectMany(r => r.Loads).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. job.Aircraft.Loads.OrEmpty().Select(l => new LoadItem(
                l.Id, l.Name, l.Bus, l.Breaker, removed.Contains(l.Id) ? ListAction.Removed : ListAction.Kept, l.ShedAt, [.. l.Demands])),
            .. job.Change.Power.OrEmpty().Select(f => Fed(job, f)),
        ];
    }

    /// <summary>The demand in a condition; null when it is off.</summary>
    public Demand? In(string condition) => Demands.FirstOrDefault(d => d.Condition == condition);

    /// <summary>The load as a row of the analysis, or null when it is off.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="share">Share of it that the source in question carries.</param>
    public LoadRow? Row(string condition, double share = 1) =>
        In(condition) is { } demand ? new LoadRow(Name, demand.Current * share, demand.On, Bus) : null;

    /// <summary>Its average current in a condition: an intermittent load counts with its share of 15 minutes, or of a shorter stretch.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="stretch">How long the condition lasts; 15 minutes or longer when left out.</param>
    public Current Average(string condition, Duration? stretch = null)
    {
        var longest = Intervals.All[2];
        var over = stretch is { } t && t < longest && t > Duration.Zero ? t : longest;
        return In(condition) is { } demand ? Intervals.Average(demand.Current, demand.On, over) : Current.Zero;
    }

    private static LoadItem Fed(Job job, PowerFeed feed)
    {
        var input = job.InputOf(feed);
        var demands = feed.Conditions.Select(c => (c.Condition, state: input?.States.Find(c.State))).Where(x => x.state is not null)
            .Select(x => new Demand(x.Condition, x.state!.Current, x.state.On));
        return new LoadItem(feed.Id, $"{feed.Item} {feed.Input}", job.BreakerOf(feed.Breaker)?.Bus ?? "", feed.Breaker, ListAction.Fitted, feed.ShedAt, [.. demands]);
    }
}
