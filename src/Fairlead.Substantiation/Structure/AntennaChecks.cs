using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>Judges how a fitted antenna stands on its skin: air load at the design dive speed with inertia, screws, doubler, bond.</summary>
internal sealed class AntennaChecks(StructureContext context, FittedAntenna antenna)
{
    private const double FactorOfSafety = 1.5;
    private static readonly Source Pressure = new("FAA AC 43.13-2B", "3 Mar 2008", "chapter 4: light installations");

    /// <summary>Runs every check for which the job tells enough, and names what it does not tell.</summary>
    public void Run()
    {
        if (context.Job.Parts.Antennas?.Find(antenna.Part) is not { } part)
        {
            return;
        }

        var skin = antenna.Structure is null ? null : context.Job.Aircraft.Structures?.Find(antenna.Structure);
        var mounted = new Mounted($"antenna/{antenna.Id}", $"change/antennas/{antenna.Id}", part.Id, antenna.Fixing, skin, part.Holes, antenna.Plate?.Thickness ?? default);
        var loads = ItemLoads.Of(part.Mass + antenna.Doubler, mounted, skin?.Zone, context);
        var air = AirLoad(mounted, part);
        mounted.Need(skin, "the skin it stands on");
        if (mounted.Need(antenna.Fixing, "how it is fixed") is { } fixing)
        {
            var checks = new FixingChecks(context, mounted, fixing);
            checks.Run(null, (antenna.Bond ?? fixing.Bond) is { } bond ? (bond, BondPurpose.Antenna) : null);
            if (loads is not null && air is { } pressed && part.Height is { } height)
            {
                GroupCase[] cases = [.. Cases(new Mount(fixing.Stands), loads, pressed.Drag, pressed.Side)];
                checks.Under(cases, (default, default, height), null);
                if (skin is not null && fixing.Stands is (Direction.Up or Direction.Down) && part.Holes.Count > 1)
                {
                    Bending(mounted, skin, cases, height);
                }
            }
        }

        if (skin is not null && antenna.Plate is { } plate)
        {
            Doubler(mounted, plate, skin);
        }
        else if (skin is not null && context.Pressurised(skin))
        {
            context.Add(new Finding(
                "pressurised-skin", Verdict.CannotTell, mounted.Subject, $"{skin.Id} holds cabin pressure: the pressure load on the skin around the opening, its fatigue and its damage tolerance are not judged here.", "",
                Pressure, "Take the installation from approved data of the type.", mounted.Path));
        }

        context.Incomplete(mounted.Subject, mounted.Path, mounted.Missing);
    }

    private (Force Drag, Force Side)? AirLoad(Mounted mounted, AntennaPart part)
    {
        var known = (mounted.Need(context.Job.Aircraft.Speeds, "the design speeds of the aircraft"), mounted.Need(part.Frontal, $"the frontal area of {part.Id}"),
            mounted.Need(part.Side, $"the side area of {part.Id}"), mounted.Need(part.Height, $"the height of {part.Id}"));
        if (known is not ({ } speeds, { } frontal, { } side, { } height))
        {
            return null;
        }

        var outcome = context.Memo.Run<AntennaDrag, AntennaDragInput>(new(frontal, speeds.Dive, DragMethod.Coefficient, side, part.Drag, Height: height), "D", "Ds");
        context.Add(outcome, mounted, "drag", "Correct the areas of the antenna or the design speeds.", new()
        {
            ["A"] = $"part {part.Id}", ["As"] = $"part {part.Id}", ["z"] = $"part {part.Id}", ["Cd"] = $"part {part.Id}", ["V"] = "design dive speed, above the never-exceed speed", ["method"] = "coefficient: the circular's formula serves streamlined antennas only",
        });
        return outcome.Value(0) is { } drag && outcome.Value(1) is { } across ? (new Force(drag), new Force(across)) : null;
    }

