using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Planning.Cards;

namespace Fairlead.Documents;

/// <summary>Sets a job card: number and code, cautions, facts, steps, figures, lines to sign.</summary>
/// <param name="format">The size.</param>
/// <param name="head">Work order, revision and aircraft, on every card.</param>
/// <param name="link">What the code of a card says before its number.</param>
internal sealed class CardPainter(CardFormat format, string head, string link)
{
    private readonly CardTables tables = new(format);

    private double Line => format.Body * Typesetting.Leading;

    /// <summary>The pieces of a card from top to bottom, ending in what it defers to unless that is said elsewhere.</summary>
    public IEnumerable<CardPiece> Of(JobCard card, bool advice) =>
    [
        Header(card), .. card.Task.Cautions.Select(Caution), CardPiece.Gap(1.5), .. card.Facts.Select(Fact),
        .. Steps(card), .. card.Tables.SelectMany(tables.Of), .. Signatures(card), .. advice ? Foot() : [],
    ];

    /// <summary>The head of a page on which a card goes on.</summary>
    public CardPiece Continued(JobCard card) => new((format.Title * Typesetting.Leading) + 2, y =>
    [
        Words(format.Left, y, card.Id, format.Title, bold: true),
        Words(format.Right, y, "continued", format.Small, Ink.Quiet, anchor: Anchor.End),
        new Line(new(format.Left, y + (format.Title * Typesetting.Leading) + 0.5), new(format.Right, y + (format.Title * Typesetting.Leading) + 0.5), Style.Usual),
    ]);

    private static Text Words(double x, double y, string words, double size, Ink ink = Ink.Line, bool bold = false, Anchor anchor = Anchor.Start) => new(new(x, y + Flow.Baseline(size)), words, size, ink, anchor, bold);

    private CardPiece Header(JobCard card)
    {
        var room = format.Column - format.Square - 3;
        var kind = card.Task.Card is { } test ? "Test card" : "Job card";
        var number = Fitted(card.Id, format.Number, room);
        var title = TextWrap.Lines(card.Task.Title, format.Title, bold: false, room);
        var under = TextWrap.Lines($"{kind}  ·  {head}", format.Small, bold: false, room);
        var words = (number * Typesetting.Leading) + (title.Count * format.Title * Typesetting.Leading) + (under.Count * format.Small * Typesetting.Leading) + 1;
        var height = Math.Max(words, format.Square) + 2.5;
        return new CardPiece(height, y =>
        {
            List<Shape> shapes = [Words(format.Left, y, card.Id, number, bold: true)];
            var at = y + (number * Typesetting.Leading);
            foreach (var text in title)
            {
                shapes.Add(Words(format.Left, at, text, format.Title));
                at += format.Title * Typesetting.Leading;
            }

            foreach (var text in under)
            {
                shapes.Add(Words(format.Left, at + 0.6, text, format.Small, Ink.Quiet));
                at += format.Small * Typesetting.Leading;
            }

            shapes.AddRange(SquareCode.Of(link + Uri.EscapeDataString(card.Id), new(format.Right - format.Square, y), format.Square));
            shapes.Add(new Line(new(format.Left, y + height - 1), new(format.Right, y + height - 1), Style.Heavy));
            return shapes;
        }) { Keep = true };
    }

    // A long number is set smaller rather than broken.
    private static double Fitted(string words, double size, double room) => Math.Min(size, size * room / Math.Max(room, Typesetting.Width(words, size, bold: true)));

    private CardPiece Caution(string words)
    {
        var indent = format.Body * 2.2;
        var lines = TextWrap.Lines("Caution: " + words, format.Body, bold: true, format.Column - indent - 2);
        var height = (lines.Count * Line) + 1.6;
        return new CardPiece(height + 1, y =>
        [
            new Rect(new(format.Left, y), format.Column, height, Style.Filled(Ink.AccentTint)),
            new Rect(new(format.Left, y), 1.1, height, Style.Filled(Ink.Accent)),
            .. VerdictMark.At(Verdict.Caution, new(format.Left + 2.2, y + 0.8 + ((Line - (format.Body * 1.2)) / 2)), format.Body * 1.2),
            .. lines.Select((l, i) => Words(format.Left + indent + 1.4, y + 0.8 + (i * Line), l, format.Body, bold: true)),
        ]) { Keep = true };
    }

