namespace Fairlead.Calculations.Radio;

/// <summary>Where a mismatch was measured.</summary>
public enum MeasuredAt
{
    /// <summary>At the antenna connector.</summary>
    Antenna,

    /// <summary>At the box end of the cable.</summary>
    Box,
}

/// <summary>Input of <see cref="Mismatch"/>.</summary>
/// <param name="Vswr">Standing wave ratio measured.</param>
/// <param name="ReturnLoss">Return loss measured instead, dB.</param>
/// <param name="At">Where it was measured.</param>
/// <param name="Loss">One-way matched loss of the cable, dB.</param>
/// <param name="MaxVswr">Greatest standing wave ratio allowed at the antenna.</param>
public sealed record MismatchInput(
    [In("S", "standing wave ratio measured", Min = 1, Max = 100, Default = "by return loss")] double? Vswr = null,
    [In("RLm", "return loss measured (dB)", Min = 0.1, Max = 60, Default = "by standing wave ratio")] double? ReturnLoss = null,
    [In("at", "where it was measured", Default = "antenna")] MeasuredAt At = MeasuredAt.Antenna,
    [In("A", "one-way matched loss of the cable (dB)", Min = 0, Max = 30, Default = "0")] double Loss = 0,
    [In("Smax", "greatest standing wave ratio at the antenna", Min = 1, Max = 100, Default = "not checked")] double? MaxVswr = null);

/// <summary>Standing wave ratio, return loss and mismatch loss, and what a reading at the box end says about the antenna: the cable's loss counts twice and flatters it.</summary>
/// <remarks>
/// RL(box) = RL(antenna) + 2·A. Check value: an antenna of 3.0 behind 3 dB of cable reads 1.669 at the box; an open end behind it reads 3.010.
/// A reading at the box of 1.5 through 2.0 dB is 1.928 at the antenna.
/// </remarks>
public sealed class Mismatch : ICalculation<MismatchInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<MismatchInput> Info { get; } = new(
        "mismatch", "Mismatch of an antenna", Discipline.Radio,
        "What a standing wave ratio means, and what one read at the box says about the antenna", "S=1.3 at=box A=2 Smax=2", RadioSources.Reflection);

    /// <inheritdoc/>
    public static Sheet Run(MismatchInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Vswr is null == input.ReturnLoss is null)
        {
            s.CannotTell("Give either a standing wave ratio (S) or a return loss (RLm).");
            return;
        }

        if (input.Vswr is 1)
        {
            s.CannotTell("A standing wave ratio of exactly 1 has no finite return loss: give what the instrument can resolve.");
            return;
        }

        var measured = input.Vswr is { } vswr
            ? s.Step("rhom", "reflection coefficient measured", "(S − 1) / (S + 1)", Reflection.OfVswr(vswr), RadioSources.Reflection)
            : s.Step("rhom", "reflection coefficient measured", "10^(−RLm / 20)", Reflection.OfReturnLoss(input.ReturnLoss!.Value), RadioSources.Reflection);
        var returned = s.Step("RLr", "return loss measured (dB)", "−20 · log10(rhom)", Reflection.ReturnLoss(measured), RadioSources.Reflection);
        if (AtAntenna(s, input, returned) is not { } antenna)
        {
            return;
        }

        var (rhoA, swrA) = (antenna, Reflection.Vswr(antenna));
        s.Step("ML", "mismatch loss at the antenna (dB)", "−10 · log10(1 − rho²)", Reflection.MismatchLoss(rhoA), RadioSources.Reflection);
        s.Step("refl", "power the antenna reflects", "rho²", new Fraction(rhoA * rhoA), "%");
        s.Step("At", "loss of the mismatched cable (dB)", "10 · log10((q² − rho²) / (q · (1 − rho²))), q = 10^(A/10)", Reflection.LineLoss(input.Loss, rhoA), RadioSources.LossyLine);
        if (input.MaxVswr is { } max)
        {
            s.Check("standing wave ratio at the antenna", Measure.Number(swrA), Sense.AtMost, Measure.Number(max), "the antenna itself is within its limit", RadioSources.Stated);
        }

        s.Caution("The measurement radiates: use a low-power analyser, keep off emergency, beacon and distress frequencies, and keep people and fuelling clear. Connectors reflect too, and add to or hide the antenna's own reflection.");
    });

    private static double? AtAntenna(SheetBuilder s, MismatchInput input, double returned)
    {
        if (input.At == MeasuredAt.Antenna)
        {
            var box = s.Step("RLb", "return loss at the box end (dB)", "RLr + 2 · A", returned + (2 * input.Loss), RadioSources.LossyLine);
            s.Step("Sb", "standing wave ratio at the box end", "(1 + 10^(−RLb/20)) / (1 − 10^(−RLb/20))", Reflection.Vswr(Reflection.OfReturnLoss(box)));
            return Antenna(s, "RLr", returned);
        }

        var antenna = s.Step("RLa", "return loss at the antenna (dB)", "RLr − 2 · A", returned - (2 * input.Loss), RadioSources.LossyLine);
        if (antenna <= 1e-9)
        {
            s.CannotTell("Even an open end would reflect less through this cable: the reading, the loss or the cable is wrong.");
            return null;
        }

        if (antenna < 1)
        {
            s.Caution("This is within 1 dB of what an open or shorted end shows through this cable: suspect the antenna or a connector.", affectsVerdict: true);
        }

        if (input.Loss > 0)
        {
            s.Step("So", "reading at the box for an open end", "(1 + 10^(−A/10)) / (1 − 10^(−A/10))", Reflection.Vswr(Reflection.OfReturnLoss(2 * input.Loss)));
        }

        return Antenna(s, "RLa", antenna);
    }

    private static double Antenna(SheetBuilder s, string symbol, double returnLoss)
    {
        var rho = s.Step("rho", "reflection coefficient at the antenna", $"10^(−{symbol} / 20)", Reflection.OfReturnLoss(returnLoss), RadioSources.Reflection);
        s.Step("Sa", "standing wave ratio at the antenna", "(1 + rho) / (1 − rho)", Reflection.Vswr(rho), RadioSources.Reflection);
        return rho;
    }
}
