using System.Collections.Immutable;
using System.Text;
using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>Reads results from a table: first row <c>card,line,value,unit,instrument,by,outside</c> in any order, fields in quotation marks where they hold commas (RFC 4180).</summary>
public static class ResultFile
{
    private static readonly string[] Columns = ["card", "line", "value", "unit", "instrument", "by", "outside"];

    /// <summary>The results; what is wrong with the table is told all at once.</summary>
    public static ImmutableArray<TestResult> Read(string text, ICollection<string> problems)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(problems);
        var rows = Rows(text).ToArray();
        var head = rows.FirstOrDefault().Fields ?? [];
        var names = head.Select(h => h.Trim().ToLowerInvariant()).ToArray();
        foreach (var name in names.Where(n => !Columns.Contains(n)))
        {
            problems.Add($"row 1: there is no column '{name}'; the columns are {string.Join(", ", Columns)}");
        }

        foreach (var name in Columns.Take(3).Except(names))
        {
            problems.Add($"row 1: the column '{name}' is missing");
        }

        foreach (var (row, fields) in rows.Skip(1).Where(r => r.Fields.Length != names.Length))
        {
            problems.Add($"row {NumberFormat.Text(row)}: {NumberFormat.Text(fields.Length)} fields where {NumberFormat.Text(names.Length)} are expected");
        }

        return problems.Count > 0 ? [] : [.. rows.Skip(1).Select(r =>
        {
            string Of(string column) => Array.IndexOf(names, column) is >= 0 and var at ? r.Fields[at].Trim() : "";
            return new TestResult(r.Row, Of("card"), Of("line"), Of("value"), Of("unit"), Of("instrument"), Of("by"), Of("outside"));
        })];
    }

    private static IEnumerable<(int Row, string[] Fields)> Rows(string text)
    {
        var (row, start, quoted) = (1, 1, false);
        var (fields, field) = (new List<string>(), new StringBuilder());
        foreach (var c in text.ReplaceLineEndings("\n").TrimStart('\uFEFF').TrimEnd('\n') + "\n")
        {
            if (c == '"')
            {
                // Two marks within a quoted field are one: the second opens the field again.
                if (!quoted && field.Length > 0)
                {
                    field.Append(c);
                }

                quoted = !quoted;
            }
            else if (quoted || (c != ',' && c != '\n'))
            {
                field.Append(c);
            }
            else
            {
                fields.Add(field.ToString());
                field.Clear();
            }

            row += c == '\n' ? 1 : 0;
            if (c == '\n' && !quoted)
            {
                if (fields.Count > 1 || fields[0].Length > 0)
                {
                    yield return (start, [.. fields]);
                }

                fields.Clear();
                start = row;
            }
        }

        if (quoted)
        {
            yield return (start, [.. fields, field.ToString()]);
        }
    }
}
