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
    private const int ManyCavities = 52;

    public static IReadOnlyList<Draft> Of(Assessment assessment)
    {
        var all = Connectors(assessment).ToArray();
        var ends = new Ends(assessment.Job);
        var faces = Sheets(all.Where(c => c.Part.Cavities.Count > 1)).Select(placed => Faces(placed, ends));
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

    // Four to a sheet; one with many cavities takes the width of two.
    private static IEnumerable<List<(Wired Connector, int Slot, bool Wide)>> Sheets(IEnumerable<Wired> connectors)
    {
        List<(Wired, int, bool)> sheet = [];
        var next = 0;
        foreach (var connector in connectors)
        {
            var wide = connector.Part.Cavities.Count > ManyCavities;
            next += wide && next % 2 == 1 ? 1 : 0;
            if (next >= 4)
            {
                yield return sheet;
                (sheet, next) = ([], 0);
            }

            sheet.Add((connector, next, wide));
            next += wide ? 2 : 1;
        }

        if (sheet.Count > 0)
        {
            yield return sheet;
        }
    }

    private static Draft Faces(List<(Wired Connector, int Slot, bool Wide)> placed, Ends ends)
    {
        var canvas = new Canvas();
        foreach (var (connector, slot, wide) in placed)
        {
            ConnectorFace.Paint(canvas, connector, ends, DrawingFrame.Left + (slot % 2 * CellWidth), DrawingFrame.Top + (slot / 2 * CellHeight), (wide ? 2 * CellWidth : CellWidth) - 4, CellHeight - 3);
        }

        var names = string.Join(", ", placed.Select(p => $"{p.Connector.Item} {p.Connector.Designator}"));
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
            canvas.Write(x, y, $"{connectors[i].Item} {connectors[i].Designator}", Lettering.Small, bold: true);
            canvas.Fit(x + 26, y, $"{circuit.Circuit.Id}  {circuit.Part}", Lettering.Small, 36);
            canvas.Fit(x + 64, y, $"{connectors[i].Part.Id}, {connectors[i].Part.Name}", Lettering.Small, 82);
            canvas.Fit(x + 148, y, circuit.ToContact?.Id ?? "", Lettering.Small, 44);
            canvas.Line(x, y + 1.4, x + CellWidth - 4, y + 1.4, Style.Grid);
        }

        return new Draft("", "Connectors with a single contact", $"{NumberFormat.Text(connectors.Length)} connectors with a single contact and the circuits that end in them.", "", canvas);
    }
}
