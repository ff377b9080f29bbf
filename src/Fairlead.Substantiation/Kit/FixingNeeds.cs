using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>What fixing takes: screws by grip, washers, anchor nuts with their rivets, doublers with theirs, sealant, drills and countersinks, and what tasks take.</summary>
internal static class FixingNeeds
{
    private const int RivetsOfNut = 2;

    public static void Add(Job job, KitNeeds needs)
    {
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            Fixing(job, item.Id, item.Fixing, needs);
        }

        foreach (var antenna in job.Change.Antennas.OrEmpty())
        {
            Fixing(job, antenna.Id, antenna.Fixing, needs);
            Doubler(job, antenna, needs);
            Sealant(job, antenna, needs);
        }

        foreach (var task in job.Change.Tasks.OrEmpty())
        {
            foreach (var take in task.Takes)
            {
                Take(job, task.Id, take, needs);
            }
        }
    }

    private static void Fixing(Job job, string id, Fixing? fixing, KitNeeds needs)
    {
        if (fixing is null)
        {
            needs.Add(KitKind.Fastener, "", "how an item is fixed", 0, id, "the change does not say");
            return;
        }

        var screw = job.Parts.Fasteners?.Find(fixing.Fastener);
        var name = screw is null ? fixing.Fastener : $"{screw.Name}{(screw.Grip is { } grip ? $", grip {grip.As("in")}" : "")}";
        needs.Add(KitKind.Fastener, fixing.Fastener, name, fixing.Count, id, "the screws of each fixing");
        Drill(screw?.Drill, screw?.Countersink, fixing.Fastener, id, needs, countersunk: false);
        Washers(job, id, fixing, needs);
        if (job.Parts.AnchorNuts?.Find(fixing.AnchorNut) is { } nut)
        {
            needs.Add(KitKind.AnchorNut, nut.Id, nut.Name, fixing.Count, id, "one for each screw of a fixing with anchor nuts");
            Rivets(job, nut.Rivet, $"rivet of anchor nut {nut.Id}", RivetsOfNut * fixing.Count, id, needs);
        }
    }

    private static void Washers(Job job, string id, Fixing fixing, KitNeeds needs)
    {
        if (fixing.Washers.Si <= 0 && fixing.Washer is null)
        {
            return;
        }

        var washer = job.Parts.Fasteners?.Find(fixing.Washer);
        var each = washer?.Thickness is { Si: > 0 } thick && fixing.Washers.Si > 0 ? Math.Ceiling((fixing.Washers / thick) - 1e-6) : 1;
        needs.Add(KitKind.Fastener, washer?.Id ?? "", washer?.Name ?? $"washers, {fixing.Washers.As("in")} under each screw", each * fixing.Count, id, "as many under each screw as their thickness asks for");
    }

    private static void Doubler(Job job, FittedAntenna antenna, KitNeeds needs)
    {
        if (antenna.Plate is not { } plate)
        {
            return;
        }

        var sheet = job.Parts.Consumables?.Find(plate.Sheet);
        var size = $"{plate.Width.As("in")} by {plate.Length?.As("in").ToString() ?? "a length not stated"}, {plate.Thickness.As("in")} thick";
        if (plate.Length is { } length && sheet is not null)
        {
            needs.Add(KitKind.Doubler, sheet.Id, sheet.Name, sheet.Unit is "in2" or "m2" ? AreaOf(plate, length).In(sheet.Unit) : 1, $"{antenna.Id} ({size})", "the area of each doubler, or a piece for each where the sheet is not counted by area", sheet.Unit);
        }
        else
        {
            needs.Add(KitKind.Doubler, "", $"sheet for a doubler, {size}", 1, antenna.Id, "one for each doubler");
        }

        Rivets(job, plate.Rivet, "rivet of a doubler", 2 * plate.Rivets, antenna.Id, needs);
    }

    private static Area AreaOf(DoublerPlate plate, Length length) => new(plate.Width.Si * length.Si);

    private static void Rivets(Job job, string? id, string what, int count, string of, KitNeeds needs)
    {
        var rivet = job.Parts.Rivets?.Find(id);
        needs.Add(KitKind.Rivet, rivet?.Id ?? "", rivet is null ? what : $"{rivet.Name}, length {rivet.Length.As("in")}", count, of, "two for each anchor nut, and those on both sides of each cut-out");
        if (rivet is not null)
        {
            Drill(rivet.Drill, rivet.Countersink, rivet.Id, of, needs, rivet.Countersunk);
        }
    }

    // One drill serves all holes of a part.
    private static void Drill(string? drill, string? countersink, string part, string of, KitNeeds needs, bool countersunk)
    {
        needs.Add(KitKind.Drill, drill is { Length: > 0 } ? drill : "", drill is { Length: > 0 } ? $"Drill {drill}" : $"drill for {part}", 0, of, "the holes of the fixings");
        if ((countersunk || countersink is { Length: > 0 }) && countersink != "none")
        {
            needs.Add(KitKind.Drill, countersink is { Length: > 0 } ? countersink : "", countersink is { Length: > 0 } ? $"Countersink {countersink}" : $"countersink for {part}", 0, of, "the holes of countersunk heads");
        }
    }

    // A pack that is mixed does not keep, so each antenna takes packs of its own.
    private static void Sealant(Job job, FittedAntenna antenna, KitNeeds needs)
    {
        if (antenna.Sealant is not { } id)
        {
            needs.Add(KitKind.Sealant, "", "sealant of an antenna", 0, antenna.Id, "the change does not say", "pack");
            return;
        }

        var sealant = job.Parts.Sealants?.Find(id);
        var area = antenna.Plate is { Length: { } length } plate ? AreaOf(plate, length) : (Area?)null;
        if (sealant?.Covers is { Si: > 0 } covers && area is { } surface)
        {
            needs.Add(KitKind.Sealant, id, sealant.Name, Math.Ceiling((surface / covers) - 1e-9), antenna.Id, $"area of each doubler over {covers.As("in2")} a pack, whole packs for each antenna", "pack", Cure(job, sealant));
        }
        else
        {
            needs.Add(KitKind.Sealant, "", $"packs of {sealant?.Name ?? id}", 0, antenna.Id, sealant?.Covers is null ? "the sealant does not say what area a pack covers" : "the size of the doubler is not stated", "pack");
        }
    }

    // At the coldest that the hangar may be, or the next colder point of the curve: the time to plan with.
    private static string Cure(Job job, SealantPart sealant)
    {
        var cold = job.Order.Site.Coldest;
        var point = sealant.Cure.Where(c => cold is null || c.At <= cold).OrderByDescending(c => c.At.Si).FirstOrDefault() ?? sealant.Cure.OrderBy(c => c.At.Si).FirstOrDefault();
        return point is null ? "cure not stated" : $"{(cold < point.At ? "cure below its coldest point is not stated; " : "")}cure {point.Time.As("h")} at {point.At.As("°C")}, work life {sealant.ApplicationLife.As("h")}, shelf life {sealant.ShelfLife.As("day")}";
    }

    private static void Take(Job job, string task, Take take, KitNeeds needs)
    {
        var parts = job.Parts;
        var (kind, name, unit) = parts.Fasteners?.Find(take.Part) is { } f ? (KitKind.Fastener, f.Name, "each") : parts.Rivets?.Find(take.Part) is { } r ? (KitKind.Rivet, $"{r.Name}, length {r.Length.As("in")}", "each")
            : parts.AnchorNuts?.Find(take.Part) is { } n ? (KitKind.AnchorNut, n.Name, "each") : parts.Clamps?.Find(take.Part) is { } c ? (KitKind.Clamp, c.Name, "each")
            : parts.Sealants?.Find(take.Part) is { } s ? (KitKind.Sealant, s.Name, "pack") : parts.Consumables?.Find(take.Part) is { } x ? (KitKind.Material, x.Name, x.Unit) : (KitKind.Material, take.Part, "each");
        needs.Add(kind, take.Part, name, take.Quantity, task, "as the tasks state", unit, kind == KitKind.Sealant && parts.Sealants?.Find(take.Part) is { } sealant ? Cure(job, sealant) : "");
    }
}
