using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>Checks that every bus with loads is alive: one finding for each load or bus, however many conditions it touches.</summary>
internal static class BusChecks
{
    private static readonly Source Analysis = new("ASTM F2490", "", "4.3: demand under all conditions against capacity");

    public static IEnumerable<Finding> Run(Job job, ImmutableArray<LoadItem> loads, Sharing sharing)
    {
        var conditions = job.Aircraft.Conditions.OrEmpty();
        foreach (var load in loads.Where(l => l.Action == ListAction.Fitted))
        {
            if (job.Aircraft.Buses?.Find(load.Bus) is { Essential: false } bus
                && Names(conditions.Where(c => c.Kind == ConditionKind.Emergency && IsOn(load, c))) is { Length: > 0 } emergency)
            {
                yield return new("bus-not-essential", Verdict.Fails, $"feed/{load.Id}", $"{load.Name} is on in '{emergency}', but its bus, '{bus.Name}', does not stay alive after the loss of all generators.", "", Analysis, "Feed it from an essential bus, or leave the condition out.", $"change/power/{load.Id}");
            }
        }

        // What nothing feeds is in no sum, so the analysis would look better than it is. New loads on a bus that dies with the generators have their finding above.
        foreach (var bus in job.Aircraft.Buses.OrEmpty())
        {
            var there = loads.Where(l => l.Action != ListAction.Removed && l.Bus == bus.Id).ToArray();
            if (Names(conditions.Where(c => !sharing.Supplies(c, bus.Id) && there.Any(l => IsOn(l, c) && (bus.Essential || c.Kind != ConditionKind.Emergency || l.Action != ListAction.Fitted)))) is { Length: > 0 } dead)
            {
                yield return new("bus-not-supplied", Verdict.CannotTell, $"bus/{bus.Id}", $"Loads on {bus.Name} are on in {dead}, but nothing that supplies it then reaches that bus through the feeders: the analysis leaves them out.", "", Analysis, "Add the feeder to the aircraft record or the source to the condition, or leave the condition out of the loads.", $"aircraft/buses/{bus.Id}");
            }
        }
    }

    private static bool IsOn(LoadItem load, OperatingCondition condition) => load.In(condition.Id) is { Current.Si: > 0 };

    private static string Names(IEnumerable<OperatingCondition> conditions) => string.Join(", ", conditions.Select(c => c.Name));
}
