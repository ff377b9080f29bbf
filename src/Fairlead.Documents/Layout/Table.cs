using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A column of a table.</summary>
/// <param name="Header">Its heading.</param>
/// <param name="Right">Set to the right, as numbers are.</param>
/// <param name="Least">Least width, mm: for columns that are filled in by hand.</param>
/// <param name="Most">The width beyond which its text is broken however much room there is, mm.</param>
public readonly record struct Column(string Header, bool Right = false, double Least = 0, double Most = double.PositiveInfinity);

/// <summary>A cell of a table.</summary>
/// <param name="Words">Its text; a line break in it is kept.</param>
/// <param name="Note">Small quiet text below, such as a source.</param>
/// <param name="Mark">A verdict shown by its shape before the text.</param>
/// <param name="Strong">Semibold.</param>
public sealed record Cell(string Words, string Note = "", Verdict? Mark = null, bool Strong = false)
{
    /// <summary>Plain text as a cell.</summary>
    public static implicit operator Cell(string words) => new(words);
}

/// <summary>A table. Its header is repeated on every page; a row is kept whole unless it is taller than a page.</summary>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">The rows, each with a cell for each column.</param>
/// <param name="Title">Its title; empty for none. In narrow columns it is left out where a heading of the table says the same.</param>
public sealed record Table(Sequence<Column> Columns, Sequence<Sequence<Cell>> Rows, string Title = "") : Block
{
    private const double LinePitch = TypeSize.Small * Typesetting.Leading;
    private const double NotePitch = TypeSize.Fine * Typesetting.Leading;
    private const double RowPadding = 1.0;
    private const double TightPadding = 0.3;
    private const double LongestPair = 60;

    internal override double Beginning => 9 + (Title.Length == 0 ? 0 : 6) + (8 * Math.Min(2, Rows.Count));

    internal override void Lay(Flow flow)
    {
        var (widths, header, rows) = flow.Measure(this, () => Measured(flow.Width, flow.Dense));
        var titled = Title.Length > 0 && !(flow.Dense && Columns.Any(c => c.Header == Title || c.Header + "s" == Title));
        var titleHeight = !titled ? 0 : (TypeSize.Body * Typesetting.Leading) + 0.8;
        flow.Need(titleHeight + header.Height + rows.Take(2).Sum(r => r.Height));
        if (titled)
        {
            flow.Skip(1.2);
            flow.Write(PageFormat.Left, 0, Title, TypeSize.Body, bold: true);
            flow.Advance(titleHeight);
        }

        LayHeader(flow, header, widths);
        var parts = rows.SelectMany(r => r.Split(flow.Height - header.Height)).ToList();
        for (var i = 0; i < parts.Count; i++)
        {
            // The last row does not stand alone on a page.
            var height = parts[i].Height;
            if (flow.Room < height || (i == parts.Count - 2 && i > 0 && height + parts[i + 1].Height is var both && flow.Room < both && both < LongestPair))
            {
                flow.Break();
                LayHeader(flow, header, widths);
            }

            LayRow(flow, parts[i], widths);
            flow.Add(new Line(new(PageFormat.Left, flow.Y), new(flow.Right, flow.Y), Style.Grid));
        }

        flow.Skip(3.5);
    }

    private SetTable Measured(double width, bool dense)
    {
        foreach (var row in Rows)
        {
            if (row.Count != Columns.Count)
            {
                throw new InvalidOperationException($"Table '{Title}' has {Columns.Count} columns, but a row has {row.Count} cells.");
            }
        }

        var widths = ColumnWidths.Of(this, width, notes: !dense);
        return new SetTable(widths, Set(Columns.Select(c => new Cell(c.Header, Strong: true)).ToSequence(), widths, dense), [.. Rows.Select(r => Set(r, widths, dense))]);
    }

    private void LayHeader(Flow flow, SetRow header, double[] widths)
    {
        flow.Add(new Rect(new(PageFormat.Left, flow.Y), flow.Width, header.Height, Style.Filled(Ink.Tint)));
        LayRow(flow, header, widths);
        flow.Add(new Line(new(PageFormat.Left, flow.Y), new(flow.Right, flow.Y), Style.Usual));
    }

    private void LayRow(Flow flow, SetRow row, double[] widths)
    {
        var left = PageFormat.Left;
        for (var c = 0; c < widths.Length; c++)
        {
            var right = Columns[c].Right;
            var below = row.Padding;
            var mark = row.Cells[c].Mark;
            if (mark is { } verdict)
            {
                foreach (var shape in VerdictMark.At(verdict, new(left + ColumnWidths.Padding, flow.Y + below + 0.45), ColumnWidths.MarkSize))
                {
                    flow.Add(shape);
                }
            }

            foreach (var (words, size, bold, ink) in row.Cells[c].Lines)
            {
                var x = right ? left + widths[c] - ColumnWidths.Padding : left + ColumnWidths.Padding + (mark is null ? 0 : ColumnWidths.MarkSize + 1);
                flow.Write(x, below, words, size, ink, bold, right ? Anchor.End : Anchor.Start);
                below += size * Typesetting.Leading;
            }

            left += widths[c];
        }

        for (var i = 0; i < row.Notes.Length; i++)
        {
            flow.Write(PageFormat.Left + ColumnWidths.Padding, row.Height - row.Padding - ((row.Notes.Length - i) * NotePitch), row.Notes[i].Words, TypeSize.Fine, Ink.Quiet);
        }

        flow.Advance(row.Height);
    }

