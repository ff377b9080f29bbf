using Fairlead.Calculations;
using Fairlead.Drawings.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Connectors;

/// <summary>A connector half of the harness with what goes into it.</summary>
internal sealed record Wired(string Item, string Designator, ConnectorPart Part, IReadOnlyDictionary<string, IReadOnlyList<CircuitResult>> Circuits);

/// <summary>Connectors as the person at the bench sees them, from the wire side, each with the table of its cavities.</summary>
internal static class ConnectorSheets
{
    private const double CellWidth = (DrawingFrame.Right - DrawingFrame.Left) / 2;
    private const double CellHeight = (DrawingFrame.Bottom - DrawingFrame.Top) / 2;
    private const int SinglesPerSheet = 90;

    public static IReadOnlyList<Draft> Of(Assessment assessment)
    {
        var all = Connectors(assessment).ToArray();
        var ends = new Ends(assessment.Job);
        var faces = all.Where(c => c.Part.Cavities.Count > 1).Chunk(4).Select(four => Faces(four, ends));
        var singles = all.Where(c => c.Part.Cavities.Count == 1).Chunk(SinglesPerSheet).Select(Singles);
        return [.. faces.Concat(singles).Select((d, i) => d with { Name = $"connectors-{NumberFormat.Text(i + 1).PadLeft(2, '0')}" })];
    }

    /// <summary>The connector halves that new circuits end in, in the order of the circuits.</summary>
    public static IEnumerable<Wired> Connectors(Assessment assessment)
    {
        var ends = new Ends(assessment.Job);
        return assessment.Circuits.SelectMany(c => new[] { (End: c.Circuit.From, Circuit: c), (End: c.Circuit.To, Circuit: c) }).Where(x => !x.End.IsPoint)
            .GroupBy(x => (x.End.Item, x.End.Connector))
            .Select(g => (g.Key, Part: assessment.Job.Parts.Connectors?.Find(ends.PartOf(g.Key.Item)?.Connectors?.Find(g.Key.Connector)?.Part), Rows: g))
            .Where(x => x.Part is not null)
            .Select(x => new Wired(x.Key.Item, x.Key.Connector, x.Part!, x.Rows.GroupBy(r => r.End.Contact, StringComparer.Ordinal)
                .ToDictionary(r => r.Key, r => (IReadOnlyList<CircuitResult>)[.. r.Select(y => y.Circuit)], StringComparer.Ordinal)));
    }

    private static Draft Faces(Wired[] four, Ends ends)
    {
        var canvas = new Canvas();
        for (var i = 0; i < four.Length; i++)
        {
            ConnectorFace.Paint(canvas, four[i], ends, DrawingFrame.Left + (i % 2 * CellWidth), DrawingFrame.Top + (i / 2 * CellHeight), CellWidth - 4, CellHeight - 3);
        }

        var names = string.Join(", ", four.Select(c => $"{c.Item} {c.Designator}"));
        return new Draft("", $"Connectors from the rear (wire side): {names}", $"Cavities of {names} with the circuits that end in them.", "", canvas);
    }

    private static Draft Singles(Wired[] connectors)
    {
        var canvas = new Canvas();
        canvas.Write(DrawingFrame.Left, DrawingFrame.Top + 4, "Connectors with a single contact", 3.4, bold: true);
        for (var i = 0; i < connectors.Length; i++)
        {
            var (x, y) = (DrawingFrame.Left + (i / 45 * CellWidth), DrawingFrame.Top + 12 + (i % 45 * 5));
            var circuit = connectors[i].Circuits.Values.First()[0];
            canvas.Write(x, y, $"{connectors[i].Item} {connectors[i].Designator}", 2.6, bold: true);
            canvas.Fit(x + 26, y, $"{circuit.Circuit.Id}  {circuit.Part}", 2.6, 36);
            canvas.Fit(x + 64, y, $"{connectors[i].Part.Id}, {connectors[i].Part.Name}", 2.6, 82);
            canvas.Fit(x + 148, y, circuit.ToContact?.Id ?? "", 2.6, 44);
            canvas.Line(x, y + 1.4, x + CellWidth - 4, y + 1.4, Style.Grid);
        }

        return new Draft("", "Connectors with a single contact", $"{NumberFormat.Text(connectors.Length)} connectors with a single contact and the circuits that end in them.", "", canvas);
    }
}
