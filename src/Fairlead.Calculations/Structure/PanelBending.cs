namespace Fairlead.Calculations.Structure;

/// <summary>How a tray or panel is held, and where the item stands.</summary>
public enum Support
{
    /// <summary>Strip held at one end, item at the other.</summary>
    CantileverTip,

    /// <summary>Strip on two edges, item in the middle.</summary>
    SimpleCentre,

    /// <summary>Strip on two edges, item spread over it.</summary>
    SimpleUniform,

    /// <summary>Strip clamped at both ends, item in the middle.</summary>
    FixedCentre,

    /// <summary>Panel on four edges that may turn, item spread over it.</summary>
    PlateSimple,

    /// <summary>Panel clamped on four edges, item spread over it.</summary>
    PlateClamped,
}

/// <summary>Input of <see cref="PanelBending"/>.</summary>
/// <param name="Support">How it is held.</param>
/// <param name="Length">Span, or length of the panel.</param>
/// <param name="Width">Width.</param>
/// <param name="Thickness">Thickness.</param>
/// <param name="Modulus">Young's modulus.</param>
/// <param name="Item">Mass of the item.</param>
/// <param name="Factor">Load factor across the panel.</param>
/// <param name="Density">Density of the panel; its own mass is counted when given.</param>
/// <param name="Poisson">Poisson's ratio.</param>
/// <param name="Allowed">Allowable stress, of the same kind (limit or ultimate) as the load factor.</param>
/// <param name="MaxDeflection">Greatest deflection.</param>
/// <param name="MinFrequency">Least natural frequency.</param>
public sealed record PanelBendingInput(
    [In("support", "how it is held and where the item stands")] Support Support,
    [In("L", "span or length", "in", Min = 0.1, Max = 200)] Length Length,
    [In("b", "width", "in", Min = 0.1, Max = 200)] Length Width,
    [In("t", "thickness", "in", Min = 0.005, Max = 2)] Length Thickness,
    [In("E", "Young's modulus", "ksi", Min = 10, Max = 100000)] Pressure Modulus,
    [In("m", "mass of the item", "lb", Min = 0, Max = 1000)] Mass Item,
    [In("n", "load factor across the panel, limit or ultimate", Min = 0, Max = 100)] double Factor,
    [In("rho", "density of the panel", "lb/in³", Min = 0, Max = 1, Default = "its own mass not counted")] Density Density = default,
    [In("mu", "Poisson's ratio", Min = 0, Max = 0.49, Default = "0.33")] double Poisson = 0.33,
    [In("F", "allowable stress, limit or ultimate as n", "ksi", Min = 0.1, Max = 500, Default = "not checked")] Pressure? Allowed = null,
    [In("dmax", "greatest deflection", "in", Min = 0.0001, Max = 10, Default = "not checked")] Length? MaxDeflection = null,
    [In("fmin", "least natural frequency", "Hz", Min = 0.1, Max = 5000, Default = "not checked")] Frequency? MinFrequency = null);

/// <summary>Bending stress, deflection and first natural frequency of a tray or panel as a strip or plate, elastic and with small deflections.</summary>
/// <remarks>
/// Check values: strip 1.0 in by .125 in, E 10.5 Msi, 6 in, 10 lb at the tip: .4213 in, 23,040 psi; plate 12 in by 8 in by .063 in with 5 lb spread on it, own mass counted: 45.17 Hz.
/// </remarks>
public sealed class PanelBending : ICalculation<PanelBendingInput>
{
    private static readonly Source Beam = StructureSources.Derived("Beam theory");
    private static readonly Source Plate = StructureSources.Derived("Plate theory, Navier's series");

    /// <inheritdoc/>
    public static CalculationInfo<PanelBendingInput> Info { get; } = new(
        "panel-bending", "Tray or panel in bending", Discipline.Structure,
        "Stress, deflection and first natural frequency of a tray or panel under an item",
        "support=plate-simple L='12 in' b='8 in' t='0.063 in' E='10500 ksi' m='5 lb' n=6.6 rho='0.100 lb/in3' F='40 ksi'", Beam, Plate);

