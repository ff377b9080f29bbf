using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Cards;

/// <summary>Holes, rivets, fasteners, torques and sealant of what is mounted.</summary>
internal sealed class MetalFigures(Job job)
{
    public const string NotStated = "not stated: see the data";

    /// <summary>Torque of a screwed coupling as its part states it.</summary>
    public static string Coupling(ConnectorPart? part) => Tightened(part?.Torque);

    /// <summary>A torque as a part states it.</summary>
    public static string Tightened(Torque? torque) => torque is { } known ? $"{known.As("lbf in")}" : NotStated;

    public IEnumerable<CardTable> Of(JobTask task)
    {
        var id = task.Id[(task.Id.IndexOf('-', StringComparison.Ordinal) + 1)..];
        var (item, antenna) = (job.Change.Fit?.Find(id), job.Change.Antennas?.Find(id));
        var (fixing, structure) = (item?.Fixing ?? antenna?.Fixing, job.Aircraft.Structures?.Find(item?.Structure ?? antenna?.Structure ?? ""));
        var holes = item is not null ? job.Parts.Equipment?.Find(item.Part)?.Holes ?? default : job.Parts.Antennas?.Find(antenna?.Part)?.Holes ?? default;
        return task.Kind switch
        {
            TaskKind.Drill => Holes(fixing, structure, holes).Concat(CutOut(antenna?.Plate)),
            TaskKind.Rivet => Rivets(fixing, antenna?.Plate),
            _ when task.Id.StartsWith("BREAKER-", StringComparison.Ordinal) => Breaker(id),
            _ => Fasteners(fixing),
        };
    }

    public IEnumerable<CardTable> Sealant(JobTask task)
    {
        foreach (var sealant in task.Parts.Select(p => job.Parts.Sealants?.Find(p)).OfType<SealantPart>())
        {
            yield return new CardTable(
                $"{sealant.Name}, use within {sealant.ApplicationLife.As("h")} of mixing", ["Structure at", "Cured after"], sealant.Cure.OrderBy(p => p.At.Si).Select(p => Row($"{p.At.As("degC")} or warmer", $"{p.Time.As("h")}")).ToSequence())
            {
                Note = $"Colder than {sealant.Cure.MinBy(p => p.At.Si)?.At.As("degC").ToString() ?? "its data say"}: do not mix.",
            };
            yield return new CardTable("Record", ["Batch", "Shelf life ends", "Mixed at", "Temperature", "Humidity", "Cured at", "By"], [Row("", "", "", "", "", "", "")]);
        }
    }

    private static Sequence<string> Row(params string[] cells) => cells.ToSequence();

    private IEnumerable<CardTable> Holes(Fixing? fixing, StructureSheet? structure, Sequence<MountingHole> holes)
    {
        if (fixing is null)
        {
            yield break;
        }

        var screw = job.Parts.Fasteners?.Find(fixing.Fastener);
        var nut = job.Parts.AnchorNuts?.Find(fixing.AnchorNut);
        var rivet = job.Parts.Rivets?.Find(nut?.Rivet);
        var size = holes.Count > 0 ? Both(holes[0].Diameter) : NotStated;
        yield return new CardTable("Holes", ["For", "Count", "Hole", "Drill", "Countersink", "Edge distance, least"],
        [
            Row(screw?.Name ?? fixing.Fastener, NumberFormat.Text(fixing.Count), size, Said(screw?.Drill), Plain(screw?.Countersink), fixing.EdgeDistance is { } edge ? Both(edge) : NotStated),
            .. nut is null ? Array.Empty<Sequence<string>>() : [Row($"rivets of {nut.Name}, {nut.RivetSpacing?.As("in").ToString() ?? "spacing by the data"} apart", NumberFormat.Text(2 * fixing.Count), rivet is null ? NotStated : Both(rivet.Diameter), Said(rivet?.Drill), Plain(rivet?.Countersink), "2 D")],
        ])
        {
            Note = structure is null ? "" : $"In {structure.Name}, {structure.Material}, {Both(structure.Thickness)} thick. Places are on the hole drawing.",
        };
        if (holes.Count > 0)
        {
            yield return new CardTable("Places from the reference corner", ["Hole", "Across, mm", "Along, mm", "Diameter, mm"], holes.Select((h, i) => Row(NumberFormat.Text(i + 1), Mm(h.X), Mm(h.Y), Mm(h.Diameter))).ToSequence());
        }
    }

