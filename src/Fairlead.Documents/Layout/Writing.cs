using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A heading; it becomes a bookmark and a line of the table of contents, and never stands alone at the foot of a page.</summary>
/// <param name="Level">1 to 4.</param>
/// <param name="Text">Its words.</param>
/// <param name="Beside">Quiet words at the end of its line, such as the name by which the rest of the job knows it.</param>
/// <param name="Brief">Its words in the table of contents, where the third level runs on below the second; the same unless given.</param>
public sealed record Heading(int Level, string Text, string Beside = "", string? Brief = null) : Block
{
    internal override void Lay(Flow flow)
    {
        var (size, before, after) = Level switch
        {
            1 => (TypeSize.Heading1, 8.0, 3.5),
            2 => (TypeSize.Heading2, 6.0, 1.6),
            3 => (TypeSize.Heading3, 4.5, 1.0),
            _ => (TypeSize.Heading4, 4.0, 1.0),
        };
        var lines = TextWrap.Lines(Text, size, bold: true, flow.Width);
        var line = size * Typesetting.Leading;
        flow.Skip(before);
        flow.Need((lines.Count * line) + 4 + flow.Company);
        flow.Mark(Text, Level, Brief ?? Text);
        foreach (var words in lines)
        {
            flow.Write(PageFormat.Left, 0, words, size, bold: true);
            flow.Advance(line);
        }

        WriteBeside(flow, Typesetting.Width(lines[^1], size, bold: true), size, line);
        if (Level == 1)
        {
            flow.Add(new Line(new(PageFormat.Left, flow.Y + 0.6), new(flow.Right, flow.Y + 0.6), new Style(Ink.Line, 0.35)));
        }

        flow.Advance(after);
    }

    // On the base line of the last line where there is room, else on lines of its own.
    private void WriteBeside(Flow flow, double used, double size, double line)
    {
        if (Beside.Length == 0)
        {
            return;
        }

        var room = flow.Width - used - 4;
        if (Typesetting.Width(Beside, TypeSize.Small, bold: false) <= room)
        {
            flow.Write(flow.Right, Flow.Baseline(size) - Flow.Baseline(TypeSize.Small) - line, Beside, TypeSize.Small, Ink.Quiet, anchor: Anchor.End);
            return;
        }

        foreach (var words in TextWrap.Lines(Beside, TypeSize.Small, bold: false, flow.Width))
        {
            flow.Write(PageFormat.Left, 0, words, TypeSize.Small, Ink.Quiet);
            flow.Advance(TypeSize.Small * Typesetting.Leading);
        }
    }
}

/// <summary>The voice of a paragraph.</summary>
public enum Voice
{
    /// <summary>Ordinary text.</summary>
    Body,

    /// <summary>Small and quiet: sources, remarks.</summary>
    Remark,

    /// <summary>A caution: barred in the accent, never overlooked.</summary>
    Caution,
}

/// <summary>A paragraph.</summary>
/// <param name="Words">Its words; a line break in them is kept.</param>
/// <param name="Voice">Its voice.</param>
public sealed record Paragraph(string Words, Voice Voice = Voice.Body) : Block
{
    internal override void Lay(Flow flow)
    {
        var (size, ink, indent) = Voice switch { Voice.Remark => (TypeSize.Small, Ink.Quiet, 0.0), Voice.Caution => (TypeSize.Body, Ink.Line, 4.0), _ => (TypeSize.Body, Ink.Line, 0.0) };
        var lines = TextWrap.Lines(Words, size, bold: false, flow.Width - indent);
        var line = size * Typesetting.Leading;
        for (var i = 0; i < lines.Count; i++)
        {
            // Neither the first nor the last line stands alone on a page.
            flow.Need(i == 0 || i == lines.Count - 2 ? Math.Min(2, lines.Count - i) * line : line);
            if (Voice == Voice.Caution)
            {
                flow.Add(new Rect(new(PageFormat.Left, flow.Y), 1, line, Style.Filled(Ink.Accent)));
            }

            flow.Write(PageFormat.Left + indent, 0, lines[i], size, ink);
            flow.Advance(line);
        }

        flow.Skip(1.8);
    }
}

