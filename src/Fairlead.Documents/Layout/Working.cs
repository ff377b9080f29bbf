using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A step of the working as it is written by hand: the symbol and its meaning, the formula, the same with numbers, the value.</summary>
/// <param name="Symbol">The symbol.</param>
/// <param name="Meaning">What it stands for.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Numbers">The formula with numbers in place of symbols.</param>
/// <param name="Value">The value.</param>
/// <param name="Source">Where the formula comes from; empty for arithmetic.</param>
public sealed record WorkingStep(string Symbol, string Meaning, string Formula, string Numbers, string Value, string Source) : Block
{
    private const double Indent = 22;

    internal override void Lay(Flow flow)
    {
        var width = PageFormat.ColumnWidth - Indent;
        List<(string Words, double Size, Ink Ink, bool Bold)> lines =
        [
            .. TextWrap.Lines(Meaning, TypeSize.Small, false, width).Select(w => (w, TypeSize.Small, Ink.Quiet, false)),
            .. TextWrap.Lines("= " + Formula, TypeSize.Body, false, width).Select(w => (w, TypeSize.Body, Ink.Line, false)),
            .. (Numbers == Formula ? [] : TextWrap.Lines("= " + Numbers, TypeSize.Body, false, width)).Select(w => (w, TypeSize.Body, Ink.Line, false)),
            .. TextWrap.Lines("= " + Value, TypeSize.Body, true, width).Select(w => (w, TypeSize.Body, Ink.Line, true)),
            .. (Source.Length == 0 ? [] : TextWrap.Lines(Source, TypeSize.Fine, false, width)).Select(w => (w, TypeSize.Fine, Ink.Quiet, false)),
        ];
        flow.Need(Math.Min(lines.Sum(l => l.Size * Typesetting.Leading), PageFormat.Bottom - PageFormat.Top));
        var wide = Typesetting.Width(Symbol, TypeSize.Body, bold: true) > Indent - 2;
        flow.Write(PageFormat.Left, wide ? 0 : TypeSize.Small * Typesetting.Leading, Symbol, TypeSize.Body, bold: true);
        if (wide)
        {
            flow.Advance(TypeSize.Body * Typesetting.Leading);
        }

        foreach (var (words, size, ink, bold) in lines)
        {
            flow.Need(size * Typesetting.Leading);
            flow.Write(PageFormat.Left + Indent, 0, words, size, ink, bold);
            flow.Advance(size * Typesetting.Leading);
        }

        flow.Skip(2.4);
    }
}
