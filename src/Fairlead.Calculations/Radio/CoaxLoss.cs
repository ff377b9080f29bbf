namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="CoaxLoss"/>.</summary>
/// <param name="Frequency">Frequency.</param>
/// <param name="Length">Length of cable.</param>
/// <param name="Cable">Cable of the table.</param>
/// <param name="Points">Points of attenuation from the cable's sheet, instead of a cable of the table.</param>
/// <param name="Pairs">Mated pairs of connectors in the run.</param>
/// <param name="PairLoss">Loss of one mated pair, dB.</param>
/// <param name="MaxLoss">Greatest loss allowed, dB.</param>
/// <param name="MinLoss">Least loss required, dB.</param>
/// <param name="Power">Power at the box.</param>
/// <param name="MinPower">Least power required at the antenna end.</param>
/// <param name="MaxPower">Greatest power allowed at the antenna end.</param>
public sealed record CoaxLossInput(
    [In("f", "frequency", "MHz", Min = 1, Max = 40000)] Frequency Frequency,
    [In("L", "length of cable", "ft", Min = 0, Max = 1000)] Length Length,
    [In("cable", "cable of the table", Default = "by points")] Coax? Cable = null,
    [In("points", "attenuation from the cable's sheet", Default = "by cable")] Sequence<LossPoint> Points = default,
    [In("n", "mated pairs of connectors", Min = 0, Max = 50, Default = "2")] int Pairs = 2,
    [In("a", "loss of one mated pair (dB)", Min = 0, Max = 5, Default = "0.1·√(f in GHz)")] double? PairLoss = null,
    [In("Amax", "greatest loss allowed (dB)", Min = 0, Max = 100, Default = "not checked")] double? MaxLoss = null,
    [In("Amin", "least loss required (dB)", Min = 0, Max = 100, Default = "not checked")] double? MinLoss = null,
    [In("P", "power at the box", "W", Min = 0.001, Max = 10000, Default = "not checked")] Wattage? Power = null,
    [In("Pmin", "least power at the antenna end", "W", Min = 0.001, Max = 10000, Default = "not checked")] Wattage? MinPower = null,
    [In("Pmax", "greatest power at the antenna end", "W", Min = 0.001, Max = 10000, Default = "not checked")] Wattage? MaxPower = null);

/// <summary>Loss of a coaxial run: attenuation of the cable over its length, and of every mated pair of connectors.</summary>
/// <remarks>Check value: 12 ft at 14.17 dB/100 ft (RG-142B at 1090 MHz) and two pairs at 0.1044 dB: 1.909 dB.</remarks>
public sealed class CoaxLoss : ICalculation<CoaxLossInput>
{
    private static readonly Source Pair = new("MIL-PRF-39012E", "", "insertion loss is that of a mated pair; 0.1·√f is a design rule", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<CoaxLossInput> Info { get; } = new(
        "coax-loss", "Loss of a coaxial run", Discipline.Radio,
        "How much is lost between box and antenna, and what power is left",
        "f='1090 MHz' L='12 ft' cable=rg142 Amax=2.5 P='250 W' Pmin='125 W' Pmax='500 W'", RadioSources.LineLoss);

    /// <inheritdoc/>
    public static Sheet Run(CoaxLossInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (CoaxAttenuation.Add(s, input.Frequency, input.Cable, input.Points) is not { } alpha)
        {
            return;
        }

        var cable = s.Step("Ac", "loss of the cable (dB)", "alpha · L / 100 ft", alpha * input.Length.In("ft") / 100);
        var pair = s.Step("aj", "loss of one mated pair (dB)", input.PairLoss is null ? "0.1 · √(f in GHz)" : "a", input.PairLoss ?? CoaxAttenuation.PairRule(input.Frequency), input.PairLoss is null ? Pair : RadioSources.Stated);
        var joints = s.Step("Aj", "loss of the connectors (dB)", "n · aj", input.Pairs * pair);
        var loss = s.Step("A", "loss of the run (dB)", "Ac + Aj", cable + joints);
        RunLimits.Check(s, loss, input.MaxLoss, input.MinLoss);
        RunLimits.CheckPower(s, loss, input.Power, input.MinPower, input.MaxPower);
        s.Caution("At 20 °C. Copper loses about 0.2 % more per °C, and age, moisture and crushed bends add to it: measure the run that is fitted.");
    });
}