    // In flight the drag is always there; the forward inertia of an emergency landing comes without it. Side air load acts with the side inertia.
    private static IEnumerable<GroupCase> Cases(Mount mount, ItemLoads loads, Force drag, Force side)
    {
        var factor = FactorOfSafety * InertiaLoads.Factor(FittingFactor.Fitting).Factor;
        var inertia = loads.Cases().ToDictionary(c => c.Direction, c => c.Load);
        foreach (var direction in Enum.GetValues<Direction>())
        {
            var sideward = direction is Direction.Left or Direction.Right;
            var (x, y, z) = mount.Of(direction, inertia.GetValueOrDefault(direction) + (sideward ? side * factor : default));
            var (dx, dy, dz) = mount.Of(Direction.Aft, direction == Direction.Forward ? default : drag * factor);
            yield return new($"{Words.Kebab(direction.ToString())}{(direction == Direction.Forward ? "" : " with drag")}", x + dx, y + dy, z + dz);
        }
    }

    // Tilted along the fuselage the skin bends between frames, tilted across it between stringers. A doubler spreads the moment over its width.
    private void Bending(Mounted mounted, StructureSheet skin, GroupCase[] cases, Length height)
    {
        var material = context.Material(skin);
        if ((mounted.Need(skin.FramePitch, $"the frame pitch of {skin.Id}"), mounted.Need(skin.StringerPitch, $"the stringer pitch of {skin.Id}"), mounted.Need(material?.Modulus, $"Young's modulus of {skin.Material}"),
            mounted.Need(material?.Tension, $"the tensile strength of {skin.Material}")) is ({ } frames, { } stringers, { } modulus, { } strength))
        {
            Length Spread(Func<MountingHole, double> of) => new(mounted.Holes.Max(of) - mounted.Holes.Min(of));
            Tilt("along", "frame pitch", frames, antenna.Plate?.Width ?? Spread(h => h.X.Si), cases.Max(c => Math.Abs(c.Y.Si)));
            Tilt("across", "stringer pitch", stringers, antenna.Plate?.Length ?? antenna.Plate?.Width ?? Spread(h => h.Y.Si), cases.Max(c => Math.Abs(c.X.Si)));

            void Tilt(string way, string pitch, Length span, Length width, double force)
            {
                if (width.Si > 0)
                {
                    var outcome = context.Memo.Run<SkinMoment, SkinMomentInput>(new(new Torque(force * height.Si), span, width, skin.Thickness, modulus, strength));
                    context.Add(outcome, mounted, way, "Fit a thicker doubler that reaches frames or stringers, or move the antenna to one.", new()
                    {
                        ["M"] = $"greatest load {way} at the height of the antenna", ["L"] = $"structure {skin.Id}, {pitch}", ["b"] = antenna.Plate is null ? $"holes of {mounted.Part}" : "doubler", ["t"] = $"structure {skin.Id}", ["E"] = $"material {skin.Material}", ["F"] = $"material {skin.Material}",
                    });
                }
            }
        }
    }

    private void Doubler(Mounted mounted, DoublerPlate plate, StructureSheet skin)
    {
        if (context.Job.Parts.Rivets?.Find(plate.Rivet) is not { } rivet)
        {
            return;
        }

        if (rivet.Countersunk)
        {
            context.Countersink(mounted, rivet, skin);
        }

        context.Rivet(mounted, rivet, skin.Thickness + plate.Thickness, "rivets", $"structure {skin.Id} and doubler");
        if (mounted.Need(StructureNames.Group(skin.Material), $"a material of {skin.Id} for which AC 43.13-1B has rivets per inch") is { } group)
        {
            var outcome = context.Memo.Run<AntennaDoubler, AntennaDoublerInput>(new(
                skin.Thickness, plate.Thickness, plate.CutOut, plate.Width, rivet.Diameter, plate.Pitch, plate.EdgeDistance, plate.Rivets, group, context.Pressurised(skin)));
            context.Add(outcome, mounted, "doubler", "Use a thicker or wider doubler, or more rivets, as the approved data have it.", new()
            {
                ["t"] = $"structure {skin.Id}", ["D"] = $"rivet {rivet.Id}", ["sheet"] = $"material {skin.Material}", ["press"] = "aircraft record",
            });
        }
    }
}
