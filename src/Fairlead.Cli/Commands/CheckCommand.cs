using System.CommandLine;
using System.Text;
using Fairlead.Cli.Output;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead check</c>: assesses a job and lists what needs a person.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json", "sarif");
        var output = JobArguments.Output("Write the result to this file instead of the terminal.");
        var command = new Command("check", "Check a job and list the findings, most serious first.") { folder, format, output };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder)!, parsed.GetValue(format)!, parsed.GetValue(output)));
        return command;
    }

    /// <summary>Checks a job; the exit code is that of its verdict.</summary>
    public static int Run(Terminal terminal, string directory, string format, string? output)
    {
        if (output is null)
        {
            return Run(terminal, directory, format);
        }

        JobArguments.RequireOutput(output);
        using var text = new StringWriter { NewLine = "\n" };
        try
        {
            return Run(terminal with { Out = text, Colour = false }, directory, format);
        }
        finally
        {
            // Problems in the job's files are a result too, in every form but plain text, where they are said as errors.
            if (text.GetStringBuilder().Length > 0)
            {
                JobArguments.WriteFile(terminal, output, Encoding.UTF8.GetBytes(text.ToString()));
            }
        }
    }

    private static int Run(Terminal terminal, string directory, string format)
    {
        var read = JobArguments.Load(terminal, directory);
        var assessment = read.Job is null ? null : JobArguments.Assess(terminal, directory, read);
        if (format == "sarif")
        {
            terminal.Out.Write(SarifLog.Text(read, assessment));
        }
        else if (format == "json")
        {
            terminal.Out.Write(Json.Text(ReportJson.Of(read, assessment)) + "\n");
        }
        else if (assessment is not null)
        {
            FindingText.Write(terminal, directory, assessment, read.Sources);
        }

        return assessment is null ? throw new BadInputException([.. ProblemText.Lines(directory, read.Problems)]) : ExitCode.Of(assessment.Verdict);
    }
}
