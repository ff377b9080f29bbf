using System.Collections.Immutable;

namespace Fairlead.Calculations;

/// <summary>What a sheet or check concludes, from best to worst.</summary>
public enum Verdict
{
    /// <summary>Every check holds.</summary>
    Holds,

    /// <summary>Holds, but something needs a person's eye.</summary>
    Caution,

    /// <summary>Outside the range in which the method is known to be right: nothing is claimed.</summary>
    CannotTell,

    /// <summary>At least one check fails.</summary>
    Fails,
}

/// <summary>A value on a sheet: a measure, or words.</summary>
/// <param name="Number">The measure, or null for words.</param>
/// <param name="Words">The words, or null for a measure.</param>
public readonly record struct SheetValue(Measure? Number, string? Words)
{
    /// <summary>A measure as a sheet value.</summary>
    public static implicit operator SheetValue(Measure measure) => new(measure, null);

    /// <summary>Words as a sheet value.</summary>
    public static implicit operator SheetValue(string words) => new(null, words);

    /// <inheritdoc/>
    public override string ToString() => Number?.ToString() ?? Words ?? "";
}

/// <summary>A given line: symbol, meaning, value, and where it came from.</summary>
public sealed record Given(string Symbol, string Meaning, SheetValue Value, string Origin = "given");

/// <summary>A table among the givens or results.</summary>
public sealed record SheetTable(string Title, ImmutableArray<string> Columns, ImmutableArray<ImmutableArray<SheetValue>> Rows);

/// <summary>A step of the working. The formula names the symbols of earlier lines; the substituted numbers are derived from them.</summary>
public sealed record Step(string Symbol, string Meaning, string Formula, Measure Value, Source? Source = null);

/// <summary>Which way a check compares.</summary>
public enum Sense
{
    /// <summary>The demand may not exceed the limit.</summary>
    AtMost,

    /// <summary>The demand may not be below the limit.</summary>
    AtLeast,
}

/// <summary>One check: demand against limit by a rule. The margin is what is left in the unit of the demand; it is negative when the check fails.</summary>
/// <param name="Name">What is checked.</param>
/// <param name="Demand">What is there.</param>
/// <param name="Sense">Which way it compares.</param>
/// <param name="Limit">What is allowed.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="WhenBroken">What a broken check means; <see cref="Verdict.Fails"/> unless the rule is advisory.</param>
public sealed record Check(string Name, Measure Demand, Sense Sense, Measure Limit, string Rule, Source Source, Verdict WhenBroken = Verdict.Fails)
{
    // Two sums of the same numbers in another order differ by rounding; that must not decide a check.
    private const double Rounding = 1e-9;

    /// <summary>What is left, in SI units of the demand; negative when broken.</summary>
    public double MarginSi => Sense == Sense.AtMost ? Limit.Si - Demand.Si : Demand.Si - Limit.Si;

    /// <summary>What is left, in the unit of the demand. On a temperature scale this is a difference.</summary>
    public double Margin => MarginSi / Demand.Unit.Factor;

    /// <summary>What is left, in words: "-1.2 A".</summary>
    public string MarginText => NumberFormat.Text(Margin) + (Demand.Unit.Symbol is "" or "°" ? Demand.Unit.Symbol : " " + Demand.Unit.Symbol);

    /// <summary>Whether the rule is met, rounding aside.</summary>
    public bool Holds => MarginSi >= -Rounding * Math.Max(Math.Abs(Demand.Si), Math.Abs(Limit.Si));

    /// <summary>What this check concludes.</summary>
    public Verdict Verdict => Holds ? Verdict.Holds : WhenBroken;
}

/// <summary>The result of a calculation, as data: it renders to terminal, HTML and PDF alike.</summary>
public sealed record Sheet(
    string Calculation,
    string Title,
    Verdict Verdict,
    ImmutableArray<Given> Given,
    ImmutableArray<SheetTable> Tables,
    ImmutableArray<Step> Steps,
    ImmutableArray<Check> Checks,
    ImmutableArray<string> CannotTell,
    ImmutableArray<string> Cautions,
    ImmutableArray<Source> Sources)
{
    /// <summary>The value of a step, or of a given line, by its symbol.</summary>
    /// <exception cref="KeyNotFoundException">The sheet has no such symbol.</exception>
    public Measure this[string symbol] => Find(symbol) ?? throw new KeyNotFoundException($"Sheet '{Calculation}' has no value '{symbol}'.");

    /// <summary>The value of a step, or of a given line, by its symbol; null when the sheet has none.</summary>
    public Measure? Find(string symbol)
    {
        foreach (var step in Steps)
        {
            if (step.Symbol == symbol)
            {
                return step.Value;
            }
        }

        return Given.FirstOrDefault(g => g.Symbol == symbol)?.Value.Number;
    }

    /// <summary>The same sheet with each given line's origin replaced where one is known.</summary>
    public Sheet WithOrigins(IReadOnlyDictionary<string, string> origins) =>
        this with { Given = [.. Given.Select(g => origins.TryGetValue(g.Symbol, out var origin) ? g with { Origin = origin } : g)] };

    /// <summary>A step's formula with the values of earlier lines in place of their symbols.</summary>
    public string Substituted(Step step) => Substitution.Of(this, step ?? throw new ArgumentNullException(nameof(step)));
}
