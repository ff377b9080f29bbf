using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Wiring;

/// <summary>Draws a cluster: the middle as a box with its contacts at both sides, straight wires, and what they lead to.</summary>
internal sealed class ClusterPainter(Assessment assessment, Canvas canvas, int sheet, References references)
{
    public const double Pitch = 5.2;
    public const double Head = 5;

    private const double Size = Lettering.Small;
    private const double Strip = 14;
    private const double FarWidth = 72;
    private const double NearHalf = 51;
    private const double TwistAt = 21;
    private const double Middle = DrawingFrame.Width / 2;

    private readonly Ends ends = new(assessment.Job);

    public static double HeightOf(Cluster cluster) => Head + (Pitch * Math.Max(cluster.Left.Sum(WiringPlan.Height), cluster.Right.Sum(WiringPlan.Height)));

    /// <summary>Draws the cluster below a height and returns how tall it is.</summary>
    public double Paint(Cluster cluster, double top)
    {
        var height = HeightOf(cluster);
        if (ends.KindOf(cluster.Item) == EndKind.Box)
        {
            Box(cluster.Item, Middle - NearHalf, top, 2 * NearHalf, height, middle: true);
            Side(cluster, cluster.Left, top, side: -1, Middle - NearHalf);
            Side(cluster, cluster.Right, top, side: 1, Middle + NearHalf);
        }
        else
        {
            var first = Side(cluster, cluster.Left, top, side: -1, Middle).Concat(Side(cluster, cluster.Right, top, side: 1, Middle)).ToArray();
            canvas.Line(Middle, first.Min(), Middle, first.Max(), Style.Heavy);
            Array.ForEach(first, y => canvas.Circle(Middle, y, 0.8, Symbols.Solid));
            canvas.Write(Middle, top + 3.5, cluster.Item, Lettering.Name, anchor: Anchor.Middle, bold: true);
            canvas.Write(Middle, top + 7, ends.NameOf(cluster.Item), Size, Ink.Quiet, Anchor.Middle);
            canvas.Write(Middle, top + 10.2, references.At(cluster.Item, sheet, new(Middle, top + 3.5), middle: true, FarWidth), Size, Ink.Accent, Anchor.Middle);
        }

        return height;
    }

    // The rows of one side, from top to bottom; returns the height of each wire.
    private List<double> Side(Cluster cluster, IReadOnlyList<Group> groups, double top, int side, double near)
    {
        var far = side < 0 ? DrawingFrame.Left + FarWidth : DrawingFrame.Right - FarWidth;
        var y = top + Head;
        List<double> wires = [];
        foreach (var group in groups)
        {
            var first = y + (2 * Pitch);
            double[] lines = [.. Enumerable.Range(0, group.Lines).Select(i => first + (i * Pitch))];
            if (group.Strap)
            {
                Straps(group, lines, near, side);
            }
            else
            {
                Wires(group, lines, near, far, side);
                FarEnd(group, lines, y + (0.35 * Pitch), far, side);
            }

            if (ends.KindOf(cluster.Item) == EndKind.Box)
            {
                var pins = group.Strap ? group.Rows.SelectMany(r => new[] { r.Near, r.Far }) : group.Rows.Select(r => r.Near);
                Pins([.. pins], lines, near, -side, Middle);
            }

            wires.AddRange(lines);
            y += WiringPlan.Height(group) * Pitch;
        }

        return wires;
    }

    // The middle says below its name where else it stands, all others beside it.
    private void Box(string item, double x, double top, double width, double height, bool middle)
    {
        canvas.Rect(x, top, width, height, ends.Existing(item) ? new Style(Ink.Quiet, 0.25, Dash.Dashed) : new Style(Width: 0.35));
        var name = TextMeasure.Width(item, Lettering.Name, bold: true) + 3;
        var reference = references.At(item, sheet, new(x + 2, top + 4), middle, middle ? width - 4 : Math.Max(22, (width - name) * 0.45));
        var beside = middle ? 0 : TextMeasure.Width(reference, Size);
        canvas.Write(x + 2, top + 4, item, Lettering.Name, bold: true);
        canvas.Fit(x + 2 + name, top + 4, ends.NameOf(item), Size, width - name - 5 - beside, Ink.Quiet);
        canvas.Write(middle ? x + 2 : x + width - 2, middle ? top + 8.2 : top + 4, reference, Size, Ink.Accent, middle ? Anchor.Start : Anchor.End);
    }

    // A bar of contacts along a side of a box, with their signals beside it.
    private void Pins(Endpoint[] pins, double[] lines, double edge, int inward, double limit)
    {
        var x = inward < 0 ? edge - Strip : edge;
        var inner = inward < 0 ? x : x + Strip;
        canvas.Rect(x, lines[0] - (Pitch / 2), Strip, Pitch * lines.Length, new Style(Width: 0.2, Fill: Ink.Tint));
        for (var i = 0; i < pins.Length; i++)
        {
            canvas.Write(x + (Strip / 2), lines[i] + 0.85, pins[i].Pin, Size, anchor: Anchor.Middle);
            canvas.Fit(inner + (1.5 * inward), lines[i] + 0.85, ends.SignalAt(pins[i]), Size, Math.Abs(limit - inner) - 3, Ink.Quiet, inward < 0 ? Anchor.End : Anchor.Start);
        }
    }

