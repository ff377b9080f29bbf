using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Views;

/// <summary>The aircraft from one side in a window of a screen: as a whole, or a part of it enlarged.</summary>
public sealed class AircraftWindow
{
    /// <summary>Width of the window, mm of the drawing.</summary>
    public const double Width = 200;

    private const double LeastHeight = 60;
    private const double MostHeight = 100;
    private const double Air = 120;
    private const double MostZoom = 40;
    private readonly Projection projection;
    private readonly Box room;

    private AircraftWindow(Projection projection, double height) =>
        (this.projection, Height, room) = (projection, height, RoomOf(height));

    /// <summary>Height of the window, mm of the drawing.</summary>
    public double Height { get; }

    /// <summary>The side it is seen from.</summary>
    public Aspect Aspect => projection.Aspect;

    /// <summary>Millimetres of the aircraft for one of the drawing.</summary>
    public double Scale => projection.Scale;

    /// <summary>The window on a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="aspect">The side it is seen from.</param>
    /// <param name="zoom">How much larger than the whole, from 1 to 40; what lies outside is taken as the nearest of them.</param>
    /// <param name="across">Middle of the window from the left of the whole, as a share of it.</param>
    /// <param name="down">Middle of the window from the top of the whole, as a share of it.</param>
    public static AircraftWindow Of(Job job, Aspect aspect, double zoom, double across, double down)
    {
        ArgumentNullException.ThrowIfNull(job);
        var points = AircraftSheets.Extent(job).Select(p => Projection.Flat(aspect, p.Fs, p.Bl, p.Wl)).ToArray();
        var (left, right, top, bottom) = (points.Min(p => p.X) - Air, points.Max(p => p.X) + Air, points.Min(p => p.Y) - Air, points.Max(p => p.Y) + Air);
        var most = RoomOf(MostHeight);
        var whole = Math.Max((right - left) / (most.Right - most.Left), (bottom - top) / (most.Bottom - most.Top));
        var height = Math.Clamp(((bottom - top) / whole) + MostHeight - (most.Bottom - most.Top), LeastHeight, MostHeight);
        var scale = whole / Math.Clamp(zoom, 1, MostZoom);
        var (x, y) = (left + (Math.Clamp(across, 0, 1) * (right - left)), top + (Math.Clamp(down, 0, 1) * (bottom - top)));
        return new AircraftWindow(new Projection(aspect, scale, RoomOf(height).Centre.Moved(-x / scale, -y / scale)), height);
    }

    /// <summary>Where a place lies in the window.</summary>
    public Point At(Place place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return projection.Of(place);
    }

    /// <summary>Whether a point of the drawing lies in the window.</summary>
    public bool Shows(Point at) => room.Contains(at);

    /// <summary>Width and height of a box in the window.</summary>
    public (double Width, double Height) Sides(Size size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return projection.Sides(size);
    }

    /// <summary>The drawing: rulers, outline, ways, panels, boxes and antennas with their names.</summary>
    /// <param name="assessment">The job.</param>
    /// <param name="unit">Unit of the rulers.</param>
    public Picture Draw(Assessment assessment, string unit)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var canvas = new Canvas();
        Rulers.Paint(canvas, projection, room, unit);
        var painter = new ViewPainter(assessment, canvas, projection, room);
        painter.Paint();
        var side = Aspect switch { Aspect.Side => "from the left", Aspect.Plan => "from above", _ => "from the front" };
        return new Picture(Width, Height, $"{assessment.Job.Aircraft.Registration} {side}", "Boxes, antennas, ways and panels at their stations.", canvas.Shapes);
    }

    private static Box RoomOf(double height) => new(13, 5, Width - 3, height - 10);
}