    /// <inheritdoc/>
    public static Sheet Run(PanelBendingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var own = s.Step("mp", "mass of the panel", "rho · L · b · t", new Mass(input.Density.Si * input.Length.Si * input.Width.Si * input.Thickness.Si), "lb");
        var load = s.Step("W", "load", "(m + mp) · g0 · n", Weight.At(input.Item + own, input.Factor), "lbf");
        var (deflection, stress) = input.Support is Support.PlateSimple or Support.PlateClamped ? AsPlate(s, input, own, load) : AsStrip(s, input, own, load);
        if (input.Allowed is { } allowed)
        {
            s.Check("bending stress", stress.As("ksi"), Sense.AtMost, allowed.As("ksi"), "within the allowable of the same kind, limit or ultimate", new Source("Allowable stress stated", "", "", Basis.Stated));
        }

        if (input.MaxDeflection is { } most)
        {
            s.Check("deflection", deflection.As("in"), Sense.AtMost, most.As("in"), "the item keeps clear of what is near", new Source("Clearance stated", "", "", Basis.Stated));
        }

        if (deflection > input.Thickness / 2 && input.Support is Support.PlateSimple or Support.PlateClamped)
        {
            s.Caution("The deflection exceeds half the thickness: membrane action begins and the real deflection is smaller than printed.", true);
        }

        s.Caution("An item on feet presses on a few points: spread over the panel is kinder than the truth unless it stands on a base plate. Holes, beads and flanges are not counted.");
        s.DeferToApprovedData();
    });

    private static (Length Deflection, Pressure Stress) AsStrip(SheetBuilder s, PanelBendingInput input, Mass own, Force load)
    {
        var (l, e) = (input.Length.Si, input.Modulus.Si);
        var inertia = input.Width.Si * Math.Pow(input.Thickness.Si, 3) / 12;
        var (formula, bend, moment, arm, share) = input.Support switch
        {
            Support.CantileverTip => ("W · L³ / (3 · E · I)", 1.0 / 3, "W · L", 1.0, 33.0 / 140),
            Support.SimpleCentre => ("W · L³ / (48 · E · I)", 1.0 / 48, "W · L / 4", 1.0 / 4, 17.0 / 35),
            Support.SimpleUniform => ("5 · W · L³ / (384 · E · I)", 5.0 / 384, "W · L / 8", 1.0 / 8, 1.0),
            _ => ("W · L³ / (192 · E · I)", 1.0 / 192, "W · L / 8", 1.0 / 8, 13.0 / 35),
        };
        var deflection = s.Step("d", "greatest deflection, I = b · t³ / 12", formula, new Length(bend * load.Si * l * l * l / (e * inertia)), "in", Beam);
        var torque = s.Step("M", "greatest bending moment", moment, new Torque(arm * load.Si * l), "lbf·in", Beam);
        var stress = s.Step("f", "bending stress", "6 · M / (b · t²)", new Pressure(6 * torque.Si / (input.Width.Si * input.Thickness.Si * input.Thickness.Si)), "psi", Beam);
        var moving = input.Item + (own * share);
        var uniform = input.Support == Support.SimpleUniform;
        AddFrequency(s, input, moving, uniform ? "π / 2 · √(E · I / ((m + mp) · L³))" : "√(stiffness / (m + its share of mp)) / 2π, by Rayleigh",
            uniform ? Math.PI / 2 * Math.Sqrt(e * inertia / (moving.Si * l * l * l)) : Math.Sqrt(e * inertia / (bend * l * l * l * moving.Si)) / (2 * Math.PI), Beam);
        return (deflection, stress);
    }

    private static (Length Deflection, Pressure Stress) AsPlate(SheetBuilder s, PanelBendingInput input, Mass own, Force load)
    {
        var simple = input.Support == Support.PlateSimple;
        var pressure = s.Step("q", "pressure on the panel", "W / (L · b)", new Pressure(load.Si / (input.Length.Si * input.Width.Si)), "psi");
        var rigidity = s.Step("D", "flexural rigidity", "E · t³ / (12 · (1 − mu²))", PlateFormulas.Rigidity(input.Modulus, input.Thickness, input.Poisson), "lbf·in", Plate);
        var clamped = PlateFormulas.AllClamped(input.Length, input.Width, input.Thickness, input.Modulus, input.Poisson, pressure);
        var answer = simple ? PlateFormulas.SimplySupported(input.Length, input.Width, input.Thickness, input.Modulus, input.Poisson, pressure) : clamped.Answer;
        var source = simple ? Plate : clamped.Source;
        s.Step("d", "deflection of the centre", simple
            ? "16 · q / (π⁶ · D) · Σ ±1 / (i · j · (i²/L² + j²/b²)²), odd i and j, plus where (i + j)/2 is odd"
            : "coefficient by the ratio of sides · q · (shorter side)⁴ / (E · t³)", answer.Deflection, "in", source);
        s.Step("f", simple ? "bending stress at the centre" : "bending stress at the middle of the long edge", simple
            ? "6 · moment / t², the moment by the same series"
            : "coefficient by the ratio of sides · q · (shorter side)² / t²", answer.Stress, "psi", source);
        var perArea = (input.Item + own).Si / (input.Length.Si * input.Width.Si);
        var frequency = simple ? PlateFormulas.FirstSimplySupported(input.Length, input.Width, rigidity, perArea) : PlateFormulas.FirstClamped(input.Length, input.Width, rigidity, perArea);
        AddFrequency(s, input, input.Item + own, simple ? "π / 2 · √(D / μ″) · (1/L² + 1/b²), μ″ = (m + mp)/(L · b)" : "22.373 / 2π · √(D / μ″) · √(1/L⁴ + 0.6047/(L · b)² + 1/b⁴), μ″ = (m + mp)/(L · b)", frequency.Si, Plate);
        return (answer.Deflection, answer.Stress);
    }

    private static void AddFrequency(SheetBuilder s, PanelBendingInput input, Mass moving, string formula, double hertz, Source source)
    {
        if (moving.Si <= 0)
        {
            s.Caution("Neither item nor panel has mass: no natural frequency.", input.MinFrequency is not null);
            return;
        }

        var frequency = s.Step("fn", "first natural frequency", formula, new Frequency(hertz), "Hz", source);
        if (input.MinFrequency is { } least)
        {
            s.Check("natural frequency", frequency.As("Hz"), Sense.AtLeast, least.As("Hz"), "clear of what shakes it", new Source("Least frequency stated", "", "", Basis.Stated), Verdict.Caution);
        }
    }
}
