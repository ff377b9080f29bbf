using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>Who carries a load: sources in parallel share it in proportion to their ratings, as they do where their regulators droop alike.</summary>
internal sealed class Sharing
{
    private readonly Catalog<PowerSource> sources;
    private readonly Catalog<Battery> batteries;
    private readonly Dictionary<string, HashSet<string>> fromSource;
    private readonly Dictionary<string, HashSet<string>> fromBattery;

    public Sharing(Aircraft aircraft)
    {
        (sources, batteries) = (aircraft.Sources.OrEmpty(), aircraft.Batteries.OrEmpty());
        fromSource = sources.ToDictionary(s => s.Id, s => Reach.Of(s, aircraft), StringComparer.Ordinal);
        fromBattery = batteries.ToDictionary(b => b.Id, b => Reach.Of(b, aircraft), StringComparer.Ordinal);
    }

    /// <summary>The sources that supply a condition.</summary>
    public IEnumerable<PowerSource> Of(OperatingCondition condition) => condition.Sources.Distinct(StringComparer.Ordinal).Select(sources.Find).OfType<PowerSource>();

    /// <summary>The share of a bus's load that a source carries in a condition.</summary>
    public double Share(PowerSource source, OperatingCondition condition, string bus)
    {
        var sharing = Of(condition).Where(s => fromSource[s.Id].Contains(bus)).ToArray();
        return sharing.Contains(source) ? source.Rating.Si / sharing.Sum(s => s.Rating.Si) : 0;
    }

    /// <summary>The share of a bus's load that a battery carries after the loss of all generators. Batteries side by side, on the very same buses,
    /// share in proportion to their capacities and so last equally long; any other battery is taken to carry its buses alone, which is on the safe side.</summary>
    public double Share(Battery battery, string bus)
    {
        var buses = fromBattery[battery.Id];
        return buses.Contains(bus) ? battery.Capacity.Si / batteries.Where(b => fromBattery[b.Id].SetEquals(buses)).Sum(b => b.Capacity.Si) : 0;
    }

    /// <summary>Whether anything feeds a bus in a condition: one of its sources, or where it has none a battery.</summary>
    public bool Supplies(OperatingCondition condition, string bus) =>
        condition.Sources.Count > 0 ? Of(condition).Any(s => fromSource[s.Id].Contains(bus)) : fromBattery.Values.Any(buses => buses.Contains(bus));
}
