using System.Globalization;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>The table of contents: the headings that follow, with their pages. The first two levels have lines of their own; the third runs on below its second,
/// so that hundreds of subjects still find room on a page.</summary>
public sealed record Contents : Block
{
    private const int ShortName = 24;
    private const double Step = 5;
    private const double Pitch = TypeSize.Body * Typesetting.Leading;

    internal override void Lay(Flow flow)
    {
        List<PlacedHeading> running = [];
        foreach (var heading in flow.Contents.Skip(flow.Headings.Count).Where(h => h.Level <= 3))
        {
            if (heading.Level == 3)
            {
                running.Add(heading);
                continue;
            }

            LayRunning(flow, running);
            LayLine(flow, heading);
        }

        LayRunning(flow, running);
        flow.Skip(4);
    }

    private static void LayLine(Flow flow, PlacedHeading heading)
    {
        var first = heading.Level == 1;
        flow.Skip(first ? 1.2 : 0);
        flow.Need(Pitch);
        var left = PageFormat.Left + ((heading.Level - 1) * Step);
        var page = Page(heading);
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

        flow.Advance(Pitch);
    }

    private static void LayRunning(Flow flow, List<PlacedHeading> headings)
    {
        if (headings.Count == 0)
        {
            return;
        }

        var left = PageFormat.Left + (2 * Step);
        var line = TypeSize.Small * Typesetting.Leading;
        foreach (var words in TextWrap.Lines(string.Join("\u00a0· ", headings.Select(Entry)), TypeSize.Small, bold: false, PageFormat.Right - left - 6))
        {
            flow.Need(line);
            flow.Write(left, 0, words, TypeSize.Small, Ink.Quiet);
            flow.Advance(line);
        }

        flow.Skip(0.8);
        headings.Clear();
    }

    // A short name stays whole, and its page stays with it.
    private static string Entry(PlacedHeading heading) =>
        (heading.Brief.Length <= ShortName ? heading.Brief.Replace(' ', '\u00a0') : heading.Brief) + ",\u00a0" + Page(heading);

    private static string Page(PlacedHeading heading) => (heading.Page + 1).ToString(CultureInfo.InvariantCulture);
}
