using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A step of the working as it is written by hand: the symbol, the formula, the same with numbers and its value, then what it means and where it comes from.</summary>
/// <param name="Symbol">The symbol.</param>
/// <param name="Meaning">What it stands for.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Numbers">The formula with numbers in place of symbols.</param>
/// <param name="Value">The value.</param>
/// <param name="Source">Where the formula comes from; empty for arithmetic.</param>
public sealed record WorkingStep(string Symbol, string Meaning, string Formula, string Numbers, string Value, string Source) : Block
{
    private const double Indent = 22;
    private const double TightIndent = 13;

    internal override double Beginning => 16;

    internal override void Lay(Flow flow)
    {
        var indent = flow.Dense ? TightIndent : Indent;
        var width = flow.Width - indent;
        var pitch = TypeSize.Body * Typesetting.Leading;
        var formula = TextWrap.Lines("= " + Formula, TypeSize.Body, false, width);
        var numbers = TextWrap.Lines("= " + (Numbers == Formula ? Formula : Numbers), TypeSize.Body, false, width);
        if (flow.Dense && Numbers != Formula && Typesetting.Width($"= {Formula} = {Numbers} = {Value}", TypeSize.Body, bold: true) <= width)
        {
            (formula, numbers) = ([], [$"= {Formula} = {Numbers}"]);
        }

        var used = Typesetting.Width(numbers[^1] + " ", TypeSize.Body, bold: false);
        var value = "= " + Value;
        var beside = used + Typesetting.Width(value, TypeSize.Body, bold: true) <= width;
        List<(string Words, double Size, Ink Ink, bool Bold)> lines =
        [
            .. (Numbers == Formula ? [] : formula).Concat(numbers).Select(w => (w, TypeSize.Body, Ink.Line, false)),
            .. (beside ? [] : TextWrap.Lines(value, TypeSize.Body, true, width)).Select(w => (w, TypeSize.Body, Ink.Line, true)),
            .. TextWrap.Lines(Source.Length == 0 ? Meaning : $"{Meaning}; {Source}", TypeSize.Fine, false, width).Select(w => (w, TypeSize.Fine, Ink.Quiet, false)),
        ];
        flow.Need(Math.Min(lines.Sum(l => l.Size * Typesetting.Leading), flow.Height));
        flow.Write(PageFormat.Left, 0, Symbol, TypeSize.Body, bold: true);
        if (Typesetting.Width(Symbol, TypeSize.Body, bold: true) > indent - 2)
        {
            flow.Advance(pitch);
        }

        foreach (var (words, size, ink, bold) in lines)
        {
            flow.Need(size * Typesetting.Leading);
            flow.Write(PageFormat.Left + indent, 0, words, size, ink, bold);
            if (beside && ReferenceEquals(words, numbers[^1]))
            {
                flow.Write(PageFormat.Left + indent + used, 0, value, size, bold: true);
            }

            flow.Advance(size * Typesetting.Leading);
        }

        flow.Skip(1.8);
    }
}
