using System.Globalization;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>The table of contents: headings of the first levels with their pages.</summary>
/// <param name="Levels">How many levels, 1 to 3.</param>
public sealed record Contents(int Levels = 2) : Block
{
    internal override void Lay(Flow flow)
    {
        var line = TypeSize.Body * Typesetting.Leading;
        foreach (var heading in flow.Contents.Where(h => h.Level <= Levels))
        {
            var first = heading.Level == 1;
            flow.Skip(first ? 1.2 : 0);
            flow.Need(line);
            var left = PageFormat.Left + ((heading.Level - 1) * 5);
            var page = (heading.Page + 1).ToString(CultureInfo.InvariantCulture);
            var words = TextMeasure.Fitted(heading.Text, TypeSize.Body, PageFormat.Right - left - 14);
            flow.Write(left, 0, words, TypeSize.Body, bold: first);
            flow.Write(PageFormat.Right, 0, page, TypeSize.Body, anchor: Anchor.End);
            var y = flow.Y + Flow.Baseline(TypeSize.Body);
            var from = left + Typesetting.Width(words, TypeSize.Body, first) + 2;
            var to = PageFormat.Right - Typesetting.Width(page, TypeSize.Body, bold: false) - 2;
            if (to > from)
            {
                flow.Add(new Line(new(from, y), new(to, y), new Style(Ink.Quiet, 0.12, Dash.Dotted)));
            }

            flow.Advance(line);
        }

        flow.Skip(4);
    }
}