/// <summary>A list of short points.</summary>
public sealed record Bullets(Sequence<string> Points) : Block
{
    private const double Indent = 4.5;

    internal override void Lay(Flow flow)
    {
        var line = TypeSize.Body * Typesetting.Leading;
        foreach (var point in Points)
        {
            var lines = TextWrap.Lines(point, TypeSize.Body, bold: false, flow.Width - Indent);
            flow.Need(Math.Min(lines.Count, 3) * line);
            flow.Add(new Rect(new(PageFormat.Left + 1, flow.Y + (line / 2) - 0.45), 0.9, 0.9, Style.Filled(Ink.Line)));
            foreach (var words in lines)
            {
                flow.Need(line);
                flow.Write(PageFormat.Left + Indent, 0, words, TypeSize.Body);
                flow.Advance(line);
            }

            flow.Skip(0.8);
        }

        flow.Skip(1);
    }
}

/// <summary>A verdict by shape and word, with what it is about.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="Words">What it says; empty for the bare word.</param>
/// <param name="Large">Large, as on a cover.</param>
public sealed record VerdictLine(Verdict Verdict, string Words = "", bool Large = false) : Block
{
    internal override void Lay(Flow flow)
    {
        var size = Large ? TypeSize.Heading1 : TypeSize.Heading4;
        var mark = size * 1.25;
        var height = size * 1.6;
        var word = VerdictMark.Word(Verdict);
        var after = PageFormat.Left + mark + 2;
        var beside = after + Typesetting.Width(word, size, bold: true) + 3;
        var lines = TextWrap.Lines(Words, TypeSize.Body, bold: false, flow.Right - beside);
        var line = TypeSize.Body * Typesetting.Leading;
        flow.Need(Math.Max(height, lines.Count * line));
        foreach (var shape in VerdictMark.At(Verdict, new(PageFormat.Left, flow.Y + ((height - mark) / 2)), mark))
        {
            flow.Add(shape);
        }

        flow.Write(after, (height - (size * Typesetting.Leading)) / 2, word, size, Verdict is Verdict.Fails or Verdict.Caution ? Ink.Accent : Ink.Line, bold: true);
        for (var i = 0; i < lines.Count; i++)
        {
            // The first line shares the base line of the word.
            flow.Write(beside, ((height - (size * Typesetting.Leading)) / 2) + Flow.Baseline(size) - Flow.Baseline(TypeSize.Body) + (i * line), lines[i], TypeSize.Body);
        }

        flow.Advance(Math.Max(height, ((lines.Count - 1) * line) + height) + 1.5);
    }
}

/// <summary>A small heading that is no bookmark: it names what follows directly.</summary>
/// <param name="Text">Its words.</param>
public sealed record Label(string Text) : Block
{
    internal override double Beginning => 6;

    internal override void Lay(Flow flow)
    {
        var line = TypeSize.Body * Typesetting.Leading;
        flow.Skip(1.2);
        flow.Need(line + 1 + flow.Company);
        flow.Write(PageFormat.Left, 0, Text, TypeSize.Body, bold: true);
        flow.Advance(line + 0.8);
    }
}

/// <summary>The title of a document, as it stands on its cover.</summary>
/// <param name="Text">What it is.</param>
/// <param name="Below">What it is about.</param>
public sealed record Title(string Text, string Below) : Block
{
    internal override void Lay(Flow flow)
    {
        flow.Advance(14);
        flow.Write(PageFormat.Left, 0, Text, TypeSize.Title, bold: true);
        flow.Advance(TypeSize.Title * Typesetting.Leading);
        foreach (var words in TextWrap.Lines(Below, TypeSize.Heading2, bold: false, PageFormat.ColumnWidth))
        {
            flow.Write(PageFormat.Left, 0, words, TypeSize.Heading2);
            flow.Advance(TypeSize.Heading2 * Typesetting.Leading);
        }

        flow.Advance(4);
        flow.Add(new Line(new(PageFormat.Left, flow.Y), new(PageFormat.Right, flow.Y), Style.Heavy));
        flow.Advance(6);
    }
}
