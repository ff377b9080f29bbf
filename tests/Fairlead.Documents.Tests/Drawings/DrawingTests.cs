using System.Runtime.CompilerServices;
using System.Xml.Linq;
using Fairlead.Drawings;
using Fairlead.Drawings.Harness;
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
    public void Another_reader_of_xml_finds_no_fault_in_any_drawing(DrawingKind kind) => Assert.All(
        DrawingSet.Of(Demo, Hash, kind), d => Assert.Empty(Tool.Run("xmllint", System.Text.Encoding.UTF8.GetBytes(SvgWriter.Write(d.Picture)), "--noout")));

    // A sheet says which of how many it is; the sheets of a kind count from one to all.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Sheets_of_a_kind_are_numbered_from_one_to_all(DrawingKind kind)
    {
        var sheets = DrawingSet.Of(Demo, Hash, kind).Where(d => !d.Tile).ToArray();
        Assert.All(sheets.Index(), x => Assert.Contains(x.Item.Picture.Shapes.OfType<Text>(), t => t.Words == $"{x.Index + 1} of {sheets.Length}"));
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

    [Fact]
    public void Along_a_form_board_every_wire_is_as_long_as_its_way()
    {
        var boards = FlatHarness.Of(Demo).SelectMany(h => h.Branches.Where(b => b.Kind != BranchKind.Lead).Select(b => (Bundle: h.Bundle.Split('-')[0], b.Name, b.Length)))
            .ToDictionary(b => (b.Bundle, b.Name), b => b.Length);
        Assert.All(Demo.Circuits.Where(c => c.Way is not null), c => Assert.Equal(c.Way!.Length.In("mm"), c.Way.Segments.Sum(s => boards[(c.Circuit.Bundle, s)]), 6));
    }

    // The take-off is the second method: what it cuts for a circuit is its way with slack and the leads at both ends.
    [Fact]
    public void A_circuit_along_a_form_board_is_as_long_as_its_wire_is_cut_with_drip_loops_and_withdrawal_in_its_leads()
    {
        var change = Demo.Job.Change;
        var wiring = change.Wiring with { DripLoop = Length.Of(30, "mm"), Withdrawal = Length.Of(250, "mm") };
        var assessment = new Assessor().Assess(Demo.Job with { Change = change with { Wiring = wiring } });
        var leads = FlatHarness.Of(assessment).SelectMany(h => h.Branches.Where(b => b.Kind == BranchKind.Lead).Select(b => (Bundle: h.Bundle.Split('-')[0], b.Name, b.Length)))
            .ToDictionary(b => (b.Bundle, b.Name), b => b.Length);
        Assert.All(assessment.Circuits.Where(c => c.Way is not null && c.Circuit.Length is null), c =>
        {
            var ends = new[] { c.Circuit.From, c.Circuit.To }.Select(e => leads[(c.Circuit.Bundle, e.IsPoint ? e.Item : $"{e.Item} {e.Connector}")]).ToArray();
            Assert.Equal(c.Length!.Value.In("mm"), (c.Way!.Length.In("mm") * (1 + wiring.Slack.Si)) + ends.Sum(), 6);
        });
    }

    [Theory]
    [InlineData("survey-twin")]
    [InlineData("with-faults")]
    public void No_branch_of_a_form_board_crosses_another(string demo) => Assert.All(FlatHarness.Of(Assess(demo)), h =>
    {
        var runs = h.Branches.SelectMany((b, i) => b.Line.Zip(b.Line.Skip(1)).Select(r => (Branch: i, r.First, r.Second))).ToArray();
        Assert.All(runs.Where(r => r.First.Y == r.Second.Y), level => Assert.DoesNotContain(runs, upright => upright.Branch != level.Branch && upright.First.X == upright.Second.X
            && upright.First.X > Math.Min(level.First.X, level.Second.X) && upright.First.X < Math.Max(level.First.X, level.Second.X)
            && level.First.Y > Math.Min(upright.First.Y, upright.Second.Y) && level.First.Y < Math.Max(upright.First.Y, upright.Second.Y)));
    });

    public static TheoryData<string> Papers => [.. TilePaper.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Papers))]
    public void Neighbouring_tiles_show_the_same_twenty_millimetres_and_every_tile_can_be_checked_with_a_scale_of_a_hundred(string paper)
    {
        var tiles = Tiles(paper);
        Assert.All(tiles, t =>
        {
            Assert.Contains(t.Picture.Shapes.OfType<Line>(), l => l.From.Y == l.To.Y && Math.Abs(l.To.X - l.From.X - 100) < 1e-9);
            var rings = t.Picture.Shapes.OfType<Circle>().Where(c => c.Radius == 2.5).Select(c => c.Centre).ToArray();
            var frame = t.Picture.Shapes.OfType<Rect>().First();
            Assert.Equal(4, rings.Length);
            Assert.Equal(20, rings[0].X - frame.Corner.X + (frame.Corner.X + frame.Width - rings.Max(r => r.X)), 9);
        });
    }

    // ISO 216: A3 is 297 mm by 420 mm, A4 210 mm by 297 mm.
    [Theory]
    [InlineData("A3", 420, 297)]
    [InlineData("A4", 297, 210)]
    public void Tiles_fit_their_paper_can_be_read_and_name_the_neighbours_that_there_are(string paper, double width, double height)
    {
        var tiles = Tiles(paper);
        var bundles = tiles.GroupBy(t => t.Name[..t.Name.IndexOf($"-{paper}-", StringComparison.Ordinal)]).ToArray();
        Assert.Equal(FlatHarness.Of(Demo).Count(), bundles.Length);
        Assert.All(bundles, bundle => Assert.All(bundle, t =>
        {
            Assert.Equal((width, height), (t.Picture.Width, t.Picture.Height));
            Clear.Assert(t.Picture, t.Name);
            var here = bundle.Select(o => o.Name[(o.Name.LastIndexOf('-', o.Name.LastIndexOf('-') - 1) + 1)..]).ToArray();
            Assert.All(t.Picture.Shapes.OfType<Text>().Where(x => x.Words.StartsWith("tile ", StringComparison.Ordinal)), x => Assert.Contains(x.Words[5..], here));
        }));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Names_on_tiles_cover_no_tie_or_clamp(string paper) => Assert.All(Tiles(paper), t =>
    {
        var clamps = t.Picture.Shapes.OfType<Rect>().Where(r => r is { Width: 5, Height: 5 }).Select(r => new Box(r.Corner.X, r.Corner.Y, r.Corner.X + 5, r.Corner.Y + 5)).ToArray();
        Assert.All(t.Picture.Shapes.OfType<Text>().Select(Clear.BoxOf), b => Assert.DoesNotContain(clamps, b.Overlaps));
    });

    [Fact]
    public void References_between_wiring_diagrams_lead_to_the_zone_where_the_item_stands_and_every_item_drawn_twice_has_them()
    {
        var sheets = DrawingSet.Of(Demo, Hash, DrawingKind.Wiring).Select(d => d.Picture.Shapes.OfType<Text>().ToArray()).ToArray();
        var places = sheets.SelectMany((texts, i) => texts.Where(t => t.Bold).Select(t => (Item: t.Words, Place: $"{i + 1}/{DrawingFrame.Zone(t.At)}"))).ToLookup(p => p.Item, p => p.Place, StringComparer.Ordinal);
        var followed = 0;
        foreach (var texts in sheets)
        {
            foreach (var name in texts.Where(t => t.Bold && places[t.Words].Distinct().Count() > 1))
            {
                var reference = texts.Where(t => t.Ink == Ink.Accent && t.Words.StartsWith("see ", StringComparison.Ordinal)).MinBy(t => Math.Abs(t.At.Y - name.At.Y) + (Math.Abs(t.At.X - name.At.X) / 100))!;
                Assert.All(reference.Words[4..].Split(" +")[0].Split(", "), place => Assert.Contains(place, places[name.Words]));
                followed++;
            }
        }

        Assert.True(followed > 10, "the demo has items on several sheets");
    }

    [Fact]
    public void A_coaxial_line_bears_its_sign_at_both_ends_and_no_other_wire_does()
    {
        var coax = Demo.Circuits.Count(c => Demo.Job.Parts.Coax!.Contains(c.Part));
        Assert.True(coax > 0);
        Assert.Equal(2 * coax, DrawingSet.Of(Demo, Hash, DrawingKind.Wiring).SelectMany(d => d.Picture.Shapes.OfType<Circle>()).Count(c => c.Radius == 1.6));
    }

    [Fact]
    public void No_wire_mark_runs_into_a_twist_or_shield() => Assert.All(DrawingSet.Of(Demo, Hash, DrawingKind.Wiring), d =>
    {
        var circuits = Demo.Circuits.Select(c => c.Circuit.Id).ToHashSet(StringComparer.Ordinal);
        var marks = d.Picture.Shapes.OfType<Text>().Where(t => t.Anchor == Anchor.Middle && circuits.Contains(t.Words.Split(' ')[0])).Select(Clear.BoxOf).ToArray();
        var runs = d.Picture.Shapes.OfType<Polyline>().SelectMany(p => p.Points.Zip(p.Points.Skip(1))).Where(r => r.First.X != r.Second.X && r.First.Y != r.Second.Y);
        Assert.All(runs, r => Assert.DoesNotContain(marks, m => m.Meets(r.First, r.Second)));
    });

    // ISO 3098-1: the least nominal height of lettering is 1.8 mm [from memory]. Numbers inside cavities are as large as their cavity.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_lettering_is_lower_than_the_standard_allows(DrawingKind kind) => Assert.All(
        DrawingSet.Of(Demo, Hash, kind).SelectMany(d => d.Picture.Shapes.OfType<Text>()).Where(t => kind != DrawingKind.Connectors || t.Anchor != Anchor.Middle),
        t => Assert.True(t.Size * TextMeasure.CapHeight >= 1.8, t.Words));

    private static Drawing[] Tiles(string paper) => [.. DrawingSet.Of(Demo, Hash, DrawingKind.FormBoard, TilePaper.All.First(p => p.Name == paper)).Where(d => d.Tile)];

    private static IEnumerable<string> Words(DrawingKind kind) => DrawingSet.Of(Demo, Hash, kind).SelectMany(d => d.Picture.Shapes.OfType<Text>()).Select(t => t.Words);

    internal static Assessment Assess(string demo, [CallerFilePath] string here = "") =>
        new Assessor().Assess(JobFolder.Load(Path.Combine(Path.GetDirectoryName(here)!, "../../../demo", demo)).Job!);
}
