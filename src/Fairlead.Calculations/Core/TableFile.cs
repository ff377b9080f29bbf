using System.Collections.Immutable;
using System.Text.Json;

namespace Fairlead.Calculations;

/// <summary>A table or curve of a standard, kept as a data file with document, edition, table and basis: so a correction is a change of data.
/// A row may carry a basis of its own in a column named "basis".</summary>
public sealed class TableFile
{
    private TableFile(Source source, string notes, ImmutableArray<string> columns, ImmutableArray<ImmutableArray<double?>> rows, ImmutableArray<Basis> bases)
    {
        Source = source;
        Notes = notes;
        Columns = columns;
        Rows = rows;
        Bases = bases;
    }

    /// <summary>Document, edition, table and basis of the whole.</summary>
    public Source Source { get; }

    /// <summary>Conditions and known defects, in words.</summary>
    public string Notes { get; }

    /// <summary>Column names, each with its unit.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>The numbers; null where the document prints none.</summary>
    public ImmutableArray<ImmutableArray<double?>> Rows { get; }

    /// <summary>The basis of each row.</summary>
    public ImmutableArray<Basis> Bases { get; }

    /// <summary>The source of one row.</summary>
    public Source SourceOf(int row) => Bases[row] == Source.Basis ? Source : Source with { Basis = Bases[row] };

    /// <summary>The source of a value between two rows: no better than the weaker of them.</summary>
    public Source Between(int row, int otherRow) => Bases[row] == Basis.Read ? SourceOf(otherRow) : SourceOf(row);

    /// <summary>The first row whose cell in a column is a number; null when there is none.</summary>
    public int? RowWhere(string column, double value)
    {
        var index = Column(column);
        for (var row = 0; row < Rows.Length; row++)
        {
            if (Rows[row][index] == value)
            {
                return row;
            }
        }

        return null;
    }

    /// <summary>The index of a column.</summary>
    /// <exception cref="ArgumentException">No such column.</exception>
    public int Column(string name) => Columns.IndexOf(name) is >= 0 and var index ? index
        : throw new ArgumentException($"Table '{Source.Paragraph}' has no column '{name}'; it has {string.Join(", ", Columns)}.", nameof(name));

    /// <summary>Loads a table that is embedded in this assembly.</summary>
    /// <exception cref="InvalidOperationException">There is no such table, or it is malformed.</exception>
    public static TableFile Load(string name)
    {
        using var stream = typeof(TableFile).Assembly.GetManifestResourceStream($"Fairlead.Calculations.Tables.{name}.json")
            ?? throw new InvalidOperationException($"There is no table '{name}'.");
        using var json = JsonDocument.Parse(stream);
        var root = json.RootElement;
        var source = new Source(Text(root, "document"), Text(root, "edition"), Text(root, "table"), Enum.Parse<Basis>(Text(root, "basis")));
        ImmutableArray<string> columns = [.. root.GetProperty("columns").EnumerateArray().Select(c => c.GetString()!)];
        var rows = root.GetProperty("rows").EnumerateArray().Select(r => r.EnumerateArray().ToArray()).ToArray();
        return new TableFile(
            source, Text(root, "notes"), columns,
            [.. rows.Select(r => ImmutableArray.CreateRange(r.Take(columns.Length).Select(v => v.ValueKind == JsonValueKind.Number ? v.GetDouble() : (double?)null)))],
            [.. rows.Select(r => r.Length > columns.Length ? Enum.Parse<Basis>(r[columns.Length].GetString()!) : source.Basis)]);
    }

    private static string Text(JsonElement root, string name) => root.GetProperty(name).GetString()!;
}
