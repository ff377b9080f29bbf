using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>Which buses a source or battery reaches through the feeders.</summary>
internal static class Reach
{
    /// <summary>The buses reached from a source.</summary>
    public static HashSet<string> Of(PowerSource source, Aircraft aircraft) => From(source.Id, source.Bus, aircraft);

    /// <summary>The buses reached from a battery.</summary>
    public static HashSet<string> Of(Battery battery, Aircraft aircraft) => From(battery.Id, battery.Bus, aircraft);

    /// <summary>The buses reached from a bus, itself included.</summary>
    public static HashSet<string> OfBus(string bus, Aircraft aircraft) => From(bus, bus, aircraft);

    private static HashSet<string> From(string id, string bus, Aircraft aircraft)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal) { bus };
        var open = new Queue<string>([id, bus]);
        while (open.TryDequeue(out var at))
        {
            foreach (var feeder in aircraft.Feeders.OrEmpty().Where(f => f.From == at && reached.Add(f.To)))
            {
                open.Enqueue(feeder.To);
            }
        }

        return reached;
    }
}
