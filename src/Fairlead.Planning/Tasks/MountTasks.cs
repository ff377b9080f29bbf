using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Planning.Tasks;

/// <summary>Structure and mounting: boxes on trays or panels, antennas on doublers, bonded, sealed and painted, breakers and ground studs.</summary>
internal static class MountTasks
{
    private static readonly Wait Off = new("BATTERY-OFF", "the battery is off before tools come near wires and lines", Hold: true);
    private static readonly Wait Approved = new("APPROVAL", "the approval is in hand before metal is cut", Hold: true);
    private static readonly Wait Dead = new("BATTERY-OFF", "the battery is off before wires and bars are touched", Hold: true);
    private const string Eyes = "Eye protection: chips fly.";
    private const string MetalFirst = "metal is cut before it is protected and covered";

    public static void Add(Draft draft)
    {
        foreach (var item in draft.Change.Fit.Each())
        {
            Box(draft, item);
        }

        foreach (var antenna in draft.Change.Antennas.Each())
        {
            Antenna(draft, antenna);
        }

        foreach (var breaker in draft.Change.Breakers.Each())
        {
            draft.Add(Point(draft, $"BREAKER-{breaker.Id}", $"Fit breaker {breaker.Id}, {breaker.Name}, with its placard", breaker.Node, "breaker", Skills.Electrical, $"change/breakers/{breaker.Id}") with { Parts = [breaker.Part] }, [Dead]);
        }

        foreach (var stud in draft.Change.Grounds.Each())
        {
            Stud(draft, stud);
        }
    }

    private static void Box(Draft draft, FittedItem item)
    {
        var (path, name) = ($"change/fit/{item.Id}", draft.Job.Parts.Equipment?.Find(item.Part)?.Name ?? item.Part);
        var nuts = item.Fixing is { AnchorNut: not null } fixing ? fixing.Count : 0;
        var old = draft.These("the old box is out of the place", draft.Tasks.Where(t => t.Kind == TaskKind.Remove && t.Panels.Any(item.Panels.Contains)).Select(t => t.Id));
        var drill = draft.Add(Structural(draft, "DRILL-" + item.Id, TaskKind.Drill, $"Mark out, drill and deburr for {item.Id}, {name}", item.Zone, "drill-tray", item.Panels, path) with
        {
            Tools = draft.Tools("drill", "vacuum").ToSequence(), Cautions = ["Look behind before drilling: lines, wires and control cables.", Eyes],
        }, old.Append(Approved).Append(Off));
        var before = drill.Id;
        if (nuts > 0)
        {
            before = draft.Add(Structural(draft, "RIVET-" + item.Id, TaskKind.Rivet, $"Rivet {NumberFormat.Text(nuts)} anchor nuts for {item.Id}", item.Zone, "anchor-nut", item.Panels, path, nuts) with
            {
                Tools = draft.Tools("rivet").ToSequence(), Parts = [item.Fixing!.AnchorNut!],
            }, [new Wait(before, MetalFirst), Approved, Off]).Id;
        }

        var mount = draft.Add(Structural(draft, "MOUNT-" + item.Id, TaskKind.Mount, $"Mount the tray or bracket of {item.Id}, {name}, on bonded metal", item.Zone, "mount-box", item.Panels, path) with
        {
            Tools = draft.Tools("torque").ToSequence(), Parts = new[] { item.Part, item.Fixing?.Fastener }.OfType<string>().ToSequence(),
        }, [new Wait(before, "its holes are ready"), Off]);
        Bond(draft, item.Id, mount.Id, item.Zone, item.Panels, path);
    }

