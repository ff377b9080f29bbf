using System.CommandLine;
using Fairlead.Calculations;
using Fairlead.Cli.Output;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead calc</c>: the calculations, one at a time, from the values on the command line.</summary>
internal static class CalcCommand
{
    public const string Word = "calc";
    public const string Name = "NAME";

    public static Command Create(Terminal terminal)
    {
        var name = new Argument<string?>(Name) { Description = "The calculation; all are listed when it is left out.", Arity = ArgumentArity.ZeroOrOne };
        var inputs = new Argument<string[]>("symbol=value") { Description = "Its inputs, with units: I='20 A'.", Arity = ArgumentArity.ZeroOrMore };
        var format = Formats.Option("text", "json");
        var command = new Command(Word, "Work one calculation and show it all, or list them.") { name, inputs, format };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(name) is not { } wanted)
            {
                CalcHelp.List(terminal);
                return ExitCode.Holds;
            }

            return Run(terminal, Find(wanted), parsed.GetValue(inputs)!, parsed.GetValue(format)!);
        });
        return command;
    }

    /// <summary>The calculation of a name.</summary>
    /// <exception cref="BadInputException">There is none; the message has the nearest names.</exception>
    public static CalculationEntry Find(string name) => CalculationCatalog.Find(name)
        ?? throw new BadInputException($"There is no calculation '{name}'.{Nearest.Hint(name, CalculationCatalog.All.Select(e => e.Info.Name), "'fairlead calc' lists them all.")}");

    private static int Run(Terminal terminal, CalculationEntry entry, string[] texts, string format)
    {
        var wrong = new List<string>();
        var arguments = Arguments(texts, wrong);
        var sheet = entry.Run(arguments, out var errors);
        wrong.AddRange(errors.Select(e => $"{e.Symbol}: found {(e.Found == "nothing" ? e.Found : $"'{e.Found}'")}, expected {e.Expected}{(e.Fix.Length > 0 ? "; " + e.Fix : "")}"));
        if (sheet is null || wrong.Count > 0)
        {
            throw new BadInputException([.. wrong, $"See 'fairlead calc {entry.Info.Name} --help'."]);
        }

        if (format == "json")
        {
            terminal.Out.WriteLine(Json.Text(SheetJson.Of(sheet)));
        }
        else
        {
            SheetText.Write(terminal, sheet);
        }

        return ExitCode.Of(sheet.Verdict);
    }

    private static Dictionary<string, string> Arguments(string[] texts, List<string> wrong)
    {
        var arguments = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var text in texts)
        {
            var at = text.IndexOf('=', StringComparison.Ordinal);
            if (at < 1)
            {
                wrong.Add($"'{text}': expected symbol=value; a value with a space stands in quotes, as in I='20 A'");
            }
            else if (!arguments.TryAdd(text[..at], text[(at + 1)..]))
            {
                wrong.Add($"{text[..at]}: given twice; give it once");
            }
        }

        return arguments;
    }
}
