namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="MacPosition"/>.</summary>
/// <param name="Fs">Fuselage station of the centre of gravity.</param>
/// <param name="LeadingEdge">Fuselage station of the leading edge of the mean aerodynamic chord.</param>
/// <param name="Chord">Length of the mean aerodynamic chord.</param>
/// <param name="Forward">Forward limit.</param>
/// <param name="Aft">Aft limit.</param>
public sealed record MacPositionInput(
    [In("FS", "fuselage station of the centre of gravity", "in", Min = -2000, Max = 5000)] Length Fs,
    [In("LEMAC", "leading edge of the mean aerodynamic chord", "in", Min = -2000, Max = 5000)] Length LeadingEdge,
    [In("MAC", "mean aerodynamic chord", "in", Min = 1, Max = 1000)] Length Chord,
    [In("fwd", "forward limit", "%", Min = -100, Max = 200, Default = "not checked")] Fraction? Forward = null,
    [In("aft", "aft limit", "%", Min = -100, Max = 200, Default = "not checked")] Fraction? Aft = null);

/// <summary>Centre of gravity in per cent of the mean aerodynamic chord: 100 · (FS − LEMAC)/MAC.</summary>
/// <remarks>Check value: FS 161.6 in, LEMAC 144 in, chord 62 in: 28.4 % (FAA-H-8083-1B, ch. 3).</remarks>
public sealed class MacPosition : ICalculation<MacPositionInput>
{
    private static readonly Source Formula = new("FAA-H-8083-1B", "2016", "ch. 3", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<MacPositionInput> Info { get; } = new(
        "mac-position", "Position on the mean aerodynamic chord", Discipline.Balance,
        "The centre of gravity in per cent of the mean aerodynamic chord", "FS='161.6 in' LEMAC='144 in' MAC='62 in'", Formula);

    /// <inheritdoc/>
    public static Sheet Run(MacPositionInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var share = s.Step("p", "position on the chord", "(FS − LEMAC) / MAC", new Fraction((input.Fs - input.LeadingEdge) / input.Chord), "%", Formula);
        if (input.Forward is { } forward)
        {
            s.Check("forward limit", share.As("%"), Sense.AtLeast, forward.As("%"), "not ahead of the forward limit", Formula);
        }

        if (input.Aft is { } aft)
        {
            s.Check("aft limit", share.As("%"), Sense.AtMost, aft.As("%"), "not behind the aft limit", Formula);
        }
    });
}
