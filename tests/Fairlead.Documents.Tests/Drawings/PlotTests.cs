using CsCheck;
using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

public sealed class PlotTests
{
    [Theory]
    [MemberData(nameof(SvgWriterTests.Pictures), MemberType = typeof(SvgWriterTests))]
    public void No_two_texts_of_a_plot_overlap_and_none_leaves_the_paper(string name) => Clear.Assert(SvgWriterTests.Draw(name));

    [Fact]
    public void Marks_thrown_anywhere_on_an_envelope_keep_their_labels_apart() =>
        Gen.Select(Gen.Double[181, 195], Gen.Double[3700, 6200]).Array[1, 7].Sample(
            points =>
            {
                var marks = points.Select((p, i) => new EnvelopeMark($"loading {i + 1}", Samples.Point(p.Item1, p.Item2), EnvelopeMarkKind.Loading)).ToSequence();
                Clear.Assert(EnvelopePlot.Draw(Samples.Envelope with { Marks = marks, Traces = [] }));
            },
            iter: 300);

    [Fact]
    public void A_loading_outside_the_envelope_is_said_in_words()
    {
        var picture = EnvelopePlot.Draw(Samples.Envelope);
        Assert.Contains(picture.Shapes.OfType<Text>(), t => t.Words == "aft baggage first, fuel last: OUTSIDE" && t.Ink == Ink.Accent);
        Assert.Contains("5810 lb at station 196.7 in, outside the envelope", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Bars_are_as_high_as_their_loads()
    {
        var bars = LoadChart.Draw(Samples.Load).Shapes.OfType<Rect>().Where(r => r.Height > 3.5 || r.Width > 3.5).ToArray();
        Assert.Equal(14, bars.Length);
        var perAmpere = bars[0].Height / 41.2;
        Assert.All(bars.Zip(Samples.Load.Conditions.SelectMany(c => new[] { c.Before.In("A"), c.After.In("A") })), x => Assert.Equal(x.Second * perAmpere, x.First.Height, 6));
    }

    [Fact]
    public void A_load_above_the_capacity_is_said_in_words() =>
        Assert.Equal(["over"], LoadChart.Draw(Samples.Load).Shapes.OfType<Text>().Where(t => t.Ink == Ink.Accent && t.Bold).Select(t => t.Words));

    [Fact]
    public void A_chart_without_conditions_is_refused() =>
        Assert.Throws<ArgumentException>(() => LoadChart.Draw(Samples.Load with { Conditions = [] }));
}
