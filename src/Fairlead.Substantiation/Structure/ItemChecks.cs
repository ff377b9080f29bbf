using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>Judges how a fitted item stands on its structure.</summary>
internal sealed class ItemChecks(StructureContext context, FittedItem item)
{
    /// <summary>Runs every check for which the job tells enough, and names what it does not tell.</summary>
    public void Run()
    {
        if (context.Job.Parts.Equipment?.Find(item.Part) is not { } part)
        {
            return;
        }

        var sheet = item.Structure is null ? null : context.Job.Aircraft.Structures?.Find(item.Structure);
        var mounted = new Mounted($"equipment/{item.Id}", $"change/fit/{item.Id}", part.Id, item.Fixing, sheet, part.Holes);
        var loads = ItemLoads.Of(part.Mass + item.Mounting, mounted, item.Zone, context);
        mounted.Need(sheet, "what it is fixed to");
        if (mounted.Need(item.Fixing, "how it is fixed") is { } fixing)
        {
            var checks = new FixingChecks(context, mounted, fixing);
            checks.Run(Stack(part, sheet), fixing.Bond is { } bond ? (bond, BondPurpose.Rack) : null);
            var mount = new Mount(fixing.Stands);
            if (mounted.Need(part.Cg, $"the centre of gravity of {part.Id}") is { } cg && loads is not null)
            {
                checks.Under(loads.Cases().Select(c => Case(mount, c.Direction, c.Load)), mount.Of(cg), part.Size is { } size ? mount.Of(size) : null);
            }

            if (sheet is not null && loads?.Across(fixing.Stands) is { } factor)
            {
                Bending(mounted, part, sheet, mount, factor);
            }
        }

        context.Incomplete(mounted.Subject, mounted.Path, mounted.Missing);
    }

    private static GroupCase Case(Mount mount, Direction direction, Force load)
    {
        var (x, y, z) = mount.Of(direction, load);
        return new(Words.Kebab(direction.ToString()), x, y, z);
    }

    private static Sequence<LayerRow>? Stack(EquipmentPart part, StructureSheet? sheet) =>
        part.Flange is { } flange && sheet is not null ? [new LayerRow("flange of the item", flange), new LayerRow(sheet.Id, sheet.Thickness)] : null;

    // A bay between frames and stringers bends as a plate on its edges; where only frames are known, a strip as wide as the narrow side of the item does.
    private void Bending(Mounted mounted, EquipmentPart part, StructureSheet sheet, Mount mount, double factor)
    {
        if (sheet.FramePitch is not { } pitch)
        {
            return;
        }

        var width = sheet.StringerPitch ?? (mounted.Need(part.Size, $"the size of {part.Id}") is { } size ? Narrow(mount.Of(size)) : null);
        var material = context.Material(sheet);
        if ((mounted.Need(material?.Modulus, $"Young's modulus of {sheet.Material}"), mounted.Need(material?.Tension, $"the tensile strength of {sheet.Material}"), width) is ({ } modulus, { } strength, { } wide))
        {
            var outcome = context.Memo.Run<PanelBending, PanelBendingInput>(new(
                sheet.StringerPitch is null ? Support.SimpleUniform : Support.PlateSimple, pitch, wide, sheet.Thickness, modulus, part.Mass + item.Mounting, factor, material?.Density ?? default, Allowed: strength));
            context.Add(outcome, mounted, "bending", "Stiffen the sheet under the item, or tie the item to frames or stringers.", new()
            {
                ["L"] = $"structure {sheet.Id}, frame pitch", ["b"] = sheet.StringerPitch is null ? "narrow side of the item" : $"structure {sheet.Id}, stringer pitch", ["t"] = $"structure {sheet.Id}",
                ["E"] = $"material {sheet.Material}", ["F"] = $"material {sheet.Material}", ["rho"] = $"material {sheet.Material}", ["m"] = "mass with mounting", ["n"] = $"{mounted.Subject}/loads, across the sheet",
            });
        }
    }

    private static Length? Narrow((Length X, Length Y) face) => face.X < face.Y ? face.X : face.Y;
}