    private static IEnumerable<CardTable> CutOut(DoublerPlate? plate)
    {
        if (plate is not null)
        {
            yield return new CardTable("Cut-out and doubler", ["Cut-out across the load", "Doubler", "Thickness", "Rivet pitch", "Rivet edge distance"],
                [Row(Both(plate.CutOut), $"{plate.Width.As("in")} by {plate.Length?.As("in").ToString() ?? "length not stated"}", Both(plate.Thickness), Both(plate.Pitch), Both(plate.EdgeDistance))]);
        }
    }

    private IEnumerable<CardTable> Rivets(Fixing? fixing, DoublerPlate? plate)
    {
        if (plate is not null && job.Parts.Rivets?.Find(plate.Rivet) is { } rivet)
        {
            yield return RivetTable("Doubler", rivet, NumberFormat.Text(2 * plate.Rivets), $"pitch {Both(plate.Pitch)}, edge {Both(plate.EdgeDistance)}");
        }

        if (fixing is not null && job.Parts.AnchorNuts?.Find(fixing.AnchorNut) is { } nut && job.Parts.Rivets?.Find(nut.Rivet) is { } small)
        {
            yield return RivetTable($"{NumberFormat.Text(fixing.Count)} × {nut.Name}", small, NumberFormat.Text(2 * fixing.Count), nut.RivetSpacing is { } spacing ? $"{Both(spacing)} apart" : "");
        }
    }

    // Label and rating are read back: what is fitted against what protects the wire.
    private IEnumerable<CardTable> Breaker(string id)
    {
        if (job.Change.Breakers?.Find(id) is { } breaker)
        {
            yield return new CardTable("Breaker and placard", ["Breaker", "Label", "Bus", "Part", "Rating", "Label read back", "Rating read back"],
                [Row(breaker.Id, breaker.Name, breaker.Bus, breaker.Part, job.Parts.Breakers?.Find(breaker.Part) is { } part ? $"{part.Rating.As("A")}" : NotStated, "", "")]);
        }
    }

    public static CardTable RivetTable(string title, RivetPart rivet, string count, string places) => new(
        title, ["Rivet", "Name", "Count", "Length", "Drill", "Countersink", "Places", "Batch"], [Row(rivet.Id, rivet.Name, count, Both(rivet.Length), Said(rivet.Drill), Plain(rivet.Countersink), places, "")])
    {
        Note = $"Formed head {Both(rivet.Diameter * 1.5)} wide, {Both(rivet.Diameter * 0.5)} high: 1.5 D and 0.5 D.",
    };

    private IEnumerable<CardTable> Fasteners(Fixing? fixing)
    {
        if (fixing is null)
        {
            yield break;
        }

        var (screw, nut) = (job.Parts.Fasteners?.Find(fixing.Fastener), job.Parts.AnchorNuts?.Find(fixing.AnchorNut));
        yield return new CardTable("Fasteners", ["Screw", "Name", "Count", "Length", "Grip", "Washers", "Into", "Torque, greatest", "Torqued to"],
        [
            Row(fixing.Fastener, screw?.Name ?? "", NumberFormat.Text(fixing.Count), screw?.Length is { } length ? Both(length) : NotStated, screw?.Grip is { } grip ? Both(grip) : NotStated, fixing.Washers.Si > 0 ? $"{fixing.Washer ?? ""} {fixing.Washers.As("in")}".Trim() : "none", nut?.Name ?? "nut or tapped", nut?.Torque is { } torque ? $"{torque.As("lbf in")}" : NotStated, ""),
        ])
        {
            Note = fixing.Bond is { } bond ? $"Bond afterwards at most {bond.As("mΩ")}." : "",
        };
    }

    public static string Both(Length length) => $"{NumberFormat.Text(Math.Round(length.In("in"), 3))} in ({Mm(length)} mm)";

    private static string Mm(Length length) => NumberFormat.Text(Math.Round(length.In("mm"), 2));

    public static string Said(string? text) => text is { Length: > 0 } ? text : NotStated;

    private static string Plain(string? text) => text is { Length: > 0 } ? text : "none";
}
