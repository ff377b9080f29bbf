using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>What lies in the stores, by part, as it may be used on the use date.</summary>
internal sealed class StockOnHand
{
    private readonly Job job;
    private readonly ILookup<string, Lot> lots;
    private readonly ILookup<string, Reel> reels;
    private readonly Dictionary<string, Duration> leads;

    public StockOnHand(Job job, DateOnly? use)
    {
        (this.job, Use) = (job, use);
        lots = (job.Stock?.Lots).OrEmpty().ToLookup(l => l.Part, StringComparer.Ordinal);
        reels = (job.Stock?.Reels).OrEmpty().ToLookup(r => r.Part, StringComparer.Ordinal);
        leads = (job.Stock?.Deliveries).OrEmpty().GroupBy(d => d.Part, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(d => d.Lead), StringComparer.Ordinal);
    }

    /// <summary>The use date.</summary>
    public DateOnly? Use { get; }

    /// <summary>How much can be used.</summary>
    public double Of(string part) => reels[part].Sum(r => r.Length.Si) + lots[part].Where(l => !IsExpired(l)).Sum(l => l.Quantity);

    /// <summary>Batches that can be used.</summary>
    public Sequence<string> Batches(string part) =>
        reels[part].Select(r => r.Batch).Concat(lots[part].Where(l => !IsExpired(l) && l.Quantity > 0).Select(l => l.Batch)).Where(b => b.Length > 0).Distinct(StringComparer.Ordinal).ToSequence();

    /// <summary>Lots of a part that must not be used on the use date, with the last day of each; without one, its day is not stated though the part has a shelf life.</summary>
    public IEnumerable<(Lot Lot, DateOnly? Until)> Expired(string part) => lots[part].Where(l => l.Quantity > 0 && IsExpired(l)).Select(l => (l, Until(l)));

    /// <summary>The first lot of a part.</summary>
    public Lot? First(string part) => lots[part].FirstOrDefault();

    /// <summary>The last day to order a part; null when its lead time or the use date is not stated.</summary>
    public DateOnly? OrderBy(string part) => Use is { } use && leads.TryGetValue(part, out var lead) ? use.AddDays(-(int)Math.Ceiling(lead.In("day") - 1e-9)) : null;

    private bool IsExpired(Lot lot) => Until(lot) is { } until ? Use > until : ShelfLife(lot.Part) is not null;

    private DateOnly? Until(Lot lot) => lot.Expires ?? (lot.Made is { } made && ShelfLife(lot.Part) is { } life ? made.AddDays((int)Math.Floor(life.In("day") + 1e-9)) : null);

    private Duration? ShelfLife(string part) => job.Parts.Sealants?.Find(part)?.ShelfLife ?? job.Parts.Consumables?.Find(part)?.ShelfLife;
}
