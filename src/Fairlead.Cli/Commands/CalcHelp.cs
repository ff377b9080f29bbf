using Fairlead.Calculations;
using Fairlead.Cli.Output;

namespace Fairlead.Cli.Commands;

/// <summary>What a calculation is and takes.</summary>
internal static class CalcHelp
{
    /// <summary>All calculations by discipline.</summary>
    public static void List(Terminal terminal)
    {
        foreach (var discipline in CalculationCatalog.All.GroupBy(e => e.Info.Discipline))
        {
            terminal.Out.WriteLine(discipline.Key);
            Wrapping.Columns(terminal.Out, [.. discipline.Select(e => (string[])[e.Info.Name, $"{e.Info.Purpose}\n{e.Info.Sources[0]}"])], terminal.Width, 2);
            terminal.Out.WriteLine();
        }

        terminal.Print("'fairlead calc NAME --help' tells what a calculation takes and shows an example.");
    }

    /// <summary>One calculation.</summary>
    public static void Write(Terminal terminal, CalculationInfo info)
    {
        terminal.Print($"{info.Title} ({info.Name}, {Words.Kebab(info.Discipline.ToString())}): {info.Purpose}.");
        terminal.Out.WriteLine();
        terminal.Print($"Usage: fairlead calc {info.Name} symbol=value ... [--format text|json]");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Inputs");
        Inputs(terminal, info.Inputs, 2);
        foreach (var table in info.Inputs.Where(i => i.Form == InputForm.Table))
        {
            terminal.Out.WriteLine();
            terminal.Print($"Cells of a row of '{table.Symbol}', separated by ',' and rows by ';' (an optional cell may be left empty)");
            Inputs(terminal, table.Columns, 2);
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Example");
        terminal.Out.WriteLine($"  fairlead calc {info.Name} {info.Example}");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Sources");
        Wrapping.Columns(terminal.Out, [.. info.Sources.Select(s => (string[])["-", s.ToString()])], terminal.Width, 2);
    }

    private static void Inputs(Terminal terminal, IEnumerable<InputInfo> inputs, int indent) =>
        Wrapping.Columns(terminal.Out, [.. inputs.Select(i => (string[])[i.Symbol, About(i)])], terminal.Width, indent);

    private static string About(InputInfo input)
    {
        var unit = input.Unit is { Symbol.Length: > 0 } u ? $" [{u.Symbol}]" : "";
        var values = input.Form switch
        {
            InputForm.Choice => string.Join(" | ", input.Choices),
            InputForm.YesNo => "yes | no",
            InputForm.Gauge => Gauge.Expected,
            InputForm.Table => "rows of cells, below",
            _ => input.RangeText,
        };
        return input.Meaning + unit + (values.Length > 0 ? "; " + values : "") + (input.Optional ? $"; when left out: {input.Default}" : "; required");
    }
}
