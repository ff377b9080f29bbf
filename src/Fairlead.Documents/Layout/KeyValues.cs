using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>One line of a block of facts.</summary>
/// <param name="Key">What it is.</param>
/// <param name="Value">Its value.</param>
public readonly record struct KeyValue(string Key, string Value);

/// <summary>A block of facts: what it is on the left, its value on the right.</summary>
public sealed record KeyValues(Sequence<KeyValue> Lines) : Block
{
    private const double Gutter = 4;

    internal override void Lay(Flow flow)
    {
        var keys = Math.Min(60, Lines.Select(l => Typesetting.Width(l.Key, TypeSize.Body, bold: false)).DefaultIfEmpty(0).Max());
        var line = TypeSize.Body * Typesetting.Leading;
        foreach (var (key, value) in Lines)
        {
            var left = TextWrap.Lines(key, TypeSize.Body, bold: false, keys + 0.01);
            var right = TextWrap.Lines(value, TypeSize.Body, bold: false, flow.Width - keys - Gutter);
            var height = Math.Max(left.Count, right.Count) * line;
            flow.Need(height);
            for (var i = 0; i < left.Count; i++)
            {
                flow.Write(PageFormat.Left, i * line, left[i], TypeSize.Body, Ink.Quiet);
            }

            for (var i = 0; i < right.Count; i++)
            {
                flow.Write(PageFormat.Left + keys + Gutter, i * line, right[i], TypeSize.Body);
            }

            flow.Advance(height + 0.5);
        }

        flow.Skip(3);
    }
}
