using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Planning.Cards;

namespace Fairlead.Documents;

/// <summary>Tables of a card: columns where they fit, and where they do not, as on a pocket card, each row as lines of its own.</summary>
internal sealed class CardTables(CardFormat format)
{
    private const double Padding = 1;
    private const double LeastHand = 13;
    private const double Beside = 19;

    public IEnumerable<CardPiece> Of(CardTable table)
    {
        var line = format.Small * Typesetting.Leading;
        yield return CardPiece.Gap(2);
        foreach (var (words, i) in TextWrap.Lines(table.Title, format.Body, bold: true, format.Column).Select((w, i) => (w, i)))
        {
            yield return new CardPiece(format.Body * Typesetting.Leading, y => [Line(format.Left, y, words, format.Body, bold: true)]) { Keep = true };
        }

        var widths = Widths(table);
        foreach (var piece in widths is null ? Stacked(table, line) : Columns(table, widths, line))
        {
            yield return piece;
        }

        foreach (var words in table.Note.Length == 0 ? [] : TextWrap.Lines(table.Note, format.Small, bold: false, format.Column))
        {
            yield return new CardPiece(line, y => [Line(format.Left, y, words, format.Small, Ink.Quiet)]);
        }
    }

    private static Text Line(double x, double y, string words, double size, Ink ink = Ink.Line, bool bold = false) => new(new(x, y + Flow.Baseline(size)), words, size, ink, Anchor.Start, bold);

    private IEnumerable<CardPiece> Columns(CardTable table, double[] widths, double line)
    {
        var head = Row(table.Columns, widths, line, header: true);
        yield return head with { Keep = true };
        foreach (var row in table.Rows)
        {
            yield return Row(row, widths, line, header: false) with { Repeat = head };
        }
    }

    private CardPiece Row(Sequence<string> cells, double[] widths, double line, bool header)
    {
        var lines = cells.Select((c, i) => TextWrap.Lines(c, format.Small, header || i == 0, widths[i] - (2 * Padding) + 0.01)).ToArray();
        var height = Math.Max(header ? 0 : line * 1.5, (lines.Max(l => l.Count) * line) + (2 * Padding * 0.7));
        return new CardPiece(height, y => Cells(lines, cells, widths, y, height, line, header));
    }

    private IEnumerable<Shape> Cells(List<string>[] lines, Sequence<string> cells, double[] widths, double y, double height, double line, bool header)
    {
        if (header)
        {
            yield return new Rect(new(format.Left, y), widths.Sum(), height, Style.Filled(Ink.Tint));
        }

        var x = format.Left;
        for (var i = 0; i < lines.Length; i++)
        {
            // What is written by hand gets a box.
            if (!header && cells[i].Length == 0)
            {
                yield return new Rect(new(x + 0.4, y + 0.5), widths[i] - 0.8, height - 1, new Style(Ink.Quiet, 0.18));
            }

            for (var n = 0; n < lines[i].Count; n++)
            {
                yield return Line(x + Padding, y + (Padding * 0.7) + (n * line), lines[i][n], format.Small, bold: header || i == 0);
            }

            x += widths[i];
        }

        yield return new Line(new(format.Left, y + height), new(format.Left + widths.Sum(), y + height), header ? Style.Usual : Style.Grid);
    }

    // A row as lines: its first cell, then what is known, then what is written by hand.
    private IEnumerable<CardPiece> Stacked(CardTable table, double line)
    {
        foreach (var row in table.Rows)
        {
            var known = string.Join("  ·  ", table.Columns.Zip(row).Skip(1).Where(c => c.Second.Length > 0).Select(c => $"{c.First}\u00a0{c.Second.Replace(' ', '\u00a0')}"));
            string[] hand = [.. table.Columns.Zip(row).Where(c => c.Second.Length == 0).Select(c => c.First)];

            // One box stands beside the words, more below them.
            var beside = hand.Length == 1 ? Beside : 0;
            var first = TextWrap.Lines(row[0], format.Small, bold: true, format.Column - beside);
            var rest = known.Length == 0 ? [] : TextWrap.Lines(known, format.Small, bold: false, format.Column - 3 - beside);
            var across = Math.Min(3, Math.Max(1, hand.Length));
            var boxes = beside > 0 ? 0 : (hand.Length + across - 1) / across;
            var box = line * 1.9;
            var height = Math.Max(beside > 0 ? box : 0, (first.Count + rest.Count) * line) + (boxes * box) + 1.6;
            yield return new CardPiece(height, y => Stack(first, rest, hand, across, y, height, line, box));
        }
    }

    private IEnumerable<Shape> Stack(List<string> first, List<string> rest, string[] hand, int across, double y, double height, double line, double box)
    {
        var top = y + 0.5;
        foreach (var (words, i) in first.Concat(rest).Select((w, i) => (w, i)))
        {
            yield return Line(format.Left + (i < first.Count ? 0 : 3), top, words, format.Small, bold: i < first.Count);
            top += line;
        }

        var width = hand.Length == 1 ? Beside : format.Column / across;
        for (var i = 0; i < hand.Length; i++)
        {
            var (x, at) = hand.Length == 1 ? (format.Right - Beside + 1.2, y + 0.4) : (format.Left + (i % across * width), top + (i / across * box));
            yield return new Rect(new(x, at + 0.3), width - 1.2, box - 0.8, new Style(Ink.Quiet, 0.18));
            yield return Line(x + 0.8, at + 0.3, hand[i], format.Small * 0.82, Ink.Quiet);
        }

        yield return new Line(new(format.Left, y + height), new(format.Right, y + height), Style.Grid);
    }

    // As wide as the text wants, wrapped where it must be; null when even its longest words do not fit.
    private double[]? Widths(CardTable table)
    {
        var cells = table.Columns.Select((c, i) => table.Rows.Select(r => (Text: r[i], Bold: i == 0)).Append((Text: c, Bold: true)).ToArray()).ToArray();
        var hand = table.Columns.Select((_, i) => table.Rows.Any(r => r[i].Length == 0)).ToArray();
        var wanted = cells.Select((c, i) => Math.Max(hand[i] ? LeastHand : 0, c.Max(x => Typesetting.Width(x.Text, format.Small, x.Bold)) + (2 * Padding))).ToArray();
        var least = cells.Select((c, i) => Math.Min(wanted[i], Math.Max(hand[i] ? LeastHand : 0, c.Max(x => TextWrap.WidestWord(x.Text, format.Small, x.Bold)) + (2 * Padding)))).ToArray();
        var (most, fewest) = (wanted.Sum(), least.Sum());
        if (fewest > format.Column)
        {
            return null;
        }

        // Room left over goes to what is written by hand.
        var share = most <= format.Column ? 1 : (format.Column - fewest) / (most - fewest);
        var widths = wanted.Select((w, i) => least[i] + ((w - least[i]) * share)).ToArray();
        var spare = (format.Column - widths.Sum()) / Math.Max(1, hand.Count(h => h));
        return [.. widths.Select((w, i) => hand[i] ? w + Math.Max(0, spare) : w)];
    }
}
