using System.CommandLine;
using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Documents.Tables;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead mark</c>: sleeves and labels to print.</summary>
internal static class MarkCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json");
        var output = JobArguments.Output("Write the sleeves and labels to this file, .csv or .xlsx, for the printer.");
        var codes = new Option<bool>("--qr") { Description = "Add a column with the text of a QR code for each: job, mark and both ends." };
        var command = new Command("mark", "List the marks of wires, and the sleeves and labels to print.") { folder, format, output, codes };
        command.SetAction(parsed =>
        {
            var directory = parsed.GetValue(folder)!;
            var assessment = JobArguments.Assess(terminal, directory);
            if (parsed.GetValue(output) is { } file)
            {
                TableOutput.Write(terminal, file, SupplyTables.Print(assessment.PrintLines, parsed.GetValue(codes) ? assessment.Job.Order.Number : null));
            }

            if (parsed.GetValue(format) == "json")
            {
                terminal.Out.WriteLine(Json.Text(SupplyJson.Of(assessment.PrintLines)));
            }
            else if (parsed.GetValue(output) is null)
            {
                Wrapping.Columns(terminal.Out, [.. assessment.PrintLines.Select(l => (IReadOnlyList<string>)[l.Text, $"{NumberFormat.Text(l.Copies)} x", l.Kind, l.For])], terminal.Width, 0);
            }

            return ExitCode.Holds;
        });
        return command;
    }
}
