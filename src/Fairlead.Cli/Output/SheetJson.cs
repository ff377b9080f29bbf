using Fairlead.Calculations;

namespace Fairlead.Cli.Output;

/// <summary>A sheet for other programs. What cannot be told stands among the cautions, before the others.</summary>
internal sealed record SheetJson(
    string Name, string Verdict, IReadOnlyDictionary<string, ValueJson> Values, IReadOnlyList<CheckJson> Checks, IReadOnlyList<string> Sources, IReadOnlyList<string> Cautions)
{
    public static SheetJson Of(Sheet sheet)
    {
        // A step may refine a given of the same symbol: the last word counts, as it does in the working.
        var values = new Dictionary<string, ValueJson>(StringComparer.Ordinal);
        foreach (var given in sheet.Given)
        {
            values[given.Symbol] = given.Value.Number is { } number ? ValueJson.Of(number) : new ValueJson(given.Value.Words ?? "", "");
        }

        foreach (var step in sheet.Steps)
        {
            values[step.Symbol] = ValueJson.Of(step.Value);
        }

        return new SheetJson(
            sheet.Calculation, Words.Kebab(sheet.Verdict.ToString()), values, [.. sheet.Checks.Select(CheckJson.Of)],
            [.. sheet.Sources.Select(s => s.ToString())], [.. sheet.CannotTell, .. sheet.Cautions]);
    }
}

/// <summary>A number with its unit, or words without one.</summary>
internal sealed record ValueJson(object Value, string Unit)
{
    public static ValueJson Of(Measure measure) => new(measure.Value, measure.Unit.Symbol);
}

/// <summary>A check; its margin is negative when it does not hold.</summary>
internal sealed record CheckJson(ValueJson Demand, ValueJson Limit, ValueJson Margin, string Rule, string Source)
{
    public static CheckJson Of(Check check) => new(
        ValueJson.Of(check.Demand), ValueJson.Of(check.Limit), new ValueJson(check.Margin, check.Demand.Unit.Symbol), check.Rule, check.Source.ToString());
}
