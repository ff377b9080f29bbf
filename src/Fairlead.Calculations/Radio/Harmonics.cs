using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations.Radio;

/// <summary>A band in which something transmits or receives.</summary>
/// <param name="Name">Name.</param>
/// <param name="From">Lowest frequency.</param>
/// <param name="To">Highest frequency.</param>
public sealed record RadioBand(
    [In("name", "radio")] string Name,
    [In("from", "lowest frequency", "MHz", Min = 0.01, Max = 100000)] Frequency From,
    [In("to", "highest frequency", "MHz", Min = 0.01, Max = 100000)] Frequency To);

/// <summary>Input of <see cref="Harmonics"/>.</summary>
/// <param name="Transmitters">What transmits.</param>
/// <param name="Receivers">What receives.</param>
/// <param name="HighestHarmonic">Harmonics up to this one.</param>
/// <param name="HighestOrder">Mixing products of two transmitters up to this order; 1 for none.</param>
public sealed record HarmonicsInput(
    [In("tx", "transmitters")] Sequence<RadioBand> Transmitters,
    [In("rx", "receivers")] Sequence<RadioBand> Receivers,
    [In("nmax", "harmonics up to", Min = 1, Max = 40, Default = "13")] int HighestHarmonic = 13,
    [In("mmax", "mixing products up to order", Min = 1, Max = 11, Default = "5")] int HighestOrder = 5);

/// <summary>Which harmonics of the transmitters, and which mixing products of two of them, fall into a receive band.</summary>
/// <remarks>
/// Harmonic n·f; mixing products |a·f1 ± b·f2| with a + b up to the order. Check values: the 13th of 121.150 MHz is 1574.950 MHz, 0.470 MHz below
/// 1575.42; the 12th of 131.250 is 1575.000 (its 13th, 1706.25, is well clear).
/// </remarks>
public sealed class Harmonics : ICalculation<HarmonicsInput>
{
    private static readonly Source Rule = new("Harmonics and mixing products", "", "n·f and |a·f1 ± b·f2|", Basis.Derived);
    private const int MostRadios = 40;

    /// <inheritdoc/>
    public static CalculationInfo<HarmonicsInput> Info { get; } = new(
        "harmonics", "Harmonics and mixing products", Discipline.Radio,
        "Which harmonics and mixing products of the transmitters fall into a receive band",
        "tx='com 1,121.150 MHz,121.150 MHz;com 2,131.275 MHz,131.275 MHz' rx='satellite navigation,1574.397 MHz,1576.443 MHz'", Rule);

    /// <summary>A product that touches a receive band.</summary>
    /// <param name="Product">Its transmitters and factors, in words.</param>
    /// <param name="Order">Its order.</param>
    /// <param name="From">Lowest frequency of the product.</param>
    /// <param name="To">Highest frequency of the product.</param>
    /// <param name="Receiver">The receiver it falls into.</param>
    public sealed record Hit(string Product, int Order, Frequency From, Frequency To, RadioBand Receiver);

    /// <inheritdoc/>
    public static Sheet Run(HarmonicsInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Problem(input) is { } why)
        {
            s.CannotTell(why);
            return;
        }

        var hits = Find(input);
        s.Table("Products in a receive band", ["product", "order", "from", "to", "receiver", "offset of its middle from the band's middle"], hits.Select(h => ImmutableArray.Create<SheetValue>(
            h.Product, Measure.Number(h.Order), h.From.As("MHz"), h.To.As("MHz"), h.Receiver.Name, ((h.From + h.To - h.Receiver.From - h.Receiver.To) / 2).As("MHz"))));
        s.Step("hits", "products in a receive band", "counted", hits.Length);
        s.Check("products in a receive band", Measure.Number(hits.Length), Sense.AtMost, Measure.Number(0), "no product falls into a receive band", Rule, Verdict.Caution);
        if (!hits.IsEmpty)
        {
            s.Caution("A product in a band says where to test, not that it disturbs: its level depends on filters and spacing. Test each receiver while the transmitters named are keyed, on channels that disturb no one.");
        }
    });

    /// <summary>All products that touch a receive band, lowest order first.</summary>
    public static ImmutableArray<Hit> Find(HarmonicsInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return [.. Products(input).SelectMany(p => input.Receivers.Where(r => p.From <= r.To && p.To >= r.From).Select(r => p with { Receiver = r })).OrderBy(h => h.Order).ThenBy(h => h.Product, StringComparer.Ordinal)];
    }

    private static IEnumerable<Hit> Products(HarmonicsInput input)
    {
        var none = new RadioBand("", default, default);
        foreach (var tx in input.Transmitters)
        {
            for (var n = 1; n <= input.HighestHarmonic; n++)
            {
                yield return new(string.Create(CultureInfo.InvariantCulture, $"{n} × {tx.Name}"), n, tx.From * n, tx.To * n, none);
            }
        }

        for (var i = 0; i < input.Transmitters.Count; i++)
        {
            for (var j = i + 1; j < input.Transmitters.Count; j++)
            {
                foreach (var product in Mixed(input.Transmitters[i], input.Transmitters[j], input.HighestOrder))
                {
                    yield return product with { Receiver = none };
                }
            }
        }
    }

    private static IEnumerable<Hit> Mixed(RadioBand x, RadioBand y, int highest)
    {
        for (var a = 1; a < highest; a++)
        {
            for (var b = 1; a + b <= highest; b++)
            {
                yield return new(string.Create(CultureInfo.InvariantCulture, $"{a} × {x.Name} + {b} × {y.Name}"), a + b, (x.From * a) + (y.From * b), (x.To * a) + (y.To * b), x);
                var (low, high) = ((x.From * a) - (y.To * b), (x.To * a) - (y.From * b));
                var (near, far) = (Math.Min(Math.Abs(low.Si), Math.Abs(high.Si)), Math.Max(Math.Abs(low.Si), Math.Abs(high.Si)));
                yield return new(string.Create(CultureInfo.InvariantCulture, $"{a} × {x.Name} − {b} × {y.Name}"), a + b, new(low.Si <= 0 && high.Si >= 0 ? 0 : near), new(far), x);
            }
        }
    }

    private static string? Problem(HarmonicsInput input) =>
        input.Transmitters.Count == 0 || input.Receivers.Count == 0 ? "Give at least one transmitter and one receiver."
        : input.Transmitters.Count > MostRadios || input.Receivers.Count > MostRadios ? $"At most {MostRadios} transmitters and {MostRadios} receivers in one go."
        : input.Transmitters.Concat(input.Receivers).FirstOrDefault(b => b.From > b.To) is { } turned ? $"The band of '{turned.Name}' ends below its beginning."
        : null;
}