    // In narrow columns a note runs on below its row, as wide as the table.
    private static SetRow Set(Sequence<Cell> row, double[] widths, bool dense) => new([.. row.Select((cell, c) =>
    {
        var room = widths[c] - (2 * ColumnWidths.Padding) - (cell.Mark is null ? 0 : ColumnWidths.MarkSize + 1) + 0.01;
        var lines = TextWrap.Lines(cell.Words, TypeSize.Small, cell.Strong, room).Select(w => new SetLine(w, TypeSize.Small, cell.Strong, Ink.Line));
        var notes = cell.Note.Length == 0 || dense ? [] : TextWrap.Lines(cell.Note, TypeSize.Fine, bold: false, room).Select(w => new SetLine(w, TypeSize.Fine, false, Ink.Quiet));
        return new SetCell([.. lines, .. notes], cell.Mark);
    })],
    dense ? [.. row.Where(c => c.Note.Length > 0).SelectMany(c => TextWrap.Lines(c.Note.Replace("\n", "; ", StringComparison.Ordinal), TypeSize.Fine, bold: false, widths.Sum() - (2 * ColumnWidths.Padding))).Select(w => new SetLine(w, TypeSize.Fine, false, Ink.Quiet))] : [],
    dense ? TightPadding : RowPadding);

    private sealed record SetTable(double[] Widths, SetRow Header, SetRow[] Rows);

    private readonly record struct SetLine(string Words, double Size, bool Bold, Ink Ink);

    private sealed record SetCell(SetLine[] Lines, Verdict? Mark);

    private sealed record SetRow(SetCell[] Cells, SetLine[] Notes, double Padding)
    {
        public double Height { get; } = Cells.Max(c => c.Lines.Sum(l => l.Size * Typesetting.Leading)) + (Notes.Length * NotePitch) + (2 * Padding);

        /// <summary>The row in parts that each fit a page.</summary>
        public IEnumerable<SetRow> Split(double most)
        {
            if (Height <= most)
            {
                return [this];
            }

            var atOnce = Math.Max(1, (int)((most - (2 * Padding)) / LinePitch));
            var parts = Cells.Max(c => (c.Lines.Length + atOnce - 1) / atOnce);
            return Enumerable.Range(0, parts).Select(p => new SetRow([.. Cells.Select(c => new SetCell([.. c.Lines.Skip(p * atOnce).Take(atOnce)], p == 0 ? c.Mark : null))], p == parts - 1 ? Notes : [], Padding));
        }
    }
}

/// <summary>Shares the width of the column between the columns of a table.</summary>
internal static class ColumnWidths
{
    public const double Padding = 1.4;
    public const double MarkSize = 2.9;
    private const double WidestMinimum = 45;
    private const double WidestNote = 80;
    private const double WidestNumber = 24;

    /// <summary>Each column as wide as its text wants; when that is too much, as wide as four of five of its cells want, and down to its longest word;
    /// in the last resort narrower still. Numbers stay with their units.</summary>
    public static double[] Of(Table table, double total, bool notes)
    {
        var cells = Enumerable.Range(0, table.Columns.Count)
            .Select(c => table.Rows.Select(r => notes ? r[c] : r[c] with { Note = "" }).Append(new Cell(table.Columns[c].Header, Strong: true)).ToArray()).ToArray();
        var wanted = cells.Select((c, i) => Held(c.Max(Wanted), table.Columns[i])).ToArray();
        var most = wanted.Sum();
        if (most <= total)
        {
            return [.. wanted.Select(w => w + ((total - most) * w / most))];
        }

        var least = cells.Select((c, i) => Math.Min(wanted[i], Math.Max(table.Columns[i].Least, Math.Min(WidestMinimum, c.Max(x => Least(x, table.Columns[i].Right)))))).ToArray();
        var usual = cells.Select((c, i) => Math.Max(least[i], Held(c.Select(Wanted).Order().ElementAt((c.Length - 1) * 4 / 5), table.Columns[i]))).ToArray();
        return usual.Sum() <= total ? Between(usual, wanted, total) : least.Sum() < total ? Between(least, usual, total) : [.. least.Select(l => l * total / least.Sum())];
    }

    private static double Held(double width, Column column) => Math.Max(column.Least, Math.Min(column.Most, width));

    // From the lesser widths, all by the same share, towards the greater.
    private static double[] Between(double[] lesser, double[] greater, double total)
    {
        var (low, high) = (lesser.Sum(), greater.Sum());
        return [.. lesser.Select((l, i) => l + ((greater[i] - l) * (high > low ? (total - low) / (high - low) : 0)))];
    }

    private static double Wanted(Cell cell) => Extra(cell) + Math.Max(
        cell.Words.Split('\n').Max(l => Typesetting.Width(l, TypeSize.Small, cell.Strong)),
        Math.Min(WidestNote, cell.Note.Split('\n').Max(l => Typesetting.Width(l, TypeSize.Fine, bold: false))));

    // A number is one word with its unit; words in a column of numbers are not.
    private static double Least(Cell cell, bool number) => number && Wanted(cell) <= WidestNumber ? Wanted(cell) : Extra(cell) + Math.Max(
        TextWrap.WidestWord(cell.Words, TypeSize.Small, cell.Strong), TextWrap.WidestWord(cell.Note, TypeSize.Fine, bold: false));

    private static double Extra(Cell cell) => (2 * Padding) + (cell.Mark is null ? 0 : MarkSize + 1);
}
