using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>A load on a fastener group in the axes of its face.</summary>
internal readonly record struct GroupCase(string Name, Force X, Force Y, Force Z);

/// <summary>Judges the screws of one thing: number and holes, strength at the real centre of gravity in every direction, edge distance, anchor nuts, grip, bond.</summary>
internal sealed class FixingChecks(StructureContext context, Mounted mounted, Fixing fixing)
{
    private const double EdgeDiameters = 2;

    // Less than lies between neighbouring sizes, more than rounding to hundredths of an inch takes.
    private const double ThreadTolerance = 0.05;
    private static readonly Source Edges = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "4-57c: 2 D for rivets, taken for screws alike");
    private static readonly Source Threads = new("Installation data of the part", "", "thread of the anchor nut", Basis.Stated);
    private static readonly Source Holes = new("Installation data of the part", "", "mounting holes", Basis.Stated);

    private readonly FastenerPart? screw = context.Job.Parts.Fasteners?.Find(fixing.Fastener);

    /// <summary>Runs what needs no loads.</summary>
    /// <param name="layers">What the screws clamp, outermost first; null when a thickness of it is not known.</param>
    /// <param name="bond">What a bond of it is for.</param>
    public void Run(Sequence<LayerRow>? layers, (Resistance Limit, BondPurpose Purpose)? bond)
    {
        Fit();
        Thread();
        Edge();
        if (layers is { } stack && screw is { Grip: { } grip, Length: { } length, Threads: { } threads } && Nut is { Height: { } height })
        {
            var outcome = context.Memo.Run<GripLength, GripLengthInput>(new(stack, fixing.Washers, height, threads, Grip: grip, Length: length));
            context.Add(outcome, mounted, "grip", "Use a screw of another length, or washers within 1/8 in.", new() { ["g"] = $"part {screw.Id}", ["L"] = $"part {screw.Id}", ["tpi"] = $"part {screw.Id}", ["hn"] = $"part {Nut.Id}", ["tw"] = "fixing" });
        }

        if (bond is { } stated)
        {
            var outcome = context.Memo.Run<BondingResistance, BondingResistanceInput>(new(Path(stated.Limit), stated.Purpose));
            context.Add(outcome, mounted, "bond", "Ask for no more than the published limit, or the maker's if it is stricter.");
        }
    }

    /// <summary>Runs the fastener group under every load, and the anchor nuts under the greatest tension.</summary>
    /// <param name="cases">The loads on the attachments.</param>
    /// <param name="at">Where they act, in the axes of the face.</param>
    /// <param name="face">Sides of the face, whose reference corner is the origin; null when not known.</param>
    public void Under(IEnumerable<GroupCase> cases, (Length X, Length Y, Length Z) at, (Length X, Length Y)? face)
    {
        if (screw is null || (mounted.Need(screw.Shear, $"the shear strength of {screw.Id}"), mounted.Need(screw.Tension, $"the tension strength of {screw.Id}")) is not ({ } shear, { } tension)
            || mounted.Holes.Count != fixing.Count)
        {
            return;
        }

        var rows = mounted.Holes.Select((h, i) => new FastenerRow(NumberFormat.Text(i + 1), h.X, h.Y, Shear: shear, Tension: tension)).ToSequence();
        var runs = cases.SelectMany(c => Runs(new(rows, c.X, c.Y, c.Z, at.X, at.Y, at.Z, Tilt.Centroid), face).Select(o => (Case: c, Outcome: o))).ToArray();
        if (runs.Length == 0)
        {
            return;
        }

        var worst = runs.MaxBy(r => (r.Outcome.Verdict, r.Outcome.Value(0)));
        var load = $"load {worst.Case.Name}, the worst of {NumberFormat.Text(runs.Length)} runs";
        context.Add(worst.Outcome, mounted, "fasteners", "Use more or stronger screws, spread them further, or mount the item with its centre of gravity nearer to the structure.", new()
        {
            ["Px"] = load, ["Py"] = load, ["Pz"] = load, ["cx"] = $"part {mounted.Part}", ["cy"] = $"part {mounted.Part}", ["cz"] = $"part {mounted.Part}",
        }, $" The load {worst.Case.Name} is the worst.");
        Nuts(new(runs.Max(r => r.Outcome.Value(1) ?? 0)));
        Bearing(new(runs.Max(r => r.Outcome.Value(2) ?? 0)), screw);
    }

    private Sequence<BondRow> Path(Resistance joint)
    {
        var row = new BondRow("joint, as this job allows it", joint);
        return fixing.Strap is { } strap ? [row, new BondRow("strap", null, strap.Length, strap.Section, strap.Copper ? StrapMetal.Copper : StrapMetal.Aluminium)] : [row];
    }

    private AnchorNutPart? Nut => fixing.AnchorNut is { } id ? context.Job.Parts.AnchorNuts?.Find(id) : null;

    // A base turns about the centroid of its fasteners or tips over its edge: the greater is taken. Where one method has no answer the other stands.
    private IEnumerable<Outcome> Runs(FastenerGroupInput input, (Length X, Length Y)? face)
    {
        var about = context.Memo.Run<FastenerGroup, FastenerGroupInput>(input, "u", "Tmax", "Vmax");
        if (face is not { } side)
        {
            return [about];
        }

        Length Low(Func<MountingHole, Length> of) => new(Math.Min(0, mounted.Holes.Min(h => of(h).Si)));
        Length High(Func<MountingHole, Length> of, Length end) => new(Math.Max(end.Si, mounted.Holes.Max(h => of(h).Si)));
        var over = context.Memo.Run<FastenerGroup, FastenerGroupInput>(
            input with { Tilt = Tilt.Edge, Left = Low(h => h.X), Right = High(h => h.X, side.X), Low = Low(h => h.Y), High = High(h => h.Y, side.Y) }, "u", "Tmax", "Vmax");
        return over.Verdict == Verdict.CannotTell ? [about] : about.Verdict == Verdict.CannotTell ? [over] : [about, over];
    }

    private void Fit()
    {
        if (mounted.Holes.Count == 0)
        {
            mounted.Need<string>(null, $"the mounting holes of {mounted.Part}");
            return;
        }

        if (mounted.Holes.Count != fixing.Count)
        {
            Break("fixing-count", $"{mounted.Part} has {NumberFormat.Text(mounted.Holes.Count)} mounting holes, but {NumberFormat.Text(fixing.Count)} screws fix it: its strength is not judged.", "", Holes, "Fit a screw in every hole, or correct the number.");
        }

        if (screw is not null && mounted.Holes.MinBy(h => h.Diameter.Si) is { } hole && hole.Diameter < screw.Diameter)
        {
            Break("fixing-hole", $"{screw.Id} is thicker than a mounting hole of {mounted.Part}.", $"screw {screw.Diameter.As("in")}, hole {hole.Diameter.As("in")}", Holes, "Use a thinner screw; the hole is the maker's.");
        }
    }

    // A thread is named by its diameter: screws and nuts of one kind state the same.
    private void Thread()
    {
        if (Nut is { } nut && screw is not null && Math.Abs(nut.Thread.Si - screw.Diameter.Si) > ThreadTolerance * screw.Diameter.Si)
        {
            Break("fixing-thread", $"{screw.Id} does not go into anchor nut {nut.Id}: their threads differ.", $"screw {screw.Diameter.As("in")}, nut {nut.Thread.As("in")}", Threads, "Use the anchor nut of the screw's thread.");
        }
    }

    private void Edge()
    {
        if (fixing.EdgeDistance is { } edge && screw is not null && edge.Si < EdgeDiameters * screw.Diameter.Si * (1 - 1e-9))
        {
            Break("edge-distance", "The screws stand too near the edge of the sheet.", $"edge distance {edge.As("in")}, at least {(screw.Diameter * EdgeDiameters).As("in")}", Edges, "Move the screws in from the edge, or use thinner ones if their strength allows it.");
        }
    }

    private void Nuts(Force tension)
    {
        if (Nut is not { } nut || mounted.Sheet is not { } sheet)
        {
            return;
        }

        var rivet = mounted.Need(nut.Rivet is null ? null : context.Job.Parts.Rivets?.Find(nut.Rivet), $"the rivets of {nut.Id}");
        if (rivet?.Countersunk == true)
        {
            context.Countersink(mounted, rivet, sheet);
        }

        if (rivet is not null && mounted.Need(nut.Lug, $"the thickness of the lugs of {nut.Id}") is { } lug)
        {
            context.Rivet(mounted, rivet, sheet.Thickness + mounted.Doubler + lug, "lugs", $"structure {sheet.Id} and lug of {nut.Id}");
        }

        var known = (mounted.Need(nut.Tension, $"the tension strength of {nut.Id}"), mounted.Need(nut.Torque, $"the torque on {nut.Id}"),
            mounted.Need(nut.RivetSpacing, $"the rivet spacing of {nut.Id}"), mounted.Need(context.Material(sheet)?.Bearing, $"the bearing strength of {sheet.Material}"));
        if (rivet is not null && mounted.Need(StructureNames.Alloy(rivet.Material), $"an alloy known for rivet {rivet.Id}") is { } alloy && known is ({ } strength, { } torque, { } spacing, { } bearing))
        {
            var outcome = context.Memo.Run<AnchorNut, AnchorNutInput>(new(tension, strength, torque, spacing, rivet.Diameter, alloy, sheet.Thickness, bearing));
            context.Add(outcome, mounted, "nuts", "Use a stronger anchor nut, or one with its rivets further apart.", new()
            {
                ["P"] = $"{mounted.Subject}/fasteners, greatest over all loads", ["Pn"] = $"part {nut.Id}", ["T"] = $"part {nut.Id}", ["s"] = $"part {nut.Id}", ["D"] = $"rivet {rivet.Id}", ["alloy"] = $"rivet {rivet.Id}",
                ["t"] = $"structure {sheet.Id}", ["Fbru"] = $"material {sheet.Material}",
            });
        }
    }

    // A doubler of the skin's material under the base bears with it.
    private void Bearing(Force shear, FastenerPart bolt)
    {
        if (mounted.Sheet is not { } sheet)
        {
            return;
        }

        var material = context.Material(sheet);
        if ((mounted.Need(material?.Bearing, $"the bearing strength of {sheet.Material}"), mounted.Need(fixing.EdgeDistance, "the edge distance of the screws")) is ({ } bearing, { } edge))
        {
            var outcome = context.Memo.Run<SheetBearing, SheetBearingInput>(new(shear, bolt.Diameter, sheet.Thickness + mounted.Doubler, bearing, edge, material?.BearingNear, material?.Shear));
            context.Add(outcome, mounted, "bearing", "Use more or thicker screws, thicker sheet or a doubler, or move the screws in from the edge.", new()
            {
                ["V"] = $"{mounted.Subject}/fasteners, greatest over all loads", ["D"] = $"part {bolt.Id}", ["e"] = "fixing", ["Fbru"] = $"material {sheet.Material}", ["Fbru15"] = $"material {sheet.Material}", ["Fsu"] = $"material {sheet.Material}",
                ["t"] = mounted.Doubler.Si > 0 ? $"structure {sheet.Id} with the doubler" : $"structure {sheet.Id}",
            });
        }
    }

    private void Break(string rule, string message, string figures, Source source, string remedy) =>
        context.Add(new Finding(rule, Verdict.Fails, mounted.Subject, message, figures, source, remedy, mounted.Path));
}
