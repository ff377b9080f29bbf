namespace Fairlead.Documents.Tables;

/// <summary>Data tables as a file: comma-separated values or a workbook, by the ending of its name.</summary>
public static class DataFile
{
    /// <summary>The file and its media type; null for any other ending. Comma-separated values hold the first table alone.</summary>
    /// <param name="ending">The ending with its point, in small or capital letters.</param>
    /// <param name="tables">The tables.</param>
    public static (byte[] Bytes, string Type)? Write(string ending, params IReadOnlyList<DataTable> tables)
    {
        ArgumentNullException.ThrowIfNull(ending);
        ArgumentNullException.ThrowIfNull(tables);
        return ending.ToUpperInvariant() switch
        {
            ".CSV" => (CsvFile.Write(tables[0]), "text/csv; charset=utf-8"),
            ".XLSX" => (XlsxFile.Write(tables), "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
            _ => null,
        };
    }
}
