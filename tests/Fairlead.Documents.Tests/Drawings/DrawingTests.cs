using System.Runtime.CompilerServices;
using System.Xml.Linq;
using Fairlead.Drawings;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Documents;

public sealed class DrawingTests
{
    private static readonly Assessment Demo = Assess("survey-twin");
    private static readonly string Hash = new('5', 64);

    public static TheoryData<DrawingKind> Kinds => [.. Enum.GetValues<DrawingKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_two_texts_of_a_drawing_overlap_and_none_leaves_the_paper(DrawingKind kind) =>
        Assert.All(DrawingSet.Of(Demo, Hash, kind), d => Clear.Assert(d.Picture, d.Name));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Drawings_of_a_job_full_of_faults_can_be_read_too(DrawingKind kind) =>
        Assert.All(DrawingSet.Of(Assess("with-faults"), Hash, kind), d => Clear.Assert(d.Picture, d.Name));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_drawing_is_valid_xml_that_says_in_words_what_it_shows_and_carries_job_revision_and_hash(DrawingKind kind)
    {
        var drawings = DrawingSet.Of(Demo, Hash, kind).ToArray();
        Assert.NotEmpty(drawings);
        Assert.Equal(drawings.Length, drawings.Select(d => d.Name).Distinct().Count());
        Assert.All(drawings, d =>
        {
            var words = XDocument.Parse(SvgWriter.Write(d.Picture)).Root!.Value;
            Assert.NotEmpty(d.Picture.Description);
            Assert.Contains(Demo.Job.Order.Number, words, StringComparison.Ordinal);
            Assert.Contains(Hash, words, StringComparison.Ordinal);
            Assert.Contains("revision", words, StringComparison.Ordinal);
        });
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_same_job_gives_the_same_drawings(DrawingKind kind) =>
        Assert.Equal(DrawingSet.Of(Demo, Hash, kind).Select(d => SvgWriter.Write(d.Picture)), DrawingSet.Of(Assess("survey-twin"), Hash, kind).Select(d => SvgWriter.Write(d.Picture)));

    [Fact]
    public void Every_circuit_stands_on_the_wiring_diagrams_just_once()
    {
        var marks = Words(DrawingKind.Wiring).Select(w => w.Split(' ')[0]).GroupBy(w => w, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        Assert.All(Demo.Circuits, c => Assert.Equal(1, marks.GetValueOrDefault(c.Circuit.Id)));
    }

    // Wires are straight and level, so they cannot cross: what is left is that no two lie on one another.
    [Fact]
    public void No_wire_of_a_wiring_diagram_lies_on_another() => Assert.All(DrawingSet.Of(Demo, Hash, DrawingKind.Wiring), d =>
    {
        var wires = d.Picture.Shapes.OfType<Line>().Where(l => l.From.Y == l.To.Y && Math.Abs(l.From.X - l.To.X) is > 60 and < 200).ToArray();
        Assert.All(wires, a => Assert.DoesNotContain(wires, b => !ReferenceEquals(a, b) && Math.Abs(a.From.Y - b.From.Y) < 3
            && Math.Min(a.From.X, a.To.X) < Math.Max(b.From.X, b.To.X) && Math.Min(b.From.X, b.To.X) < Math.Max(a.From.X, a.To.X)));
    });

    [Fact]
    public void Every_contact_that_a_circuit_ends_in_stands_on_the_wiring_diagrams()
    {
        var words = Words(DrawingKind.Wiring).ToHashSet(StringComparer.Ordinal);
        Assert.All(Demo.Circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }), e => Assert.Contains(e.IsPoint ? e.Item : e.Pin, words));
    }

    private static IEnumerable<string> Words(DrawingKind kind) => DrawingSet.Of(Demo, Hash, kind).SelectMany(d => d.Picture.Shapes.OfType<Text>()).Select(t => t.Words);

    internal static Assessment Assess(string demo, [CallerFilePath] string here = "") =>
        new Assessor().Assess(JobFolder.Load(Path.Combine(Path.GetDirectoryName(here)!, "../../../demo", demo)).Job!);
}
