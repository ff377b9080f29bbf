using System.Globalization;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>Text that reads on a screen and on paper as it was entered: no characters that move the cursor, break the line or turn the direction of what
/// follows, with which one entry could be made to look like another.</summary>
public static class PlainText
{
    /// <summary>The text with every such character written out, as <c>\u001B</c>, so that it stands on one line whatever it holds.</summary>
    public static string Shown(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Any(Moves) ? string.Concat(text.Select(c => Moves(c) ? Code(c) : c.ToString())) : text;
    }

    /// <summary>Why the texts of an entry are not taken.</summary>
    internal static IEnumerable<string> Faults(Entry entry)
    {
        foreach (var (name, text) in entry.Payload.Names.Select(n => (n, entry.Payload.Text(n))).Append(("subject", entry.Subject)))
        {
            if (text.Length > Limits.TextLength)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"'{name}' has {text.Length} characters; an entry takes {Limits.TextLength}.");
            }

            if (text.Any(Moves))
            {
                yield return $"'{name}' holds {Code(text.First(Moves))}, which does not show as it is: leave it out, and write it on one line.";
            }
        }
    }

    // Control characters, line and paragraph separators, and what embeds, overrides or isolates a direction; letters of every script, marks and emoji stay.
    private static bool Moves(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private static string Code(char c) => "\\u" + ((int)c).ToString("X4", CultureInfo.InvariantCulture);
}
