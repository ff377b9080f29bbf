namespace Fairlead.Calculations.Radio;

/// <summary>How two antennas face each other.</summary>
public enum AntennaPair
{
    /// <summary>Two quarter-wave monopoles on one conducting plane.</summary>
    MonopolesOnOnePlane,

    /// <summary>Two antennas side by side, with the gains stated towards each other as in free space.</summary>
    GainsStated,

    /// <summary>Two vertical dipoles one above the other.</summary>
    OneAboveTheOther,
}

/// <summary>Input of <see cref="AntennaIsolation"/>.</summary>
/// <param name="Frequency">Frequency.</param>
/// <param name="Spacing">Distance between the antennas.</param>
/// <param name="Pair">How they face each other, which settles the gains.</param>
/// <param name="FirstGain">Gain of the first towards the second, dBi.</param>
/// <param name="SecondGain">Gain of the second towards the first, dBi.</param>
/// <param name="Shadow">Further isolation shown for the installation, dB.</param>
/// <param name="MinIsolation">Least isolation required, dB.</param>
/// <param name="Power">Power of the transmitter at its antenna.</param>
/// <param name="Damage">Level at the receiving antenna that damages the receiver, dBm.</param>
/// <param name="Desense">Level at the receiving antenna that desensitises the receiver, dBm.</param>
/// <param name="Measured">Isolation that was measured, used instead of that by spacing, dB.</param>
public sealed record AntennaIsolationInput(
    [In("f", "frequency", "MHz", Min = 1, Max = 40000)] Frequency Frequency,
    [In("d", "distance between the antennas", "in", Min = 0.1, Max = 10000)] Length Spacing,
    [In("pair", "how they face each other", Default = "monopoles-on-one-plane")] AntennaPair Pair = AntennaPair.MonopolesOnOnePlane,
    [In("G1", "gain of the first towards the second (dBi)", Min = -40, Max = 40, Default = "by pair")] double? FirstGain = null,
    [In("G2", "gain of the second towards the first (dBi)", Min = -40, Max = 40, Default = "by pair")] double? SecondGain = null,
    [In("shadow", "further isolation shown for the installation (dB)", Min = 0, Max = 100, Default = "0")] double Shadow = 0,
    [In("Imin", "least isolation required (dB)", Min = 0, Max = 200, Default = "not checked")] double? MinIsolation = null,
    [In("P", "power of the transmitter at its antenna", "W", Min = 0.001, Max = 100000, Default = "not checked")] Wattage? Power = null,
    [In("Ldam", "level that damages the receiver (dBm)", Min = -150, Max = 100, Default = "not checked")] double? Damage = null,
    [In("Ldes", "level that desensitises the receiver (dBm)", Min = -150, Max = 100, Default = "not checked")] double? Desense = null,
    [In("Im", "isolation that was measured (dB)", Min = 0, Max = 200, Default = "by spacing")] double? Measured = null);

/// <summary>Isolation of two antennas from their spacing, and what of a transmitter reaches the other's receiver.</summary>
/// <remarks>
/// I = 20·log10(4π·d/λ) − G1 − G2. Two monopoles on one plane: 2.15 dBi each (their gain as dipoles in free space). The 5.16 dBi of a monopole over a plane
/// counts the plane twice here and would promise 6 dB too little isolation. One above the other: 28 + 40·log10(d/λ). Used from one wavelength on, where
/// it still errs by half a decibel to the safe side; from 1.7 wavelengths it is within 0.1 dB of a method-of-moments solution.
/// Check values: two monopoles 0.5 m apart at 1030 MHz, 22.38 dB; one above the other, 3 m at 147 MHz, 34.7 dB.
/// </remarks>
public sealed class AntennaIsolation : ICalculation<AntennaIsolationInput>
{
    /// <summary>Gain of each of two monopoles on one plane towards the other, dBi: that of a half-wave dipole.</summary>
    public const double MonopoleGain = 2.15;

    private static readonly Source Friis = new("Friis transmission formula", "", "monopoles on one plane: 2.15 dBi each", Basis.Derived);
    private static readonly Source Vertical = new("Amateur radio club note on antenna isolation", "2025", "vertical spacing, 28 + 40·log10(d/λ)");

    /// <inheritdoc/>
    public static CalculationInfo<AntennaIsolationInput> Info { get; } = new(
        "antenna-isolation", "Isolation of two antennas", Discipline.Radio,
        "Whether two antennas stand far enough apart for the receiver of one beside the transmitter of the other",
        "f='1060 MHz' d='30 in' Imin=20 P='250 W' Ldam=30", RadioSources.FreeSpace);

