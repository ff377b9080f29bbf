using System.Collections.Immutable;
using Fairlead.Model.Editing;

namespace Fairlead.Workbench;

/// <summary>Rows copied from a spreadsheet: cells with tabs between, the names of the columns in the first row.</summary>
public static class PastedRows
{
    /// <summary>The edits that take rows over into a catalogue, or why they cannot be. A row whose id stands already changes that entry; an empty cell leaves its value alone.</summary>
    /// <param name="grid">The catalogue.</param>
    /// <param name="text">What was pasted.</param>
    public static (ImmutableArray<JobEdit> Edits, string Refused) Read(FormGrid grid, string text)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(text);
        string[][] rows = [.. text.Split('\n').Select(l => l.TrimEnd('\r')).Where(l => l.Trim().Length > 0).Select(l => l.Split('\t').Select(c => c.Trim()).ToArray())];
        if (rows.Length < 2)
        {
            return ([], "There is a row of names and at least one row of values to paste.");
        }

        var id = Array.IndexOf(rows[0], "id");
        var unknown = rows[0].Where(n => n != "id" && grid.Columns.All(c => c.Path != n)).ToArray();
        if (id < 0 || unknown.Length > 0)
        {
            return ([], id < 0 ? "No column is named 'id'." : $"There is no column {string.Join(", ", unknown.Select(u => $"'{u}'"))}. Columns are: id, {string.Join(", ", grid.Columns.Select(c => c.Path))}.");
        }

        if (rows.Skip(1).Select((r, i) => (r, Line: i + 2)).FirstOrDefault(x => x.r.Length <= id || x.r[id].Length == 0 || x.r.Length > rows[0].Length) is { r: not null } bad)
        {
            return ([], $"Row {Calculations.NumberFormat.Text(bad.Line)} has no id, or more cells than there are names.");
        }

        var known = grid.Rows.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        return ([.. rows.Skip(1).SelectMany(r => Edits(grid.Path, rows[0], r, id, known))], "");
    }

    private static IEnumerable<JobEdit> Edits(string catalog, string[] names, string[] row, int id, HashSet<string> known)
    {
        if (known.Add(row[id]))
        {
            yield return new JobEdit(EditKind.Add, catalog, row[id]);
        }

        for (var i = 0; i < row.Length; i++)
        {
            if (i != id && row[i].Length > 0)
            {
                yield return new JobEdit(EditKind.Set, $"{catalog}/{row[id]}/{names[i]}", row[i]);
            }
        }
    }
}
