namespace Fairlead.Calculations.Structure;

/// <summary>The special factor on the fittings and attachments of an item.</summary>
public enum FittingFactor
{
    /// <summary>None: the joint is proved by comprehensive tests, or the structure itself is looked at.</summary>
    None,

    /// <summary>1.15: 14 CFR 23.625, 25.625, 29.625.</summary>
    Fitting,

    /// <summary>1.33: attachments of seats, belts and harnesses, 14 CFR 23.625(d) and 23.785.</summary>
    Seat,

    /// <summary>1.33: local attachments worn by frequent removal, 14 CFR 25.561(c)(2).</summary>
    FrequentRemoval,
}

/// <summary>Input of <see cref="InertiaLoads"/>.</summary>
/// <param name="Mass">Mass of the item with everything that hangs on it.</param>
/// <param name="Rule">Certification basis and place of the item.</param>
/// <param name="Fitting">Factor on fittings and attachments.</param>
/// <param name="Manoeuvre">Positive limit manoeuvring or gust load factor of the aircraft: 1.5 times it acts downward.</param>
/// <param name="Negative">Size of the negative limit load factor: 1.5 times it acts upward.</param>
/// <param name="Up">Ultimate factor upward in place of the rule's.</param>
/// <param name="Forward">Ultimate factor forward in place of the rule's.</param>
/// <param name="Side">Ultimate factor sideward in place of the rule's.</param>
/// <param name="Down">Ultimate factor downward in place of the rule's.</param>
/// <param name="Aft">Ultimate factor aft in place of the rule's.</param>
public sealed record InertiaLoadsInput(
    [In("m", "mass of the item with all that hangs on it", "lb", Min = 0.001, Max = 50000)] Mass Mass,
    [In("rule", "certification basis and place of the item")] InertiaRule Rule,
    [In("fitting", "factor on fittings and attachments")] FittingFactor Fitting,
    [In("n", "positive limit load factor of the aircraft", Min = 1, Max = 15, Default = "not used")] double? Manoeuvre = null,
    [In("nneg", "size of the negative limit load factor", Min = 0, Max = 15, Default = "not used")] double? Negative = null,
    [In("gU", "ultimate factor up in place of the rule's", Min = 0, Max = 100, Default = "rule")] double? Up = null,
    [In("gF", "ultimate factor forward in place of the rule's", Min = 0, Max = 100, Default = "rule")] double? Forward = null,
    [In("gS", "ultimate factor sideward in place of the rule's", Min = 0, Max = 100, Default = "rule")] double? Side = null,
    [In("gD", "ultimate factor down in place of the rule's", Min = 0, Max = 100, Default = "rule")] double? Down = null,
    [In("gA", "ultimate factor aft in place of the rule's", Min = 0, Max = 100, Default = "rule")] double? Aft = null);

/// <summary>Ultimate inertia loads of an item in every direction: F = m · g0 · n, and on its attachments P = ff · F.</summary>
/// <remarks>Check value: 10 lb under 14 CFR 23.561(b)(3) pulls 180 lbf forward, 45 sideward, 30 up; with the fitting factor 1.15: 207, 51.75, 34.5 lbf.</remarks>
public sealed class InertiaLoads : ICalculation<InertiaLoadsInput>
{
    private const double FactorOfSafety = 1.5;
    private static readonly Source Method = StructureSources.Alteration("103 to 105");
    private static readonly Source Safety = new("14 CFR part 23", "2015 annual edition", "23.303");
    private static readonly Source Stated = new("Load factor stated", "", "", Basis.Stated);

    /// <inheritdoc/>
    public static CalculationInfo<InertiaLoadsInput> Info { get; } = new(
        "inertia-loads", "Inertia loads of an item", Discipline.Structure,
        "Ultimate loads of an item in every direction by certification basis, and those on its attachments",
        "m='10 lb' rule=part23-item fitting=fitting n=4.4", Method);

