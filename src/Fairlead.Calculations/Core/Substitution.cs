using System.Text.RegularExpressions;

namespace Fairlead.Calculations;

/// <summary>Puts numbers in place of symbols, so that the numbers shown are always those the formula names.</summary>
internal static partial class Substitution
{
    public static string Of(Sheet sheet, Step step) => Symbol().Replace(step.Formula, match =>
    {
        var value = Earlier(sheet, step, match.Value);
        return value is null ? match.Value : value.Value.Value < 0 ? $"({value})" : value.Value.ToString();
    });

    private static Measure? Earlier(Sheet sheet, Step step, string symbol)
    {
        Measure? found = sheet.Given.FirstOrDefault(g => g.Symbol == symbol)?.Value.Number;
        foreach (var earlier in sheet.Steps)
        {
            if (ReferenceEquals(earlier, step))
            {
                break;
            }

            found = earlier.Symbol == symbol ? earlier.Value : found;
        }

        return found;
    }

    [GeneratedRegex("[A-Za-z][A-Za-z0-9_]*", RegexOptions.CultureInvariant, 200)]
    private static partial Regex Symbol();
}