    private void FarEnd(Group group, double[] lines, double top, double far, int side)
    {
        var kind = ends.KindOf(group.Item);
        var outer = side < 0 ? DrawingFrame.Left : DrawingFrame.Right;
        if (kind == EndKind.Box)
        {
            Box(group.Item, Math.Min(far, outer), top, FarWidth, lines[^1] + (0.75 * Pitch) - top, middle: false);
            Pins([.. group.Rows.Select(r => r.Far)], lines, far, side, outer);
            return;
        }

        var (first, last) = (lines[0], lines[^1]);
        canvas.Line(far, first, far, last, Style.Usual);
        if (lines.Length > 1)
        {
            Array.ForEach(lines, y => canvas.Circle(far, y, 0.6, Symbols.Solid));
        }

        var middle = (first + last) / 2;
        canvas.Add(Symbols.Of(kind, new(far, middle), side));
        var words = far + (side * Symbols.Room(kind));
        var anchor = side < 0 ? Anchor.End : Anchor.Start;
        var room = Math.Abs(outer - words);
        var reference = references.At(group.Item, sheet, new(words, middle + 0.2), middle: false, room - TextMeasure.Width(group.Item, Lettering.Name, bold: true) - 3);
        canvas.Write(words, middle + 0.2, group.Item, Lettering.Name, anchor: anchor, bold: true);
        canvas.Write(words + (side * (TextMeasure.Width(group.Item, Lettering.Name, bold: true) + 2)), middle + 0.2, reference, Size, Ink.Accent, anchor);
        canvas.Fit(words, middle + 3.7, ends.NameOf(group.Item), Size, room, Ink.Quiet, anchor);
    }

    private void Wires(Group group, double[] lines, double near, double far, int side)
    {
        var left = Math.Min(near, far);
        var right = Math.Max(near, far);
        for (var i = 0; i < lines.Length; i++)
        {
            // Between the twist at the left and the shield at the right.
            canvas.Write((left + TwistAt + 4 + right - 11) / 2, lines[i] - 0.7, Mark(group.Rows[i].Result), Size, anchor: Anchor.Middle);
        }

        for (var i = 0; i < lines.Length;)
        {
            var length = Count(group.Rows, i);
            Cable(group.Rows[i].Result, lines.AsSpan(i, length), left, right, nearIsFrom: group.Rows[i].Near == group.Rows[i].Result.Circuit.From == (side > 0));
            i += length;
        }
    }

    // How many rows from here on belong to one cable or are twisted together.
    private static int Count(IReadOnlyList<Row> rows, int from)
    {
        static string Key(Circuit c) => c.Cable.Length > 0 ? c.Cable : c.Twist;
        var key = Key(rows[from].Result.Circuit);
        return key.Length == 0 ? 1 : rows.Skip(from).TakeWhile(r => Key(r.Result.Circuit) == key).Count();
    }

    private void Cable(CircuitResult result, ReadOnlySpan<double> lines, double left, double right, bool nearIsFrom)
    {
        var circuit = result.Circuit;
        var cable = assessment.Job.Parts.Cables?.Find(result.Part);
        var twisted = circuit.Twist.Length > 0 && lines.Length > 1;
        var at = left + TwistAt;
        canvas.Add(twisted ? Symbols.Twist(lines, left, right, at) : Symbols.Straight(lines, left, right));
        if (assessment.Job.Parts.Coax?.Contains(result.Part) ?? false)
        {
            canvas.Add(Symbols.Coax(left + 9, lines[0]).Concat(Symbols.Coax(right - 9, lines[0])));
            return;
        }

        if (cable?.Shielded == true || circuit.Shield != ShieldEnds.None)
        {
            var (grounded, other) = circuit.Shield switch { ShieldEnds.Both => (true, true), ShieldEnds.From => (true, false), ShieldEnds.To => (false, true), _ => (false, false) };
            canvas.Add(Symbols.Shield(lines, left + 9, nearIsFrom ? grounded : other));
            canvas.Add(Symbols.Shield(lines, right - 9, nearIsFrom ? other : grounded));
        }
    }

    private void Straps(Group group, double[] lines, double near, int side)
    {
        for (var i = 0; i < group.Rows.Count; i++)
        {
            var x = near + (side * 12);
            canvas.Path(Style.Usual, new(near, lines[2 * i]), new(x, lines[2 * i]), new(x, lines[(2 * i) + 1]), new(near, lines[(2 * i) + 1]));
            canvas.Write(x + (side * 1.5), ((lines[2 * i] + lines[(2 * i) + 1]) / 2) + 0.8, $"{Mark(group.Rows[i].Result)}, strap", Size, anchor: side < 0 ? Anchor.End : Anchor.Start);
        }
    }

    private static string Mark(CircuitResult result)
    {
        var words = new[] { result.Circuit.Id, result.Circuit.Function, result.Wire?.Gauge.ToString() ?? "", result.Circuit.Cable.Length > 0 ? result.Circuit.Cable : result.Part == result.Wire?.Id ? "" : result.Part };
        return string.Join(' ', words.Where(w => w.Length > 0));
    }
}
