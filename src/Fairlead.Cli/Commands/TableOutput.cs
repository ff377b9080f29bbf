using Fairlead.Documents.Tables;

namespace Fairlead.Cli.Commands;

/// <summary>Tables that go to a file: comma-separated values or a workbook, by the ending of its name.</summary>
internal static class TableOutput
{
    /// <summary>Writes tables to a file. Comma-separated values hold the first table alone.</summary>
    /// <exception cref="BadInputException">The name ends neither in .csv nor in .xlsx.</exception>
    public static void Write(Terminal terminal, string file, params IReadOnlyList<DataTable> tables) =>
        JobArguments.WriteFile(terminal, file, DataFile.Write(Path.GetExtension(file), tables)?.Bytes ?? throw new BadInputException($"'{file}' ends neither in .csv nor in .xlsx."));
}
