namespace Fairlead.Drawings;

/// <summary>A name that wants a place beside what it names.</summary>
/// <param name="Symbol">What it names, as it is drawn.</param>
/// <param name="Words">The name.</param>
/// <param name="Size">Font size, mm.</param>
/// <param name="Ink">Its colour.</param>
/// <param name="Bold">Semibold.</param>
internal readonly record struct Label(Box Symbol, string Words, double Size, Ink Ink = Ink.Line, bool Bold = false);

/// <summary>Puts labels beside what they name so that they cover neither each other nor what they must not cover, with a leader where they stand off.</summary>
/// <param name="within">Where labels may stand.</param>
/// <param name="reach">How far from its symbol a label may stand, mm.</param>
internal sealed class LabelPlacer(Box within, double reach = 23)
{
    private const double Padding = 0.7;
    private const double Descent = 0.25;
    private const int Rounds = 6;

    // Rounds are for crowds that can be disentangled.
    private const int Crowd = 250;

    // What a fault costs: nothing may be covered; leaders cross names and each other only in the last resort, and lines seldom.
    private const double Covers = 1000;
    private const double Leaves = 5000;
    private const double LeaderCoversName = 600;
    private const double LeadersCross = 120;
    private const double OnLine = 20;
    private const double LeaderCoversSymbol = 40;
    private const double LeaderOnLine = 2;
    private const double PerMillimetre = 0.8;

    private static readonly double[] Distances = [1.2, 2.2, 4, 7, 11, 16, 22, 29, 37, 46, 56, 68, 82, 100];
    private static readonly int[] Directions = [0, 180, -35, 35, -145, 145, -70, 70, -110, 110, -90, 90, -15, 15, -165, 165, -50, 50, -130, 130];
    private readonly Cells<(Point From, Point To)> lines = new();
    private readonly List<Box> symbols = [];
    private Trial placed = new([]);

    /// <summary>Keeps labels off a symbol.</summary>
    public void Avoid(Box box)
    {
        symbols.Add(box);
        placed.Symbols.Add(box, box);
    }

    /// <summary>Keeps labels off a line.</summary>
    public void Avoid(IReadOnlyList<Point> line, bool closed = false)
    {
        for (var i = 1; i < line.Count; i++)
        {
            lines.Add(Box.Of(line[i - 1], line[i]), (line[i - 1], line[i]));
        }

        if (closed && line.Count > 2)
        {
            lines.Add(Box.Of(line[^1], line[0]), (line[^1], line[0]));
        }
    }

    /// <summary>One label, with a leader when it had to go far; later labels keep off it.</summary>
    public IEnumerable<Shape> Place(Point point, string words, double size, Ink ink = Ink.Line, bool bold = false) =>
        Shapes(Put(new Label(Box.Around(point, 1), words, size, ink, bold), placed));

    /// <summary>Many labels together. Those that found no clear place go first in the next round, and the best round counts. A name that would still cover
    /// something is left out and handed back: better none than two that cannot be read.</summary>
    public IEnumerable<Shape> Place(IEnumerable<Label> labels, out IReadOnlyList<Label> leftOut)
    {
        var order = labels.ToList();
        var rounds = order.Count > Crowd ? 1 : Rounds;
        (List<Placed> All, double Cost)? best = null;
        for (var round = 0; round < rounds && best is not { Cost: 0 }; round++)
        {
            var trial = new Trial(symbols);
            var all = order.ConvertAll(l => Put(l, trial));
            var cost = all.Sum(p => p.Fault);
            if (best is null || cost < best.Value.Cost)
            {
                (best, placed) = ((all, cost), trial);
            }

            order = [.. all.OrderByDescending(p => p.Fault).Select(p => p.Label)];
        }

        leftOut = [.. best!.Value.All.Where(p => p.Fault >= LeaderCoversName).Select(p => p.Label)];
        Placed[] kept = [.. best.Value.All.Where(p => p.Fault < LeaderCoversName)];

        // A line that runs under a name is broken there.
        return kept.Where(p => p.Fault >= OnLine).Select(p => (Shape)new Rect(new(p.Box.Left, p.Box.Top), p.Box.Right - p.Box.Left, p.Box.Bottom - p.Box.Top, Style.Filled(Ink.Paper)))
            .Concat(kept.SelectMany(Shapes));
    }

