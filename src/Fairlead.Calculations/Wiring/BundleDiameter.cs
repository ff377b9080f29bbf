namespace Fairlead.Calculations.Wiring;

/// <summary>Wires of one diameter in a bundle.</summary>
/// <param name="Diameter">Outside diameter, 0.005 in to 2 in.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record BundleWires(
    [In("d", "outside diameter", "in", Min = 0.005, Max = 2)] Length Diameter,
    [In("n", "wires", Min = 1, Max = 1000)] int Count);

/// <summary>Input of <see cref="BundleDiameter"/>.</summary>
/// <param name="Wires">The wires, by diameter.</param>
/// <param name="Factor">Lay-up factor of the estimate, 1.15 to 1.45.</param>
public sealed record BundleDiameterInput(
    [In("wires", "wires in the bundle")] Sequence<BundleWires> Wires,
    [In("k", "lay-up factor", Min = 1.15, Max = 1.45, Default = "1.2")] double Factor = 1.2);

/// <summary>Diameter of a bundle: the estimate k · √(Σ n·d²), but never below what geometry allows.</summary>
/// <remarks>
/// The lower bound is the smallest circle round N equal circles where the wires are equal and no more than 20; otherwise the greater of
/// √(Σ n·d²) (no gaps at all) and the sum of the two largest diameters. With k = 1.2 the estimate lies below what can be built for 2 to 6, 9
/// and 10 equal wires. Check value: 7 equal wires of 1 mm need exactly 3 mm; 1.2 · √7 = 3.17 mm.
/// </remarks>
public sealed class BundleDiameter : ICalculation<BundleDiameterInput>
{
    private static readonly TableFile Packing = TableFile.Load("circle-packing");
    private static readonly Source Estimate = new("Lay-up estimate k · √(Σ d²)", "", "", Basis.CommonPractice);
    private static readonly Source Geometry = new("Geometry", "", "circles do not overlap", Basis.Derived);

    /// <inheritdoc/>
    public static CalculationInfo<BundleDiameterInput> Info { get; } = new(
        "bundle-diameter", "Diameter of a bundle", Discipline.Wiring,
        "How thick a bundle of wires is, beside the least that geometry allows", "wires='0.058 in,10;0.050 in,25'", Estimate);

    /// <inheritdoc/>
    public static Sheet Run(BundleDiameterInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Wires.Count == 0)
        {
            s.CannotTell("The bundle has no wires.");
            return;
        }

        var wires = input.Wires.Sum(w => w.Count);
        s.Step("N", "wires in the bundle", "sum of n", wires);
        var area = s.Step("Dq", "diameter without gaps", "√(sum of n · d²)", new Length(Math.Sqrt(input.Wires.Sum(w => w.Count * w.Diameter.Si * w.Diameter.Si))), "in", Geometry);
        var estimate = s.Step("De", "estimate", "k · Dq", area * input.Factor, "in", Estimate);
        var least = LowerBound(s, input, wires, area);
        s.Step("D", "bundle diameter", "greater of De and Dmin", estimate > least ? estimate : least, "in");
        if (estimate < least)
        {
            s.Caution("The estimate is less than these wires can be packed into; the packing bound is used instead.");
        }

        s.Caution("Ties, sleeving, overbraid and branches come on top.");
    });

    /// <summary>The diameter of a bundle, without the working.</summary>
    /// <exception cref="ArgumentException">The wires are none or out of range.</exception>
    public static Length Of(BundleDiameterInput input)
    {
        var sheet = Run(input);
        return sheet.Find("D") is { } diameter ? new(diameter.Si) : throw new ArgumentException(string.Join(" ", sheet.CannotTell), nameof(input));
    }

    private static Length LowerBound(SheetBuilder s, BundleDiameterInput input, int wires, Length area)
    {
        var equal = input.Wires.All(w => w.Diameter == input.Wires[0].Diameter);
        if (equal && Packing.RowWhere("circles", wires) is { } row)
        {
            var ratio = s.Step("q", "smallest circle round N equal circles, over their diameter", "circle packing by N", Packing.Rows[row][1]!.Value, Packing.SourceOf(row));
            s.Step("d", "diameter of a wire", "wire table", input.Wires[0].Diameter, "in");
            return s.Step("Dmin", "least diameter that can be built", "q · d", input.Wires[0].Diameter * ratio, "in", Packing.SourceOf(row));
        }

        var two = input.Wires.SelectMany(w => Enumerable.Repeat(w.Diameter, Math.Min(w.Count, 2))).OrderDescending().Take(2).ToArray();
        var pair = s.Step("Dp", "two thickest wires side by side", "sum of the two greatest d", two.Aggregate((a, b) => a + b), "in", Geometry);
        return s.Step("Dmin", "lower bound of the diameter", "greater of Dq and Dp", area > pair ? area : pair, "in", Geometry);
    }
}
