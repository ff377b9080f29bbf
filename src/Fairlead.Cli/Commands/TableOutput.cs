using Fairlead.Documents.Tables;

namespace Fairlead.Cli.Commands;

/// <summary>Tables that go to a file: comma-separated values or a workbook, by the ending of its name.</summary>
internal static class TableOutput
{
    /// <summary>Writes tables to a file. Comma-separated values hold the first table alone.</summary>
    /// <exception cref="BadInputException">The name ends neither in .csv nor in .xlsx.</exception>
    public static void Write(Terminal terminal, string file, params IReadOnlyList<DataTable> tables) => JobArguments.WriteFile(terminal, file, Path.GetExtension(file).ToUpperInvariant() switch
    {
        ".CSV" => CsvFile.Write(tables[0]),
        ".XLSX" => XlsxFile.Write(tables),
        _ => throw new BadInputException($"'{file}' ends neither in .csv nor in .xlsx."),
    });
}
