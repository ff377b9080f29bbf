using System.Collections.Immutable;

namespace Fairlead.Substantiation.Tests;

/// <summary>Single faults that no reading between terminals can tell apart.</summary>
public sealed class FaultClass
{
    private readonly int[] nets;
    private readonly int[] lifted;

    internal FaultClass(int number, ImmutableArray<SingleFault> faults, int[] nets, int[] lifted) => (Number, Faults, this.nets, this.lifted) = (number, faults, nets, lifted);

    /// <summary>Its place among the classes of its connector.</summary>
    internal int Number { get; }

    /// <summary>The faults.</summary>
    public ImmutableArray<SingleFault> Faults { get; }

    /// <summary>Whether this is the wiring without fault; faults that no reading shows are in it too.</summary>
    public bool IsSound => Faults[0].Kind == FaultKind.None;

    /// <summary>The class in words.</summary>
    public string Text => IsSound ? "no fault" : string.Join("; or ", Faults.Select(f => f.Text));

    internal int[] Nets(bool shieldsLifted) => shieldsLifted ? lifted : nets;
}

/// <summary>Finds the single fault of one connector's wiring: keeps the faults that agree with all readings, and proposes the reading that tells most.</summary>
/// <remarks>All faults count as equally likely. A reading tells most when the faults left split as evenly as can be over its two outcomes: its information
/// H = -p·log2 p - (1 - p)·log2(1 - p), p the share of faults under which it reads through, is then greatest. Check value: p = 1/2 gives 1 bit.</remarks>
public sealed class Diagnosis
{
    private readonly Connectivity connectivity;
    private readonly ImmutableArray<Measurement> candidates;
    private readonly Lazy<bool[][]> closings;
    private readonly HarnessUnderTest harness;

    /// <summary>The diagnosis of a connector.</summary>
    public Diagnosis(HarnessUnderTest harness)
    {
        ArgumentNullException.ThrowIfNull(harness);
        this.harness = harness;
        connectivity = new Connectivity(harness);
        Classes = Classify();
        Sweep = StraightSweep.Of(harness, connectivity.Nets(new(FaultKind.None), shieldsLifted: false), connectivity.IndexOf);
        candidates = [.. Sweep, .. GroupScans.Of(harness, connectivity.Nets(new(FaultKind.None), shieldsLifted: false), connectivity.IndexOf)];
        closings = new(() => [.. candidates.Select(c => Indices(c)).Select(at => Classes.Select(f => Closed(at, f)).ToArray())]);
    }

    /// <summary>All faults, in classes that readings can tell apart; sound wiring first.</summary>
    public ImmutableArray<FaultClass> Classes { get; }

    /// <summary>The straight sweep: every line of the connector's cards.</summary>
    public ImmutableArray<Measurement> Sweep { get; }