    /// <inheritdoc/>
    public static Sheet Run(InertiaLoadsInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (rule, source) = InertiaFactors.Of(input.Rule);
        var (fitting, fittingSource) = Factor(input.Fitting);
        s.Step("ff", "factor on fittings and attachments", "by the kind of attachment", fitting, fittingSource);
        Direction(s, input.Mass, fitting, "U", "upward", input.Up, Greater(rule.Up, input.Negative), input.Negative, source);
        Direction(s, input.Mass, fitting, "F", "forward", input.Forward, rule.Forward, null, source);
        Direction(s, input.Mass, fitting, "S", "sideward, either side", input.Side, rule.Side, null, source);
        Direction(s, input.Mass, fitting, "D", "downward", input.Down, Greater(rule.Down, input.Manoeuvre), input.Manoeuvre, source);
        Direction(s, input.Mass, fitting, "A", "aft", input.Aft, rule.Aft, null, source);
        Cautions(s, input, rule);
    });

    /// <summary>The factor on fittings and attachments. Check value: 1.15 (14 CFR 23.625).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a known kind.</exception>
    public static (double Factor, Source Source) Factor(FittingFactor fitting) => fitting switch
    {
        FittingFactor.None => (1, new Source("14 CFR part 23", "2015 annual edition", "23.625(b): not needed where tests prove the joint")),
        FittingFactor.Fitting => (1.15, new Source("14 CFR part 23", "2015 annual edition", "23.625(a)")),
        FittingFactor.Seat => (1.33, new Source("14 CFR part 23", "2015 annual edition", "23.625(d) and 23.785")),
        FittingFactor.FrequentRemoval => (1.33, new Source("14 CFR part 25", "", "25.561(c)(2)")),
        _ => throw new ArgumentOutOfRangeException(nameof(fitting), fitting, "Not a known kind of attachment."),
    };

    private static double? Greater(double? rule, double? limit) =>
        limit is { } n ? Math.Max(rule ?? 0, FactorOfSafety * n) : rule;

    private static void Direction(SheetBuilder s, Mass mass, double fitting, string letter, string direction, double? stated, double? factor, double? limit, Source rule)
    {
        var limitGoverns = stated is null && limit is { } n && factor == FactorOfSafety * n;
        if ((stated ?? factor) is not { } used)
        {
            s.Caution($"No ultimate factor {direction}: neither the rule nor you give one, so this sheet has no load {direction}.", letter != "A");
            return;
        }

        var (formula, source) = stated is not null ? ("as stated", Stated) : limitGoverns ? ("1.5 · limit load factor", Safety) : ("by the rule", rule);
        s.Step("n" + letter, $"ultimate factor {direction}", formula, used, source);
        var load = s.Step("F" + letter, $"ultimate load {direction}", $"m · g0 · n{letter}", Weight.At(mass, used), "lbf", Method);
        s.Step("P" + letter, $"ultimate load {direction} on the attachments", $"ff · F{letter}", load * fitting, "lbf");
    }

    private static void Cautions(SheetBuilder s, InertiaLoadsInput input, InertiaFactors rule)
    {
        s.Caution("These are ultimate loads: compare them with ultimate strength and do not multiply them by 1.5 again. AC 43.13-2B titles its table 1-1 'limit load factors', yet par. 103b and 23.561 give the same numbers as ultimate.");
        if (input.Rule == InertiaRule.CircularOccupant)
        {
            s.Caution("AC 43.13-2B disagrees with itself: side 3.0 in table 1-1, 1.5 in table 1-2, in figure 2-1 and in 14 CFR 23.561(b)(2); down 6.6 in table 1-1 and figure 2-1, 6.0 in table 1-2. The certification basis decides.", true);
        }

        if (input.Rule is InertiaRule.Part23Item or InertiaRule.Cs23Item or InertiaRule.CircularItem)
        {
            s.Caution("For an item outside the cabin to one side, or ahead of the occupants, AC 43.13-2B accepts 2.0 forward where the rule for an item of mass in the cabin asks 18.0.");
        }

        if (rule.Down is null && input.Manoeuvre is null && input.Down is null)
        {
            s.Caution("Downward the manoeuvring and gust factors of the aircraft govern: give n (14 CFR 23.337 and 23.341; 4.4 limit makes the 6.6 of AC 43.13-2B, 6.0 makes 9.0).");
        }

        s.Caution("A static test applies the load at the centre of gravity of the item and holds it for 3 s (AC 43.13-2B 105d; 23.305).");
        s.DeferToApprovedData();
    }
}
