namespace Fairlead.Documents;

/// <summary>Breaks text into lines that fit a width.</summary>
internal static class TextWrap
{
    /// <summary>The lines of a text; line breaks in it are kept. A word wider than the line is broken inside.</summary>
    public static List<string> Lines(string text, double size, bool bold, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var longer = line.Length == 0 ? word : line + " " + word;
                if (Typesetting.Width(longer, size, bold) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = Broken(word, size, bold, width, lines);
            }

            lines.Add(line);
        }

        return lines;
    }

    /// <summary>The width of the widest word of a text.</summary>
    public static double WidestWord(string text, double size, bool bold) =>
        text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries).Select(w => Typesetting.Width(w, size, bold)).DefaultIfEmpty(0).Max();

    // Adds the full lines of an overlong word and returns its rest.
    private static string Broken(string word, double size, bool bold, double width, List<string> lines)
    {
        while (Typesetting.Width(word, size, bold) > width)
        {
            var kept = Math.Max(1, word.Length - 1);
            while (kept > 1 && Typesetting.Width(word[..kept], size, bold) > width)
            {
                kept--;
            }

            // A pair of surrogates is one character.
            kept += kept < word.Length && char.IsLowSurrogate(word[kept]) ? 1 : 0;
            if (kept == word.Length)
            {
                break;
            }

            lines.Add(word[..kept]);
            word = word[kept..];
        }

        return word;
    }
}
