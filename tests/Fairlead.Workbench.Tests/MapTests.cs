using Fairlead.Drawings.Views;
using Fairlead.Model.Storage;
using Fairlead.Workbench;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Workbench;

public sealed class MapTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin");

    [Fact]
    public void Everything_that_goes_in_stands_on_every_side_of_the_aircraft_at_its_stations()
    {
        var desk = Open();
        foreach (var aspect in Enum.GetValues<Aspect>())
        {
            var map = desk.Map(aspect, new MapLook())!;
            Assert.Equal(desk.Texts.IdsOf("change/fit").Concat(desk.Texts.IdsOf("change/antennas")).Order(StringComparer.Ordinal), map.Marks.Where(m => m.Movable).Select(m => m.Id).Order(StringComparer.Ordinal));
            Assert.All(map.Marks, m => Assert.True(m.X >= 0 && m.X <= map.Width && m.Y >= 0 && m.Y <= map.Height, m.Id));
        }

        var box = Mark(desk.Map(Aspect.Side, new MapLook())!, "XPD1");
        Assert.Equal((1.12, 0.3, 1.41), (box.Fs, box.Bl, box.Wl));
    }

    // Aft is right from the side and from above, up is up; from above right is down of the middle line, and from the front it is at the left.
    [Theory]
    [InlineData(Aspect.Side, "fs", 1, 0)]
    [InlineData(Aspect.Side, "wl", 0, -1)]
    [InlineData(Aspect.Plan, "bl", 0, -1)]
    [InlineData(Aspect.Front, "bl", -1, 0)]
    [InlineData(Aspect.Front, "wl", 0, -1)]
    public void What_is_dragged_stands_where_it_was_dropped(Aspect aspect, string key, int right, int down)
    {
        const double far = 3;
        var desk = Open();
        var before = desk.Map(aspect, new MapLook())!;
        var edit = Assert.Single(MapMoves.Of(before, Mark(before, "RA1"), far * right, far * down));
        Assert.EndsWith("/place/" + key, edit.Path, StringComparison.Ordinal);
        var view = desk.Apply([edit]);
        Assert.Empty(view.Problems);
        var (from, to) = (Mark(before, "RA1"), Mark(desk.Map(aspect, new MapLook())!, "RA1"));
        var half = MapMoves.Step(before.Unit) * 1000 / before.Scale / 2;
        Assert.Equal(from.X + (far * right), to.X, half + 0.001);
        Assert.Equal(from.Y + (far * down), to.Y, half + 0.001);
    }

    [Fact]
    public void A_step_by_key_is_the_smallest_move_and_is_written_in_the_unit_of_the_job()
    {
        var map = Open().Map(Aspect.Side, new MapLook())!;
        Assert.Equal("m", map.Unit);
        Assert.Equal([new JobEdit(EditKind.Set, "change/fit/XPD1/place/fs", "1.13 m")], MapMoves.Steps(map, Mark(map, "XPD1"), 1, 0));
        Assert.Empty(MapMoves.Of(map, Mark(map, "XPD1"), 0.001, 0));
    }

    [Fact]
    public void Nearer_shows_less_of_the_aircraft_and_larger()
    {
        var desk = Open();
        var (whole, near) = (desk.Map(Aspect.Side, new MapLook())!, desk.Map(Aspect.Side, new MapLook(Across: 0.2).Nearer(true).Nearer(true))!);
        Assert.Equal(whole.Scale / 4, near.Scale, 1e-9);
        Assert.True(near.Marks.Length < whole.Marks.Length);
        Assert.Equal(new MapLook(), new MapLook().Nearer(true).Nearer(false));
    }

    [Fact]
    public void A_finding_stands_at_what_it_is_about_with_the_gravest_verdict()
    {
        var desk = new Desk(new FolderFiles(Path.Combine(AppContext.BaseDirectory, "demo", "with-faults")));
        var map = desk.Map(Aspect.Side, new MapLook())!;
        var marked = map.Marks.Where(m => m.Findings > 0).ToArray();
        Assert.NotEmpty(marked);
        Assert.All(marked, m => Assert.Equal(m.Findings, desk.About(m.Path)!.Findings.Length));
        Assert.Contains(marked, m => m.Verdict == "fails" && desk.About(m.Path)!.Findings.Any(f => f.Severity == "fails"));
    }

    [Fact]
    public void A_panel_is_open_from_its_opening_until_its_closing()
    {
        TaskView Task(string kind, string panel, string state) => new(kind + panel, kind, "", "", state, "panel/" + panel, [], [], [], [], [], "", false, [], false, "");
        Assert.Equal(["B"], OpenPanels.Of([Task("open", "A", "done"), Task("close", "A", "done"), Task("open", "B", "signed"), Task("close", "B", "ready"), Task("open", "C", "ready")]));
    }

    private static MapMark Mark(MapView map, string id) => map.Marks.Single(m => m.Id == id && m.Movable);

    private static Desk Open() => new(new FolderFiles(Folder));
}
