using System.Collections.Immutable;

namespace Fairlead.Calculations.Structure;

/// <summary>A fastener of a group.</summary>
/// <param name="Name">Name.</param>
/// <param name="X">Place along x in the plane of the base.</param>
/// <param name="Y">Place along y.</param>
/// <param name="Area">Its area, when fasteners differ.</param>
/// <param name="Bolt">AN bolt whose allowables are taken from the table.</param>
/// <param name="Shear">Ultimate shear allowable.</param>
/// <param name="Tension">Ultimate tension allowable.</param>
public sealed record FastenerRow(
    [In("name", "fastener")] string Name,
    [In("x", "place along x", "in", Min = -1000, Max = 1000)] Length X,
    [In("y", "place along y", "in", Min = -1000, Max = 1000)] Length Y,
    [In("A", "area", "in²", Min = 1e-6, Max = 100, Default = "all alike")] Area? Area = null,
    [In("bolt", "AN bolt, AN3 to AN6", Default = "none")] string Bolt = "",
    [In("Fs", "ultimate shear allowable", "lbf", Min = 0.1, Max = 1e6, Default = "by the bolt")] Force? Shear = null,
    [In("Ft", "ultimate tension allowable", "lbf", Min = 0.1, Max = 1e6, Default = "by the bolt")] Force? Tension = null);

/// <summary>Input of <see cref="FastenerGroup"/>. The base lies in the plane z = 0; z points away from the structure.</summary>
/// <param name="Fasteners">The fasteners.</param>
/// <param name="Px">Ultimate load along x.</param>
/// <param name="Py">Ultimate load along y.</param>
/// <param name="Pz">Ultimate load along z, positive where it pulls the base off.</param>
/// <param name="X">Where the load acts, along x: the centre of gravity of the item.</param>
/// <param name="Y">Where it acts, along y.</param>
/// <param name="Z">Its height above the base.</param>
/// <param name="Tilt">Neutral axis of the tilting base.</param>
/// <param name="Interaction">How shear and tension combine.</param>
/// <param name="Left">Low edge of the base along x.</param>
/// <param name="Right">High edge along x.</param>
/// <param name="Low">Low edge along y.</param>
/// <param name="High">High edge along y.</param>
public sealed record FastenerGroupInput(
    [In("fasteners", "fasteners")] Sequence<FastenerRow> Fasteners,
    [In("Px", "ultimate load along x, with any fitting factor", "lbf", Min = -1e6, Max = 1e6)] Force Px,
    [In("Py", "ultimate load along y, with any fitting factor", "lbf", Min = -1e6, Max = 1e6)] Force Py,
    [In("Pz", "ultimate load along z, away from the structure", "lbf", Min = -1e6, Max = 1e6)] Force Pz,
    [In("cx", "centre of gravity along x", "in", Min = -1000, Max = 1000)] Length X,
    [In("cy", "centre of gravity along y", "in", Min = -1000, Max = 1000)] Length Y,
    [In("cz", "height of the centre of gravity above the base", "in", Min = -1000, Max = 1000)] Length Z,
    [In("tilt", "neutral axis of the tilting base")] Tilt Tilt,
    [In("interaction", "how shear and tension combine", Default = "linear")] Interaction Interaction = Interaction.Linear,
    [In("x1", "low edge of the base along x", "in", Min = -1000, Max = 1000, Default = "not given")] Length? Left = null,
    [In("x2", "high edge of the base along x", "in", Min = -1000, Max = 1000, Default = "not given")] Length? Right = null,
    [In("y1", "low edge of the base along y", "in", Min = -1000, Max = 1000, Default = "not given")] Length? Low = null,
    [In("y2", "high edge of the base along y", "in", Min = -1000, Max = 1000, Default = "not given")] Length? High = null);

/// <summary>
/// Forces in each fastener of a group that holds an item at its real centre of gravity. In the plane: V = A·(P/ΣA ± Mz·r/ΣA·r²) about the centroid.
/// Across it: T = A·(Pz/ΣA + M·d/ΣA·d²), d from the centroid or from the edge the base tips over.
/// </summary>
/// <remarks>
/// Rigid base, fasteners alike in stiffness but for their area. Check value: four screws at (±3, ±2.5) in, 207 lbf along x at 4 in height: 51.75 lbf shear each,
/// 69.0 lbf tension in two of them about the centroid.
/// </remarks>
public sealed class FastenerGroup : ICalculation<FastenerGroupInput>
{
    private static readonly Source Method = StructureSources.FastenerGroups;

