namespace Fairlead.Calculations.Structure;

/// <summary>An angle by which a strap leaves the direction of the load.</summary>
/// <param name="Angle">The angle.</param>
public sealed record StrapAngle([In("angle", "angle to the direction of the load, in one plane", "°", Min = 0, Max = 60)] Angle Angle);

/// <summary>Input of <see cref="StrapLoad"/>.</summary>
/// <param name="Mass">What is held.</param>
/// <param name="Factor">Inertia factor.</param>
/// <param name="Fitting">Fitting factor.</param>
/// <param name="Share">Share of the load that this strap bears.</param>
/// <param name="Angles">Angles of the strap to the load, in plan and in side view.</param>
/// <param name="Strength">What strap and attachment bear.</param>
public sealed record StrapLoadInput(
    [In("m", "mass held", "lb", Min = 0.01, Max = 10000)] Mass Mass,
    [In("n", "inertia factor", Min = 0.1, Max = 60)] double Factor,
    [In("FF", "fitting factor", Min = 1, Max = 2, Default = "1.33")] double Fitting = 1.33,
    [In("share", "share of the load that this strap bears", "%", Min = 1, Max = 100, Default = "all of it")] Fraction? Share = null,
    [In("angles", "angles of the strap to the load", Default = "in line with it")] Sequence<StrapAngle> Angles = default,
    [In("Ps", "strength of strap and attachment", "lbf", Min = 0.1, Max = 1e6, Default = "not checked")] Force? Strength = null);

/// <summary>Load in a strap that holds something against inertia, and at its attachment.</summary>
/// <remarks>P = n · m · FF · share · Π 1/cos(angle). The fitting factor of what is held by straps is 1.33, before 14 September 1969 1.15.
/// Check values (AC 43.13-2B table 9-1 and its examples): 9 g, 215 lb, 1.33, 40 %: 1,029 lbf; 814 lbf at 30° and 30°: 1,086 lbf.</remarks>
public sealed class StrapLoad : ICalculation<StrapLoadInput>
{
    private static readonly Source Circular = new("FAA AC 43.13-2B", "3 Mar 2008", "tables 9-1 and 9-2");

    /// <inheritdoc/>
    public static CalculationInfo<StrapLoadInput> Info { get; } = new(
        "strap-load", "Load in a strap", Discipline.Structure,
        "What a strap that holds something bears, at its angle to the load", "m='170 lb' n=9 FF=1.33 share='40 %' angles='15 deg;10 deg' Ps='1500 lbf'", Circular);

    /// <inheritdoc/>
    public static Sheet Run(StrapLoadInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var direct = s.Step("P0", "load in the direction of inertia", "n · m · g0 · FF · share", Force.Of(input.Mass.In("lb"), "lbf") * (input.Factor * input.Fitting * (input.Share?.Si ?? 1)), "lbf", Circular);
        var lengthened = s.Step("k", "multiplier of the angles", "product of 1 / cos(angle)", input.Angles.Aggregate(1.0, (k, a) => k / Math.Cos(a.Angle.Si)), Circular);
        var load = s.Step("P", "load in the strap", "P0 · k", direct * lengthened, "lbf", Circular);
        if (input.Strength is { } strength)
        {
            s.Check("strap", load.As("lbf"), Sense.AtMost, strength.As("lbf"), "strap and attachment bear the ultimate load", Circular);
        }

        s.Caution("A strap that may slacken, or that is not symmetrical to its fellow, bears more than its share.");
    });
}
