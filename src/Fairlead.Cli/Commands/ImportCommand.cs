using System.CommandLine;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead import</c>: a job folder out of a zip file.</summary>
internal static class ImportCommand
{
    public static Command Create(Terminal terminal)
    {
        var zip = new Argument<string>("FILE.zip") { Description = "A zip file that 'fairlead export' wrote." };
        var folder = NewFolder.Argument();
        var command = new Command("import", "Unpack an exported job into a new folder.") { zip, folder };
        command.SetAction(parsed =>
        {
            var (file, directory) = (parsed.GetValue(zip)!, parsed.GetValue(folder)!);
            Unpacking.Run(terminal, file, directory);
            return ExitCode.Holds;
        });
        return command;
    }
}