    /// <inheritdoc/>
    public static CalculationInfo<FastenerGroupInput> Info { get; } = new(
        "fastener-group", "Fastener group", Discipline.Structure,
        "Shear and tension of each fastener from a load at the centre of gravity of the item, and the margin of safety",
        "fasteners='a,3 in,2.5 in,,AN3;b,3 in,-2.5 in,,AN3;c,-3 in,-2.5 in,,AN3;d,-3 in,2.5 in,,AN3' Px='207 lbf' Py='0 lbf' Pz='0 lbf' cx='0 in' cy='0 in' cz='4 in' tilt=centroid interaction=linear",
        Method);

    /// <inheritdoc/>
    public static Sheet Run(FastenerGroupInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var shared = FastenerForces.Of(input);
        if (shared.WhyNot is { } why)
        {
            s.CannotTell(why);
            return;
        }

        Moments(s, input, shared.Forces);
        foreach (var (edge, number) in shared.Edges.Select((e, i) => (e, i + 1)))
        {
            s.Step("R" + NumberFormat.Text(number), $"press of the edge at ({edge.X.As("in")}, {edge.Y.As("in")})", "sum of the tensions of this tilt", edge.Press, "lbf", Method);
        }

        s.Step("Vmax", "greatest shear in a fastener", "√(Vx² + Vy²)", new Force(shared.Forces.Max(f => f.Shear.Si)), "lbf", Method);
        s.Step("Tmax", "greatest tension in a fastener",
            input.Tilt == Tilt.Centroid ? "greatest of A · (Pz / Σ A + M · d / Σ A·d²), d from the centroid in each principal axis" : "greatest of A · (Pz / Σ A + M · d / Σ A·d²), d from the edge, each way", new Force(Math.Max(0, shared.Forces.Max(f => f.Tension.Si))), "lbf", Method);
        Margins(s, input, shared.Forces);
        Cautions(s, input);
    });

    private static void Moments(SheetBuilder s, FastenerGroupInput input, Sequence<FastenerForce> forces)
    {
        var areas = input.Fasteners.Select(f => f.Area?.Si ?? 1).ToArray();
        double Mean(Func<FastenerRow, double> of) => input.Fasteners.Zip(areas, (f, a) => of(f) * a).Sum() / areas.Sum();
        var xc = s.Step("xc", "centroid along x", "Σ A·x / Σ A", new Length(Mean(f => f.X.Si)), "in", Method);
        var yc = s.Step("yc", "centroid along y", "Σ A·y / Σ A", new Length(Mean(f => f.Y.Si)), "in", Method);
        var (dx, dy) = (input.X - xc, input.Y - yc);
        s.Step("Mx", "moment about x through the centroid", "(cy − yc) · Pz − cz · Py", new Torque((dy.Si * input.Pz.Si) - (input.Z.Si * input.Py.Si)), "lbf·in");
        s.Step("My", "moment about y through the centroid", "cz · Px − (cx − xc) · Pz", new Torque((input.Z.Si * input.Px.Si) - (dx.Si * input.Pz.Si)), "lbf·in");
        s.Step("Mz", "twist about z through the centroid", "(cx − xc) · Py − (cy − yc) · Px", new Torque((dx.Si * input.Py.Si) - (dy.Si * input.Px.Si)), "lbf·in");
        s.Step("K", "mean square distance from the centroid", "Σ A·r² / Σ A", new Area(Mean(f => Math.Pow(f.X.Si - xc.Si, 2) + Math.Pow(f.Y.Si - yc.Si, 2))), "in²", Method);

        var most = Enumerable.Range(0, forces.Count).MaxBy(i => forces[i].Shear.Si);
        var (fastener, force) = (input.Fasteners[most], forces[most]);
        s.Step("xi", $"place of {fastener.Name}, which has the greatest shear, along x", "as given", fastener.X, "in");
        s.Step("yi", "its place along y", "as given", fastener.Y, "in");
        s.Step("wi", "its share of the area", "A / Σ A", areas[most] / areas.Sum());
        s.Step("Vx", "its shear along x", "wi · (Px − Mz · (yi − yc) / K)", force.X, "lbf", Method);
        s.Step("Vy", "its shear along y", "wi · (Py + Mz · (xi − xc) / K)", force.Y, "lbf", Method);
    }

    private static void Margins(SheetBuilder s, FastenerGroupInput input, Sequence<FastenerForce> forces)
    {
        var used = input.Fasteners.Zip(forces, (f, force) => (force, use: Use(s, f, force, input.Interaction))).ToArray();
        s.Table("Each fastener", ["fastener", "shear along x", "shear along y", "shear", "tension", "share of its strength", "margin of safety"], used.Select(u => ImmutableArray.Create<SheetValue>(
            u.force.Name, u.force.X.As("lbf"), u.force.Y.As("lbf"), u.force.Shear.As("lbf"), u.force.Tension.As("lbf"),
            u.use is { } share ? Measure.Number(share) : "not checked", u.use is { } some ? some > 0 ? Measure.Number((1 / some) - 1) : "no load" : "not checked")));
        if (used.Any(u => u.use is null))
        {
            s.Caution("A fastener has no allowables: its strength is not checked.", true);
        }

        if (input.Interaction == Interaction.FullBody || input.Fasteners.Any(FromMemory))
        {
            s.Caution("Allowables of the bolt table, or the exponents of this interaction, are from memory: confirm them in their documents before relying on the margin.", true);
        }

        var (a, b, source) = Interactions.Exponents(input.Interaction);
        foreach (var (force, use) in used.Where(u => u.use is not null).OrderByDescending(u => u.use).Take(1))
        {
            s.Step("u", $"share of its strength that fastener {force.Name} uses, the worst", $"1/k where (k·V/Fs)^{NumberFormat.Text(a)} + (k·T/Ft)^{NumberFormat.Text(b)} = 1", use!.Value, source);
            if (use > 0)
            {
                s.Step("MS", "margin of safety of that fastener", "1 / u − 1", (1 / use.Value) - 1);
            }

            s.Check("shear with tension", Measure.Number(use.Value), Sense.AtMost, Measure.Number(1), "ultimate loads stay within the ultimate strength of the worst fastener", source);
        }
    }

    private static bool FromMemory(FastenerRow fastener) =>
        fastener.Bolt.Length > 0 && (fastener.Shear is null || fastener.Tension is null) && Bolts.Find(fastener.Bolt).Source.Basis == Basis.Memory;

    private static double? Use(SheetBuilder s, FastenerRow fastener, FastenerForce force, Interaction interaction)
    {
        var (shear, tension) = (fastener.Shear, fastener.Tension);
        if (fastener.Bolt.Length > 0 && (shear is null || tension is null))
        {
            var bolt = Bolts.Find(fastener.Bolt);
            if (bolt.WhyNot is { } why)
            {
                s.CannotTell(why);
                return null;
            }

            s.Uses(bolt.Source);
            (shear, tension) = (shear ?? bolt.Value.Shear, tension ?? bolt.Value.Tension);
        }

        return shear is { } fs && tension is { } ft ? Interactions.Use(interaction, force.Shear / fs, Math.Max(0, force.Tension.Si) / ft.Si) : null;
    }

    private static void Cautions(SheetBuilder s, FastenerGroupInput input)
    {
        s.Caution("Prying of a thin flange and preload are not covered, nor bearing and tear-out of the sheet, nor the nut: check each by itself.");
        s.Caution("The base is taken as rigid. A soft base under stiff fasteners puts more on those nearest the load than is printed here.");
        if (input.Tilt == Tilt.Centroid)
        {
            s.Caution("Fasteners on the compressed side are shown with negative tension; in truth the base presses there. A base that tips over an edge (tilt=edge) loads them otherwise: take the greater.");
        }
        else if (input.Pz.Si < 0)
        {
            s.Caution("A load that presses the base on is borne by the base; it is not counted as relief of the tension.");
        }

        s.DeferToApprovedData();
    }
}
