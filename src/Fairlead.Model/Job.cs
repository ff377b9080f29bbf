namespace Fairlead.Model;

/// <summary>The whole job: what the folder describes.</summary>
public sealed record Job(WorkOrder Order, Aircraft Aircraft, PartsCatalog Parts, Change Change, Stock? Stock = null)
{
    /// <summary>A breaker that goes in, or one of the aircraft as it is.</summary>
    public Breaker? BreakerOf(string? id) => Change.Breakers?.Find(id) ?? Aircraft.Breakers?.Find(id);

    /// <summary>Where a breaker stands in the files.</summary>
    public string PathOfBreaker(string id) => $"{(Change.Breakers?.Find(id) is null ? "aircraft" : "change")}/breakers/{id}";

    /// <summary>The power input that a feed feeds.</summary>
    public PowerInput? InputOf(PowerFeed feed)
    {
        ArgumentNullException.ThrowIfNull(feed);
        return Parts.Equipment?.Find(Change.Fit?.Find(feed.Item)?.Part)?.Power?.Find(feed.Input);
    }
}
