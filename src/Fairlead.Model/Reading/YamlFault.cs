using YamlDotNet.Core;

namespace Fairlead.Model.Reading;

/// <summary>Words what the parser cannot read as somebody who writes the file would see it.</summary>
internal static class YamlFault
{
    /// <summary>The place of a mark.</summary>
    public static Location Place(string file, Mark mark) => new(file, (int)Math.Max(1, mark.Line), (int)Math.Max(1, mark.Column));

    public static void Report(string file, string text, YamlException exception, ProblemList problems)
    {
        var message = (exception.InnerException?.Message ?? exception.Message).Split('\n')[0].TrimEnd('.', ' ');
        if (Tab(file, text, message.Contains("tab", StringComparison.Ordinal) ? long.MaxValue : exception.End.Line) is { } tab)
        {
            problems.Add("tab", tab, "the line is indented with a tab", expected: "spaces", fix: "put spaces in place of the tab");
            return;
        }

        var (what, fix) = message switch
        {
            _ when message.Contains("quoted scalar", StringComparison.Ordinal) && (message.Contains("end of stream", StringComparison.Ordinal) || message.Contains("indentation", StringComparison.Ordinal)) =>
                ("a quotation mark is not closed", "put the closing quotation mark"),
            _ when message.Contains("invalid mapping", StringComparison.Ordinal) => ("a ':' stands within a value, or the line before lacks its ':'", "put the value in quotation marks, or end the key before it with ':'"),
            _ => (message.Replace("  ", " ", StringComparison.Ordinal), ""),
        };
        problems.Add("syntax", Place(file, exception.Start), "the file cannot be read as YAML: " + what, fix: fix);
    }

    // The parser reports a tab where it stumbles, which may be a line later, and in words that do not name it.
    private static Location? Tab(string file, string text, long lastLine)
    {
        var number = 0;
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            var indent = line[..^line.TrimStart(" \t").Length];
            var tab = indent.IndexOf('\t');
            if (++number > lastLine)
            {
                return null;
            }

            if (tab >= 0 && indent.Length < line.Length && line[indent.Length] != '#')
            {
                return new Location(file, number, tab + 1);
            }
        }

        return null;
    }
}
