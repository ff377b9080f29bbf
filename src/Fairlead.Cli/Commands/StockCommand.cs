using System.CommandLine;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Documents.Tables;
using Fairlead.Model;
using Fairlead.Model.Storage;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead stock</c>: takes what is on hand from a table into the stock file of a job.</summary>
internal static class StockCommand
{
    private const string UsualName = "stock.yaml";

    public static Command Create(Terminal terminal)
    {
        var table = new Argument<string>("FILE") { Description = "The table, .csv or .xlsx, with headings in its first row: part, quantity, and where known unit, batch, made, expires, remnant." };
        var folder = JobArguments.Folder();
        var columns = new Option<string[]>("--column") { Description = "The heading of a column that is called otherwise, for example quantity=\"On shelf\".", HelpName = "NAME=HEADING", AllowMultipleArgumentsPerToken = false };
        var replace = new Option<bool>("--replace") { Description = "Replace the reels and lots of the stock file that is there; the rest of it is kept." };
        var command = new Command("stock", "Take what is on hand from a table into the stock file of a job.") { table, folder, columns, replace };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(table)!, parsed.GetValue(folder)!, parsed.GetValue(columns) ?? [], parsed.GetValue(replace)));
        return command;
    }

    private static int Run(Terminal terminal, string table, string directory, string[] columns, bool replace)
    {
        var read = JobArguments.Load(terminal, directory);
        var job = read.Job ?? throw new BadInputException([.. ProblemText.Lines(directory, read.Problems)]);
        var name = job.Order.Files.Stock ?? UsualName;
        var target = Path.Combine(directory, name);
        if (File.Exists(target) && !replace)
        {
            throw new BadInputException($"'{target}' is there already; --replace puts the rows of the table in place of its reels and lots.");
        }

        var rows = StockImport.Read(Rows(table), table, Headings(columns), job.Parts);
        if (!rows.Problems.IsEmpty)
        {
            throw new BadInputException([.. rows.Problems.Select(p => p.ToString())]);
        }

        SafeWrite.Bytes(target, Encoding.UTF8.GetBytes(StockText.Write((job.Stock ?? new Stock()) with { Reels = rows.Reels, Lots = rows.Lots })));
        terminal.Error.WriteLine($"wrote {target}");
        terminal.Print($"{Counted.Of(rows.Reels.Count, "reel")} and {Counted.Of(rows.Lots.Count, "lot")} taken over.");
        if (!rows.Strange.IsEmpty)
        {
            terminal.Print($"Left out, as the parts catalogue does not have them: {string.Join(", ", rows.Strange.Take(20))}{(rows.Strange.Length > 20 ? ", ..." : "")}.");
        }

        if (!rows.Twice.IsEmpty)
        {
            terminal.Print($"The same as a row before, and counted as more of it: {string.Join(", ", rows.Twice.Take(20).Select(t => $"row {NumberFormat.Text(t.Again)} (as {NumberFormat.Text(t.First)})"))}{(rows.Twice.Length > 20 ? ", ..." : "")}. Take out what stands there by mistake.");
        }

        if (job.Order.Files.Stock is null)
        {
            terminal.Print($"Write 'stock: {UsualName}' under 'files' in job.yaml, and kit and check will use it.");
        }

        return ExitCode.Holds;
    }

    private static System.Collections.Immutable.ImmutableArray<TextRow> Rows(string table)
    {
        if (!File.Exists(table))
        {
            throw new BadInputException($"There is no file '{table}'.");
        }

        using var stream = File.OpenRead(table);
        return Path.GetExtension(table).ToUpperInvariant() switch
        {
            ".CSV" => CsvFile.Read(stream),
            ".XLSX" => XlsxFile.Read(stream),
            _ => throw new BadInputException($"'{table}' ends neither in .csv nor in .xlsx."),
        };
    }

    private static Dictionary<string, string> Headings(string[] columns)
    {
        var headings = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var column in columns)
        {
            var sign = column.IndexOf('=', StringComparison.Ordinal);
            if (sign <= 0 || !StockImport.Columns.Contains(column[..sign]))
            {
                throw new BadInputException($"--column: found '{column}', expected NAME=HEADING with one of {string.Join(", ", StockImport.Columns)}.");
            }

            headings[column[..sign]] = column[(sign + 1)..];
        }

        return headings;
    }
}
