using System.Globalization;
using Fairlead.Model.Storage;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Workbench;

public sealed class ScenarioPlayerTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin");

    // 10 nmi ahead, closing at 300 kt: by hand 5 nmi a minute, so 5 nmi are left after 60 s.
    [Fact]
    public void A_target_is_drawn_where_its_range_and_bearing_put_it_at_every_second()
    {
        var player = ScenarioPlayer.Of(Demo("SC1"));
        Assert.Equal(10, player.Reach);
        var start = player.Blips.Single(b => b.Track == "T1");
        Assert.Equal((0, -1), (Math.Round(start.X, 9), Math.Round(start.Y, 9)));
        var later = player.To(60).Blips.Single(b => b.Track == "T1");
        Assert.Equal(5, later.Now.Range, 0.001);
        Assert.Equal(-0.5, later.Y, 0.001);
    }

    [Fact]
    public void A_target_is_shown_from_its_appearance_to_its_end_and_what_is_beyond_the_ring_is_said_but_not_shown()
    {
        var player = ScenarioPlayer.Of(Demo("SC1"));
        Assert.DoesNotContain(player.To(9).Blips, b => b.Track == "T2");
        Assert.Contains(player.To(10).Blips, b => b.Track == "T2");
        var near = player with { Reach = 5 };
        Assert.DoesNotContain(near.Blips, b => b.Track == "T1");
        Assert.Equal(["T1"], near.Beyond);
    }

    // The check value of the calculation: at level B the traffic advisory begins between 88.612 and 90 s.
    [Fact]
    public void An_advisory_begins_at_the_second_that_the_sheet_tells()
    {
        var player = ScenarioPlayer.Of(Demo("SC1"));
        Assert.Contains((89, "T1 traffic"), player.Events.Select(e => (e.Second, e.What.Replace(" advisory", "", StringComparison.Ordinal))));
        Assert.NotEqual("traffic", player.To(88).Blips.Single(b => b.Track == "T1").Now.Symbol);
        Assert.Equal("traffic", player.To(89).Blips.Single(b => b.Track == "T1").Now.Symbol);
    }

    [Fact]
    public void Bearing_right_is_drawn_right_and_a_target_without_altitude_has_no_tag()
    {
        var player = ScenarioPlayer.Of(Demo("SC2")).To(10);
        var abeam = player.Blips.Single(b => b.Track == "T2");
        Assert.True(abeam.X > 0);
        Assert.Equal(0, abeam.Y, 1e-6);
        Assert.Empty(abeam.Now.Tag);
        Assert.Contains("no altitude", abeam.Words, StringComparison.Ordinal);
        var descending = player.Blips.Single(b => b.Track == "T1");
        Assert.Equal(("+10", "down"), (descending.Now.Tag, descending.Now.Arrow));
    }

    [Fact]
    public void It_plays_to_its_end_stops_there_and_begins_again()
    {
        var player = ScenarioPlayer.Of(Demo("SC2"));
        Assert.Same(player, player.Ticked());
        var played = player.Toggled();
        for (var i = 0; i < player.Last; i++)
        {
            Assert.True(played.Playing);
            played = played.Ticked();
        }

        Assert.Equal((player.Last, false), (played.Second, played.Playing));
        Assert.Equal((0, true), (played.Toggled().Second, played.Toggled().Playing));
        Assert.Equal((0, player.Last), (player.To(-5).Second, player.To(9999).Second));
    }

    [Fact]
    public void Every_pair_of_antennas_that_has_a_sheet_stands_in_the_matrix()
    {
        var sheets = new Desk(new FolderFiles(Folder)).Discipline(Calculations.Discipline.Radio).Sheets;
        var matrix = PairMatrix.Of(sheets);
        Assert.Equal(sheets.Count(s => s.Subject.Contains("/from-", StringComparison.Ordinal)), matrix.Cells.Count);
        Assert.All(matrix.Cells, c => Assert.Equal($"antenna/{c.Key.Hearing}/from-{c.Key.Sending}", c.Value.Subject));
        Assert.All(matrix.Cells.Keys, k => Assert.Contains(k.Hearing, matrix.Hearing));
        Assert.All(matrix.Cells.Values.Where(c => c.Margin.Length > 0), c => Assert.InRange(double.Parse(c.Margin.Split(' ')[0], CultureInfo.InvariantCulture) - double.Parse(c.Brief, CultureInfo.InvariantCulture), 0, 0.1));
    }

    [Fact]
    public void Every_circuit_that_ends_in_a_connector_stands_in_its_contact_table()
    {
        var desk = new Desk(new FolderFiles(Folder));
        var rows = desk.Connectors.SelectMany(c => c.Rows.Where(r => r.Circuit.Length > 0).Select(r => (c.Item, c.Designator, r.Cavity, r.Circuit))).ToHashSet();
        var ends = desk.Assessment!.Circuits.SelectMany(c => new[] { (c.Circuit.From, c.Circuit.Id), (c.Circuit.To, c.Circuit.Id) }).Where(e => !e.Item1.IsPoint)
            .Where(e => desk.Connectors.Any(c => c.Item == e.Item1.Item && c.Designator == e.Item1.Connector));
        Assert.All(ends, e => Assert.Contains((e.Item1.Item, e.Item1.Connector, e.Item1.Contact, e.Id), rows));
        Assert.All(desk.Connectors, c => Assert.NotEmpty(c.Rows));
    }

    private static ScenarioView Demo(string id) => new Desk(new FolderFiles(Folder)).TrafficScenarios.Single(s => s.Id == id);
}
