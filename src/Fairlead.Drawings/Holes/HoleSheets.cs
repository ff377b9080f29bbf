using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Holes;

/// <summary>The holes that one item or antenna needs.</summary>
/// <param name="Name">Its reference designator.</param>
/// <param name="What">Its name.</param>
/// <param name="Structure">What it is drilled in.</param>
/// <param name="Stands">Which way it stands off.</param>
/// <param name="Holes">Holes, in the axes of the face.</param>
/// <param name="Face">Sides of its mounting face from the reference corner; null when not stated.</param>
/// <param name="Fixing">How it is fixed.</param>
/// <param name="Plate">Doubler around its cut-out.</param>
internal sealed record Pattern(
    string Name, string What, StructureSheet? Structure, Direction Stands, Sequence<MountingHole> Holes, (double X, double Y)? Face, Fixing? Fixing, DoublerPlate? Plate);

/// <summary>Racks, shelves and skins: where holes go, how large they are, and how much edge they need.</summary>
internal static class HoleSheets
{
    private const int Across = 3;
    private const int Down = 2;
    private const double CellWidth = (DrawingFrame.Right - DrawingFrame.Left) / Across;
    private const double CellHeight = (DrawingFrame.Bottom - DrawingFrame.Top) / Down;

    public static IReadOnlyList<Draft> Of(Assessment assessment) =>
        [.. Patterns(assessment.Job).OrderBy(p => p.Structure?.Id ?? "", StringComparer.Ordinal).Chunk(Across * Down).Select((p, i) => Sheet(p, assessment.Job, $"holes-{NumberFormat.Text(i + 1).PadLeft(2, '0')}"))];

    private static Draft Sheet(Pattern[] patterns, Job job, string name)
    {
        var canvas = new Canvas();
        for (var i = 0; i < patterns.Length; i++)
        {
            HolePattern.Paint(canvas, patterns[i], job, DrawingFrame.Left + (i % Across * CellWidth), DrawingFrame.Top + (i / Across * CellHeight), CellWidth - 4, CellHeight - 3);
        }

        var names = string.Join(", ", patterns.Select(p => p.Name));
        return new Draft(name, $"Holes and edge distances: {names}", $"Hole patterns of {names} from their reference corners, with diameters and edge distances.", "as shown", canvas);
    }

    private static IEnumerable<Pattern> Patterns(Job job)
    {
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            if (job.Parts.Equipment?.Find(item.Part) is { Holes.Count: > 0 } part)
            {
                var stands = item.Fixing?.Stands ?? Direction.Up;
                yield return new(item.Id, part.Name, job.Aircraft.Structures?.Find(item.Structure), stands, part.Holes, Face(part.Size, stands), item.Fixing, null);
            }
        }

        foreach (var antenna in job.Change.Antennas.OrEmpty())
        {
            if (job.Parts.Antennas?.Find(antenna.Part) is { Holes.Count: > 0 } part)
            {
                yield return new(antenna.Id, part.Name, job.Aircraft.Structures?.Find(antenna.Structure), antenna.Fixing?.Stands ?? Direction.Up, part.Holes, null, antenna.Fixing, antenna.Plate);
            }
        }
    }

    private static (double X, double Y)? Face(Size? size, Direction stands) => size is null ? null : stands switch
    {
        Direction.Up or Direction.Down => (size.Width.In("mm"), size.Length.In("mm")),
        Direction.Forward or Direction.Aft => (size.Width.In("mm"), size.Height.In("mm")),
        _ => (size.Length.In("mm"), size.Height.In("mm")),
    };
}
