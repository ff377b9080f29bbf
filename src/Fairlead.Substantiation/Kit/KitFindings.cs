using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>Findings of the kit of a job that says what is on hand.</summary>
internal static class KitFindings
{
    private static readonly Source Stores = new("This job", "", "stock and kit", Basis.Stated);

    public static IEnumerable<Finding> Of(Job job, KitList kit)
    {
        var stock = new StockOnHand(job);
        foreach (var line in kit.Lines.Where(l => l.State == KitState.Short))
        {
            yield return new("kit-shortage", Verdict.Fails, $"kit/{line.Part}", $"Too little of {line.Part} ({line.Name}) is on hand: do not open the aircraft yet.",
                $"needed {Amount(line.Need, line.Unit)}, on hand {Amount(line.OnHand ?? 0, line.Unit)}, missing {Amount(line.Shortage, line.Unit)}{(kit.UseDate is { } use ? $", needed on {KitWork.Day(use)}" : "")}{(line.OrderBy is { } by ? $", order by {KitWork.Day(by)}" : "")}",
                Stores, line.Kind == KitKind.Wire ? "Get a reel that is long enough, or correct the stock." : "Get what is missing, or correct the stock.", stock.First(line.Part) is { } lot ? $"stock/lots/{lot.Id}/quantity" : "job/files/stock");
        }

        foreach (var line in kit.Lines.Where(l => l.State == KitState.CalibrationEnds))
        {
            var tool = job.Aircraft.Tools?.Contains(line.Part) == true;
            yield return new("calibration-expired", Verdict.Fails, $"kit/{line.Part}", $"The calibration of {line.Part} ({line.Name}) ends before the use date.", $"{line.Remark}, used on {KitWork.Day(kit.UseDate!.Value)}",
                Stores, "Have it calibrated, or name another.", $"aircraft/{(tool ? "tools" : "instruments")}/{line.Part}/calibration-due");
        }

        foreach (var (line, lot, until) in kit.Lines.Where(l => l.Part.Length > 0 && l.OnHand is not null).SelectMany(l => stock.Expired(l.Part, kit.UseDate).Select(e => (l, e.Lot, e.Until))).DistinctBy(x => x.Lot.Id))
        {
            yield return new("stock-expired", line.State == KitState.Short ? Verdict.Fails : Verdict.Caution, $"lot/{lot.Id}",
                until is null ? $"{lot.Part} has a shelf life, and the lot {lot.Id} states neither its last day nor the day it was made: it is not counted." : $"The lot {lot.Id} of {lot.Part} is past its shelf life on the use date: it is not counted.",
                until is { } day ? $"may be used until {KitWork.Day(day)}, used on {KitWork.Day(kit.UseDate!.Value)}" : "", Stores, "Put it away from what may be used, and get a fresh lot.", $"stock/lots/{lot.Id}");
        }

        string[] open = [.. kit.Lines.Where(l => l.State == KitState.NotStated).Select(l => $"{l.Name} (for {string.Join(", ", l.For.Take(3))}{(l.For.Count > 3 ? ", ..." : "")})"), .. kit.UseDate is null ? ["the day of use"] : Array.Empty<string>()];
        if (open.Length > 0)
        {
            yield return new("kit-incomplete", Verdict.Caution, "kit/not-stated", $"The kit is not whole, as the job does not state: {string.Join("; ", open)}.", "", Stores, "Add it to the parts, the change or the stock.", "job/files/stock");
        }
    }

    private static string Amount(double value, string unit) => $"{NumberFormat.Text(Math.Round(value, 3))}{(unit == "each" ? "" : " " + unit)}";
}
