using Fairlead.Bench;
using Fairlead.Drawings;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Documents;

/// <summary>Drawings of jobs with far more circuits than the demonstration, and of jobs with next to nothing.</summary>
public sealed class GeneratedDrawingTests
{
    private static readonly string Hash = new('a', 64);
    private static readonly Assessment Large = new Assessor().Assess(GeneratedJob.Of(400));

    public static TheoryData<string, DrawingKind> Jobs => [.. new[] { "400 circuits", "a box without circuits", "one circuit", "nothing" }
        .SelectMany(job => Enum.GetValues<DrawingKind>().Select(kind => new TheoryDataRow<string, DrawingKind>(job, kind)))];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_two_texts_overlap_and_none_leaves_the_paper(string job, DrawingKind kind) =>
        Assert.All(DrawingSet.Of(Of(job), Hash, kind), d => Clear.Assert(d.Picture, d.Name));

    [Fact]
    public void Every_circuit_of_a_large_job_stands_on_its_wiring_diagrams_just_once()
    {
        var marks = DrawingSet.Of(Large, Hash, DrawingKind.Wiring).SelectMany(d => d.Picture.Shapes.OfType<Text>()).Select(t => t.Words.Split(' ')[0]).CountBy(w => w).ToDictionary(StringComparer.Ordinal);
        Assert.All(Large.Circuits, c => Assert.Equal(1, marks.GetValueOrDefault(c.Circuit.Id)));
    }

    [Fact]
    public void Every_contact_of_a_large_job_is_in_the_table_of_its_connector()
    {
        var words = DrawingSet.Of(Large, Hash, DrawingKind.Connectors).SelectMany(d => d.Picture.Shapes.OfType<Text>()).Select(t => t.Words).ToHashSet(StringComparer.Ordinal);
        Assert.All(Large.Circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }).Where(e => !e.IsPoint), e => Assert.Contains($"{e.Item} {e.Connector}", words));
    }

    [Theory]
    [InlineData(Ink.Quiet)]
    public void Leaders_of_aircraft_views_run_through_no_name(Ink leader) => Assert.All(
        DrawingSet.Of(DrawingTests.Assess("survey-twin"), Hash, DrawingKind.Aircraft).Concat(DrawingSet.Of(Large, Hash, DrawingKind.Aircraft)), d =>
        {
            var names = d.Picture.Shapes.OfType<Text>().Select(t => (t.Words, Box: Clear.BoxOf(t))).ToArray();
            var leaders = d.Picture.Shapes.OfType<Line>().Where(l => l.Style is { Width: 0.12, Dash: Dash.Solid } && l.Style.Stroke == leader);
            Assert.All(leaders, l => Assert.DoesNotContain(names, n => n.Box.Grown(-0.2).Meets(l.From, l.To)));
        });

    [Fact]
    public void Names_of_aircraft_views_cover_no_symbol() => Assert.All(DrawingSet.Of(DrawingTests.Assess("survey-twin"), Hash, DrawingKind.Aircraft), d =>
    {
        var foot = d.Picture.Shapes.OfType<Rect>().Where(r => r.Style == Style.Thin).Max(r => r.Corner.Y + r.Height);
        var names = d.Picture.Shapes.OfType<Text>().Select(t => (t.Words, Box: Clear.BoxOf(t))).Where(n => n.Box.Bottom < foot).ToArray();
        var dots = d.Picture.Shapes.OfType<Circle>().Select(c => Box.Around(c.Centre, c.Radius));
        var boxes = d.Picture.Shapes.OfType<Rect>().Where(r => r.Style.Stroke != Ink.None && r.Width < 100).Select(r => new Box(r.Corner.X, r.Corner.Y, r.Corner.X + r.Width, r.Corner.Y + r.Height));
        Assert.All(dots.Concat(boxes), s => Assert.DoesNotContain(names, n => n.Box.Overlaps(s)));
    });

    // What stands close together on a whole view is drawn once more, larger, and nothing of the detail reaches out of its box.
    [Fact]
    public void Crowded_views_have_a_detail_at_twice_the_size_or_larger_that_stays_in_its_box()
    {
        var sheets = DrawingSet.Of(DrawingTests.Assess("survey-twin"), Hash, DrawingKind.Aircraft).ToDictionary(d => d.Name, d => d.Picture);
        Assert.All(new[] { "side", "plan", "front" }, view =>
        {
            var detail = sheets[$"aircraft-{view}-detail"];
            Assert.True(ScaleOf(sheets[$"aircraft-{view}"]) >= 2 * ScaleOf(detail));
            var frame = detail.Shapes.OfType<Rect>().Single(r => r.Style == Style.Thin);
            var box = new Box(frame.Corner.X, frame.Corner.Y, frame.Corner.X + frame.Width, frame.Corner.Y + frame.Height);
            Assert.All(detail.Shapes.OfType<Line>().Where(l => l.Style.Stroke != Ink.Tint && box.Grown(-1).Meets(l.From, l.To)), l => Assert.True(box.Grown(0.01).Contains(l.From) && box.Grown(0.01).Contains(l.To)));
            Assert.All(detail.Shapes.OfType<Text>().Where(t => t.Bold && t.Ink == Ink.Accent), t => Assert.True(box.Contains(Clear.BoxOf(t))));
        });
    }

    private static double ScaleOf(Picture picture) => double.Parse(
        picture.Shapes.OfType<Text>().Single(t => t.Words.StartsWith("1:", StringComparison.Ordinal)).Words[2..], System.Globalization.CultureInfo.InvariantCulture);

    private static Assessment Of(string job)
    {
        var small = GeneratedJob.Of(40);
        var change = job switch
        {
            "400 circuits" => null,
            "a box without circuits" => small.Change with { Circuits = null, Power = null },
            "one circuit" => small.Change with { Circuits = new Catalog<Circuit>([small.Change.Circuits![0]]), Power = null },
            _ => small.Change with { Circuits = null, Power = null, Fit = null },
        };
        return change is null ? Large : new Assessor().Assess(small with { Change = change });
    }
}
