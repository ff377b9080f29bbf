namespace Fairlead.Calculations.Power;

/// <summary>A phase on battery.</summary>
/// <param name="Name">Name.</param>
/// <param name="Current">Current drawn, 0 A to 2000 A.</param>
/// <param name="Duration">How long; left out for the one phase that lasts as long as the charge allows.</param>
public sealed record BatteryPhase(
    [In("name", "phase")] string Name,
    [In("I", "current", "A", Min = 0, Max = 2000)] Current Current,
    [In("t", "duration", "min", Min = 0, Max = 1440, Default = "as long as the charge lasts")] Duration? Duration = null);

/// <summary>Input of <see cref="BatteryEndurance"/>.</summary>
/// <param name="Capacity">Nameplate capacity, 0.1 A·h to 1000 A·h.</param>
/// <param name="Phases">The phases in order; exactly one has no duration.</param>
/// <param name="Required">Time the battery must last.</param>
/// <param name="Rate">Rate at which the capacity is quoted.</param>
/// <param name="Rule">Share that may be counted on.</param>
public sealed record BatteryEnduranceInput(
    [In("C", "nameplate capacity", "A·h", Min = 0.1, Max = 1000)] Charge Capacity,
    [In("phases", "phases on battery, in order")] Sequence<BatteryPhase> Phases,
    [In("treq", "time it must last", "min", Min = 0, Max = 1440)] Duration Required,
    [In("rate", "rate of the quoted capacity", Default = "one-hour")] QuotedRate Rate = QuotedRate.OneHour,
    [In("rule", "share that may be counted on", Default = "aged-and-partly-charged")] CapacityRule Rule = CapacityRule.AgedAndPartlyCharged);

/// <summary>Battery endurance: t = Σ tᵢ + (Cu − Σ Iᵢ·tᵢ)/Iₓ, where phase x lasts as long as the charge allows.</summary>
/// <remarks>
/// Check value: 35 A·h, 0.75 usable, 43.5 A for 5 min, then 34 A, and 48.1 A for the last 10 min: 25.8 min in the middle, 40.8 min in all
/// (two published equipment installation manuals, number for number).
/// </remarks>
public sealed class BatteryEndurance : ICalculation<BatteryEnduranceInput>
{
    private static readonly Source Rule = new("14 CFR 23.1353(h)", "before Amendment 23-64", "30 min to 25,000 ft, 60 min above; recognition and shedding included", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<BatteryEnduranceInput> Info { get; } = new(
        "battery-endurance", "Battery endurance", Discipline.Power,
        "How long the battery carries the loads that remain after the generators are lost",
        "C='35 Ah' phases='recognition,43.5 A,5 min;cruise,34 A;landing,48.1 A,10 min' treq='30 min' rule=three-quarters", Rule);

    /// <inheritdoc/>
    public static Sheet Run(BatteryEnduranceInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var open = input.Phases.Where(p => p.Duration is null).ToArray();
        if (open.Length != 1)
        {
            s.CannotTell("Exactly one phase must be without a duration: the one that lasts as long as the charge allows.");
            return;
        }

        var usable = BatteryCapacity.Add(s, input.Rate, input.Rule);
        var timed = input.Phases.Where(p => p.Duration is not null).ToArray();
        var drawn = s.Step("Qt", "drawn in the phases of fixed length", "sum of I · t", new Charge(timed.Sum(p => (p.Current * p.Duration!.Value).Si)), "A·min");
        var left = s.Step("Ql", $"left for {open[0].Name}", "Cu − Qt", usable - drawn, "A·min");
        s.Caution("Capacity falls at high discharge currents and in the cold; the figures hold for a battery in the condition its maintenance data ask for.");
        if (left.Si < 0)
        {
            s.Check("charge for the phases of fixed length", drawn.As("A·min"), Sense.AtMost, usable.As("A·min"), "the battery must complete the phases of fixed length, the landing among them", Rule);
            return;
        }

        if (open[0].Current.Si == 0)
        {
            s.CannotTell($"Nothing is drawn in '{open[0].Name}', so its length has no end.");
            return;
        }

        s.Note("Ix", $"current in {open[0].Name}", open[0].Current.As("A"), "phases");
        var time = s.Step("tx", $"length of {open[0].Name}", "Ql / Ix", left / open[0].Current, "min");
        var fixedTime = s.Step("tt", "length of the other phases", "sum of t", new Duration(timed.Sum(p => p.Duration!.Value.Si)), "min");
        var total = s.Step("t", "endurance", "tt + tx", fixedTime + time, "min");
        s.Check("endurance", total.As("min"), Sense.AtLeast, input.Required.As("min"), "the battery lasts as long as required, recognition and shedding included", Rule);
    });
}
