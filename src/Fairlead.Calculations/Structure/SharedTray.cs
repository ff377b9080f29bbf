namespace Fairlead.Calculations.Structure;

/// <summary>An item on a shelf, tray or panel.</summary>
/// <param name="Name">Name.</param>
/// <param name="Mass">Its mass.</param>
/// <param name="X">Place of its centre of gravity along x.</param>
/// <param name="Y">Place along y.</param>
/// <param name="Z">Height.</param>
public sealed record TrayItemRow(
    [In("name", "item")] string Name,
    [In("m", "mass", "lb", Min = 0, Max = 5000)] Mass Mass,
    [In("x", "centre of gravity along x", "in", Min = -1000, Max = 1000, Default = "not known")] Length? X = null,
    [In("y", "centre of gravity along y", "in", Min = -1000, Max = 1000, Default = "not known")] Length? Y = null,
    [In("z", "its height", "in", Min = -1000, Max = 1000, Default = "not known")] Length? Z = null);

/// <summary>Input of <see cref="SharedTray"/>.</summary>
/// <param name="Before">Items before the change, the tray included when the limit counts it.</param>
/// <param name="Added">Items that go in.</param>
/// <param name="Removed">Items that come out.</param>
/// <param name="Limit">Shelf load of the placard, or capacity of the mounts.</param>
public sealed record SharedTrayInput(
    [In("before", "items before the change")] Sequence<TrayItemRow> Before,
    [In("added", "items that go in", Default = "none")] Sequence<TrayItemRow> Added = default,
    [In("removed", "items that come out", Default = "none")] Sequence<TrayItemRow> Removed = default,
    [In("Wmax", "shelf load of the placard, or capacity of the shock mounts", "lb", Min = 0.01, Max = 5000, Default = "not known")] Mass? Limit = null);

/// <summary>Structure that carries old and new items together: W = before − removed + added, with the centre of gravity, against the placard or the mounts.</summary>
/// <remarks>AC 43.13-2B 104c: equipment added where other equipment hangs is checked with it. Check value: 7 lb at x 0 and 3 lb at x 10 in make 10 lb at x 3 in.</remarks>
public sealed class SharedTray : ICalculation<SharedTrayInput>
{
    private static readonly Source Rule = StructureSources.Alteration("104c, 203d and 206b");

    /// <inheritdoc/>
    public static CalculationInfo<SharedTrayInput> Info { get; } = new(
        "shared-tray", "Shared tray", Discipline.Structure,
        "The total of old and new on a tray, its centre of gravity, and the placard", "before='radio,7 lb,0 in,0 in,2 in' added='receiver,3 lb,10 in,0 in,2 in' Wmax='15 lb'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(SharedTrayInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var before = s.Step("W0", "mass before", "sum of the items before", Sum(input.Before), "lb");
        var removed = s.Step("Wr", "mass removed", "sum of the items removed", Sum(input.Removed), "lb");
        var added = s.Step("Wa", "mass added", "sum of the items added", Sum(input.Added), "lb");
        var total = before - removed + added;
        if (total.Si <= 0)
        {
            s.CannotTell("Nothing is left on the tray, or more is removed than was there.");
            return;
        }

        s.Step("W", "mass after: the load that is checked", "W0 − Wr + Wa", total, "lb", Rule);
        var all = Signed(input).ToArray();
        foreach (var (symbol, of) in new (string, Func<TrayItemRow, Length?>)[] { ("x", r => r.X), ("y", r => r.Y), ("z", r => r.Z) })
        {
            if (all.All(i => of(i.Row) is not null))
            {
                s.Step("c" + symbol, $"centre of gravity after, {symbol}", $"Σ m · {symbol} / W", new Length(all.Sum(i => i.Sign * i.Row.Mass.Si * of(i.Row)!.Value.Si) / total.Si), "in");
            }
        }

        if (input.Limit is { } limit)
        {
            s.Check("load on the tray", total.As("lb"), Sense.AtMost, limit.As("lb"), "old and new together within the placard or the mounts", Rule);
        }
        else
        {
            s.Caution("The tray's limit is not known: prove the tray and its attachments with the total.", true);
        }

        s.Caution("Placard the shelf 'Shelf load not to exceed __ lbs' (AC 43.13-2B 206b), and check its attachments at the new centre of gravity with inertia-loads and fastener-group.");
        s.DeferToApprovedData();
    });

    private static IEnumerable<(int Sign, TrayItemRow Row)> Signed(SharedTrayInput input) =>
        input.Before.Concat(input.Added).Select(r => (1, r)).Concat(input.Removed.Select(r => (-1, r)));

    private static Mass Sum(Sequence<TrayItemRow> items) => new(items.Sum(i => i.Mass.Si));
}
