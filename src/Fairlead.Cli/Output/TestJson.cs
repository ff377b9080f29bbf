using Fairlead.Substantiation.Tests;

namespace Fairlead.Cli.Output;

/// <summary>Test cards and reports as JSON.</summary>
internal static class TestJson
{
    public static object Of(TestCard card) => new
    {
        card.Id,
        Kind = Word(card.Kind),
        card.Title,
        card.System,
        card.Subject,
        card.Instrument,
        card.Preconditions,
        card.Cautions,
        Lines = card.Lines.Select(l => new { l.Id, l.From, l.To, l.Expected, l.Unit, l.Least, l.Most, Source = l.Source.ToString(), Basis = l.Source.Basis.ToString(), l.Proves }),
    };

    public static object Of(TestReport report) => new
    {
        Verdict = VerdictWord.Of(report.Verdict),
        Results = report.Results.Select(r => new { r.Result.Row, r.Result.Card, r.Result.Line, r.Result.Value, r.Result.Unit, Verdict = VerdictWord.Of(r.Verdict), r.Why }),
        Cards = report.Cards.Select(c => new { c.Card.Id, c.Holds, Lines = c.Card.Lines.Count, Verdict = VerdictWord.Of(c.Verdict) }),
        Connectors = report.Connectors.Select(c => new { c.Connector, Faults = c.Left.Select(l => l.Faults.Select(f => f.Text)), Next = c.Next?.Id, c.Bits }),
        report.Signatures,
    };

    /// <summary>A kind as a person reads it.</summary>
    public static string Word(TestKind kind) => kind.ToString().ToLowerInvariant();
}
