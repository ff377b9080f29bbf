using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation.Power;

/// <summary>Checks a main power wire: the current it may carry, its drop, and its protection.</summary>
internal sealed class FeederChecks(Feeder feeder, Job job, ImmutableArray<LoadItem> loads, Sharing sharing)
{
    private static readonly Temperature DefaultAmbient = Temperature.Of(70, "°C");
    private static readonly Source Stated = new("This job", "", "feeders", Basis.Stated);

    private readonly string subject = $"feeder/{feeder.Id}";
    private readonly string path = $"aircraft/feeders/{feeder.Id}";

    public void Run(Memo memo, List<Finding> findings, List<Shown> shown)
    {
        if (job.Parts.Wires?.Find(feeder.Wire) is not { } wire)
        {
            findings.Add(new("wire-unknown", Verdict.CannotTell, subject, $"The parts catalogue has no wire '{feeder.Wire}'.", "", Stated, "Name a wire of the catalogue.", path));
            return;
        }

        var demand = Demand();
        var rated = job.Aircraft.Sources?.Find(feeder.From)?.Rating ?? demand;
        var ambient = feeder.Hottest ?? DefaultAmbient;
        var allowed = memo.Run<WireCurrent, WireCurrentInput>(
            new(wire.Gauge, wire.Rating, ambient, job.Aircraft.Ceiling, 1, BundleDerating.Curves[0], WiringContext.MaterialOf(wire), demand), "Imax");
        var origins = Origins(wire);
        shown.Add(new Shown($"{subject}/current", allowed, () => origins));
        Add(findings, Findings.Of(allowed, subject, path, "Use a thicker feeder, or take load off it."));
        if (allowed.Value(0) is { } most)
        {
            var hot = ConductorTemperature.Estimate(ambient, wire.Rating, Math.Min(1, rated.Si / most));
            var drop = memo.Run<FeederDrop, FeederDropInput>(new(Regulated(), rated, wire.Gauge, feeder.Length, hot, wire.Resistance, Conductor: WiringContext.MaterialOf(wire)));
            shown.Add(new Shown(subject, drop, () => origins));
            Add(findings, Findings.Of(drop, subject, path, "Use a thicker or shorter feeder."));
        }

        if (feeder.Protection is { } protection && new Check("feeder protection", demand.As("A"), Sense.AtMost, protection.As("A"), "the protection carries what the feeder carries", Stated) is { Holds: false } check)
        {
            findings.Add(new("feeder-protection", Verdict.Fails, subject, "The loads behind the feeder exceed its protection.", Findings.Figures(check), Stated, "Take load off the buses behind it.", path));
        }
    }

    // The greatest mean over five minutes: a large wire follows its current within minutes, a limiter sooner.
    // The worst condition in which current runs through it: a source's share, no more than it gives; a battery's only without sources;
    // between buses all that lies behind, whichever way it comes.
    private Current Demand()
    {
        var behind = Reach.OfBus(feeder.To, job.Aircraft);
        var (source, battery) = (job.Aircraft.Sources?.Find(feeder.From), job.Aircraft.Batteries?.Find(feeder.From));
        double Share(OperatingCondition condition, string bus) =>
            source is not null ? sharing.Share(source, condition, bus) : battery is null ? 1 : condition.Sources.Count == 0 ? sharing.Share(battery, bus) : 0;
        var demand = job.Aircraft.Conditions.OrEmpty()
            .Select(c => new Current(loads.Where(l => l.Action != ListAction.Removed && behind.Contains(l.Bus)).Sum(l => l.Average(c.Id, Intervals.All[1]).Si * Share(c, l.Bus)))).DefaultIfEmpty().Max();
        return source is not null && demand > source.Rating ? source.Rating : demand;
    }

    // The voltage at its beginning: of the source, the battery, or the bus it leaves.
    private Voltage Regulated() =>
        job.Aircraft.Sources?.Find(feeder.From)?.Voltage ?? job.Aircraft.Batteries?.Find(feeder.From)?.Voltage ?? job.Aircraft.Buses?.Find(feeder.From)?.Nominal ?? Voltage.Of(28, "V");

    private Dictionary<string, string> Origins(WirePart wire) => new(StringComparer.Ordinal)
    {
        ["I"] = $"loads behind {feeder.Id} over 5 minutes in the worst condition; for the drop of a source's feeder its rating", ["AWG"] = wire.Id, ["TR"] = wire.Id, ["r20"] = wire.Id,
        ["T1"] = feeder.Hottest is null ? "70 °C taken, as the feeder names none" : $"feeder {feeder.Id}", ["alt"] = "ceiling of the aircraft", ["L"] = $"feeder {feeder.Id}", ["N"] = "runs alone",
        ["V"] = feeder.From, ["T"] = "estimated at that current",
    };

    private static void Add(List<Finding> findings, Finding? finding)
    {
        if (finding is not null)
        {
            findings.Add(finding);
        }
    }
}