    /// <inheritdoc/>
    public static Sheet Run(AntennaIsolationInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var lambda = s.Step("lambda", "wavelength", "299792458 m/s / f", Propagation.Wavelength(input.Frequency), "in");
        var ratio = s.Step("q", "spacing in wavelengths", "d / lambda", input.Spacing / lambda);
        if (input.Measured is { } measured)
        {
            AddLimits(s, input, s.Step("I", "isolation (dB)", "as measured", measured, RadioSources.Stated), lambda);
            s.Caution("As measured: it holds for these antennas, this place and the band of the report only.");
            CautionPower(s, input);
            return;
        }

        if (ratio < 1 - 1e-9)
        {
            s.CannotTell("The antennas stand less than a wavelength apart, where neither formula holds: measure the isolation.");
            return;
        }

        if (Between(s, input, ratio) is not { } between)
        {
            return;
        }

        var isolation = s.Step("I", "isolation (dB)", "I0 + shadow", between + input.Shadow);
        AddLimits(s, input, isolation, lambda);
        s.Caution("Over clear, flat, conducting skin. Curvature, gaps and other antennas change it by several dB: measure it on the aircraft before relying on a margin below 6 dB.");
        CautionPower(s, input);
    });

    private static void CautionPower(SheetBuilder s, AntennaIsolationInput input)
    {
        if (input.Power is not null)
        {
            s.Caution("Keep people clear of a transmitting antenna, and do not transmit with the other receiver connected until this check is met.");
        }
    }

    private static double? Between(SheetBuilder s, AntennaIsolationInput input, double ratio)
    {
        if (input.Pair != AntennaPair.GainsStated && (input.FirstGain is not null || input.SecondGain is not null))
        {
            s.CannotTell("This pair settles the gains: leave G1 and G2 out, or say pair=gains-stated.");
            return null;
        }

        if (input.Pair == AntennaPair.OneAboveTheOther)
        {
            return s.Step("I0", "isolation by spacing (dB)", "28 + 40 · log10(q)", 28 + (40 * Math.Log10(ratio)), Vertical);
        }

        var (first, second) = input.Pair == AntennaPair.MonopolesOnOnePlane ? (MonopoleGain, MonopoleGain) : (input.FirstGain, input.SecondGain);
        if (first is not { } g1 || second is not { } g2)
        {
            s.CannotTell("Give the gain of each antenna towards the other (G1, G2).");
            return null;
        }

        if (input.Pair == AntennaPair.GainsStated && g1 + g2 > 10)
        {
            s.Caution("Gains above 5 dBi each: if these are monopoles on one plane their gain over the plane counts the plane twice; use pair=monopoles-on-one-plane.", affectsVerdict: true);
        }

        s.Step("g1", "gain of the first towards the second (dBi)", "by pair", g1);
        s.Step("g2", "gain of the second towards the first (dBi)", "by pair", g2);
        return s.Step("I0", "isolation by spacing (dB)", "20 · log10(4π · q) − g1 − g2", (20 * Math.Log10(4 * Math.PI * ratio)) - g1 - g2, Friis);
    }

    private static void AddLimits(SheetBuilder s, AntennaIsolationInput input, double isolation, Length lambda)
    {
        if (input.MinIsolation is { } min)
        {
            if (input.Measured is null)
            {
                var slope = input.Pair == AntennaPair.OneAboveTheOther ? 40 : 20;
                s.Step("dmin", "spacing that gives Imin, not below a wavelength", "d · 10^((Imin − I)/" + slope + ")", Max(lambda, input.Spacing * Math.Pow(10, (min - isolation) / slope)), "in");
            }

            s.Check("isolation (dB)", Measure.Number(isolation), Sense.AtLeast, Measure.Number(min), "the antennas are isolated enough", RadioSources.Stated);
        }

        if (input.Power is { } power)
        {
            var sent = s.Step("Pt", "power of the transmitter (dBm)", "10 · log10(P / 1 mW)", Propagation.Dbm(power));
            var level = s.Step("Pr", "level at the receiving antenna (dBm)", "Pt − I", sent - isolation);
            CheckLevel(s, level, input.Damage, "the receiver is not damaged", Verdict.Fails);
            CheckLevel(s, level, input.Desense, "the receiver keeps its sensitivity while the other transmits", Verdict.Caution);
        }
        else if (input.Damage is not null || input.Desense is not null)
        {
            s.CannotTell("A level at the receiver needs the power of the transmitter (P).");
        }
    }

    private static void CheckLevel(SheetBuilder s, double level, double? limit, string rule, Verdict broken)
    {
        if (limit is { } most)
        {
            s.Check("level at the receiving antenna (dBm)", Measure.Number(level), Sense.AtMost, Measure.Number(most), rule, RadioSources.Stated, broken);
        }
    }

    private static Length Max(Length a, Length b) => a > b ? a : b;
}
