using System.CommandLine;
using Fairlead.Model.Storage;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead new</c>: a small complete job to begin with.</summary>
internal static class NewCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = NewFolder.Argument();
        var command = new Command("new", "Write a small commented job to begin with.") { folder };
        command.SetAction(parsed =>
        {
            var directory = parsed.GetValue(folder)!;
            NewFolder.Require(directory);
            Starter.Write(directory);
            terminal.Out.WriteLine($"wrote {directory}");
            terminal.Print($"Change its files to your job; '{terminal.Command} check {Terminal.Quoted(directory)}' tells what is open. All its data is invented.");
            return ExitCode.Holds;
        });
        return command;
    }
}
