namespace Fairlead.Calculations.Structure;

/// <summary>How the tension of a tilting base is found.</summary>
public enum Tilt
{
    /// <summary>Rigid plate that turns about the centroid of the fasteners: those on the far side are in compression.</summary>
    Centroid,

    /// <summary>Base that tips over its edge: every fastener is in tension in proportion to its distance from the edge.</summary>
    Edge,
}

/// <summary>The force one fastener carries.</summary>
/// <param name="Name">The fastener.</param>
/// <param name="X">Shear along x that the load puts on it.</param>
/// <param name="Y">Shear along y.</param>
/// <param name="Tension">Tension; negative where the base presses.</param>
public readonly record struct FastenerForce(string Name, Force X, Force Y, Force Tension)
{
    /// <summary>Shear.</summary>
    public Force Shear => new(Math.Sqrt((X.Si * X.Si) + (Y.Si * Y.Si)));
}

/// <summary>Press of the edge the base tips over, and where.</summary>
/// <param name="Press">How hard the edge presses.</param>
/// <param name="X">Where, along x.</param>
/// <param name="Y">Where, along y.</param>
public readonly record struct EdgePress(Force Press, Length X, Length Y);

/// <summary>Forces of a fastener group, or why they cannot be told.</summary>
/// <param name="Forces">One force per fastener, in their order.</param>
/// <param name="Edges">Edges that press, by the edge method.</param>
/// <param name="WhyNot">Why there are no forces; null when there are.</param>
public sealed record FastenerForces(Sequence<FastenerForce> Forces, Sequence<EdgePress> Edges, string? WhyNot = null)
{
    private const double Nothing = 1e-9;

    /// <summary>Shares a load among fasteners under a rigid plate: shear by area and by A·r about the centroid, tension by the stated tilt.</summary>
    /// <param name="input">Fasteners, load and method; numbers within their ranges.</param>
    public static FastenerForces Of(FastenerGroupInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.Fasteners.Count == 0)
        {
            return Cannot("There is no fastener.");
        }

        if (input.Fasteners.Any(f => f.Area is null) && input.Fasteners.Any(f => f.Area is not null))
        {
            return Cannot("Some fasteners have an area and some have none: give all of them, or none when they are alike.");
        }

