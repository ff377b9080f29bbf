namespace Fairlead.Calculations.Balance;

/// <summary>A limit of the centre of gravity.</summary>
public enum BalanceLimit
{
    /// <summary>The forward limit: the centre of gravity may not lie ahead of it.</summary>
    Forward,

    /// <summary>The aft limit: the centre of gravity may not lie behind it.</summary>
    Aft,
}

/// <summary>Input of <see cref="Ballast"/>.</summary>
/// <param name="Mass">Mass to be balanced.</param>
/// <param name="Fs">Its centre of gravity.</param>
/// <param name="Limit">Fuselage station of the limit.</param>
/// <param name="Side">Which limit it is.</param>
/// <param name="Place">Fuselage station of the ballast.</param>
/// <param name="RoundTo">Ballast comes in multiples of this; it is rounded up.</param>
/// <param name="MaxMass">Greatest mass allowed.</param>
public sealed record BallastInput(
    [In("W", "mass to be balanced", "lb", Min = 1, Max = 1000000)] Mass Mass,
    [In("FS", "its centre of gravity", "in", Min = -2000, Max = 5000)] Length Fs,
    [In("L", "limit", "in", Min = -2000, Max = 5000)] Length Limit,
    [In("side", "which limit it is")] BalanceLimit Side,
    [In("xb", "fuselage station of the ballast", "in", Min = -2000, Max = 5000)] Length Place,
    [In("step", "ballast comes in multiples of, rounded up", "lb", Min = 0.001, Max = 100, Default = "not rounded")] Mass? RoundTo = null,
    [In("Wmax", "greatest mass allowed", "lb", Min = 1, Max = 1000000, Default = "not checked")] Mass? MaxMass = null);

/// <summary>Ballast that brings a centre of gravity back to a limit: b = W · (distance out of the limit) / (arm of the ballast to the limit).</summary>
/// <remarks>
/// Exact, since b·(xb − L) = W·(L − FS). Check value: 1,876 lb at 32.2 in, forward limit 33.0 in, ballast at 228 in: 7.696 lb, printed 7.7
/// (FAA-H-8083-1B, ch. 7). Rounding it down would leave the centre of gravity out of its limit.
/// </remarks>
public sealed class Ballast : ICalculation<BallastInput>
{
    private static readonly Source Formula = new("FAA-H-8083-30", "2008", "ch. 4, ballast");

    /// <inheritdoc/>
    public static CalculationInfo<BallastInput> Info { get; } = new(
        "ballast", "Permanent ballast", Discipline.Balance,
        "How much ballast at a place brings the centre of gravity back to its limit",
        "W='1876 lb' FS='32.2 in' L='33 in' side=forward xb='228 in' step='0.1 lb'", Formula, BalanceSources.Circular("10-22"), BalanceSources.Handbook);

    /// <inheritdoc/>
    public static Sheet Run(BallastInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var forward = input.Side == BalanceLimit.Forward;
        var out0 = s.Step("e", "distance out of the limit", forward ? "L − FS" : "FS − L", forward ? input.Limit - input.Fs : input.Fs - input.Limit, "in");
        if (out0.Si <= 0)
        {
            s.Check("centre of gravity", input.Fs.As("in"), forward ? Sense.AtLeast : Sense.AtMost, input.Limit.As("in"), "within the limit: no ballast is needed", Formula);
            return;
        }

        var arm = s.Step("a", "arm of the ballast to the limit", forward ? "xb − L" : "L − xb", forward ? input.Place - input.Limit : input.Limit - input.Place, "in");
        if (arm.Si <= 0)
        {
            s.CannotTell(forward ? "Ballast ahead of the forward limit cannot bring the centre of gravity aft to it." : "Ballast behind the aft limit cannot bring the centre of gravity forward to it.");
            return;
        }

        var exact = s.Step("b", "ballast", "W · e / a", input.Mass * (out0 / arm), "lb", Formula);
        var fitted = input.RoundTo is { } step
            ? s.Step("bf", "ballast, rounded up", "the next multiple of step from b", step * Math.Ceiling((exact / step) - 1e-9), "lb")
            : s.Step("bf", "ballast", "b", exact, "lb");
        var mass = s.Step("Wb", "mass with ballast", "W + bf", input.Mass + fitted, "lb");
        var fs = s.Step("FSb", "centre of gravity with ballast", "(W · FS + bf · xb) / Wb", ((input.Mass * input.Fs) + (fitted * input.Place)) / mass, "in");
        s.Check("centre of gravity with ballast", fs.As("in"), forward ? Sense.AtLeast : Sense.AtMost, input.Limit.As("in"), "the centre of gravity with ballast lies within the limit", Formula);
        if (input.MaxMass is { } max)
        {
            s.Check("mass with ballast", mass.As("lb"), Sense.AtMost, max.As("lb"), "the mass with ballast stays within its limit", Formula);
        }

        s.Caution("Placard it 'Permanent ballast - do not remove', check the structure that carries it in every load direction, and check the other loadings again: ballast moves them all.");
    });
}
