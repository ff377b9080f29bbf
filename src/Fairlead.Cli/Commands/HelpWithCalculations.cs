using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Fairlead.Cli.Commands;

/// <summary>The usual help, save that <c>calc NAME --help</c> tells about the calculation.</summary>
internal sealed class HelpWithCalculations : SynchronousCommandLineAction
{
    private readonly HelpAction usual;
    private readonly Terminal terminal;

    public HelpWithCalculations(HelpAction usual, Terminal terminal)
    {
        (this.usual, this.terminal) = (usual, terminal);
        usual.MaxWidth = terminal.Width;
    }

    public override int Invoke(ParseResult parseResult)
    {
        if (parseResult.CommandResult.Command.Name == CalcCommand.Word && parseResult.GetValue<string?>(CalcCommand.Name) is { } name)
        {
            CalcHelp.Write(terminal, CalcCommand.Find(name).Info);
            return ExitCode.Holds;
        }

        return usual.Invoke(parseResult);
    }
}