    private static void Antenna(Draft draft, FittedAntenna antenna)
    {
        var (path, zone, panels) = ($"change/antennas/{antenna.Id}", antenna.Zone ?? draft.Aircraft.Structures?.Find(antenna.Structure ?? "")?.Zone ?? "", antenna.Panels);
        var name = $"{antenna.Id}, {draft.Job.Parts.Antennas?.Find(antenna.Part)?.Name ?? antenna.Part}";
        var before = draft.Add(Structural(draft, "DRILL-" + antenna.Id, TaskKind.Drill, $"Cut and drill the skin for {name}", zone, "antenna-drill", panels, path) with
        {
            Tools = draft.Tools("drill", "vacuum").ToSequence(), Cautions = ["Look behind before drilling: lines, wires, fuel and control cables. No fuel vapour.", Eyes],
        }, [Approved, Off]).Id;
        before = draft.Add(Structural(draft, "PROTECT-" + antenna.Id, TaskKind.Protect, $"Conversion-coat and prime the bare edges for {antenna.Id}, the bonding face left bare", zone, "antenna-protect", panels, path), [new Wait(before, MetalFirst), Off]).Id;
        if (antenna.Plate is { } plate)
        {
            before = draft.Add(Structural(draft, "RIVET-" + antenna.Id, TaskKind.Rivet, $"Rivet the doubler of {antenna.Id}", zone, "antenna-rivet", panels, path) with
            {
                Tools = draft.Tools("rivet").ToSequence(), Parts = new[] { plate.Rivet, plate.Sheet }.OfType<string>().ToSequence(),
                Stages = [new("before-covering", "holes round and deburred, edge distance kept, no cracks, bare metal treated and primed, faying sealant on: seen before the doubler covers it")],
            }, [new Wait(before, "the faces are primed and dry before they are covered", Cure.Primer), Approved, Off]).Id;
        }

        before = draft.Add(Structural(draft, "MOUNT-" + antenna.Id, TaskKind.Mount, $"Bond and mount {name}", zone, "antenna-mount", panels, path) with
        {
            Fits = antenna.Id, Tools = draft.Tools("torque").ToSequence(), Parts = new[] { antenna.Part, antenna.Fixing?.Fastener }.OfType<string>().ToSequence(),
        }, [new Wait(before, "the skin is ready", antenna.Plate is null ? Cure.Primer : 0), Off]).Id;
        Seal(draft, antenna, Bond(draft, antenna.Id, before, zone, panels, path) ?? before, zone, path);
    }

    private static void Seal(Draft draft, FittedAntenna antenna, string before, string zone, string path)
    {
        if (antenna.Sealant is not { } sealant)
        {
            return;
        }

        var seal = draft.Add(Structural(draft, "SEAL-" + antenna.Id, TaskKind.Seal, $"Seal {antenna.Id}; record batch, time of mixing, temperature and humidity", zone, "antenna-seal", antenna.Panels, path) with
        {
            Crew = [Skills.Sealing], Parts = [sealant], Unbroken = true,
            Stages = [new("before-sealing", "bond measured and within its limit, screws torqued and marked, faces clean and dry: seen before sealant covers them")],
            Cautions = ["Ventilate, and wear gloves: sealant and its solvents harm skin and lungs."],
        }, [new Wait(before, "the bond is measured before it is covered", Hold: true)]);
        var cure = Cure.Of(draft.Job, seal).Hours;
        var again = Measured(draft, "REBOND-" + antenna.Id, zone, [], path, new(seal.Id, "the sealant is cured before the bond is measured again", cure, Hold: true), new("BATTERY-OFF-2", "the battery is off again then"));
        draft.Add(Structural(draft, "PAINT-" + antenna.Id, TaskKind.Paint, $"Touch up the paint around {antenna.Id}", zone, "antenna-paint", [], path) with { Crew = [Skills.Sealing] },
            [new Wait(seal.Id, "the sealant is cured before it is painted", cure, Hold: true), .. again is null ? Array.Empty<Wait>() : [new(again, "the bond is measured again before paint covers the places it is measured at", Hold: true)]]);
    }

    private static string? Bond(Draft draft, string id, string after, string zone, Sequence<string> panels, string path) => Measured(draft, "BOND-" + id, zone, panels, path, new Wait(after, "it is mounted"));

    private static string? Measured(Draft draft, string id, string zone, Sequence<string> panels, string path, params Wait[] after) => draft.Tests.Find(id) is { } card
        ? CardTasks.Add(draft, card, zone, panels, path, [.. after, new Wait("BATTERY-OFF", "the battery is off while resistances are measured", Hold: true)]).Id : null;

    // A stud goes into a hole of its own: it is metal work, for which the wires of its zone wait.
    private static void Stud(Draft draft, GroundStud stud)
    {
        var path = $"change/grounds/{stud.Id}";
        var fitted = draft.Add(Point(draft, $"GROUND-{stud.Id}", $"Fit ground stud {stud.Id} on bare metal", stud.Node, "ground-stud", Skills.Structure, path) with
        {
            Drilled = true, Tools = draft.Tools("drill", "vacuum").ToSequence(), Cautions = ["Look behind before drilling: lines, wires and control cables.", Eyes],
        }, [Approved, Dead]);
        Bond(draft, stud.Id, fitted.Id, fitted.Zone, [], path);
    }

    private static JobTask Point(Draft draft, string id, string title, string node, string activity, string skill, string path) =>
        new(id, TaskKind.Mount, title, Ways.ZoneOf(draft.Aircraft, node), draft.Labour.For(activity), [skill], path)
        {
            Panels = Ends.PanelsAt(draft, node), Authorisation = Skills.Authorisation(skill),
        };

    private static JobTask Structural(Draft draft, string id, TaskKind kind, string title, string zone, string activity, Sequence<string> panels, string path, double count = 1) =>
        new(id, kind, title, zone, draft.Labour.For(activity) * count, [Skills.Structure], path) { Panels = panels, Authorisation = Skills.Structure };
}
