namespace Fairlead.Calculations.Traffic;

/// <summary>Two aircraft in straight flight, seen from ours: x to the right of our nose, y ahead, h above us; metres, metres per second.</summary>
/// <param name="X">Position of the other, to the right.</param>
/// <param name="Y">Position of the other, ahead.</param>
/// <param name="H">Position of the other, above.</param>
/// <param name="Vx">Its velocity relative to ours, to the right.</param>
/// <param name="Vy">Its velocity relative to ours, ahead.</param>
/// <param name="Vh">Its velocity relative to ours, upwards.</param>
/// <remarks>Check value: 4 nmi ahead, closing at 240 kt: 60 s to the closest point; with DMOD 0.55 nmi the modified time is 58.8656 s.</remarks>
public readonly record struct Encounter(double X, double Y, double H, double Vx, double Vy, double Vh)
{
    /// <summary>Horizontal range, m.</summary>
    public double Range => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>Relative position times relative velocity, m²/s: negative while closing.</summary>
    public double Dot => (X * Vx) + (Y * Vy);

    /// <summary>Whether the horizontal range shrinks.</summary>
    public bool Closing => Dot < 0;

    /// <summary>Rate of change of range, m/s: negative while closing.</summary>
    public double RangeRate => Dot / Range;

    /// <summary>Range over closing speed, s; meaningful while closing.</summary>
    public double Tau => -Range * Range / Dot;

    /// <summary>Time to the closest point, s; 0 when there is no relative motion; negative once past it.</summary>
    public double TimeToClosest => (Vx * Vx) + (Vy * Vy) is var square && square > 0 ? -Dot / square : 0;

    /// <summary>Horizontal distance at the closest point, m, to a micrometre; the present range once past it.</summary>
    public double MissDistance => Math.Round(After(Math.Max(0, TimeToClosest)).Range, 6);

    /// <summary>Time to the same altitude, s; null when the altitudes do not converge.</summary>
    public double? TimeToCoAltitude => H * Vh < 0 ? -H / Vh : null;

    /// <summary>The encounter of a range, bearing from our nose, relative altitude, our speed, and the other's speed, track from our nose and vertical rate.</summary>
    public static Encounter Of(Length range, Angle bearing, Length above, Speed own, Speed other, Angle track, Speed climb) => new(
        range.Si * Math.Sin(bearing.Si), range.Si * Math.Cos(bearing.Si), above.Si,
        other.Si * Math.Sin(track.Si), (other.Si * Math.Cos(track.Si)) - own.Si, climb.Si);

    /// <summary>Modified time, s: the time to reach DMOD rather than the closest point, (r² − DMOD²)/(r · closing speed); meaningful while closing.</summary>
    public double ModifiedTau(double dmod) => ((dmod * dmod) - (Range * Range)) / Dot;

    /// <summary>The encounter some seconds later.</summary>
    public Encounter After(double seconds) => this with { X = X + (Vx * seconds), Y = Y + (Vy * seconds), H = H + (Vh * seconds) };
}
