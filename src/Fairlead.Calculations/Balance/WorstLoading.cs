using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="WorstLoading"/>.</summary>
/// <param name="EmptyMass">Empty mass.</param>
/// <param name="EmptyFs">Centre of gravity when empty.</param>
/// <param name="Stations">Loading stations with the least and greatest mass at each.</param>
/// <param name="Tanks">Tanks with the order in which they burn.</param>
/// <param name="Envelope">Corners of the envelope in order around it.</param>
/// <param name="MaxTakeOff">Greatest take-off mass.</param>
/// <param name="MaxZeroFuel">Greatest mass without fuel.</param>
/// <param name="MaxLanding">Greatest landing mass.</param>
/// <param name="MinFuel">Least fuel at any time in flight.</param>
/// <param name="Groups">Limits shared by several stations, nested or apart.</param>
public sealed record WorstLoadingInput(
    [In("We", "empty mass", "lb", Min = 1, Max = 1000000)] Mass EmptyMass,
    [In("FSe", "centre of gravity when empty", "in", Min = -5000, Max = 5000)] Length EmptyFs,
    [In("stations", "loading stations")] Sequence<LoadingStationRow> Stations,
    [In("tanks", "tanks")] Sequence<LoadingTankRow> Tanks,
    [In("envelope", "corners of the envelope in order around it")] Sequence<EnvelopeRow> Envelope,
    [In("MTOW", "greatest take-off mass", "lb", Min = 1, Max = 2000000)] Mass MaxTakeOff,
    [In("MZFW", "greatest mass without fuel", "lb", Min = 1, Max = 2000000, Default = "no limit")] Mass? MaxZeroFuel = null,
    [In("MLW", "greatest landing mass", "lb", Min = 1, Max = 2000000, Default = "not checked")] Mass? MaxLanding = null,
    [In("Fmin", "least fuel", "lb", Min = 0, Max = 500000, Default = "0")] Mass MinFuel = default,
    [In("groups", "limits shared by stations", Default = "none")] Sequence<LoadingGroupRow> Groups = default);

/// <summary>The worst legal loading: of all loads, fuel and burn that the limits allow, those that come closest to the forward limit, to the aft limit and to the
/// greatest mass. <see cref="Verdict.Holds"/> means that it is proved that no legal loading leaves the envelope, at take-off or in flight.</summary>
/// <remarks>
/// Legal is: each station between its least and greatest mass, groups, zero-fuel and take-off mass within their limits, and fuel at any level from the least to full.
/// The fuel lies on its burn path (<see cref="BurnPath"/>), so every state in flight is itself a legal state at take-off and the states to judge are exactly these.
/// On a stretch of the burn path the masses and moments reached form a convex polygon (<see cref="LoadingBoundary"/>). At a given mass the margin to a limit
/// changes with moment in one sense only, so the least margin is on the polygon's boundary, where it is found in closed form (<see cref="ClosestApproach"/>).
/// Check values: AC 43.13-1B figures 10-10 and 10-11: 11.191383 in forward and 21.330255 in aft.
/// </remarks>
public sealed class WorstLoading : ICalculation<WorstLoadingInput>
{
    internal static readonly Source Extremes = BalanceSources.Circular("10-17, figures 10-10 to 10-14");
    private static readonly Source Method = new("Linear programming", "", "greedy order under nested limits; the bound is proved by duality anew for each result", Basis.Derived);

    /// <inheritdoc/>
    public static CalculationInfo<WorstLoadingInput> Info { get; } = new(
        "worst-loading", "Worst legal loading", Discipline.Balance,
        "Whether any legal loading, at take-off or as fuel burns, leaves the centre of gravity envelope, and which comes closest",
        "We='1169 lb' FSe='10.6 in' stations='oil,-49 in,17 lb,17 lb;pilot,16 in,170 lb,170 lb;front seat,16 in,170 lb;rear seats,48 in,340 lb;baggage,75.5 in,100 lb' "
        + "tanks='main,22 in,240 lb' envelope='1100 lb,8.5 in;2100 lb,8.5 in;2100 lb,21.9 in;1100 lb,21.9 in' MTOW='2100 lb' Fmin='83 lb'",
        Extremes, Method);

    /// <inheritdoc/>
    public static Sheet Run(WorstLoadingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var limits = EnvelopeLimits.Of(input.Envelope, out var whyNot);
        var faults = LoadingFaults.Of(input).Concat(whyNot is null ? [] : [whyNot]).ToArray();
        foreach (var fault in faults)
        {
            s.CannotTell(fault);
        }

        if (faults.Length == 0)
        {
            WorstLoadingSheet.Add(s, input, Stretches(input), limits!);
        }
    });

    /// <summary>The loadings that come closest to the limits; null when the input contradicts itself or no loading is legal (the sheet of <see cref="Run"/> says why).</summary>
    public static WorstLoadings? Find(WorstLoadingInput input)
    {
        var limits = EnvelopeLimits.Of((input ?? throw new ArgumentNullException(nameof(input))).Envelope, out _);
        return limits is null || LoadingFaults.Of(input).Any() || Stretches(input) is not { Length: > 0 } stretches ? null : Find(input, stretches, limits);
    }

    /// <summary>Every mass and moment that legal loadings reach, one polygon for each stretch of the burn path; empty when there is none.</summary>
    public static Sequence<LoadingPolygon> Reachable(WorstLoadingInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return LoadingFaults.Of(input).Any() ? [] : Stretches(input).Select(s => s.Polygon).ToSequence();
    }

    internal static WorstLoadings Find(WorstLoadingInput input, ImmutableArray<LoadingStretch> stretches, EnvelopeLimits limits)
    {
        var forward = stretches.Select(s => s.Closest(Side.Forward, limits)).MinBy(a => a.Margin);
        var aft = stretches.Select(s => s.Closest(Side.Aft, limits)).MinBy(a => a.Margin);
        var corners = stretches.SelectMany(s => s.Polygon.Forward.Concat(s.Polygon.Aft)).ToArray();
        return new(
            forward.Stretch.Case(input, forward),
            aft.Stretch.Case(input, aft),
            Heaviest(input, stretches, limits),
            corners.Min(c => c.Fs), corners.Max(c => c.Fs), corners.Min(c => c.Mass),
            stretches.Max(s => Math.Max(LoadingCertificate.Gap(s.Forward), LoadingCertificate.Gap(s.Aft))));
    }

    private static LoadingCase Heaviest(WorstLoadingInput input, ImmutableArray<LoadingStretch> stretches, EnvelopeLimits limits)
    {
        var greatest = stretches.Max(s => s.GreatestMass);
        var approach = stretches.Where(s => s.GreatestMass >= greatest - (LoadingSpace.Rounding * greatest))
            .SelectMany(s => s.Heaviest(limits)).MinBy(a => a.Margin);
        return approach.Stretch.Case(input, approach);
    }

    private static ImmutableArray<LoadingStretch> Stretches(WorstLoadingInput input) =>
        [.. new BurnPath(input.Tanks).Above(input.MinFuel.Si).Select(fuel => new LoadingStretch(fuel, LoadingSpace.Of(input, fuel))).Where(s => s.Space.IsPossible)];
}