        var group = new Group(input);
        return !group.CarriesTwist ? Cannot("The load twists the base and all fasteners stand on one spot.")
            : input.Tilt == Tilt.Centroid ? group.AboutCentroid()
            : group.OverEdge(input);
    }

    private static FastenerForces Cannot(string why) => new([], [], why);

    private sealed class Group
    {
        private readonly string[] names;
        private readonly double[] a, x, y;
        private readonly double area, xc, yc, px, py, pz, twist, firstX, firstY, scale, polar;

        public Group(FastenerGroupInput input)
        {
            names = [.. input.Fasteners.Select(f => f.Name)];
            a = [.. input.Fasteners.Select(f => f.Area?.Si ?? 1)];
            area = a.Sum();
            (xc, yc) = (input.Fasteners.Zip(a, (f, w) => f.X.Si * w).Sum() / area, input.Fasteners.Zip(a, (f, w) => f.Y.Si * w).Sum() / area);
            x = [.. input.Fasteners.Select(f => f.X.Si - xc)];
            y = [.. input.Fasteners.Select(f => f.Y.Si - yc)];
            (px, py, pz) = (input.Px.Si, input.Py.Si, input.Pz.Si);
            var (dx, dy, dz) = (input.X.Si - xc, input.Y.Si - yc, input.Z.Si);
            twist = (dx * py) - (dy * px);

            // Moments about the centroid ask these first moments of the tensions: Σ x·T = dx·Pz − dz·Px, and so in y.
            (firstX, firstY) = ((dx * pz) - (dz * px), (dy * pz) - (dz * py));
            scale = Nothing * (Math.Abs(px) + Math.Abs(py) + Math.Abs(pz)) * (Math.Abs(dx) + Math.Abs(dy) + Math.Abs(dz) + x.Concat(y).Max(Math.Abs));
            polar = Sum(i => (x[i] * x[i]) + (y[i] * y[i]));
        }

        public bool CarriesTwist => polar > 0 || Math.Abs(twist) <= scale;

        public FastenerForces AboutCentroid()
        {
            // In the principal axes of the group the two tilts do not mix; a line of fasteners has no stiffness about itself.
            var angle = 0.5 * Math.Atan2(2 * Sum(i => x[i] * y[i]), Sum(i => (x[i] * x[i]) - (y[i] * y[i])));
            var (cos, sin) = (Math.Cos(angle), Math.Sin(angle));
            double S(int i) => (x[i] * cos) + (y[i] * sin);
            double T(int i) => (y[i] * cos) - (x[i] * sin);
            var (alongS, alongT) = (Slope((firstX * cos) + (firstY * sin), Sum(i => S(i) * S(i))), Slope((firstY * cos) - (firstX * sin), Sum(i => T(i) * T(i))));
            return alongS is { } bs && alongT is { } bt
                ? new(All(i => a[i] * ((pz / area) + (bs * S(i)) + (bt * T(i)))), [])
                : Cannot("The load tilts the base about the line on which all fasteners stand: use the edge method with the edges of the base, or add a fastener off the line.");
        }

        public FastenerForces OverEdge(FastenerGroupInput input)
        {
            var tension = a.Select(w => Math.Max(0, pz) * w / area).ToArray();
            var presses = new List<EdgePress>();
            return Tip(x, firstX, input.Left, input.Right, xc, presses, tension, along: true) ?? Tip(y, firstY, input.Low, input.High, yc, presses, tension, along: false)
                ?? new(All(i => tension[i]), presses.ToSequence());
        }

        private double? Slope(double moment, double inertia) =>
            inertia > 1e-12 * polar ? moment / inertia : Math.Abs(moment) <= scale ? 0 : null;

        private FastenerForces? Tip(double[] place, double moment, Length? low, Length? high, double centroid, List<EdgePress> presses, double[] tension, bool along)
        {
            if (Math.Abs(moment) <= scale)
            {
                return null;
            }

            if ((moment > 0 ? low : high) is not { } edge)
            {
                return Cannot($"The base tips over its {(moment > 0 ? "low" : "high")} edge along {(along ? "x" : "y")}: give where that edge is.");
            }

            var distance = place.Select(p => Math.Sign(moment) * (p + centroid - edge.Si)).ToArray();
            var inertia = Sum(i => distance[i] * distance[i]);
            if (distance.Min() < -Nothing * Math.Abs(edge.Si) || !(inertia > 0))
            {
                return Cannot($"A fastener lies outside the edge of the base along {(along ? "x" : "y")}, or all lie on it.");
            }

            var shares = a.Select((w, i) => Math.Abs(moment) * w * distance[i] / inertia).ToArray();
            for (var i = 0; i < tension.Length; i++)
            {
                tension[i] += shares[i];
            }

            var exact = shares.Select((t, i) => t * (along ? y[i] + yc : x[i] + xc)).Sum() / shares.Sum();
            var across = Math.Abs(exact) > Nothing * Math.Sqrt(polar / area) ? exact : 0;
            presses.Add(new(new(shares.Sum()), along ? edge : new(across), along ? new(across) : edge));
            return null;
        }

        private double Sum(Func<int, double> term) => Enumerable.Range(0, a.Length).Sum(i => a[i] * term(i));

        private Sequence<FastenerForce> All(Func<int, double> tension) => Enumerable.Range(0, a.Length).Select(i =>
        {
            var turn = polar > 0 ? twist / polar : 0;
            return new FastenerForce(names[i], new(a[i] * ((px / area) - (turn * y[i]))), new(a[i] * ((py / area) + (turn * x[i]))), new(tension(i)));
        }).ToSequence();
    }
}
