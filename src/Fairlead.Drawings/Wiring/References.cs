using Fairlead.Calculations;

namespace Fairlead.Drawings.Wiring;

/// <summary>Says at each place where an item is drawn where else it is drawn, as sheet and zone: "see 4/B3". Where things stand is known once they have been
/// drawn, so the sheets are drawn twice: first to note the places, then with the references to them.</summary>
/// <param name="before">The places noted in the first drawing; null while it is made.</param>
internal sealed class References(References? before = null)
{
    private readonly List<(string Item, int Sheet, Point At, bool Middle)> places = [];
    private readonly ILookup<string, (string Item, int Sheet, Point At, bool Middle)>? known = before?.places.ToLookup(p => p.Item, StringComparer.Ordinal);

    /// <summary>Notes that an item stands here, and gives the reference to its other places: where it is the middle first, then sheet by sheet, as many as there is room for.</summary>
    public string At(string item, int sheet, Point at, bool middle, double room)
    {
        places.Add((item, sheet, at, middle));
        if (known is null)
        {
            return "";
        }

        string[] others = [.. known[item].Where(p => p.Sheet != sheet || p.At != at).OrderByDescending(p => p.Middle).ThenBy(p => p.Sheet).Select(p => $"{NumberFormat.Text(p.Sheet)}/{DrawingFrame.Zone(p.At)}").Distinct()];
        for (var shown = others.Length; shown > 0; shown--)
        {
            var more = shown == others.Length ? "" : $" +{NumberFormat.Text(others.Length - shown)}";
            var words = $"see {string.Join(", ", others.Take(shown))}{more}";
            if (TextMeasure.Width(words, Lettering.Small) <= room || shown == 1)
            {
                return words;
            }
        }

        return "";
    }
}
