using Fairlead.Drawings.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Connectors;

/// <summary>One connector: its face from the rear, and a row for each cavity.</summary>
internal static class ConnectorFace
{
    private const double FaceWidth = 76;
    private const double Size = Lettering.Small;
    private const double Row = 3.9;
    private const double Heading = 12;

    public static void Paint(Canvas canvas, Wired connector, Ends ends, double x, double y, double width, double height)
    {
        canvas.Rect(x, y, width, height, Style.Thin);
        var title = $"{connector.Item} {connector.Designator}";
        canvas.Write(x + 3, y + 5, title, 3.4, bold: true);
        var part = connector.Part;
        var keying = part.Keying.Length > 0 ? $", keying {part.Keying}" : "";
        canvas.Fit(x + 3, y + 9.2, $"{part.Id}, {part.Name}{keying}", Size, FaceWidth - 4, Ink.Quiet);
        canvas.Fit(x + FaceWidth + 4, y + 5, ends.NameOf(connector.Item), Size, width - FaceWidth - 8, Ink.Quiet);
        if (Places(part) is { } places)
        {
            Face(canvas, connector, places, new(x + (FaceWidth / 2), y + Heading + ((height - Heading - 6) / 2)), Math.Min(FaceWidth - 8, height - Heading - 10));
            canvas.Write(x + 3, y + height - 3, "seen from the rear, which is the wire side; not to scale", Size, Ink.Quiet);
        }
        else
        {
            canvas.Write(x + 3, y + Heading + 6, "Positions of the cavities are not stated.", 2.6, Ink.Accent);
            canvas.Write(x + 3, y + Heading + 10.5, "Take them from the connector's own drawing.", Size, Ink.Quiet);
        }

        Table(canvas, connector, ends, x + FaceWidth + 4, y + Heading, width - FaceWidth - 7, height - Heading - 3);
    }

    /// <summary>The face alone; null when the positions of its cavities are not stated.</summary>
    public static Picture? Alone(Wired connector)
    {
        const double side = 84;
        const double margin = 3;
        if (Places(connector.Part) is not { } places)
        {
            return null;
        }

        // As high as the face is: most are far wider than high, and a square would be blank above and below.
        var (left, right, top, bottom) = Extent(connector.Part, places);
        var scale = side / Math.Max(right - left, bottom - top);
        var canvas = new Canvas();
        Face(canvas, connector, places, new(margin - (left * scale), margin - (top * scale)), side);
        return new Picture(((right - left) * scale) + (2 * margin), ((bottom - top) * scale) + (2 * margin), $"{connector.Item} {connector.Designator}, from the rear", "Seen from the wire side; not to scale. Cavities with a wire are tinted.", canvas.Shapes);
    }

    // Every cavity must have a place, or none is drawn: a face with gaps would mislead.
    private static Dictionary<string, Point>? Places(ConnectorPart part)
    {
        var places = new Dictionary<string, Point>(StringComparer.Ordinal);
        foreach (var row in part.Layout)
        {
            for (var i = 0; i < row.Cavities.Count; i++)
            {
                places[row.Cavities[i]] = new((row.X.Si + (i * row.Pitch.Si)) * 1000, -row.Y.Si * 1000);
            }
        }

        return part.Cavities.All(places.ContainsKey) && places.Count > 0 ? places : null;
    }

    private static void Face(Canvas canvas, Wired connector, Dictionary<string, Point> places, Point centre, double side)
    {
        var pitch = Pitch(connector.Part);
        var (left, right, top, bottom) = Extent(connector.Part, places);
        var reach = Math.Max(right - left, bottom - top) / 2;
        var scale = side / (2 * reach);
        var radius = 0.4 * pitch * scale;
        if (connector.Part.Round)
        {
            canvas.Circle(centre.X, centre.Y, reach * scale, Style.Heavy);
            canvas.Add(new Polygon([centre.Moved(-1.6, (-reach * scale) + 0.6), centre.Moved(1.6, (-reach * scale) + 0.6), centre.Moved(0, (-reach * scale) + 3)], Symbols.Solid));
        }
        else
        {
            canvas.Rect(centre.X + (left * scale), centre.Y + (top * scale), (right - left) * scale, (bottom - top) * scale, Style.Heavy);
        }

        foreach (var (cavity, place) in places)
        {
            var at = new Point(centre.X + (place.X * scale), centre.Y + (place.Y * scale));
            var wired = connector.Circuits.ContainsKey(cavity);
            canvas.Circle(at.X, at.Y, radius, wired ? new Style(Width: 0.35, Fill: Ink.Tint) : new Style(Ink.Quiet, 0.15));
            var size = Math.Min(Lettering.Name, radius * 0.95);
            canvas.Write(at.X, at.Y + (size * 0.35), cavity, size, wired ? Ink.Line : Ink.Quiet, Anchor.Middle, wired);
        }
    }

