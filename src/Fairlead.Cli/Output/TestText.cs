using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Cli.Output;

/// <summary>Test cards and reports as text.</summary>
internal static class TestText
{
    // Beyond this many a list of suspects helps nobody; the next measurement does.
    private const int Most = 6;

    public static void Write(Terminal terminal, TestPlan plan)
    {
        Wrapping.Columns(
            terminal.Out, [["card", "kind", "lines", "title"], .. plan.Cards.Select(c => (string[])[c.Id, TestJson.Word(c.Kind), NumberFormat.Text(c.Lines.Count), c.Title])], terminal.Width, 0);
        terminal.Out.WriteLine();
        terminal.Print(string.Create(CultureInfo.InvariantCulture, $"{plan.Cards.Length} cards with {plan.Cards.Sum(c => c.Lines.Count)} lines, in the order in which it is safe to test. {TestPlan.Advice}"));
    }

    public static void Write(Terminal terminal, TestCard card)
    {
        terminal.Out.WriteLine($"{card.Id}  {card.Title}");
        terminal.Print($"With: {card.Instrument}", 2);
        foreach (var before in card.Preconditions)
        {
            terminal.Print("Before: " + before, 2);
        }

        foreach (var caution in card.Cautions)
        {
            terminal.Print("CAUTION: " + caution, 2);
        }

        terminal.Out.WriteLine();
        foreach (var line in card.Lines)
        {
            terminal.Print($"{line.Id}", 2);
            terminal.Print($"{(line.IsNumber ? $"{line.Expected}: {line.Limits}" : line.Expected)}; proves: {line.Proves}; by {line.Source}", 6);
        }

        terminal.Out.WriteLine();
        terminal.Print(TestPlan.Advice);
    }

    public static void Write(Terminal terminal, TestReport report)
    {
        foreach (var judged in report.Results)
        {
            terminal.Print($"{terminal.Word(judged.Verdict)}  {judged.Result.Card} {judged.Result.Line}: {judged.Why}");
        }

        terminal.Out.WriteLine();
        foreach (var card in report.Cards)
        {
            terminal.Print(string.Create(CultureInfo.InvariantCulture, $"{card.Card.Id}: {card.Holds} of {card.Card.Lines.Count} lines hold"));
        }

        foreach (var signature in report.Signatures)
        {
            terminal.Print(signature);
        }

        foreach (var connector in report.Connectors)
        {
            Write(terminal, connector);
        }

        terminal.Out.WriteLine();
        terminal.Print(TestPlan.Advice);
    }

    private static void Write(Terminal terminal, ConnectorReport report)
    {
        terminal.Out.WriteLine();
        terminal.Print(report.Left.Length switch
        {
            0 => $"{report.Connector}: no single fault explains these readings. Measure again; then look for two faults.",
            1 => $"{report.Connector}: {report.Left[0].Text}.",
            var count => string.Create(CultureInfo.InvariantCulture, $"{report.Connector}: {count} faults agree with the readings{(count > Most ? $", {Most} of them" : "")}:"),
        });
        foreach (var fault in report.Left.Length > 1 ? report.Left.Take(Most) : [])
        {
            terminal.Print("- " + fault.Text, 2);
        }

        if (report.Next is { } next)
        {
            terminal.Print(string.Create(CultureInfo.InvariantCulture, $"Measure next {next.Text} ({report.Bits:0.00} bit). Enter it as line '{next.Id}'."), 2);
        }
    }
}
