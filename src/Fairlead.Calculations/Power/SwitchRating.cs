using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Power;

/// <summary>What a switch switches. The order is that of table 11-4.</summary>
public enum SwitchedLoad
{
    /// <summary>Incandescent lamp.</summary>
    Lamp = 1,

    /// <summary>Relay or solenoid.</summary>
    Inductive,

    /// <summary>Heater.</summary>
    Resistive,

    /// <summary>Direct-current motor.</summary>
    Motor,
}

/// <summary>Input of <see cref="SwitchRating"/>.</summary>
/// <param name="Nominal">Nominal system voltage: 12 or 28 V.</param>
/// <param name="Load">Kind of load.</param>
/// <param name="Current">Continuous current of the load, 0 A to 500 A.</param>
/// <param name="Rating">Nominal rating of the switch.</param>
public sealed record SwitchRatingInput(
    [In("V", "nominal system voltage", "V", Min = 12, Max = 28)] Voltage Nominal,
    [In("load", "kind of load")] SwitchedLoad Load,
    [In("I", "continuous current of the load", "A", Min = 0, Max = 500)] Current Current,
    [In("Is", "nominal rating of the switch", "A", Min = 0.01, Max = 1000)] Current Rating);

/// <summary>Switch against load: required rating = I · factor of table 11-4.</summary>
/// <remarks>Check value: a 2 A lamp load at 28 V needs a 16 A switch (factor 8).</remarks>
public sealed class SwitchRating : ICalculation<SwitchRatingInput>
{
    private static readonly TableFile Table = TableFile.Load("switch-derating");

    /// <inheritdoc/>
    public static CalculationInfo<SwitchRatingInput> Info { get; } = new(
        "switch-rating", "Switch against load", Discipline.Power,
        "Whether a switch is large enough for the kind of load it breaks", "V='28 V' load=motor I='5 A' Is='20 A'", Table.Source);

    /// <inheritdoc/>
    public static Sheet Run(SwitchRatingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var factor = Table.Rows.FirstOrDefault(r => Math.Abs(r[0]!.Value - input.Nominal.Si) < 1e-9 && r[1] == (int)input.Load);
        if (factor.IsDefault)
        {
            s.CannotTell($"Table 11-4 has 12 V and 28 V and this is {input.Nominal.As("V")}.");
            return;
        }

        var k = s.Step("k", "derating factor", "table 11-4", factor[2]!.Value, Table.Source);
        var needed = s.Step("Ineed", "rating needed", "I · k", input.Current * k, "A", Table.Source);
        s.Step("Iuse", "load current this switch may break", "Is / k", input.Rating / k, "A", Ac4313.Paragraph("table 11-4 note 2", Basis.Memory));
        s.Check("switch rating", needed.As("A"), Sense.AtMost, input.Rating.As("A"), "the switch's nominal rating is at least the load current times the derating factor", Table.Source);
        if (input.Nominal.Si < 8 || input.Current.Si < 0.5)
        {
            s.Caution("A low-energy load (below 0.5 A) wants contacts made for it: silver contacts are not recommended there (AC 43.13-1B, page 11-17).");
        }
    });
}