    private CardPiece Fact(CardFact fact)
    {
        var left = format.Small * 7.5;
        var lines = TextWrap.Lines(fact.Value, format.Small, bold: false, format.Column - left);
        var line = format.Small * Typesetting.Leading;
        return new CardPiece(lines.Count * line, y => [Words(format.Left, y, fact.Name, format.Small, Ink.Quiet), .. lines.Select((l, i) => Words(format.Left + left, y + (i * line), l, format.Small))]);
    }

    private IEnumerable<CardPiece> Steps(JobCard card)
    {
        const double box = 9;
        yield return CardPiece.Gap(2);
        foreach (var (step, n) in card.Steps.Select((s, n) => (s, n)))
        {
            var indent = format.Body * 2.4;
            var lines = TextWrap.Lines(step, format.Body, bold: false, format.Column - indent - box - 2);
            var height = Math.Max(lines.Count * Line, 4.6) + 0.8;
            yield return new CardPiece(height, y =>
            [
                Words(format.Left + indent - 2, y, NumberFormat.Text(n + 1), format.Body, bold: true, anchor: Anchor.End),
                .. lines.Select((l, i) => Words(format.Left + indent, y + (i * Line), l, format.Body)),
                new Rect(new(format.Right - box, y + 0.3), box, 4.4, new Style(Ink.Quiet, 0.18)),
            ]);
        }
    }

    private IEnumerable<CardPiece> Signatures(JobCard card)
    {
        if (card.Signatures.Count == 0)
        {
            yield break;
        }

        yield return CardPiece.Gap(3);
        yield return new CardPiece(Line + 0.6, y => [Words(format.Left, y, "Signed, one line each", format.Body, bold: true)]) { Keep = true };
        foreach (var signature in card.Signatures)
        {
            yield return Signature(signature);
        }
    }

    // What is signed for, by whom; then name, time and signature to be filled in. What is held until signed carries the accent.
    private CardPiece Signature(CardSignature signature)
    {
        var held = signature.Role.StartsWith("stage", StringComparison.Ordinal);
        var role = (held ? "Held until signed. " : "") + char.ToUpperInvariant(signature.Role[0]) + signature.Role[1..] + (signature.Scope.Length > 0 ? $", under {signature.Scope}" : "") + $"; log {signature.Subject}";
        var what = TextWrap.Lines(signature.What, format.Body, bold: true, format.Column - 3);
        var who = TextWrap.Lines(role, format.Small, bold: false, format.Column - 3);
        var text = (what.Count * Line) + (who.Count * format.Small * Typesetting.Leading);
        var height = text + format.Signature + 1.5;
        return new CardPiece(height + 1.5, y =>
        {
            List<Shape> shapes = [new Rect(new(format.Left, y), format.Column, height, new Style(held ? Ink.Accent : Ink.Line, held ? 0.45 : 0.25))];
            shapes.AddRange(what.Select((l, i) => Words(format.Left + 1.5, y + 0.7 + (i * Line), l, format.Body, bold: true)));
            shapes.AddRange(who.Select((l, i) => Words(format.Left + 1.5, y + 0.7 + (what.Count * Line) + (i * format.Small * Typesetting.Leading), l, format.Small, held ? Ink.Accent : Ink.Quiet)));
            var (top, left) = (y + text + 1.5, format.Left);
            foreach (var (name, share) in new[] { ("Name, licence", 0.36), ("Date, time", 0.24), ("Signature", 0.40) })
            {
                var width = format.Column * share;
                shapes.Add(new Line(new(left, top), new(left + width, top), Style.Thin));
                shapes.Add(Words(left + 1.2, top + 0.2, name, format.Small * 0.85, Ink.Quiet));
                if (left > format.Left)
                {
                    shapes.Add(new Line(new(left, top), new(left, y + height), Style.Thin));
                }

                left += width;
            }

            return shapes;
        });
    }

    private IEnumerable<CardPiece> Foot()
    {
        var line = format.Small * Typesetting.Leading;
        yield return CardPiece.Gap(1);
        foreach (var words in TextWrap.Lines(JobCard.Advice, format.Small, bold: false, format.Column))
        {
            yield return new CardPiece(line, y => [Words(format.Left, y, words, format.Small, Ink.Quiet)]);
        }
    }
}
