namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="AdiabaticLimit"/>.</summary>
/// <param name="Time">How long the current flows, 1 ms to 5 s.</param>
/// <param name="Initial">Conductor temperature when it starts.</param>
/// <param name="Final">Greatest conductor temperature allowed, above the initial one.</param>
/// <param name="Gauge">Wire gauge, whose area is that of table 11-9.</param>
/// <param name="Area">Conductor area, when it is not taken from the gauge.</param>
/// <param name="Conductor">Copper or aluminium.</param>
public sealed record AdiabaticLimitInput(
    [In("t", "duration of the current", "s", Min = 0.001, Max = 5)] Duration Time,
    [In("Ti", "conductor temperature at the start", "°C", Min = -65, Max = 260)] Temperature Initial,
    [In("Tf", "greatest conductor temperature", "°C", Min = 0, Max = 400)] Temperature Final,
    [In("AWG", "wire gauge", Default = "S is given")] Gauge? Gauge = null,
    [In("S", "conductor area", "mm²", Min = 0.005, Max = 2000, Default = "table 11-9")] Area? Area = null,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper);

/// <summary>Greatest short-time current of a conductor that loses no heat: I·√t = k·S, k = K·√ln((Tf + β)/(Ti + β)).</summary>
/// <remarks>
/// K = 226 and β = 234.5 for copper, 148 and 228 for aluminium (A·√s/mm², °C). Check value: copper from 90 to 250 °C, k = 143 (BS 7671).
/// Valid for a few seconds; over minutes a wire survives more than this says.
/// </remarks>
public sealed class AdiabaticLimit : ICalculation<AdiabaticLimitInput>
{
    private static readonly Source Form = new("IEC 60949", "", "adiabatic short-circuit current");
    private static readonly Source Constant = new("IEC 60949", "", "constant K", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<AdiabaticLimitInput> Info { get; } = new(
        "adiabatic-limit", "Short-time current of a wire", Discipline.Wiring,
        "The current a wire stands for a short time without losing heat", "t='0.5 s' Ti='70 degC' Tf='150 degC' AWG=20", Form, Constant);

    /// <inheritdoc/>
    public static Sheet Run(AdiabaticLimitInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Problem(input) is { } why)
        {
            s.CannotTell(why);
            return;
        }

        var area = input.Area ?? s.Step("S", "conductor area", "table by AWG", WireTable.Area(input.Gauge!.Value, input.Conductor), "mm²");
        if (area is not { } square)
        {
            return;
        }

        var (constant, beta) = Material(input.Conductor);
        s.Step("K", "material constant, A·√s/mm²", "constant of the conductor", constant, Constant);
        s.Step("b", "reciprocal temperature coefficient at 0 °C, °C", "constant of the conductor", beta, Form);
        s.Step("k", "short-time factor, A·√s/mm²", "K · √(ln((Tf + b) / (Ti + b)))", Factor(input.Conductor, input.Initial, input.Final), Form);
        var through = s.Step("I2t", "greatest let-through", "(k · S)²", LetThrough(square, input.Conductor, input.Initial, input.Final), "A²·s", Form);
        s.Step("Iad", "greatest current for this time", "√(I2t / t)", new Current(Math.Sqrt(through.Si / input.Time.Si)), "A", Form);
    });

    /// <summary>The let-through I²t that takes a conductor from one temperature to another without loss of heat.</summary>
    public static SquareCurrentTime LetThrough(Area area, Conductor conductor, Temperature initial, Temperature final)
    {
        var rootOfIt = Factor(conductor, initial, final) * area.In("mm²");
        return new(rootOfIt * rootOfIt);
    }

    private static double Factor(Conductor conductor, Temperature initial, Temperature final)
    {
        var (constant, beta) = Material(conductor);
        return constant * Math.Sqrt(Math.Log((final.In("°C") + beta) / (initial.In("°C") + beta)));
    }

    private static (double K, double Beta) Material(Conductor conductor) => conductor == Conductor.Copper ? (226, 234.5) : (148, 228);

    private static string? Problem(AdiabaticLimitInput input) =>
        input.Final <= input.Initial ? "The greatest conductor temperature is not above that at the start: no short-time current is left."
        : (input.Gauge is null) == (input.Area is null) ? "Give either the wire gauge (AWG) or the conductor area (S), and not both."
        : null;
}