    // The outline around the origin of the layout, mm: that of the shell, as far as its cavities tell.
    private static (double Left, double Right, double Top, double Bottom) Extent(ConnectorPart part, Dictionary<string, Point> places)
    {
        var pitch = Pitch(part);
        var reach = places.Values.Max(p => Math.Sqrt((p.X * p.X) + (p.Y * p.Y))) + (0.85 * pitch);
        return part.Round ? (-reach, reach, -reach, reach)
            : (places.Values.Min(p => p.X) - pitch, places.Values.Max(p => p.X) + pitch, places.Values.Min(p => p.Y) - pitch, places.Values.Max(p => p.Y) + pitch);
    }

    private static double Pitch(ConnectorPart part) => part.Layout.Min(r => r.Pitch.In("mm"));

    // One column while it has room, more when there are more cavities. Where a column is narrow the signal is left to the wiring diagram.
    private static void Table(Canvas canvas, Wired connector, Ends ends, double x, double y, double width, double height)
    {
        var cavities = connector.Part.Cavities;
        var rows = (int)(height / Row) - 1;
        var columns = Math.Max(1, (cavities.Count + rows - 1) / rows);
        var perColumn = (cavities.Count + columns - 1) / columns;
        var each = width / columns;
        var signals = each > 80;
        for (var column = 0; column < columns; column++)
        {
            Line(canvas, x + (column * each), y + 2.6, each, signals, ["cavity", "circuit", "to", "signal here"], wired: false);
        }

        for (var i = 0; i < cavities.Count; i++)
        {
            var circuits = connector.Circuits.GetValueOrDefault(cavities[i]) ?? [];
            var here = new Endpoint(connector.Item, connector.Designator, cavities[i]);
            Line(
                canvas, x + (i / perColumn * each), y + (((i % perColumn) + 1) * Row) + 2.6, each, signals,
                [cavities[i], circuits.Count > 0 ? string.Join(", ", circuits.Select(Wire)) : "–", string.Join(", ", circuits.Select(c => Far(c.Circuit, here))), ends.SignalAt(here)], circuits.Count > 0);
        }
    }

    private static void Line(Canvas canvas, double left, double baseline, double width, bool signals, string[] cells, bool wired)
    {
        var ink = wired ? Ink.Line : Ink.Quiet;
        var (circuit, to, signal) = signals ? (12.0, 34.0, 62.0) : (10.0, 27.0, width - 1);
        canvas.Line(left, baseline + 1, left + width - 2, baseline + 1, Style.Grid);
        canvas.Fit(left, baseline, cells[0], Size, circuit - 1, ink, bold: wired);
        canvas.Fit(left + circuit, baseline, cells[1], Size, to - circuit - 1.5, ink);
        canvas.Fit(left + to, baseline, cells[2], Size, signal - to - 1.5, ink);
        if (signals)
        {
            canvas.Fit(left + signal, baseline, cells[3], Size, width - signal - 3, Ink.Quiet);
        }
    }

    /// <summary>Where a circuit goes from here; a strap comes back to the same connector.</summary>
    public static string Far(Circuit circuit, Endpoint here)
    {
        var far = circuit.From == here ? circuit.To : circuit.From;
        return far.IsPoint ? far.Item : $"{far.Item} {far.Pin}";
    }

    public static string Wire(CircuitResult result) => $"{result.Circuit.Id} {(result.Wire is { } wire ? wire.Gauge.ToString() : result.Part)}";
}
