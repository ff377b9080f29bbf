using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>The axes of a mounting face: x across and y along in the face, z off the structure.</summary>
/// <param name="Stands">Which way the item stands off its structure.</param>
internal readonly record struct Mount(Direction Stands)
{
    /// <summary>A place measured from the reference corner, in the axes of the face. Whatever sign the maker gives it, the item lies off the structure.</summary>
    public (Length X, Length Y, Length Z) Of(Place place)
    {
        var (x, y, z) = Turn(place.Fs.Si, place.Bl.Si, place.Wl.Si);
        return (new(x), new(y), new(Math.Abs(z)));
    }

    /// <summary>The sides of the face.</summary>
    public (Length X, Length Y) Of(Size size)
    {
        var (x, y, _) = Turn(size.Length.Si, size.Width.Si, size.Height.Si);
        return (new(x), new(y));
    }

    /// <summary>A force in a direction of the aircraft, in the axes of the face.</summary>
    public (Force X, Force Y, Force Z) Of(Direction direction, Force force)
    {
        var f = force.Si;
        var (x, y, z) = direction switch
        {
            Direction.Up => Turn(0, 0, f),
            Direction.Down => Turn(0, 0, -f),
            Direction.Forward => Turn(-f, 0, 0),
            Direction.Aft => Turn(f, 0, 0),
            Direction.Left => Turn(0, -f, 0),
            _ => Turn(0, f, 0),
        };
        return (new(x), new(y), new(z));
    }

    private (double X, double Y, double Z) Turn(double fs, double bl, double wl) => Stands switch
    {
        Direction.Up => (bl, fs, wl),
        Direction.Down => (bl, fs, -wl),
        Direction.Forward => (bl, wl, -fs),
        Direction.Aft => (bl, wl, fs),
        Direction.Left => (fs, wl, -bl),
        _ => (fs, wl, bl),
    };
}
