using System.Collections.Immutable;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>Antennas against each other: what each hears of each other one.</summary>
/// <param name="Hearing">Antennas that hear: the rows.</param>
/// <param name="Sending">Antennas that send: the columns.</param>
/// <param name="Cells">The sheet of each pair that has one.</param>
public sealed record PairMatrix(ImmutableArray<string> Hearing, ImmutableArray<string> Sending, IReadOnlyDictionary<(string Hearing, string Sending), SheetLine> Cells)
{
    private const string From = "from-";

    /// <summary>The matrix of the sheets of pairs: <c>antenna/HEARS/from-SENDS</c>.</summary>
    public static PairMatrix Of(IEnumerable<SheetLine> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        var pairs = sheets.Select(s => (Words: s.Subject.Split('/'), Sheet: s)).Where(s => s.Words is ["antenna", _, var last] && last.StartsWith(From, StringComparison.Ordinal))
            .Select(s => (Hears: s.Words[1], Sends: s.Words[2][From.Length..], s.Sheet)).ToArray();
        return new PairMatrix(
            [.. pairs.Select(p => p.Hears).Distinct().Order(StringComparer.Ordinal)], [.. pairs.Select(p => p.Sends).Distinct().Order(StringComparer.Ordinal)],
            pairs.DistinctBy(p => (p.Hears, p.Sends)).ToDictionary(p => (p.Hears, p.Sends), p => p.Sheet));
    }
}
