using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>What lies in the stores, by part, as it may be used on a day; where no day is known, nothing that has a last day is expired.</summary>
internal sealed class StockOnHand
{
    private readonly Job job;
    private readonly ILookup<string, Lot> lots;
    private readonly ILookup<string, Reel> reels;
    private readonly Dictionary<string, Duration> leads;

    public StockOnHand(Job job)
    {
        this.job = job;
        lots = (job.Stock?.Lots).OrEmpty().ToLookup(l => l.Part, StringComparer.Ordinal);
        reels = (job.Stock?.Reels).OrEmpty().ToLookup(r => r.Part, StringComparer.Ordinal);
        leads = (job.Stock?.Deliveries).OrEmpty().GroupBy(d => d.Part, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(d => d.Lead), StringComparer.Ordinal);
    }

    /// <summary>How much can be used.</summary>
    public double Of(string part, DateOnly? day) => reels[part].Sum(r => r.Length.Si) + lots[part].Where(l => !IsExpired(l, day)).Sum(l => l.Quantity);

    /// <summary>Batches that can be used.</summary>
    public Sequence<string> Batches(string part, DateOnly? day) =>
        reels[part].Select(r => r.Batch).Concat(lots[part].Where(l => !IsExpired(l, day) && l.Quantity > 0).Select(l => l.Batch)).Where(b => b.Length > 0).Distinct(StringComparer.Ordinal).ToSequence();

    /// <summary>Lots of a part that must not be used on a day, with the last day of each; without one, its day is not stated though the part has a shelf life.</summary>
    public IEnumerable<(Lot Lot, DateOnly? Until)> Expired(string part, DateOnly? day) => lots[part].Where(l => l.Quantity > 0 && IsExpired(l, day)).Select(l => (l, Until(l)));

    /// <summary>The first lot of a part.</summary>
    public Lot? First(string part) => lots[part].FirstOrDefault();

    /// <summary>The last day to order a part that is needed on a day; null when its lead time or the day is not stated.</summary>
    public DateOnly? OrderBy(string part, DateOnly? day) => day is { } use && leads.TryGetValue(part, out var lead) ? use.AddDays(-(int)Math.Ceiling(lead.In("day") - 1e-9)) : null;

    private bool IsExpired(Lot lot, DateOnly? day) => Until(lot) is { } until ? day > until : ShelfLife(lot.Part) is not null;

    private DateOnly? Until(Lot lot) => lot.Expires ?? (lot.Made is { } made && ShelfLife(lot.Part) is { } life ? made.AddDays((int)Math.Floor(life.In("day") + 1e-9)) : null);

    private Duration? ShelfLife(string part) => job.Parts.Sealants?.Find(part)?.ShelfLife ?? job.Parts.Consumables?.Find(part)?.ShelfLife;
}
