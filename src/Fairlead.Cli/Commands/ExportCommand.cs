using System.CommandLine;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead export</c>: a job folder, with its log, as one zip file.</summary>
internal static class ExportCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var output = JobArguments.Output("The zip file to write, outside the job folder.", required: true);
        var command = new Command("export", "Write a job folder, with its log, as one zip file.") { folder, output };
        command.SetAction(parsed =>
        {
            var (directory, file) = (parsed.GetValue(folder)!, parsed.GetValue(output)!);
            var files = JobArguments.Files(directory);
            JobArguments.RequireOutside(directory, file);
            using var store = LogPlace.FindIn(terminal, directory);
            JobArguments.WriteFile(terminal, file, terminal.Work("packing the job", () => JobArchive.Zip(files, store)));
            return ExitCode.Holds;
        });
        return command;
    }
}
