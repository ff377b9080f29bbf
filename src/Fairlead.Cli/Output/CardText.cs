using Fairlead.Calculations;
using Fairlead.Planning.Cards;

namespace Fairlead.Cli.Output;

/// <summary>Job cards as text and JSON.</summary>
internal static class CardText
{
    /// <summary>The chosen cards, or the list of all when none is chosen.</summary>
    public static void Write(Terminal terminal, Sequence<JobCard> cards, Sequence<JobCard> chosen)
    {
        if (chosen.Count == 0)
        {
            Wrapping.Columns(terminal.Out, [["card", "zone", "signed", "what is done"], .. cards.Select(c => (string[])[c.Id, c.Task.Zone, NumberFormat.Text(c.Signatures.Count), c.Task.Title])], terminal.Width, 0);
            terminal.Out.WriteLine();
        }

        foreach (var card in chosen)
        {
            Write(terminal, card);
        }

        terminal.Print(JobCard.Advice);
    }

    /// <summary>A card as data.</summary>
    public static object Json(JobCard card) => new
    {
        card.Id, card.Subject, Kind = Words.Kebab(card.Task.Kind.ToString()), card.Task.Title, card.Task.Zone, card.Task.Panels, card.Task.Authorisation, card.Task.Cautions, card.Steps,
        Tables = card.Tables.Select(t => new { t.Title, t.Columns, t.Rows, t.Note }),
        Signatures = card.Signatures.Select(s => new { s.What, s.Role, s.Scope, s.Subject }),
    };

    private static void Write(Terminal terminal, JobCard card)
    {
        terminal.Print($"{card.Id}  {card.Task.Title}");
        foreach (var caution in card.Task.Cautions)
        {
            terminal.Print("CAUTION: " + caution, 2);
        }

        foreach (var fact in card.Facts)
        {
            terminal.Print($"{fact.Name}: {fact.Value}", 2);
        }

        terminal.Out.WriteLine();
        foreach (var (step, n) in card.Steps.Select((s, n) => (s, n)))
        {
            terminal.Print($"{NumberFormat.Text(n + 1)}. {step}", 2);
        }

        foreach (var table in card.Tables)
        {
            terminal.Out.WriteLine();
            terminal.Print(table.Title, 2);
            Wrapping.Columns(terminal.Out, [[.. table.Columns], .. table.Rows.Select(r => r.Select(c => c.Length > 0 ? c : "____").ToArray())], terminal.Width, 0);
            terminal.Print(table.Note, 2);
        }

        terminal.Out.WriteLine();
        foreach (var signature in card.Signatures)
        {
            terminal.Print($"Signed ({signature.Role}{(signature.Scope.Length > 0 ? $", under {signature.Scope}" : "")}; log {signature.Subject}): {signature.What}", 2);
        }

        terminal.Out.WriteLine();
    }
}
