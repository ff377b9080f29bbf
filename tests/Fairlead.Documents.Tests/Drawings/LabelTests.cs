using CsCheck;
using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

public sealed class LabelTests
{
    private static readonly Box Room = new(0, 0, 200, 150);

    // However crowded, what is written can be read: a name is placed clear of all others and of every symbol, or it is handed back.
    [Fact]
    public void Names_thrown_anywhere_cover_neither_each_other_nor_any_symbol_and_none_is_lost() =>
        Gen.Select(Gen.Double[2, 198], Gen.Double[2, 148]).Array[1, 60].Sample(
            points =>
            {
                var placer = new LabelPlacer(Room, reach: 60);
                var symbols = points.Select(p => Box.Around(new(p.Item1, p.Item2), 1.2)).ToArray();
                Array.ForEach(symbols, placer.Avoid);
                var shapes = placer.Place(symbols.Select((s, i) => new Label(s, $"item {i}", 2.6)), out var leftOut).ToArray();
                var names = shapes.OfType<Text>().Select(Clear.BoxOf).ToArray();
                Assert.Equal(points.Length, names.Length + leftOut.Count);
                Assert.All(names, n => Assert.DoesNotContain(symbols, n.Overlaps));
                Assert.All(names.Index(), n => Assert.DoesNotContain(names.Skip(n.Index + 1), n.Item.Overlaps));
                Assert.All(shapes.OfType<Line>(), l => Assert.DoesNotContain(names, n => n.Grown(-0.2).Meets(l.From, l.To)));
            },
            iter: 40);

    [Fact]
    public void A_name_that_nothing_hinders_stands_at_the_right_of_its_symbol_without_a_leader()
    {
        var symbol = Box.Around(new(50, 50), 1);
        var placer = new LabelPlacer(Room);
        placer.Avoid(symbol);
        var text = Assert.IsType<Text>(Assert.Single(placer.Place([new Label(symbol, "XPD1", 2.6)], out var leftOut)));
        Assert.Empty(leftOut);
        Assert.InRange(text.At.X, 51, 54);
    }
}
