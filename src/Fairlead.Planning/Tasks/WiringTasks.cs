using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Tasks;

/// <summary>Wires: cut and marked on the bench, run bundle by bundle and zone by zone, terminated end by end, and each bundle checked for continuity and then for insulation.</summary>
internal static class WiringTasks
{
    private static readonly Wait Off = new("BATTERY-OFF", "the battery is off before electrical work", Hold: true);

    public static void Add(Draft draft)
    {
        var bundles = draft.Assessment.Circuits.GroupBy(c => c.Circuit.Bundle, StringComparer.Ordinal).ToArray();
        var runs = bundles.SelectMany(b => Run(draft, b.Key, [.. b])).ToLookup(r => r.Bundle, r => r.Task);
        var ends = Ends.Of(draft.Assessment).Select(e => (End: e, Task: Terminate(draft, e, runs))).ToArray();
        Check(draft, ends);
    }

    private static IEnumerable<(string Bundle, JobTask Task)> Run(Draft draft, string bundle, CircuitResult[] circuits)
    {
        var cut = draft.Add(new JobTask("CUT-" + bundle, TaskKind.Cut, $"Cut and mark {Count(circuits.Length, "wire")} of bundle {bundle} on the bench", "", draft.Labour.For("cut-wire") * circuits.Length, [Skills.Electrical], "change/circuits")
        {
            Authorisation = Skills.Electrical, Parts = circuits.Select(c => c.Part).Distinct(StringComparer.Ordinal).ToSequence(),
        });
        var segments = circuits.SelectMany(c => c.Way?.Segments ?? []).Distinct(StringComparer.Ordinal).Select(s => draft.Aircraft.Segments?.Find(s)).OfType<RacewaySegment>();
        foreach (var zone in segments.GroupBy(s => Ways.WorkedIn(draft.Aircraft, s), StringComparer.Ordinal))
        {
            yield return (bundle, Run(draft, bundle, zone.Key, [.. zone], cut));
        }
    }

    private static JobTask Run(Draft draft, string bundle, string zone, RacewaySegment[] segments, JobTask cut)
    {
        var panels = segments.SelectMany(s => s.Panels).Distinct(StringComparer.Ordinal).ToSequence();
        var time = segments.Aggregate(TaskTime.None, (sum, s) => sum + (draft.Labour.For(Narrow(draft, s) ? "run-under-floor" : "run-open") * Metres(draft, s)));
        var passed = segments.SelectMany(s => Ways.Passed(draft.Aircraft, s)).Append(zone).Distinct(StringComparer.Ordinal).ToArray();
        var beyond = passed.Where(z => z != zone).ToSequence();
        var metal = passed.SelectMany(z => draft.Metal(z, panels)).Select(t => new Wait(t.Id, "metal is cut and swarf taken up before wires go in"));
        var old = draft.Tasks.Where(t => t.Kind == TaskKind.Remove && passed.Any(z => draft.In(t, z, panels))).Select(t => new Wait(t.Id, "old wires are out of the way"));
        var controls = passed.Where(z => draft.Aircraft.Zones.Find(z)?.Controls == true).Order(StringComparer.Ordinal).ToArray();
        return draft.Add(
            new JobTask($"RUN-{bundle}-{zone}", TaskKind.RunWire, $"Run and clamp bundle {bundle} in {zone}, {draft.Aircraft.Zones.Find(zone)?.Name}{(beyond.Count > 0 ? $", and on into {string.Join(", ", beyond)}" : "")}", zone, time, [Skills.Electrical], "change/circuits")
            {
                Panels = panels, Passes = beyond, Authorisation = Skills.Electrical,
                Cautions = controls.Length > 0 ? [$"Flight controls run in {string.Join(", ", controls)}: keep wires clear of them through all their travel."] : [],
            },
            metal.Concat(old).Append(new Wait(cut.Id, "its wires are cut and marked")).Append(Off));
    }

    private static double Metres(Draft draft, RacewaySegment segment) => segment.Length is { } length ? length.In("m")
        : draft.Aircraft.Nodes is { } nodes && nodes.Find(segment.From) is { } a && nodes.Find(segment.To) is { } b
            ? Math.Sqrt(Math.Pow((a.Place.Fs - b.Place.Fs).In("m"), 2) + Math.Pow((a.Place.Bl - b.Place.Bl).In("m"), 2) + Math.Pow((a.Place.Wl - b.Place.Wl).In("m"), 2)) : 0;

