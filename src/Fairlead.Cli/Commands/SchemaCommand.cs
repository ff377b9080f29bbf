using System.CommandLine;
using System.Text;
using Fairlead.Model;
using Fairlead.Model.Storage;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead schema</c>: JSON Schemas of the job files.</summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var output = new Option<string>("--output", "-o") { Description = "The folder to write them to.", DefaultValueFactory = _ => "schemas", HelpName = "DIR" };
        var command = new Command("schema", "Write JSON Schemas of the job files, for your editor.") { output };
        command.SetAction(parsed =>
        {
            var directory = parsed.GetValue(output)!;
            if (File.Exists(directory))
            {
                throw new BadInputException($"'{directory}' is a file; name a folder.");
            }

            foreach (var (name, text) in Schemas.Write())
            {
                SafeWrite.Bytes(Path.Combine(directory, name), Encoding.UTF8.GetBytes(text));
                terminal.Out.WriteLine($"wrote {Path.Combine(directory, name)}");
            }

            return ExitCode.Holds;
        });
        return command;
    }
}
