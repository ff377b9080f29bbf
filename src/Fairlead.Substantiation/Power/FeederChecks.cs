using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Power;

/// <summary>Checks a main power wire: the current it may carry, its drop, and its protection.</summary>
internal static class FeederChecks
{
    private static readonly Temperature DefaultAmbient = Temperature.Of(70, "°C");
    private static readonly Source Stated = new("This job", "", "protection of the feeder", Basis.Stated);

    public static void Run(Feeder feeder, Job job, ImmutableArray<LoadItem> loads, Memo memo, List<Finding> findings, List<Shown> shown)
    {
        if (job.Parts.Wires?.Find(feeder.Wire) is not { } wire)
        {
            return;
        }

        var (subject, path) = ($"feeder/{feeder.Id}", $"aircraft/feeders/{feeder.Id}");
        var (demand, rated, origin) = Currents(feeder, job, loads);
        var ambient = feeder.Hottest ?? DefaultAmbient;
        var place = new WireCurrentInput(wire.Gauge, wire.Rating, ambient, job.Aircraft.Ceiling, 1, BundleDerating.Curves[0], WiringContext.MaterialOf(wire));
        var allowed = memo.Run<WireCurrent, WireCurrentInput>(place with { Actual = demand }, "Imax");
        var origins = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["I"] = origin, ["AWG"] = wire.Id, ["TR"] = wire.Id, ["T1"] = feeder.Hottest is null ? "70 °C taken, as the feeder names none" : $"feeder {feeder.Id}", ["alt"] = "ceiling of the aircraft", ["L"] = $"feeder {feeder.Id}", ["N"] = "runs alone",
        };
        shown.Add(new Shown($"{subject}/current", allowed, () => origins));
        Add(findings, Findings.Of(allowed, subject, path, "Use a thicker feeder, or take load off it."));
        if (allowed.Value(0) is { } most && job.Aircraft.Buses?.Find(feeder.To) is { } bus)
        {
            var hot = ConductorTemperature.Estimate(ambient, wire.Rating, Math.Min(1, rated.Si / most));
            var voltage = job.Aircraft.Sources?.Find(feeder.From)?.Voltage ?? bus.Nominal;
            var drop = memo.Run<FeederDrop, FeederDropInput>(new(voltage, rated, wire.Gauge, feeder.Length, hot, wire.Resistance));
            shown.Add(new Shown(subject, drop, () => origins));
            Add(findings, Findings.Of(drop, subject, path, "Use a thicker or shorter feeder."));
        }

        if (feeder.Protection is { } protection && demand > protection)
        {
            var check = new Check("feeder protection", demand.As("A"), Sense.AtMost, protection.As("A"), "the protection carries what the feeder carries", Stated);
            findings.Add(new("feeder-protection", Verdict.Fails, subject, "The loads behind the feeder exceed its protection.", Findings.Figures(check), Stated, "Take load off the buses behind it.", path));
        }
    }

    // What runs through it in the worst condition; and for the drop, the rated current where it comes from a source.
    private static (Current Demand, Current Rated, string Origin) Currents(Feeder feeder, Job job, ImmutableArray<LoadItem> loads)
    {
        var behind = Reach.OfBus(feeder.To, job.Aircraft);
        var demand = job.Aircraft.Conditions.OrEmpty()
            .Select(c => new Current(loads.Where(l => l.Action != ListAction.Removed && behind.Contains(l.Bus)).Sum(l => l.Average(c.Id).Si))).DefaultIfEmpty().Max();
        var source = job.Aircraft.Sources?.Find(feeder.From);
        return (source is not null && demand > source.Rating ? source.Rating : demand, source?.Rating ?? demand, $"loads behind {feeder.Id} in the worst condition");
    }

    private static void Add(List<Finding> findings, Finding? finding)
    {
        if (finding is not null)
        {
            findings.Add(finding);
        }
    }
}
