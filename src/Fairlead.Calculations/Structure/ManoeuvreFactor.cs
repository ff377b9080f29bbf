namespace Fairlead.Calculations.Structure;

/// <summary>Category of an aeroplane of part 23.</summary>
public enum AeroplaneCategory
{
    /// <summary>Normal, and commuter, which has the same rule.</summary>
    Normal,

    /// <summary>Utility.</summary>
    Utility,

    /// <summary>Acrobatic.</summary>
    Acrobatic,
}

/// <summary>Input of <see cref="ManoeuvreFactor"/>.</summary>
/// <param name="Category">Category.</param>
/// <param name="Mass">Design maximum take-off weight.</param>
public sealed record ManoeuvreFactorInput(
    [In("category", "category")] AeroplaneCategory Category,
    [In("W", "design maximum take-off weight", "lb", Min = 100, Max = 19000)] Mass Mass);

/// <summary>Limit manoeuvring load factors of 14 CFR 23.337 before amendment 23-64, and the ultimate ones: n = 2.1 + 24,000/(W + 10,000), at most 3.8; 4.4; 6.0.</summary>
/// <remarks>Check values: 6,000 lb normal, 3.6; 4.4 limit is 6.6 ultimate; negative 0.4 n, acrobatic 0.5 n.</remarks>
public sealed class ManoeuvreFactor : ICalculation<ManoeuvreFactorInput>
{
    private static readonly Source Rule = new("14 CFR part 23", "2014 annual edition, before amendment 23-64", "23.337");
    private static readonly Source Safety = new("14 CFR part 23", "2015 annual edition", "23.303");

    /// <inheritdoc/>
    public static CalculationInfo<ManoeuvreFactorInput> Info { get; } = new(
        "manoeuvre-factor", "Manoeuvring load factor", Discipline.Structure,
        "Limit and ultimate manoeuvring load factors of an aeroplane of part 23", "category=normal W='6000 lb'", Rule, Safety);

    /// <inheritdoc/>
    public static Sheet Run(ManoeuvreFactorInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (formula, value) = input.Category switch
        {
            AeroplaneCategory.Utility => ("4.4", 4.4),
            AeroplaneCategory.Acrobatic => ("6.0", 6.0),
            _ => ("2.1 + 24000 / (W + 10000), at most 3.8", Math.Min(3.8, 2.1 + (24_000 / (input.Mass.In("lb") + 10_000)))),
        };
        var positive = s.Step("n", "positive limit load factor", formula, value, Rule);
        var acrobatic = input.Category == AeroplaneCategory.Acrobatic;
        var negative = s.Step("nneg", "size of the negative limit load factor", acrobatic ? "0.5 · n" : "0.4 · n", positive * (acrobatic ? 0.5 : 0.4), Rule);
        s.Step("nu", "positive ultimate load factor", "1.5 · n", 1.5 * positive, Safety);
        s.Step("nnegu", "size of the negative ultimate load factor", "1.5 · nneg", 1.5 * negative, Safety);
        s.Caution("Gusts may ask more (gust-factor): the greater governs.");
        s.DeferToApprovedData();
    });
}
