namespace Fairlead.Cli.Output;

/// <summary>Breaks text into lines, and lays rows out in columns.</summary>
internal static class Wrapping
{
    private const int Gap = 2;

    /// <summary>Writes text with every line indented and none wider than the width, save where one word is.</summary>
    public static void Write(TextWriter to, string text, int width, int indent)
    {
        foreach (var line in Lines(text, width - indent))
        {
            to.WriteLine((new string(' ', indent) + line).TrimEnd());
        }
    }

    /// <summary>Writes rows in columns as wide as their widest cell; the last column is wrapped within itself.</summary>
    public static void Columns(TextWriter to, IReadOnlyList<IReadOnlyList<string>> rows, int width, int indent)
    {
        if (rows.Count == 0)
        {
            return;
        }

        var last = rows[0].Count - 1;
        var widths = Enumerable.Range(0, last).Select(c => rows.Max(r => r[c].Length)).ToArray();
        var before = indent + widths.Sum() + (Gap * last);
        foreach (var row in rows)
        {
            var head = new string(' ', indent) + string.Concat(widths.Select((w, c) => row[c].PadRight(w + Gap)));
            foreach (var line in Lines(row[last], Math.Max(20, width - before)))
            {
                to.WriteLine((head + line).TrimEnd());
                head = new string(' ', before);
            }
        }
    }

    /// <summary>Writes a table whose headings are broken within columns no wider than their cells need.</summary>
    public static void Table(TextWriter to, IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows, int indent)
    {
        var widths = headings.Select((h, c) => rows.Select(r => r[c].Length).Concat(h.Split(' ').Select(w => w.Length)).Max()).ToArray();
        var broken = headings.Select((h, c) => Lines(h, widths[c]).ToArray()).ToArray();
        var head = Enumerable.Range(0, broken.Max(b => b.Length)).Select(i => (IReadOnlyList<string>)[.. broken.Select(b => b.ElementAtOrDefault(i) ?? "")]);
        foreach (var row in head.Append([.. widths.Select(w => new string('-', w))]).Concat(rows))
        {
            to.WriteLine((new string(' ', indent) + string.Concat(widths.Select((w, c) => row[c].PadRight(w + Gap)))).TrimEnd());
        }
    }

    private static IEnumerable<string> Lines(string text, int width) => text.Split('\n').SelectMany(line => Broken(line, width));

    private static IEnumerable<string> Broken(string text, int width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : line + " " + word;
            }
        }

        yield return line;
    }
}
