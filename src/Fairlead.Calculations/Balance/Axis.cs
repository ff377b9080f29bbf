namespace Fairlead.Calculations.Balance;

/// <summary>One of the three axes along which a centre of gravity is known.</summary>
/// <param name="Symbol">Symbol of the coordinate.</param>
/// <param name="Letter">What its moments are named by.</param>
/// <param name="Meaning">Its name.</param>
/// <param name="Of">The coordinate of an item.</param>
internal sealed record Axis(string Symbol, string Letter, string Meaning, Func<ItemRow, Length?> Of)
{
    /// <summary>Fuselage station.</summary>
    public static readonly Axis Station = new("FS", "", "fuselage station", i => i.Fs);

    /// <summary>Buttock line.</summary>
    public static readonly Axis Buttock = new("BL", "L", "buttock line", i => i.Bl);

    /// <summary>Waterline.</summary>
    public static readonly Axis Waterline = new("WL", "V", "waterline", i => i.Wl);

    /// <summary>Whether every item has this coordinate.</summary>
    public bool Covers(Sequence<ItemRow> items) => items.All(i => Of(i) is not null);

    /// <summary>Moment of all items.</summary>
    public MassMoment Moment(Sequence<ItemRow> items) => new(items.Sum(i => i.Mass.Si * (Of(i)?.Si ?? 0)));
}
