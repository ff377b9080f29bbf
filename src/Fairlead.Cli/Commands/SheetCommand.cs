using System.CommandLine;
using Fairlead.Cli.Output;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead sheet</c>: the full working behind one result of a job.</summary>
internal static class SheetCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var subject = new Argument<string?>("SUBJECT") { Description = "What the sheet is about, for example circuit/C12/drop; all are listed when it is left out.", Arity = ArgumentArity.ZeroOrOne };
        var format = Formats.Option("text", "json");
        var command = new Command("sheet", "Print one sheet of a job with its full working, or list the sheets.") { folder, subject, format };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder)!, parsed.GetValue(subject), parsed.GetValue(format)!));
        return command;
    }

    private static int Run(Terminal terminal, string directory, string? subject, string format)
    {
        var assessment = JobArguments.Assess(terminal, directory);
        if (subject is null)
        {
            Wrapping.Columns(terminal.Out, [.. assessment.Sheets.Select(s => (string[])[s.Subject, VerdictWord.Of(s.Sheet.Verdict), s.Sheet.Title])], terminal.Width, 0);
            return ExitCode.Holds;
        }

        var sheet = assessment.Sheet(subject)
            ?? throw new BadInputException($"The job has no sheet '{subject}'.{Nearest.Hint(subject, assessment.Sheets.Select(s => s.Subject), $"'fairlead sheet {Terminal.Quoted(directory)}' lists them all.")}");
        if (format == "json")
        {
            terminal.Out.WriteLine(Json.Text(SheetJson.Of(sheet)));
        }
        else
        {
            SheetText.Write(terminal, sheet, $"{sheet.Title}, {subject}");
        }

        return ExitCode.Of(sheet.Verdict);
    }
}
