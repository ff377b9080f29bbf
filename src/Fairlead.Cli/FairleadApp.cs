using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using Fairlead.Cli.Commands;

namespace Fairlead.Cli;

/// <summary>The command line: what the process runs, and what tests run without one.</summary>
public static class FairleadApp
{
    /// <summary>Runs one command and returns its <see cref="ExitCode"/>. Nothing is thrown.</summary>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(terminal);
        try
        {
            return Invoke(args.Count == 0 ? ["--help"] : args, terminal);
        }
        catch (BadInputException e)
        {
            return Say(terminal, ExitCode.BadInput, e.Lines);
        }
        catch (OperationCanceledException)
        {
            return Say(terminal, ExitCode.Stopped, ["Stopped. Files are written whole or not at all."]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return Say(terminal, ExitCode.BadInput, [e.Message]);
        }
#pragma warning disable CA1031 // The last stop: whatever it is, the user gets a line and not a trace.
        catch (Exception e)
#pragma warning restore CA1031
        {
            return Say(terminal, ExitCode.Unexpected, [terminal.Trace ? e.ToString()
                : $"Something in Fairlead is broken ({e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")}). Run again with FAIRLEAD_DEBUG=1 and report what it prints."]);
        }
    }

    /// <summary>The names of all commands.</summary>
    public static IReadOnlyList<string> CommandNames => [.. Root(new Terminal(TextWriter.Null, TextWriter.Null)).Subcommands.Select(c => c.Name)];

    /// <summary>All commands.</summary>
    private static RootCommand Root(Terminal terminal)
    {
        var root = new RootCommand("The engineering of an avionics change, worked out, shown with its sources, and checked.")
        {
            DemoCommand.Create(terminal),
            NewCommand.Create(terminal),
            CheckCommand.Create(terminal),
            SheetCommand.Create(terminal),
            RouteCommand.Create(terminal),
            TestCommand.Create(terminal),
            ServeCommand.Create(terminal),
            PlanCommand.Create(terminal),
            CardCommand.Create(terminal),
            PackCommand.Create(terminal),
            KitCommand.Create(terminal),
            CutCommand.Create(terminal),
            MarkCommand.Create(terminal),
            StockCommand.Create(terminal),
            DrawCommand.Create(terminal),
            CalcCommand.Create(terminal),
            LogCommand.Create(terminal),
            ReleaseCommand.Create(terminal),
            HandoverCommand.Create(terminal),
            BackupCommand.Create(terminal),
            BackupCommand.Restore(terminal),
            SchemaCommand.Create(terminal),
            ExportCommand.Create(terminal),
            ImportCommand.Create(terminal),
        };
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithCalculations((HelpAction)help.Action!, terminal);
        root.Options.OfType<VersionOption>().Single().Action = new VersionLine(terminal);
        return root;
    }

    private static int Invoke(IReadOnlyList<string> args, Terminal terminal)
    {
        var root = Root(terminal);
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        var command = parsed.CommandResult.Command;
        if (command is RootCommand && parsed.Action is ParseErrorAction)
        {
            throw new BadInputException($"There is no command '{args[0]}'.{Nearest.Hint(args[0], root.Subcommands.Select(c => c.Name), "See 'fairlead --help'.")}");
        }

        List<string> wrong = [.. UnknownOptions(parsed)];
        if (parsed.Action is ParseErrorAction)
        {
            wrong.AddRange(parsed.Errors.Select(e => e.Message.ReplaceLineEndings(" ").Replace("\t", "", StringComparison.Ordinal)));
        }

        return wrong.Count > 0
            ? throw new BadInputException([.. wrong.Distinct(), $"See 'fairlead {command.Name} --help'."])
            : parsed.Invoke(new InvocationConfiguration { Output = terminal.Out, Error = terminal.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
    }

    // The parser takes a misspelt option for a value, and 'new --foramt' would write a folder of that name.
    private static IEnumerable<string> UnknownOptions(ParseResult parsed) => parsed.Tokens
        .TakeWhile(t => t.Type != TokenType.DoubleDash)
        .Where(t => t.Type == TokenType.Argument && t.Value.Length > 1 && t.Value[0] == '-')
        .Select(t => $"There is no option '{t.Value}'.{Nearest.Hint(t.Value, parsed.CommandResult.Command.Options.Select(o => o.Name), "A value that begins with '-' stands after '--'.")}");

    private static int Say(Terminal terminal, int code, IReadOnlyList<string> lines)
    {
        foreach (var line in lines)
        {
            terminal.Error.WriteLine(line);
        }

        return code;
    }

    private sealed class VersionLine(Terminal terminal) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            terminal.Out.WriteLine(Product.Version);
            return ExitCode.Holds;
        }
    }
}
