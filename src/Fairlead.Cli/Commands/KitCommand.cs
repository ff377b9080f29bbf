using System.CommandLine;
using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Documents.Tables;
using Fairlead.Planning.Plans;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead kit</c>: everything the change needs, against what is on hand.</summary>
internal static class KitCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var format = Formats.Option("text", "json");
        var output = JobArguments.Output("Write the kit to this file, .csv or .xlsx; a workbook holds the cutting plan and the sleeves as well.");
        var command = new Command("kit", "List everything the change needs, and what is missing of it.") { folder, format, output };
        command.SetAction(parsed =>
        {
            var directory = parsed.GetValue(folder)!;
            var assessment = JobArguments.Assess(terminal, directory);
            var kit = terminal.Work("planning", () => PlannedKit.Of(assessment, terminal.Stop));
            if (parsed.GetValue(output) is { } file)
            {
                TableOutput.Write(terminal, file, SupplyTables.Kit(kit), SupplyTables.Cuts(assessment.Cuts), SupplyTables.Print(assessment.PrintLines));
            }

            Show(terminal, kit, parsed.GetValue(format)!, parsed.GetValue(output) is null);
            return kit.IsComplete ? ExitCode.Holds : ExitCode.Open;
        });
        return command;
    }

    private static void Show(Terminal terminal, KitList kit, string format, bool lines)
    {
        if (format == "json")
        {
            terminal.Out.Write(Json.Text(KitJson.Of(kit)) + "\n");
            return;
        }

        terminal.Out.WriteLine(kit.Verdict);
        foreach (var why in kit.Missing)
        {
            terminal.Print("- " + why, 2);
        }

        terminal.Out.WriteLine();
        if (lines)
        {
            Lines(terminal, kit);
        }

        terminal.Print($"Needed on {(kit.UseDate is { } use ? Day(use) : "a day not stated")}: {kit.UseDateOrigin}.");
        terminal.Print(SheetText.Advice);
    }

    private static void Lines(Terminal terminal, KitList kit)
    {
        foreach (var kind in kit.Lines.GroupBy(l => l.Kind))
        {
            terminal.Out.WriteLine(Words.Kebab(kind.Key.ToString()).Replace('-', ' '));
            Wrapping.Columns(terminal.Out, [.. kind.Select(l => (IReadOnlyList<string>)
                [l.PartText, Amount(l.Need, l.Unit), l.OnHand is { } hand ? $"of {Amount(hand, l.Unit)}" : "", SupplyTables.State(l.State), l.NeededOn is { } on ? Day(on) : "", l.Remark.Length > 0 ? $"{l.Name}. {l.How}. {l.Remark}" : $"{l.Name}. {l.How}"])], terminal.Width, 2);
            terminal.Out.WriteLine();
        }
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static string Amount(double value, string unit) => NumberFormat.Text(Math.Round(value, 2)) + (unit == "each" ? "" : " " + unit);
}
