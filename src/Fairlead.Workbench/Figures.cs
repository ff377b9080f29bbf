using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>The figures by which a whole change is known.</summary>
internal static class Figures
{
    public static ImmutableArray<FigureView> Of(Assessment a) =>
    [
        .. Weight(a), .. Sources(a), .. Batteries(a),
        new("New circuits", "", NumberFormat.Text(a.Circuits.Length), "", ""),
        new("Wire cut for them", "", Text(a.Circuits.Aggregate(default(Length), (sum, c) => sum + (c.Cut ?? c.Length ?? default)), "m"), "", ""),
        new("Kit lines short", "", NumberFormat.Text(a.Kit.Lines.Count(l => l.State == Fairlead.Substantiation.Kit.KitState.Short)), "", ""),
    ];

    private static IEnumerable<FigureView> Weight(Assessment a)
    {
        yield return new FigureView("Empty weight", Text(a.EmptyBefore.Mass, "kg"), a.EmptyAfter is { } after ? Text(after.Mass, "kg") : "cannot tell", "", "balance/empty");
        yield return new FigureView("Empty centre of gravity", Text(a.EmptyBefore.Fs, "m"), a.EmptyAfter is { } now ? Text(now.Fs, "m") : "cannot tell", "", "balance/empty");
        if (!a.LoadingAfter.IsEmpty)
        {
            yield return new FigureView("Least margin to the envelope", a.LoadingBefore.IsEmpty ? "" : Text(a.LoadingBefore.Min(l => l.Margin), "mm"), Text(a.LoadingAfter.Min(l => l.Margin), "mm"), "at least 0 mm", "");
        }
    }

    private static IEnumerable<FigureView> Sources(Assessment a) => a.SourceLoads.GroupBy(l => l.Source.Id).Select(loads =>
    {
        var worst = loads.MaxBy(l => l.After)!;
        return new FigureView($"{worst.Source.Name}, greatest load", Text(loads.Max(l => l.Before), "A"), Text(worst.After, "A"), $"at most {Text(worst.Source.Rating, "A")}", $"source/{worst.Source.Id}");
    });

    private static IEnumerable<FigureView> Batteries(Assessment a) => a.Batteries.Select(b =>
        new FigureView($"{b.Battery.Id} after loss of generators", "", b.Endurance is { } endurance ? Text(endurance, "min") : "cannot tell", $"at least {Text(b.Battery.Required, "min")}", $"battery/{b.Battery.Id}"));

    // Four figures are what a person compares at a glance; the sheets have all of them.
    private static string Text<TKind>(Quantity<TKind> value, string unit)
        where TKind : IKind
    {
        var x = value.In(unit);
        var decimals = x == 0 ? 0 : Math.Clamp(3 - (int)Math.Floor(Math.Log10(Math.Abs(x))), 0, 6);
        return $"{NumberFormat.Text(Math.Round(x, decimals))} {unit}";
    }
}
