namespace Fairlead.Calculations.Radio;

/// <summary>Input of <see cref="CoaxWindow"/>.</summary>
/// <param name="Frequency">Frequency.</param>
/// <param name="Cable">Cable of the table.</param>
/// <param name="Points">Points of attenuation from the cable's sheet, instead of a cable of the table.</param>
/// <param name="Velocity">Velocity factor from the cable's sheet.</param>
/// <param name="Pairs">Mated pairs of connectors in the run.</param>
/// <param name="MinLoss">Least loss of the run, dB.</param>
/// <param name="MaxLoss">Greatest loss of the run, dB.</param>
/// <param name="MinDelay">Least delay.</param>
/// <param name="MaxDelay">Greatest delay.</param>
/// <param name="Length">Length intended.</param>
public sealed record CoaxWindowInput(
    [In("f", "frequency", "MHz", Min = 1, Max = 40000)] Frequency Frequency,
    [In("cable", "cable of the table", Default = "by points and velocity")] Coax? Cable = null,
    [In("points", "attenuation from the cable's sheet", Default = "by cable")] Sequence<LossPoint> Points = default,
    [In("vf", "velocity over that of light", "%", Min = 30, Max = 100, Default = "by cable")] Fraction? Velocity = null,
    [In("n", "mated pairs of connectors", Min = 0, Max = 50, Default = "2")] int Pairs = 2,
    [In("Amin", "least loss (dB)", Min = 0, Max = 100, Default = "no least loss")] double? MinLoss = null,
    [In("Amax", "greatest loss (dB)", Min = 0, Max = 100, Default = "no greatest loss")] double? MaxLoss = null,
    [In("tmin", "least delay", "ns", Min = 0, Max = 100000, Default = "no least delay")] Duration? MinDelay = null,
    [In("tmax", "greatest delay", "ns", Min = 0, Max = 100000, Default = "no greatest delay")] Duration? MaxDelay = null,
    [In("L", "length intended", "ft", Min = 0, Max = 1000, Default = "not checked")] Length? Length = null);

/// <summary>Which lengths of a cable keep its loss and its delay within their windows.</summary>
/// <remarks>Check value: RG-142B at 1090 MHz, two pairs, 1 to 2 dB: 5.58 to 12.64 ft.</remarks>
public sealed class CoaxWindow : ICalculation<CoaxWindowInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<CoaxWindowInput> Info { get; } = new(
        "coax-window", "Length window of a coaxial cable", Discipline.Radio,
        "How short and how long a cable may be for its loss and delay", "f='1090 MHz' cable=rg142 Amin=1 Amax=2 L='10 ft'", RadioSources.LineLoss);

    /// <inheritdoc/>
    public static Sheet Run(CoaxWindowInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var (shortest, longest) = (Length.Zero, (Length?)null);
        if (input.MinLoss is not null || input.MaxLoss is not null)
        {
            AddLoss(s, input, ref shortest, ref longest);
        }

        if (input.MinDelay is not null || input.MaxDelay is not null)
        {
            AddDelay(s, input, ref shortest, ref longest);
        }

        if (s.Stopped)
        {
            return;
        }

        s.Step("Lmin", "shortest cable", "the greatest of the least lengths", shortest, "ft");
        if (longest is not { } limit)
        {
            s.CannotTell("No greatest loss or delay is given, so the cable has no greatest length.");
            return;
        }

        s.Step("Lmax", "longest cable", "the least of the greatest lengths", limit, "ft");
        s.Check("window", shortest.As("ft"), Sense.AtMost, limit.As("ft"), "some length satisfies every limit", RadioSources.Stated);
        if (input.Length is { } length)
        {
            s.Check("length", length.As("ft"), Sense.AtLeast, shortest.As("ft"), "the cable is no shorter than the window", RadioSources.Stated);
            s.Check("length", length.As("ft"), Sense.AtMost, limit.As("ft"), "the cable is no longer than the window", RadioSources.Stated);
        }
    });

    private static void AddLoss(SheetBuilder s, CoaxWindowInput input, ref Length shortest, ref Length? longest)
    {
        if (CoaxAttenuation.Add(s, input.Frequency, input.Cable, input.Points) is not { } alpha)
        {
            return;
        }

        var joints = s.Step("Aj", "loss of the connectors (dB)", "n · 0.1 · √(f in GHz)", input.Pairs * CoaxAttenuation.PairRule(input.Frequency));
        Length For(double loss) => Length.Of(100 * Math.Max(0, loss - joints) / alpha, "ft");
        if (input.MinLoss is { } least)
        {
            shortest = Greater(shortest, s.Step("LA1", "shortest for its loss", "100 ft · (Amin − Aj) / alpha, not below 0", For(least), "ft"));
        }

        if (input.MaxLoss is { } greatest)
        {
            if (greatest < joints)
            {
                s.CannotTell("The connectors alone lose more than the greatest loss allowed.");
                return;
            }

            longest = Lesser(longest, s.Step("LA2", "longest for its loss", "100 ft · (Amax − Aj) / alpha", For(greatest), "ft"));
        }
    }

    private static void AddDelay(SheetBuilder s, CoaxWindowInput input, ref Length shortest, ref Length? longest)
    {
        if (CoaxVelocity.Add(s, "v", input.Cable, input.Velocity) is not { } velocity)
        {
            return;
        }

        if (input.MinDelay is { } least)
        {
            shortest = Greater(shortest, s.Step("Lt1", "shortest for its delay", "v · 299792458 m/s · tmin", Propagation.Distance(least) * velocity.Si, "ft"));
        }

        if (input.MaxDelay is { } greatest)
        {
            longest = Lesser(longest, s.Step("Lt2", "longest for its delay", "v · 299792458 m/s · tmax", Propagation.Distance(greatest) * velocity.Si, "ft"));
        }
    }

    private static Length Greater(Length a, Length b) => a > b ? a : b;

    private static Length Lesser(Length? a, Length b) => a is { } other && other < b ? other : b;
}
