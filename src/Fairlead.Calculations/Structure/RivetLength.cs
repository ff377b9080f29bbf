namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="RivetLength"/>.</summary>
/// <param name="Diameter">Rivet diameter.</param>
/// <param name="Grip">Thickness of all that is riveted.</param>
/// <param name="Alloy">Rivet alloy.</param>
/// <param name="Length">Length of the rivet at hand.</param>
public sealed record RivetLengthInput(
    [In("D", "rivet diameter", "in", Min = 0.09, Max = 0.26)] Length Diameter,
    [In("G", "grip: thickness of all that is riveted", "in", Min = 0.005, Max = 3)] Length Grip,
    [In("alloy", "rivet alloy", Default = "ad2117")] RivetAlloy Alloy = RivetAlloy.Ad2117,
    [In("Lr", "length of the rivet at hand", "in", Min = 0.05, Max = 4, Default = "not judged")] Length? Length = null);

/// <summary>Rivet length G + 1.5 D in sixteenths of an inch, shop head and drill.</summary>
/// <remarks>Check value: two sheets of .040 in and a 1/8 in rivet: .2675 in, length −4 (4/16 in); shop head 3/16 in wide, 1/16 in high; drill No. 30, hole .1285 in.</remarks>
public sealed class RivetLength : ICalculation<RivetLengthInput>
{
    private const double LeastProtrusion = 1.33;
    private static readonly Source Rule = StructureSources.Handbook("rivet length, figures 4-76 and 4-90");

    /// <inheritdoc/>
    public static CalculationInfo<RivetLengthInput> Info { get; } = new(
        "rivet-length", "Length, shop head and hole of a rivet", Discipline.Structure,
        "Which length of rivet, how big its shop head, which drill", "D='0.125 in' G='0.080 in'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(RivetLengthInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Rivets.Drill(input.Diameter) is not { IsKnown: true } drill)
        {
            s.CannotTell(Rivets.Drill(input.Diameter).WhyNot!);
            return;
        }

        var sixteenth = Length.Of(1.0 / 16, "in");
        var wanted = s.Step("Lw", "length wanted", "G + 1.5 · D", input.Grip + (input.Diameter * 1.5), "in", Rule);
        var nearest = Math.Round(wanted / sixteenth, MidpointRounding.AwayFromZero);
        var enough = ((sixteenth * nearest) - input.Grip) / input.Diameter >= LeastProtrusion - 1e-9;
        var dash = s.Step("dash", "length number, sixteenths of an inch", "nearest sixteenth to Lw that leaves 1.33 · D", enough ? nearest : nearest + 1);
        var length = s.Step("L", "length of the rivet", "dash · 1/16 in", sixteenth * dash, "in");
        var over = s.Step("h", "protrusion before driving", "L − G", length - input.Grip, "in");
        s.Step("ratio", "protrusion in diameters", "h / D", over / input.Diameter);
        if (input.Length is { } hand)
        {
            s.Check("protrusion of the rivet at hand", (hand - input.Grip).As("in"), Sense.AtLeast, (input.Diameter * LeastProtrusion).As("in"), "1.33 D at least before driving, or the shop head is too small", Rule);
            s.Check("length of the rivet at hand", hand.As("in"), Sense.AtMost, length.As("in"), "no longer than the length that suits the grip, or it bends when driven: cut it", Rule, Verdict.Caution);
        }
        else
        {
            s.Check("protrusion", over.As("in"), Sense.AtLeast, (input.Diameter * LeastProtrusion).As("in"), "1.33 D at least before driving", Rule);
        }

        var (width, height, leastWidth, most, leastHeight) = ShopHead(input.Alloy);
        s.Step("W", "preferred width of the shop head", "multiple of D by alloy", input.Diameter * width, "in", Rule);
        s.Step("H", "preferred height of the shop head", "multiple of D by alloy", input.Diameter * height, "in", Rule);
        s.Step("Wmin", "least width of the shop head", "1.25 · D", input.Diameter * leastWidth, "in", Rule);
        s.Step("Wmax", "greatest width of the shop head", "multiple of D by alloy", input.Diameter * most, "in", Rule);
        s.Step("Hmin", "height that goes with the greatest width", "multiple of D by alloy", input.Diameter * leastHeight, "in", Rule);
        s.Note("drill", "drill", drill.Value.Drill, drill.Source.ToString());
        s.Step("Dh", "hole", "by the rivet diameter", drill.Value.Hole, "in", drill.Source);
        s.DeferToApprovedData();
    });

    // Width and height preferred, least width, greatest width, height at that width, in diameters (FAA-H-8083-31B figure 4-76).
    private static (double Width, double Height, double LeastWidth, double MostWidth, double LeastHeight) ShopHead(RivetAlloy alloy) =>
        alloy is RivetAlloy.A1100 or RivetAlloy.Ad2117 ? (1.5, 0.5, 1.25, 1.66, 0.33) : (1.4, 0.6, 1.25, 1.5, 0.5);
}
