using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using Fairlead.Calculations;
using MiniExcelLibs;
using MiniExcelLibs.OpenXml;

namespace Fairlead.Documents.Tables;

/// <summary>Workbooks. Text is written as text, never as a formula; numbers as numbers.</summary>
public static partial class XlsxFile
{
    private static readonly DateTimeOffset Earliest = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Tables as a workbook, a tab each.</summary>
    public static byte[] Write(params IReadOnlyList<DataTable> tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        using var stream = new MemoryStream();
        stream.SaveAs(tables.ToDictionary(t => t.Name, t => (object)Rows(t), StringComparer.Ordinal), configuration: new OpenXmlConfiguration { AutoFilter = false, TableStyles = TableStyles.None });
        return Settled(stream);
    }

    // A workbook is a zip whose entries bear the time of writing, and its tabs are given random names inside: the same tables are to be the same bytes.
    private static byte[] Settled(MemoryStream stream)
    {
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            var names = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var entry in zip.Entries.OrderBy(e => e.FullName, StringComparer.Ordinal))
            {
                if (entry.FullName is "xl/workbook.xml" or "xl/_rels/workbook.xml.rels")
                {
                    Rewrite(entry, text => RandomName().Replace(text, m => names.TryGetValue(m.Value, out var known) ? known : names[m.Value] = string.Create(CultureInfo.InvariantCulture, $"T{names.Count + 1}")));
                }

                entry.LastWriteTime = Earliest;
            }
        }

        return stream.ToArray();
    }

    private static void Rewrite(ZipArchiveEntry entry, Func<string, string> edit)
    {
        using var content = entry.Open();
        using var reader = new StreamReader(content);
        var text = edit(reader.ReadToEnd());
        content.SetLength(0);
        content.Write(Encoding.UTF8.GetBytes(text));
    }

    [GeneratedRegex("R[0-9a-f]{32}", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex RandomName();

    /// <summary>The rows of the first tab as text, the first with the headings, each with its row.</summary>
    /// <exception cref="InvalidDataException">The file is no workbook.</exception>
    public static ImmutableArray<TextRow> Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        try
        {
            return [.. stream.Query(useHeaderRow: false).Select((row, i) => new TextRow(i + 1, ((IDictionary<string, object?>)row).Values.Select(Text).ToSequence()))];
        }
#pragma warning disable CA1031 // Whatever a damaged workbook makes the reader throw, the user is told that it is damaged.
        catch (Exception e) when (e is not OutOfMemoryException)
#pragma warning restore CA1031
        {
            throw new InvalidDataException($"This is no workbook that can be read: {e.Message}", e);
        }
    }

    private static List<Dictionary<string, object?>> Rows(DataTable table) =>
        [.. table.Rows.Select(row => table.Headings.Zip(row).ToDictionary(x => x.First, x => x.Second.Number ?? (object?)x.Second.Text, StringComparer.Ordinal))];

    private static string Text(object? value) => value switch
    {
        null => "",
        DateTime day => day.ToString(day.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
