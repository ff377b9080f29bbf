using System.Globalization;
using System.Xml.Linq;
using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Pictures => ["envelope", "load", "timeline"];

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_plot_is_valid_xml_with_a_title_and_a_description_for_those_who_cannot_see_it(string name)
    {
        var picture = Draw(name);
        var root = XDocument.Parse(SvgWriter.Write(picture)).Root!;
        Assert.Equal(Svg + "svg", root.Name);
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal(picture.Title, root.Element(Svg + "title")!.Value);
        Assert.Equal(picture.Description, root.Element(Svg + "desc")!.Value);
        Assert.NotEmpty(picture.Description);
    }

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_plot_is_the_same_text_whatever_the_culture(string name)
    {
        var here = CultureInfo.CurrentCulture;
        var expected = SvgWriter.Write(Draw(name));
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(expected, SvgWriter.Write(Draw(name)));
        }
        finally
        {
            CultureInfo.CurrentCulture = here;
        }
    }

    [Fact]
    public void Text_is_escaped_and_what_xml_forbids_is_replaced()
    {
        var picture = new Picture(10, 10, "a < b & c", "", [new Text(new(1, 1), "Ω > 2 \u0001\ud800", 3)]);
        var root = XDocument.Parse(SvgWriter.Write(picture)).Root!;
        Assert.Equal("a < b & c", root.Element(Svg + "title")!.Value);
        Assert.Equal("Ω > 2 \uFFFD\uFFFD", root.Element(Svg + "text")!.Value);
    }

    [Fact]
    public void A_coordinate_that_is_no_number_is_refused()
    {
        var picture = new Picture(10, 10, "t", "d", [new Line(new(double.NaN, 0), new(1, 1), Style.Usual)]);
        Assert.Contains("not a finite number", Assert.Throws<ArgumentOutOfRangeException>(() => SvgWriter.Write(picture)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Verdicts_differ_by_shape_and_word()
    {
        var verdicts = Enum.GetValues<Verdict>();
        Assert.Equal(verdicts.Length, verdicts.Select(v => string.Join(",", VerdictMark.At(v, new(0, 0), 4).Select(s => s.GetType().Name))).Distinct().Count());
        Assert.Equal(["Holds", "Caution", "Cannot tell", "Fails"], verdicts.Select(VerdictMark.Word));
    }

    internal static Picture Draw(string name) => name switch
    {
        "envelope" => EnvelopePlot.Draw(Samples.Envelope),
        "load" => LoadChart.Draw(Samples.Load),
        _ => SheddingTimeline.Draw(Samples.Timeline),
    };
}
