using Fairlead.Calculations;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Cards;

/// <summary>The steps of each kind of work, as the trade goes about it. The approved data come first where they say otherwise.</summary>
internal static class CardSteps
{
    public static Sequence<string> Of(JobTask task) => task.Card is { } card ? [.. card.Preconditions.Select(p => $"Before: {p}"), "Measure each line; write the number with its unit and instrument, never a tick", "A line that fails: raise a defect, mend it, and measure the whole connector or system again"] : task.Kind switch
    {
        TaskKind.Survey =>
        [
            "Read the register plate and compare registration, type and serial number", "Photograph every place that the work will touch, panels on and lit", "Compare the equipment list with what is fitted; note what differs",
            "Test each existing system and write what it shows, faults included", "Look for corrosion, chafed wires and unknown splices; raise a defect for each", "Agree the faults found with the operator before anything is touched",
        ],
        TaskKind.Battery => task.Id.Contains("ON", StringComparison.Ordinal)
            ? ["Everybody is told; tools and hands are clear", "Breakers of the new circuits are pulled", "Fire extinguisher at hand; one person stays at the battery", "Connect the battery, ground lead last; note its voltage"]
            : ["Switch everything off; battery switch off", "Disconnect the battery, ground lead first; insulate the leads", "Pull and collar the breakers concerned; hang a tag on each and on external power", "Prove that the bars are dead"],
        TaskKind.Open => ["Hang the bag with the panel's number at the opening", "Take out the fasteners; note a hole with another length on the bag", "Count them into the bag and write the number; photograph the place", "Stow the panel where nobody steps on it"],
        TaskKind.Tag => ["Label each wire and cable with item, connector and contact, both sides of where it will be parted", "Photograph the labels", "Only then unplug"],
        TaskKind.Remove => ["Nothing is live: prove it at the item", "Unplug, and cap both halves", "Take the item out; write part number, serial number, weight and condition on its tag", "Wires that stay: ends stowed, insulated, labelled spare; dead wires come out", "Quarantine what came out"],
        TaskKind.Drill => ["Look behind, and keep a hand off the far side", "Cover bundles, cables and lines below", "Mark out from the hole drawing; check edge distance before the first hole", "Drill undersize, then to size; deburr both sides", "Vacuum every chip; look with mirror and lamp"],
        TaskKind.Protect => ["Clean to bright metal within the masked area", "Conversion coating, rinse, dry", "Prime edges and all but the bonding face", "Finish within the day: bare metal does not wait"],
        TaskKind.Rivet => ["Dry fit with sheet holders: faces close, holes line up; take it apart again, deburr and clean", "Faying sealant where the data ask for it", .. task.Stages.Count > 0 ? (Sequence<string>)["Stage inspection, before the faces are closed"] : [], "Close the faces; set the rivets; formed heads 1.5 D wide and 0.5 D high", "Look for cracks, gaps and eyebrow marks"],
        TaskKind.Mount when task.Id.StartsWith("GROUND-", StringComparison.Ordinal) =>
        [
            "Look behind, and keep a hand off the far side; no other stud, edge or rivet row in the way", "Drill undersize, then to size; deburr both sides, vacuum every chip", "Bare the metal under washers and terminal, and no more; clean until bright", "Treat the bare metal as the data ask, and fit the same day",
            "Stud, washers and nuts of the table; torque, and stripe with inspection lacquer", "No paint, sealant or jointing compound between the faces", "After the bond is measured: restore the finish around it",
        ],
        TaskKind.Mount when task.Id.StartsWith("BREAKER-", StringComparison.Ordinal) =>
        [
            "The bar is dead: prove it", "Part number and rating are those of the table", "Fit it in its hole; nut torqued by its data", "Join it to its bar: faces clean, nothing else parted or left loose",
            "Placard beside it as the table says; read label and rating back", "Pulled, collared and tagged until its power is checked",
        ],
        TaskKind.Mount => ["Bonding faces bare and bright", "Fit with the fasteners of the table; no other length", "Torque in steps, crosswise; stripe with inspection lacquer across fastener and part", "Pull and shake: nothing moves"],
        TaskKind.Seal => ["Stage inspection before sealant covers anything", "Structure warm enough: read its temperature", "Mix by the data; enter batch, time, temperature and humidity in the log at once", "Brush and fillet within the application life", "Hang the cure tag with the time at which it is cured"],
        TaskKind.Paint => ["Sealant is cured to the touch", "Mask drains, vents and the antenna face", "Prime and top coat by the data; tag wet paint"],
        TaskKind.Cut => ["Cut in the order of the list, longest first from each reel", "Mark or sleeve each end before the next is cut", "Strip nothing yet; coil and tag the bundle"],
        TaskKind.RunWire => ["Protect edges with grommets; no bend sharper than ten diameters of the largest wire", "Clamp at every point of the table; no slack above 13 mm between supports", "Drip loop below each connector, and enough for two new terminations", "Move every control near it through all its travel: 13 mm clear when pushed by hand", "Photograph each bay"],
        TaskKind.Terminate when task.CoaxOnly =>
        [
            "Ferrule and boot on the cable first", "Strip to the dimensions of the connector's data; no strand of the braid nicked or left on the dielectric", "Crimp the centre contact, look, and push it home until it locks",
            "Braid over the barrel, ferrule up to the shoulder, crimp once with the die of the table", "Pull by hand, look; centre to braid open, before the cable goes anywhere", "No bend sharper than ten cable diameters; cap the end until it is mated",
        ],
        TaskKind.Terminate when task.AtPoint =>
        [
            "Crimp and pull a sample of each wire with what is crimped on and its tool; enter the pull", "Strip, crimp, look: strands to the end of the barrel, none nicked, insulation in its grip", "Marks can be read; each wire lies without strain",
            "On a stud: no more than four terminals, the largest undermost; faces flat and bright", "Nut torqued by the table; stripe with inspection lacquer", "Pull each wire by hand: nothing turns or slips",
        ],
        TaskKind.Terminate => ["Crimp and pull a sample of each wire, contact and tool; enter the pull", "Strip, crimp, look: strands in the inspection hole, none nicked", "Insert each contact into the cavity of the table; push home, pull once", "Fill and plug empty cavities; count the contacts", "Backshell torqued and marked; strain relief takes the load", .. task.Coax ? (Sequence<string>)["Coaxial ends: strip to their data, no strand on the dielectric, crimp with the die of the table, centre to braid open"] : []],
        TaskKind.Connect => ["Battery off: prove it", "Part number, serial number, modification and software are those of the change", "Look into both halves: no bent pin, no swarf", "Slide in, engage, torque the hold-downs", "Mate each connector to its own designation; torque coaxial couplings by their data, never with pliers"],
        TaskKind.Inspect when task.Clear => ["Every tool is back: count", "Every panel of the register is closed and signed", "Nothing is loose, no rag, no part, no swarf", "No tag or collar is left but those of open defects"],
        TaskKind.Inspect => ["By touch, mirror and lamp", "Wires clamped, clear of edges, lines and controls; drains clear", "Nothing loose, no tool, no swarf; torque stripes whole", "Photograph what will be covered"],
        TaskKind.Close => ["Everything behind it is signed; sealant is cured", "Count the fasteners out of the bag; no hole takes a longer screw than came out of it", "Fit and fasten; write the number that went back", "One that is lost: raise a defect, look until it is found"],
        TaskKind.Controls or TaskKind.ZoneControls => ["Everybody clear of the surfaces; one person at the controls, one outside", "Through all travel, slowly, then fast: no rub, no stop short", "The direction of each surface is called out loud and written", "Second person does it again, alone, and signs for what was seen"],
        TaskKind.Record when task.Id == "KIT" => ["Count each line of the kit list", "Release papers, certificates of conformity, batch and shelf life of each", "What is short: the aircraft stays closed"],
        TaskKind.Record when task.Id == "APPROVAL" => ["Approval reference, its revision, and that this serial number is covered", "Compatible with the changes that are fitted already", "Revision and date of each document followed"],
        TaskKind.Record => ["Take figures from scales and tags, not from memory", "Compare with what was calculated; explain what differs", "Sign and date; the old page is struck through, not removed"],
        TaskKind.Release => ["The release gate is open", "Every card, result, tag and paper is in the pack", "What is deferred or limited stands in the release statement", "Copy for the operator"],
        _ => ["As the job says; raise a question where it does not"],
    };
}
