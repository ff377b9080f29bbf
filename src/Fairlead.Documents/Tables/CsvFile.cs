using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Model.Reading;
using Sylvan.Data.Csv;

namespace Fairlead.Documents.Tables;

/// <summary>Comma-separated values as in RFC 4180: UTF-8 with a mark, commas, CRLF. A text that a spreadsheet would take for a formula gets an apostrophe before it,
/// which reading takes off again.</summary>
public static class CsvFile
{
    private const string Starts = "=+-@\t\r\n'";
    private static readonly SearchValues<char> Special = SearchValues.Create(",\"\r\n;\t");

    /// <summary>A table as a file.</summary>
    public static byte[] Write(DataTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var text = new StringBuilder("\uFEFF");
        Line(text, table.Headings.Select(h => (DataCell)h));
        foreach (var row in table.Rows)
        {
            Line(text, row);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>The rows of a file as text, the first with the headings, each with its line in the file.</summary>
    /// <exception cref="InvalidDataException">The file is not in this form.</exception>
    public static ImmutableArray<TextRow> Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var rows = ImmutableArray.CreateBuilder<TextRow>();
        var within = 0;
        try
        {
            using var text = new StreamReader(stream, StrictUtf8.Encoding);
            using var csv = CsvDataReader.Create(text, new CsvDataReaderOptions { HasHeaders = false, MaxBufferSize = 1 << 20 });
            while (csv.Read())
            {
                // The reader counts records; a cell with line breaks moves all records after it down.
                var cells = Enumerable.Range(0, csv.RowFieldCount).Select(csv.GetString).ToArray();
                rows.Add(new TextRow(csv.RowNumber + within, cells.Select(Plain).ToSequence()));
                within += cells.Sum(Breaks);
            }
        }
        catch (Exception e) when (e is CsvFormatException or CsvRecordTooLargeException or DecoderFallbackException)
        {
            throw new InvalidDataException($"This is no table of comma-separated values in UTF-8: {e.Message}", e);
        }

        return rows.ToImmutable();
    }

    /// <summary>A text made safe: a spreadsheet shows it and computes nothing.</summary>
    internal static string Safe(string text) => text.Length > 0 && Starts.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;

    internal static string Plain(string text) => text.Length > 1 && text[0] == '\'' && Starts.Contains(text[1], StringComparison.Ordinal) ? text[1..] : text;

    private static int Breaks(string cell) => cell.Replace("\r\n", "\n", StringComparison.Ordinal).Count(c => c is '\n' or '\r');

    private static void Line(StringBuilder text, IEnumerable<DataCell> cells) =>
        text.AppendJoin(',', cells.Select(c => Quoted(c.Number is { } n ? n.ToString("R", CultureInfo.InvariantCulture) : Safe(c.Text)))).Append("\r\n");

    private static string Quoted(string text) => text.AsSpan().ContainsAny(Special) ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}

/// <summary>A row of a table that was read.</summary>
/// <param name="Line">Its line or row in the file, from 1.</param>
/// <param name="Cells">Its cells as text.</param>
public sealed record TextRow(int Line, Sequence<string> Cells);
