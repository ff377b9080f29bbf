namespace Fairlead.Calculations.Radio;

/// <summary>What answers an interrogation.</summary>
public enum ReplyKind
{
    /// <summary>Mode A: 8 µs between the interrogation pulses, reply 3.0 µs after the second.</summary>
    ModeA,

    /// <summary>Mode C: 21 µs between the interrogation pulses, reply 3.0 µs after the second.</summary>
    ModeC,

    /// <summary>Mode S: reply 128 µs after the phase reversal.</summary>
    ModeS,
}

/// <summary>Input of <see cref="RampTest"/>.</summary>
/// <param name="Distance">Distance from the test antenna to the aircraft's antenna.</param>
/// <param name="Frequency">Frequency.</param>
/// <param name="Level">Level wanted at the aircraft's antenna, dBm; instead of a simulated target.</param>
/// <param name="Range">Range of the simulated target.</param>
/// <param name="TargetErp">Radiated power of the simulated target, dBm.</param>
/// <param name="Kind">What the simulated target answers to.</param>
/// <param name="AircraftGain">Gain of the aircraft's antenna towards the test antenna, dBi.</param>
/// <param name="TestGain">Gain of the test antenna, dBi.</param>
/// <param name="TestLoss">Loss of the test cable, dB.</param>
public sealed record RampTestInput(
    [In("d", "distance from the test antenna to the aircraft's", "ft", Min = 0.1, Max = 1000)] Length Distance,
    [In("f", "frequency", "MHz", Min = 10, Max = 10000)] Frequency Frequency,
    [In("Pa", "level wanted at the aircraft's antenna (dBm)", Min = -120, Max = 10, Default = "that of the target")] double? Level = null,
    [In("R", "range of the simulated target", "nmi", Min = 0.01, Max = 300, Default = "no target")] Length? Range = null,
    [In("Pt", "radiated power of the simulated target (dBm)", Min = 0, Max = 70, Default = "51")] double TargetErp = 51,
    [In("kind", "what the simulated target answers to", Default = "mode-c")] ReplyKind Kind = ReplyKind.ModeC,
    [In("Ga", "gain of the aircraft's antenna towards the test antenna (dBi)", Min = -40, Max = 30, Default = "0")] double AircraftGain = 0,
    [In("Gs", "gain of the test antenna (dBi)", Min = -40, Max = 30, Default = "0")] double TestGain = 0,
    [In("As", "loss of the test cable (dB)", Min = 0, Max = 60, Default = "0")] double TestLoss = 0);

/// <summary>Ramp test: what the test set must send for a level at the aircraft, and with what delay and level for a simulated target at a range.</summary>
/// <remarks>Check value: 25 ft at 1030 MHz is 50.344 dB, so −73 dBm at an antenna of 0 dBi takes −22.66 dBm radiated.</remarks>
public sealed class RampTest : ICalculation<RampTestInput>
{
    private const double Heard = -74;
    private static readonly Source Turn = new("ICAO Annex 10 Vol IV", "", "reply delay 3.0 µs (Mode A/C), 128 µs (Mode S)", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<RampTestInput> Info { get; } = new(
        "ramp-test", "Ramp test level and delay", Discipline.Radio,
        "What a test set on the ramp must send for a level, or for a target at a range", "d='25 ft' f='1090 MHz' R='5 nmi'", RadioSources.FreeSpace);

    /// <summary>Delay from interrogation to reply at the replying transponder.</summary>
    public static Duration TurnRound(ReplyKind kind) => Duration.Of(kind == ReplyKind.ModeS ? 128 : 3, "µs");

    /// <inheritdoc/>
    public static Sheet Run(RampTestInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Level is null == input.Range is null)
        {
            s.CannotTell("Give either the level wanted at the aircraft (Pa) or the range of a target (R).");
            return;
        }

        var lambda = s.Step("lambda", "wavelength", "299792458 m/s / f", Propagation.Wavelength(input.Frequency), "ft");
        if (input.Distance < lambda * 3)
        {
            s.CannotTell($"The test antenna stands nearer than three wavelengths ({(lambda * 3).As("ft")}), where free-space loss does not hold: move it away or couple by cable.");
            return;
        }

        var loss = s.Step("Ld", "loss over the ramp (dB)", "20 · log10(4π · d / lambda)", Propagation.FreeSpaceLoss(input.Frequency, input.Distance), RadioSources.FreeSpace);
        var level = input.Range is { } range ? Target(s, input, range) : s.Step("Pw", "level wanted at the aircraft's antenna (dBm)", "Pa", input.Level!.Value);
        if (level is not { } wanted)
        {
            return;
        }

        var radiated = s.Step("X", "radiated by the test antenna (dBm)", "Pw + Ld", wanted + loss);
        s.Step("Pv", "level at the aircraft's receiver end of the antenna (dBm)", "Pw + Ga", wanted + input.AircraftGain);
        s.Step("Ps", "output of the test set (dBm)", "X − Gs + As", radiated - input.TestGain + input.TestLoss);
        s.Step("rh", $"distance at which a receiver of {NumberFormat.Text(Heard)} dBm could hear it", "lambda / 4π · 10^((X + 74)/20)", Propagation.DistanceForLoss(input.Frequency, Math.Max(0, radiated - Heard)), "nmi");
        s.Caution("What is radiated on the ramp reaches other aircraft and ground stations: couple by cable or hood where possible, use the least level, tell air traffic services, and never send emergency codes or airborne positions.", affectsVerdict: true);
        s.Caution("Reflections from the ground and the shadow of the airframe change the level by several dB. Keep people clear of transmitting antennas.");
    });

    private static double? Target(SheetBuilder s, RampTestInput input, Length range)
    {
        if (range <= input.Distance)
        {
            s.CannotTell("The simulated target would be nearer than the test antenna itself.");
            return null;
        }

        var away = s.Step("Lr", "loss over the range of the target (dB)", "20 · log10(4π · R / lambda)", Propagation.FreeSpaceLoss(input.Frequency, range), RadioSources.FreeSpace);
        var turn = s.Step("tt", "reply delay of a transponder", "by kind", TurnRound(input.Kind), "µs", Turn);
        s.Step("ts", "delay at the test antenna between interrogation and reply", "2 · (R − d) / (299792458 m/s) + tt", (Propagation.Delay(range - input.Distance) * 2) + turn, "µs");
        return s.Step("Pw", "level at the aircraft's antenna (dBm)", "Pt − Lr", input.TargetErp - away);
    }
}