    private static bool Narrow(Draft draft, RacewaySegment segment) => segment.Panels.Any(p => draft.Aircraft.Panels?.Find(p)?.Kind is PanelKind.Floor or PanelKind.Access);

    private static JobTask Terminate(Draft draft, WireEnd end, ILookup<string, JobTask> runs)
    {
        var (labour, coax, contacts) = (draft.Labour, end.Coax(draft.Job), end.Circuits.Count - end.Coax(draft.Job));
        var shell = end.Name == end.Item || contacts == 0 ? TaskTime.None : labour.For("backshell");
        var time = (labour.For("crimp") * contacts) + (labour.For("coax-connector") * coax) + (labour.For("shield") * end.Shields) + shell;
        var panels = draft.Change.Fit?.Find(end.Item)?.Panels ?? draft.Change.Antennas?.Find(end.Item)?.Panels ?? Ends.PanelsAt(draft, end.Node);
        var bundles = end.Circuits.Select(c => c.Circuit.Bundle).Distinct(StringComparer.Ordinal).ToArray();
        var skill = coax > 0 ? Skills.Avionics : Skills.Electrical;
        var waits = bundles.SelectMany(b => runs[b]).Select(r => new Wait(r.Id, "the bundle is in place"))
            .Concat(draft.These("its wires are cut", bundles.Select(b => "CUT-" + b)))
            .Concat(draft.These("it is mounted", "BREAKER-" + end.Item, "GROUND-" + end.Item));
        var tools = end.Circuits.SelectMany(c => new[] { c.FromContact?.Tool, c.ToContact?.Tool }).OfType<string>().Where(t => draft.Aircraft.Tools?.Find(t) is not null);
        return draft.Add(
            new JobTask("TERM-" + end.Name, TaskKind.Terminate, $"Terminate {Count(end.Circuits.Count, "wire")} at {end.Name}", draft.Aircraft.Nodes?.Find(end.Node)?.Zone ?? draft.Change.Fit?.Find(end.Item)?.Zone ?? "", time, [skill], "change/circuits")
            {
                Panels = panels, Authorisation = skill, Tools = tools.Distinct(StringComparer.Ordinal).ToSequence(), Coax = coax > 0, CoaxOnly = coax > 0 && contacts == 0, AtPoint = end.Name == end.Item,
            },
            waits.Append(Off));
    }

    // Looked over and contacts counted, bonding before, then continuity, then isolation: nothing is powered before its wiring is proved.
    private static void Check(Draft draft, (WireEnd End, JobTask Task)[] ends)
    {
        foreach (var card in draft.Tests.Cards.Where(c => c.Kind is TestKind.Visual or TestKind.Continuity or TestKind.Isolation or TestKind.Coax))
        {
            var reached = ends.Where(e => e.End.Reaches(card)).ToArray();
            var first = card.Kind switch
            {
                TestKind.Continuity => draft.Held("bonding and contacts are checked before continuity", TaskKind.HarnessCheck, TaskKind.Inspect).Where(w => Precedes(draft, w, TestKind.Bonding, TestKind.Visual)),
                TestKind.Isolation => draft.Held("continuity is checked before isolation", TaskKind.HarnessCheck).Where(w => Precedes(draft, w, TestKind.Continuity)),
                _ => [],
            };
            CardTasks.Add(draft, card, reached.Select(e => e.Task.Zone).FirstOrDefault(z => z.Length > 0) ?? "", reached.SelectMany(e => e.Task.Panels).Distinct(StringComparer.Ordinal).ToSequence(), "change/circuits",
                reached.Select(e => new Wait(e.Task.Id, "its ends are terminated")).Concat(first).Append(Off));
        }
    }

    private static bool Precedes(Draft draft, Wait wait, params TestKind[] kinds) => draft.Tasks.First(t => t.Id == wait.Task).Card is { Again: false } card && kinds.Contains(card.Kind);

    private static string Count(int count, string noun) => $"{NumberFormat.Text(count)} {noun}{(count == 1 ? "" : "s")}";
}