    /// <summary>Whether a measurement is of terminals of this harness that a probe reaches.</summary>
    public bool Reaches(Measurement measurement)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        return measurement.From.Concat(measurement.To).All(t => connectivity.IndexOf(t) >= 0);
    }

    /// <summary>Whether a measurement reads through under a fault.</summary>
    /// <exception cref="ArgumentException">The harness has no such terminal.</exception>
    public bool Closes(Measurement measurement, FaultClass fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return Reaches(measurement) ? Closed(Indices(measurement), fault) : throw new ArgumentException($"'{measurement.Id}' names a terminal that {harness.Connector} does not have.", nameof(measurement));
    }

    /// <summary>The faults that agree with all readings; none when no single fault does.</summary>
    public ImmutableArray<FaultClass> Consistent(IEnumerable<Reading> readings)
    {
        var known = readings.Where(r => Reaches(r.Measurement)).Select(r => (At: Indices(r.Measurement), r.Closed)).ToArray();
        return [.. Classes.Where(c => known.All(k => Closed(k.At, c) == k.Closed))];
    }

    /// <summary>The reading that tells most among the faults left, with its information in bits; null when they are told apart already.</summary>
    public (Measurement Measurement, double Bits)? Next(ImmutableArray<FaultClass> left)
    {
        var total = left.Sum(c => c.Faults.Length);
        (Measurement? Best, int Off) best = (null, total);
        foreach (var (measurement, closed) in candidates.Select((m, i) => (m, Weight(closings.Value[i], left))).Concat(Pairs(left).Select(m => (m, Weight(Indices(m), left)))))
        {
            var off = Math.Abs((2 * closed) - total);
            if (off < best.Off || (off == best.Off && best.Best is { } tie && measurement.Size < tie.Size))
            {
                best = (measurement, off);
            }
        }

        return best.Best is { } chosen && best.Off < total ? (chosen, Bits((total + best.Off) / 2.0 / total)) : null;
    }

    private static int Weight(bool[] closing, ImmutableArray<FaultClass> left)
    {
        var weight = 0;
        foreach (var fault in left)
        {
            weight += closing[fault.Number] ? fault.Faults.Length : 0;
        }

        return weight;
    }

    private static int Weight((int[] From, int[] To, bool Lifted) at, ImmutableArray<FaultClass> left) => left.Sum(c => Closed(at, c) ? c.Faults.Length : 0);

    private static double Bits(double p) => p is 0 or 1 ? 0 : -(p * Math.Log2(p)) - ((1 - p) * Math.Log2(1 - p));

    private ImmutableArray<FaultClass> Classify()
    {
        var probed = connectivity.Probed.Select(connectivity.IndexOf).ToArray();
        return
        [
            .. SingleFault.Of(harness).Select(f => (Fault: f, Nets: connectivity.Nets(f, false), Lifted: connectivity.Nets(f, true)))
                .GroupBy(f => Key(f.Nets, probed) + Key(f.Lifted, probed), StringComparer.Ordinal)
                .Select((g, i) => new FaultClass(i, [.. g.Select(f => f.Fault)], g.First().Nets, g.First().Lifted)),
        ];
    }

    // Nets numbered in the order in which probed terminals meet them: hidden points do not make a difference.
    private static string Key(int[] nets, int[] probed)
    {
        var number = new Dictionary<int, int>();
        return string.Concat(probed.Select(t => (char)(number.TryGetValue(nets[t], out var n) ? n : number[nets[t]] = number.Count)));
    }

    // Single contacts that the faults left touch; once few are left these tell the last ones apart.
    private IEnumerable<Measurement> Pairs(ImmutableArray<FaultClass> left)
    {
        const int few = 24;
        if (left.Length > few)
        {
            yield break;
        }

        var touched = left.SelectMany(c => c.Faults).SelectMany(f => new[] { f.A, f.B }).ToHashSet(StringComparer.Ordinal);
        var ends = connectivity.Probed.Where(t => touched.Contains(t) || harness.Wires.Any(w => (w.From == t && (touched.Contains(w.To) || touched.Contains(w.Id))) || (w.To == t && (touched.Contains(w.From) || touched.Contains(w.Id))))).ToArray();
        foreach (var (a, i) in ends.Select((a, i) => (a, i)))
        {
            foreach (var b in ends.Skip(i + 1))
            {
                yield return Measurement.Between(a, b);
                yield return new([a], [b], ShieldsLifted: true);
            }
        }
    }

    private (int[] From, int[] To, bool Lifted) Indices(Measurement m) => ([.. m.From.Select(connectivity.IndexOf)], [.. m.To.Select(connectivity.IndexOf)], m.ShieldsLifted);

    private static bool Closed((int[] From, int[] To, bool Lifted) at, FaultClass fault)
    {
        var nets = fault.Nets(at.Lifted);
        foreach (var from in at.From)
        {
            foreach (var to in at.To)
            {
                if (nets[from] == nets[to])
                {
                    return true;
                }
            }
        }

        return false;
    }
}