    private Placed Put(Label label, Trial trial)
    {
        var descent = label.Size * Descent;
        var width = TextMeasure.Width(label.Words, label.Size, label.Bold);
        Placed? best = null;
        foreach (var (box, distance) in Candidates(label.Symbol, width, (label.Size * TextMeasure.CapHeight) + descent))
        {
            var start = label.Symbol.Nearest(box.Centre);
            (Point From, Point To)? leader = distance > 3 ? (start, box.Nearest(start)) : null;
            var far = distance * PerMillimetre;
            if (best is not null && best.Cost <= far)
            {
                break;
            }

            var fault = Fault(box, leader, label.Symbol, trial, (best?.Cost ?? double.PositiveInfinity) - far);
            if (best is null || fault + far < best.Cost)
            {
                best = new Placed(label, box, leader, fault, fault + far);
            }
        }

        trial.Names.Add(best!.Box.Grown(Padding), best.Box.Grown(Padding));
        if (best.Leader is { } line)
        {
            trial.Leaders.Add(Box.Of(line.From, line.To), line);
        }

        return best;
    }

    // Counting stops where it is already more than the best so far.
    private double Fault(Box box, (Point From, Point To)? leader, Box own, Trial trial, double most)
    {
        var room = box.Grown(0.6);
        var fault = (Covers * (trial.Symbols.Count(box, box.Overlaps) + trial.Names.Count(box, box.Overlaps))) + (within.Contains(box) ? 0 : Leaves);
        fault += fault >= most ? 0 : (OnLine * lines.Count(room, l => room.Meets(l.From, l.To))) + (LeaderCoversName * trial.Leaders.Count(room, l => room.Meets(l.From, l.To)));
        if (leader is not { } line || fault >= most)
        {
            return fault;
        }

        var about = Box.Of(line.From, line.To);
        fault += (LeaderCoversName * trial.Names.Count(about, n => n.Meets(line.From, line.To))) + (LeadersCross * trial.Leaders.Count(about, l => Cross(l, line)));
        return fault >= most ? fault
            : fault + (LeaderCoversSymbol * trial.Symbols.Count(about, s => s != own && s.Grown(-0.3).Meets(line.From, line.To))) + (LeaderOnLine * lines.Count(about, l => Cross(l, line)));
    }

    private static IEnumerable<Shape> Shapes(Placed placed)
    {
        if (placed.Leader is { } leader)
        {
            yield return new Line(leader.From, leader.To, new Style(Ink.Quiet, 0.12));
        }

        var label = placed.Label;
        yield return new Text(new(placed.Box.Left, placed.Box.Bottom - (label.Size * Descent)), label.Words, label.Size, label.Ink, Anchor.Start, label.Bold);
    }

    // Nearest first, right before left.
    private IEnumerable<(Box Box, double Distance)> Candidates(Box symbol, double width, double height)
    {
        var (halfWidth, halfHeight) = ((symbol.Right - symbol.Left) / 2, (symbol.Bottom - symbol.Top) / 2);
        foreach (var distance in Distances.TakeWhile(d => d <= reach))
        {
            foreach (var degrees in Directions)
            {
                var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
                var at = symbol.Centre.Moved(cos * (halfWidth + distance), sin * (halfHeight + distance));
                var left = at.X - (width * (1 - Math.Clamp(cos * 1.5, -1, 1)) / 2);
                var top = at.Y - (height * (1 - Math.Clamp(sin * 1.5, -1, 1)) / 2);
                yield return (new Box(left, top, left + width, top + height), distance);
            }
        }
    }

    private static bool Cross((Point From, Point To) a, (Point From, Point To) b) =>
        Side(a, b.From) * Side(a, b.To) < 0 && Side(b, a.From) * Side(b, a.To) < 0;

    private static double Side((Point From, Point To) line, Point p) =>
        ((line.To.X - line.From.X) * (p.Y - line.From.Y)) - ((line.To.Y - line.From.Y) * (p.X - line.From.X));

    private sealed record Placed(Label Label, Box Box, (Point From, Point To)? Leader, double Fault, double Cost);

    // What stands already in one round.
    private sealed class Trial
    {
        public Trial(List<Box> symbols) => symbols.ForEach(s => Symbols.Add(s, s));

        public Cells<Box> Symbols { get; } = new();

        public Cells<Box> Names { get; } = new();

        public Cells<(Point From, Point To)> Leaders { get; } = new();
    }
}
