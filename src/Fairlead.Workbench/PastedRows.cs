using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Model.Editing;

namespace Fairlead.Workbench;

/// <summary>Rows copied from a spreadsheet: cells with tabs between, the names of the columns in the first row.</summary>
public static class PastedRows
{
    /// <summary>The edits that take rows over into a catalogue, or why they cannot be. A row whose id stands already changes that entry; an empty cell leaves its value alone.
    /// To a list, whose rows have no id, they are added.</summary>
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

        string[] names = [.. grid.Columns.Concat(grid.More).Select(c => c.Path)];
        var id = grid.Numbered ? -1 : Array.IndexOf(rows[0], "id");
        var unknown = rows[0].Where((n, i) => i != id && !names.Contains(n, StringComparer.Ordinal)).ToArray();
        if ((id < 0 && !grid.Numbered) || unknown.Length > 0)
        {
            return ([], id < 0 && !grid.Numbered ? "No column is named 'id'." : $"There is no column {string.Join(", ", unknown.Select(u => $"'{u}'"))}. Columns are: {string.Join(", ", grid.Numbered ? names : names.Prepend("id"))}.");
        }

        if (rows.Skip(1).Select((r, i) => (r, Line: i + 2)).FirstOrDefault(x => x.r.Length <= id || (id >= 0 && x.r[id].Length == 0) || x.r.Length > rows[0].Length) is { r: not null } bad)
        {
            return ([], $"Row {Calculations.NumberFormat.Text(bad.Line)} has {(id < 0 ? "" : "no id, or ")}more cells than there are names.");
        }

        var known = grid.Rows.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        return ([.. rows.Skip(1).SelectMany((r, i) => Edits(grid, rows[0], r, id, id < 0 ? (grid.Rows.Length + i).ToString(CultureInfo.InvariantCulture) : r[id], known))], "");
    }

    private static IEnumerable<JobEdit> Edits(FormGrid grid, string[] names, string[] row, int idAt, string id, HashSet<string> known)
    {
        if (known.Add(id))
        {
            yield return new JobEdit(EditKind.Add, grid.Path, grid.Numbered ? "" : id);
        }

        for (var i = 0; i < row.Length; i++)
        {
            if (i != idAt && row[i].Length > 0)
            {
                yield return new JobEdit(EditKind.Set, $"{grid.Path}/{id}/{names[i]}", row[i]);
            }
        }
    }
}
