namespace Fairlead.Calculations.Balance;

/// <summary>Input of <see cref="RecordRevision"/>.</summary>
/// <param name="MaxLanding">Greatest landing mass.</param>
/// <param name="Change">Change of empty weight since the record was made, all changes together.</param>
/// <param name="Shift">Shift of the centre of gravity since then.</param>
/// <param name="Mac">Mean aerodynamic chord, for an aeroplane.</param>
public sealed record RecordRevisionInput(
    [In("MLM", "greatest landing mass", "lb", Min = 1, Max = 1000000)] Mass MaxLanding,
    [In("dW", "change since the record, all changes together", "lb", Min = -100000, Max = 100000)] Mass Change,
    [In("dFS", "shift of the centre of gravity since the record", "in", Min = -500, Max = 500)] Length Shift,
    [In("MAC", "mean aerodynamic chord", "in", Min = 1, Max = 1000, Default = "not an aeroplane")] Length? Mac = null);

/// <summary>Whether mass and centre of gravity must be established anew: more than 0.5 % of the greatest landing mass, or of the chord.</summary>
/// <remarks>Check value: a greatest landing mass of 2,000 kg allows 10.0 kg; a chord of 1.500 m allows 7.5 mm.</remarks>
public sealed class RecordRevision : ICalculation<RecordRevisionInput>
{
    private static readonly Source Rule = new("EASA AMC1 CAT.POL.MAB.100(b); GM1 NCO.POL.105", "", "(b)");

    /// <inheritdoc/>
    public static CalculationInfo<RecordRevisionInput> Info { get; } = new(
        "record-revision", "Revision of the mass record", Discipline.Balance,
        "Whether changes since the last record call for new mass and balance figures", "MLM='2000 kg' dW='8 kg' dFS='4 mm' MAC='1.5 m'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(RecordRevisionInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var mass = s.Step("Wlim", "change that needs no revision", "0.005 · MLM", input.MaxLanding * 0.005, "lb", Rule);
        s.Check("change of empty weight", new Mass(Math.Abs(input.Change.Si)).As("lb"), Sense.AtMost, mass.As("lb"), "the change stays within what needs no revision of the record", Rule, Verdict.Caution);
        if (input.Mac is { } mac)
        {
            var shift = s.Step("dlim", "shift that needs no revision", "0.005 · MAC", mac * 0.005, "in", Rule);
            s.Check("shift of the centre of gravity", new Length(Math.Abs(input.Shift.Si)).As("in"), Sense.AtMost, shift.As("in"), "the shift stays within what needs no revision of the record", Rule, Verdict.Caution);
        }

        s.Caution("The flight manual or the operator's own procedures may set a lower limit.");
    });
}
