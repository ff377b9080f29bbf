using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Fairlead.Calculations;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>Every calculation by itself, as its info describes it.</summary>
public static partial class Bench
{
    /// <summary>All calculations, by discipline.</summary>
    public static ImmutableArray<BenchView> All { get; } = [.. CalculationCatalog.All.Select(e => Of(e.Info))];

    /// <summary>Runs a calculation; null when there is none of that name.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="inputs">Texts by symbol; an input without text counts as left out.</param>
    public static BenchResult? Run(string name, IReadOnlyDictionary<string, string> inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (CalculationCatalog.Find(name) is not { } entry)
        {
            return null;
        }

        var sheet = entry.Run(inputs.Where(i => !string.IsNullOrWhiteSpace(i.Value)).ToDictionary(StringComparer.Ordinal), out var errors);
        return new BenchResult(
            sheet is null ? null : SheetView.Of("", sheet),
            [.. errors.Select(e => new BenchError(e.Symbol, string.Join("; ", new[] { e.Found.Length > 0 ? $"found '{e.Found}'" : "nothing is given", $"expected {e.Expected}", e.Fix }.Where(t => t.Length > 0))))]);
    }

    private static BenchView Of(CalculationInfo info)
    {
        var example = Argument().Matches(info.Example).ToDictionary(m => m.Groups["symbol"].Value, m => m.Groups["quoted"].Success ? m.Groups["quoted"].Value : m.Groups["plain"].Value, StringComparer.Ordinal);
        return new BenchView(
            info.Name, info.Title, info.Discipline.ToString(), info.Purpose, info.Example, [.. info.Sources.Select(s => s.ToString())],
            [.. info.Inputs.Select(i => new BenchInput(i.Symbol, Meaning(i), i.Choices.IsDefaultOrEmpty ? i.RangeText : string.Join(", ", i.Choices), i.Default, i.Optional, example.GetValueOrDefault(i.Symbol, "")))]);
    }

    private static string Meaning(InputInfo input) => input.Form != InputForm.Table ? input.Meaning
        : $"{input.Meaning}: rows with ';' between, each of {string.Join(", ", input.Columns.Select(c => c.Meaning))}";

    [GeneratedRegex("(?<symbol>[A-Za-z0-9_]+)=(?:\"(?<quoted>[^\"]*)\"|'(?<quoted>[^']*)'|(?<plain>\\S+))", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Argument();
}
