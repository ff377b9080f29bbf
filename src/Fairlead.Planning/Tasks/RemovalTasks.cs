namespace Fairlead.Planning.Tasks;

/// <summary>What comes out: labelled, taken out, and its dead wires with it.</summary>
internal static class RemovalTasks
{
    public static void Add(Draft draft)
    {
        foreach (var removal in draft.Change.Remove.Each())
        {
            var antenna = draft.Aircraft.Antennas?.Find(removal.Item);
            var item = draft.Aircraft.Equipment?.Find(removal.Item);
            var (name, path) = (antenna?.Name ?? item?.Name ?? removal.Item, $"change/remove/{removal.Id}");
            var zone = item?.Zone ?? removal.Panels.Select(p => draft.Aircraft.Panels?.Find(p)?.Zone).FirstOrDefault() ?? "";
            var off = new Wait("BATTERY-OFF", "the battery is off before wires are parted", Hold: true);
            var tag = draft.Add(
                new JobTask("TAG-" + removal.Id, TaskKind.Tag, $"Label the wires and cables of {name} before they are parted", zone, draft.Labour.For(antenna is null ? "label" : "label-coax"), [Skills.Electrical], path)
                {
                    Panels = removal.Panels, Authorisation = Skills.Electrical,
                },
                [off]);
            var remove = draft.Add(
                new JobTask("REMOVE-" + removal.Id, TaskKind.Remove, $"Take out {name}; cap connectors, record part and serial number, weigh and tag it", zone, draft.Labour.For(antenna is null ? "box-out" : "antenna-out"), [Skills.Avionics], path)
                {
                    Panels = removal.Panels, Authorisation = Skills.Avionics, Removes = removal.Item,
                },
                [off, new Wait(tag.Id, "wires are labelled before they are parted", Hold: true)]);
            if (removal.Wire.Si > 0)
            {
                draft.Add(
                    new JobTask("DEADWIRE-" + removal.Id, TaskKind.Remove, $"Take out the dead wires of {name} and weigh them", zone, draft.Labour.For("dead-wire"), [Skills.Electrical], path)
                    {
                        Panels = removal.Panels, Authorisation = Skills.Electrical,
                    },
                    [off, new Wait(remove.Id, "the box is out first")]);
            }
        }
    }
}
