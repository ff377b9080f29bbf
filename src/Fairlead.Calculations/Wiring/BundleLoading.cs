using System.Collections.Immutable;

namespace Fairlead.Calculations.Wiring;

/// <summary>Wires of one kind in a bundle.</summary>
/// <param name="Gauge">Wire gauge.</param>
/// <param name="Rating">Conductor temperature rating.</param>
/// <param name="Count">How many, at least 1.</param>
/// <param name="Current">Sum of the continuous currents they carry together.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record BundleGroup(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("TR", "conductor temperature rating", "°C", Min = 60, Max = 260)] Temperature Rating,
    [In("n", "wires", Min = 1, Max = 1000)] int Count,
    [In("I", "total current", "A", Min = 0, Max = 10000)] Current Current,
    [In("conductor", "conductor", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Input of <see cref="BundleLoading"/>.</summary>
/// <param name="Groups">The wires of the bundle, those without current included.</param>
/// <param name="Ambient">Ambient temperature.</param>
/// <param name="Altitude">Altitude, 0 to 60,000 ft.</param>
public sealed record BundleLoadingInput(
    [In("groups", "wires in the bundle")] Sequence<BundleGroup> Groups,
    [In("T1", "ambient temperature", "°C", Min = -65, Max = 250)] Temperature Ambient,
    [In("alt", "altitude", "ft", Min = 0, Max = 60000)] Length Altitude);

/// <summary>Which loading curve a bundle is on: the lowest published p with ΣI ≤ p · Σ n · Imax(p).</summary>
/// <remarks>
/// Each wire's Imax(p) is that of <see cref="WireCurrent"/>. Where ratings are mixed, the lowest rating is taken for all wires.
/// Check: ten size 20 wires rated 150 °C under the conditions of table 11-9 but for their number load the 20 % curve up to 20 % of their capacity.
/// </remarks>
public sealed class BundleLoading : ICalculation<BundleLoadingInput>
{
    private static readonly Source Method = Ac4313.Paragraph("11-67 and 11-69");
    private static readonly Source MixedRatings = Ac4313.Paragraph("11-67, mixed temperature ratings", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<BundleLoadingInput> Info { get; } = new(
        "bundle-loading", "Loading of a bundle", Discipline.Wiring,
        "Which loading curve of the bundle chart the wires of a bundle need",
        "groups='20,150 degC,6,22 A;22,150 degC,6,4 A' T1='50 degC' alt='25000 ft'", Method);

    /// <inheritdoc/>
    public static Sheet Run(BundleLoadingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Groups.Count == 0)
        {
            s.CannotTell("The bundle has no wires.");
            return;
        }

        var wires = input.Groups.Sum(g => g.Count);
        s.Step("N", "wires in the bundle", "sum of n", wires);
        var rating = new Temperature(input.Groups.Min(g => g.Rating.Si));
        s.Step("TR", "temperature rating taken for all", "lowest of TR", rating, "°C", input.Groups.Any(g => g.Rating > rating) ? MixedRatings : null);
        var actual = s.Step("Isum", "current carried in all", "sum of I", new Current(input.Groups.Sum(g => g.Current.Si)), "A");
        Conclude(s, actual, [.. BundleDerating.Curves.Select(p => (p, Capacity(input, wires, rating, p)))]);
        s.Caution("The current of each single wire is checked on its own sheet.");
    });

    private static void Conclude(SheetBuilder s, Current actual, ImmutableArray<(Fraction Curve, Looked<Current> Capacity)> tried)
    {
        s.Table(
            "Curves tried", ["loading", "capacity of the bundle", "allowed in use", "result"],
            tried.Select(t => ImmutableArray.Create<SheetValue>(
                t.Curve.As("%"), t.Capacity.IsKnown ? t.Capacity.Value.As("A") : "-", t.Capacity.IsKnown ? (t.Capacity.Value * t.Curve.Si).As("A") : "-",
                t.Capacity.WhyNot ?? (Serves(t, actual) ? "serves" : "too little"))));
        var known = tried.Where(t => t.Capacity.IsKnown).ToArray();
        if (known.Length == 0)
        {
            s.CannotTell(tried[0].Capacity.WhyNot!);
            return;
        }

        var (p, capacity) = known.FirstOrDefault(t => Serves(t, actual), known[^1]);
        if (known.Length < tried.Length && !Serves((p, capacity), actual))
        {
            s.CannotTell(tried.First(t => !t.Capacity.IsKnown).Capacity.WhyNot!);
            return;
        }

        s.Step("p", "loading curve", "lowest curve of the table that serves", p, "%", Method);
        s.Step("C", "capacity of the bundle on this curve", "sum of n · Imax", capacity.Value, "A", capacity.Source);
        var allowed = s.Step("Iall", "current the bundle may carry", "p · C", capacity.Value * p.Si, "A");
        s.Check("current in the bundle", actual.As("A"), Sense.AtMost, allowed.As("A"), "the wires together carry no more than the loaded share of their capacity", Method);
    }

    private static bool Serves((Fraction Curve, Looked<Current> Capacity) tried, Current actual) =>
        tried.Capacity.IsKnown && actual.Si <= tried.Capacity.Value.Si * tried.Curve.Si * (1 + 1e-9);

    private static Looked<Current> Capacity(BundleLoadingInput input, int wires, Temperature rating, Fraction curve)
    {
        var (sum, source) = (Current.Zero, Method);
        foreach (var group in input.Groups)
        {
            var one = WireCurrent.Allowed(new WireCurrentInput(group.Gauge, rating, input.Ambient, input.Altitude, wires, curve, group.Conductor));
            if (!one.IsKnown)
            {
                return one;
            }

            (sum, source) = (sum + (one.Value * group.Count), one.Source);
        }

        return new(sum, source);
    }
}
