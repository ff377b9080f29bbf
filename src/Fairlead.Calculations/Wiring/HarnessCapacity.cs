using System.Collections.Immutable;

namespace Fairlead.Calculations.Wiring;

/// <summary>Wires of one size in a harness, with their chart value.</summary>
/// <param name="Gauge">Wire gauge.</param>
/// <param name="Count">How many, at least 1.</param>
/// <param name="FreeAir">Free-air current read from figure 11-4.</param>
public sealed record HarnessGroup(
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("n", "wires", Min = 1, Max = 1000)] int Count,
    [In("Ifree", "free-air current", "A", Min = 0, Max = 2000)] Current FreeAir);

/// <summary>Input of <see cref="HarnessCapacity"/>.</summary>
/// <param name="Groups">The wires, by size.</param>
/// <param name="Altitude">Altitude, 0 to 60,000 ft.</param>
/// <param name="Loading">Share of the harness capacity in use.</param>
/// <param name="Actual">Sum of the currents carried, when it is to be checked.</param>
public sealed record HarnessCapacityInput(
    [In("groups", "wires in the harness")] Sequence<HarnessGroup> Groups,
    [In("alt", "altitude", "ft", Min = 0, Max = 60000)] Length Altitude,
    [In("p", "share of the harness capacity in use", "%", Min = 0, Max = 100)] Fraction Loading,
    [In("I", "current carried in all", "A", Min = 0, Max = 10000, Default = "not checked")] Current? Actual = null);

/// <summary>Current a whole harness may carry: Itotal = p · A(alt) · F(N, p) · Σ n · Ifree.</summary>
/// <remarks>
/// Check value: 10 wires of size 20 (21.5 A) and 25 of size 22 (16.2 A) at 60,000 ft and 20 % give 50.6 A (AC 43.13-1B 11-69 a, from memory;
/// the circular rounds at every step, unrounded it is 50.9 A).
/// </remarks>
public sealed class HarnessCapacity : ICalculation<HarnessCapacityInput>
{
    private static readonly Source Method = Ac4313.Paragraph("11-69 a", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<HarnessCapacityInput> Info { get; } = new(
        "harness-capacity", "Capacity of a harness", Discipline.Wiring,
        "Current a harness may carry in all, from free-air chart values", "groups='20,10,21.5 A;22,25,16.2 A' alt='60000 ft' p='20 %' I='45 A'", Method);

    /// <inheritdoc/>
    public static Sheet Run(HarnessCapacityInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Groups.Count == 0)
        {
            s.CannotTell("The harness has no wires.");
            return;
        }

        var wires = input.Groups.Sum(g => g.Count);
        s.Step("N", "wires in the harness", "sum of n", wires);
        var curve = s.Step("pc", "loading curve", "published curve at or above p", BundleDerating.Curve(input.Loading), "%");
        var bundle = s.Step("F", "bundle factor", "figure 11-5 by N and pc", BundleDerating.Factor(wires, curve));
        var altitude = s.Step("A", "altitude factor", "figure 11-6 by alt", AltitudeDerating.Factor(input.Altitude));
        if (bundle is not { } f || altitude is not { } a)
        {
            return;
        }

        s.Table("Allowed current by size", ["wire gauge", "allowed current"], input.Groups.Select(g => ImmutableArray.Create<SheetValue>(g.Gauge.ToString(), (g.FreeAir * (f * a)).As("A"))));
        var free = s.Step("S", "free-air currents in all", "sum of n · Ifree", new Current(input.Groups.Sum(g => g.Count * g.FreeAir.Si)), "A");
        var total = s.Step("Itotal", "current the harness may carry", "S · F · A · p", free * (f * a * input.Loading.Si), "A", Method);
        if (input.Actual is { } actual)
        {
            s.Check("harness current", actual.As("A"), Sense.AtMost, total.As("A"), "the wires together carry no more than the loaded share of the harness", Method);
        }
    });
}
