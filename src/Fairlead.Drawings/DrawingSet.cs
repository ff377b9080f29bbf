using System.Text;
using Fairlead.Calculations;
using Fairlead.Drawings.Connectors;
using Fairlead.Drawings.Harness;
using Fairlead.Drawings.Holes;
using Fairlead.Drawings.Views;
using Fairlead.Drawings.Wiring;
using Fairlead.Substantiation;

namespace Fairlead.Drawings;

/// <summary>All drawings of a job. The same job gives the same drawings.</summary>
public static class DrawingSet
{
    /// <summary>A drawing as a file: its path below the folder of its kind, and its SVG.</summary>
    public static KeyValuePair<string, byte[]> File(Drawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        return new($"{Words.Kebab(drawing.Kind.ToString())}/{drawing.Name}.svg", Encoding.UTF8.GetBytes(SvgWriter.Write(drawing.Picture)));
    }

    /// <summary>Draws one kind of drawing, sheet by sheet.</summary>
    /// <param name="assessment">The job, worked out.</param>
    /// <param name="hash">Hash of the job's description, SHA-256 in hexadecimal: it stands on every sheet.</param>
    /// <param name="kind">What is drawn.</param>
    /// <param name="tiles">Paper of the tiles of form boards; A3 unless given.</param>
    public static IEnumerable<Drawing> Of(Assessment assessment, string hash, DrawingKind kind, TilePaper? tiles = null)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var marks = DrawingMarks.Of(assessment, hash);
        return kind switch
        {
            DrawingKind.Aircraft => DrawingFrame.Of(kind, marks, AircraftSheets.Of(assessment)),
            DrawingKind.Wiring => DrawingFrame.Of(kind, marks, WiringSheets.Of(assessment)),
            DrawingKind.Connectors => DrawingFrame.Of(kind, marks, ConnectorSheets.Of(assessment)),
            DrawingKind.Holes => DrawingFrame.Of(kind, marks, HoleSheets.Of(assessment)),
            DrawingKind.FormBoard => Boards([.. FlatHarness.Of(assessment)], tiles ?? TilePaper.A3, marks),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of drawing."),
        };
    }

    private static IEnumerable<Drawing> Boards(IReadOnlyList<FlatHarness> harnesses, TilePaper tiles, DrawingMarks marks) =>
        DrawingFrame.Of(DrawingKind.FormBoard, marks, FormBoard.Wholes(harnesses, tiles)).Concat(harnesses.SelectMany(h => TilePainter.Of(h, tiles, marks)));
}
