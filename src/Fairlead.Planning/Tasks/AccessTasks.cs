using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Planning.Tasks;

/// <summary>Opening and closing. Panels are closed in the reverse order of opening, each when all behind it is done, looked at, cured and tested.</summary>
internal static class AccessTasks
{
    // Work by which something could come to lie in the way of a control.
    private static readonly TaskKind[] Hands = [TaskKind.Remove, TaskKind.Drill, TaskKind.Protect, TaskKind.Rivet, TaskKind.Mount, TaskKind.Seal, TaskKind.RunWire, TaskKind.Terminate, TaskKind.Connect, TaskKind.Extra];

    /// <summary>The opening of each panel, and battery off.</summary>
    public static void Open(Draft draft)
    {
        var labour = draft.Labour;
        foreach (var panel in draft.Opened)
        {
            var first = panel.After.Select(p => new Wait("OPEN-" + p, $"{p} is in front of it"));
            draft.Add(
                new JobTask("OPEN-" + panel.Id, TaskKind.Open, $"Open {panel.Name}; bag and count its fasteners", panel.Zone, TaskTime.Of(panel.Open), [Skills.Access], $"aircraft/panels/{panel.Id}") { Panels = [panel.Id] },
                first.Concat(draft.InHand));
        }

        draft.Add(
            new JobTask("BATTERY-OFF", TaskKind.Battery, "Switch off and disconnect the battery, pull and tag the breakers concerned, tag external power", "", labour.For("battery"), [Skills.Electrical], "change")
            {
                Authorisation = Skills.Electrical,
                Cautions = ["Lines ahead of breakers stay live from the battery until it is disconnected."],
            },
            draft.InHand);
    }

    /// <summary>Looking behind each panel and closing it; controls behind it are checked afterwards.</summary>
    public static void Close(Draft draft)
    {
        foreach (var panel in draft.Opened)
        {
            Inspect(draft, panel);
        }

        var later = draft.Opened.SelectMany(p => p.After.Select(before => (before, p.Id))).ToLookup(x => x.before, x => x.Id);
        foreach (var panel in draft.Opened)
        {
            var waits = new List<Wait>(draft.These("it is looked behind before it is closed", "INSPECT-" + panel.Id).Select(w => w with { Hold = true }));
            waits.AddRange(Behind(draft, panel).Select(t => new Wait(t.Id, "it is behind the panel", Hold: true)));
            waits.AddRange(draft.Tasks.Where(t => t.Kind == TaskKind.Seal && t.Panels.Contains(panel.Id)).Select(t => new Wait(t.Id, "the seal cures in sight", Cure.Of(draft.Job, t).Hours)));
            waits.AddRange(later[panel.Id].Select(p => new Wait("CLOSE-" + p, "it was opened after it")));
            waits.AddRange(Tested(draft, panel) ? draft.Held("what is behind it passes its tests first", TaskKind.Test, TaskKind.Configure).Where(w => draft.Tasks.First(t => t.Id == w.Task) is { Outside: false }) : []);
            waits.Add(new Wait("OPEN-" + panel.Id, "it is open"));
            draft.Add(
                new JobTask("CLOSE-" + panel.Id, TaskKind.Close, $"Close {panel.Name}{Fasteners(panel)}", panel.Zone, TaskTime.Of(panel.Close), [Skills.Access], $"aircraft/panels/{panel.Id}") { Panels = [panel.Id] },
                waits);
            Controls(draft, panel);
        }

        foreach (var zone in draft.Aircraft.Zones.Where(z => z.Controls))
        {
            Controls(draft, zone);
        }
    }

    private static string Fasteners(Panel panel) => panel.Fasteners > 0 ? $" with {NumberFormat.Text(panel.Fasteners)} fasteners" : "";

    private static IEnumerable<JobTask> Behind(Draft draft, Panel panel) => draft.Tasks.Where(t => t.Kind is not (TaskKind.Open or TaskKind.Close or TaskKind.Controls) && t.Panels.Contains(panel.Id));

    private static bool Tested(Draft draft, Panel panel) =>
        draft.Change.Fit.Each().Any(f => f.Panels.Contains(panel.Id)) || draft.Change.Antennas.Each().Any(a => a.Panels.Contains(panel.Id));

    private static void Inspect(Draft draft, Panel panel)
    {
        if (Behind(draft, panel).Select(t => new Wait(t.Id, "it is looked at when it is done")).ToArray() is { Length: > 0 } work)
        {
            var swarf = draft.Metal(panel.Zone, [panel.Id]).Select(t => new Wait(t.Id, "no swarf falls any more where it was looked"));
            draft.Add(
                new JobTask("INSPECT-" + panel.Id, TaskKind.Inspect, $"Look behind {panel.Name}: clear of tools and swarf, wires clamped and clear, nothing loose", panel.Zone, draft.Labour.For("stage-inspection"), [Skills.Inspection], $"aircraft/panels/{panel.Id}")
                {
                    Panels = [panel.Id], Authorisation = Skills.Inspection, Photographs = true, Tools = draft.Tools("lamp").ToSequence(),
                },
                work.Concat(swarf));
        }
    }

    private static void Controls(Draft draft, Panel panel)
    {
        if (panel.Controls)
        {
            draft.Add(Controls(draft, "CONTROLS-" + panel.Id, TaskKind.Controls, "behind " + panel.Name, panel.Zone, $"aircraft/panels/{panel.Id}"), [new Wait("CLOSE-" + panel.Id, "controls are checked after the work in front of them is closed")]);
        }
    }

    // Work in a zone through which controls run may foul them whichever panel it was done behind: once all of it is done and closed they are checked, once for the zone.
    private static void Controls(Draft draft, Zone zone)
    {
        if (draft.Tasks.Where(t => Hands.Contains(t.Kind) && draft.In(t, zone.Id, [])).Select(t => t.Id).ToArray() is { Length: > 0 } work)
        {
            var closed = draft.Opened.Where(p => p.Zone == zone.Id).Select(p => "CLOSE-" + p.Id);
            draft.Add(
                Controls(draft, "ZONE-CONTROLS-" + zone.Id, TaskKind.ZoneControls, $"that run through {zone.Id}, {zone.Name}", zone.Id, $"aircraft/zones/{zone.Id}"),
                work.Concat(closed).Select(id => new Wait(id, "controls are checked after the work in their zone is done and closed", Hold: true)));
        }
    }

    private static JobTask Controls(Draft draft, string id, TaskKind kind, string which, string zone, string source) =>
        new(id, kind, $"Check the flight controls {which}: full, free and in the correct sense", zone, draft.Labour.For("controls-check"), [Skills.Inspection, Skills.Second], source)
        {
            Authorisation = Skills.Inspection, Independent = true, Cautions = ["Keep clear of the surfaces while they move."],
        };
}
