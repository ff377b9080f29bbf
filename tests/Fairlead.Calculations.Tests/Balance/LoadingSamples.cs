using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;

namespace Fairlead.Tests.Calculations.Balance;

/// <summary>Aircraft and loadings made up for properties, and the plainest possible way to judge one loading.</summary>
internal static class LoadingSamples
{
    private const string Pound = "lb";
    private const string Inch = "in";

    // Whole numbers, so that ties and limits met exactly are frequent. Groups: A holds the first stations, B some of A's or none of them.
    public static readonly Gen<WorstLoadingInput> Input =
        from stations in Gen.Select(Gen.Int[-5, 15], Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[0, 100])), Gen.Int[0, 300]).Array[0, 6]
        from tanks in Gen.Select(Gen.Int[-5, 15], Gen.Int[0, 300], Gen.Int[1, 3]).Array[0, 4]
        from inA in Gen.Int[0, 6]
        from inB in Gen.Int[0, 6]
        from bApart in Gen.Bool
        from roomA in Gen.Int[0, 500]
        from roomB in Gen.Int[0, 300]
        from empty in Gen.Select(Gen.Int[800, 1500], Gen.Int[0, 60])
        from take in Gen.Int[0, 1200]
        from zero in Gen.Frequency((1, Gen.Const((int?)null)), (1, Gen.Int[0, 900].Select(x => (int?)x)))
        from leastFuel in Gen.Frequency((1, Gen.Const(0.0)), (1, Gen.Double[0, 1]))
        from envelope in Envelope
        select Make(stations, tanks, inA, inB, bApart, roomA, roomB, empty, take, zero, leastFuel, envelope);

    // Four masses with any limits at each, steps where the mass stays: forward side up, aft side down.
    private static Gen<Sequence<EnvelopeRow>> Envelope =>
        from masses in Gen.Int[20, 300].Array[4]
        from forward in Gen.Int[-20, 40].Array[5]
        from width in Gen.Int[1, 60].Array[5]
        let at = masses.Select((m, i) => 700 + (masses[..i].Sum() / 10 * 10)).ToArray()
        let left = at.Select((m, i) => Corner(m, forward[i])).Append(Corner(at[^1] + 400, forward[4]))
        let right = at.Select((m, i) => Corner(m, forward[i] + width[i])).Append(Corner(at[^1] + 400, forward[4] + width[4]))
        select left.Concat(right.Reverse()).ToSequence();

    /// <summary>A loading by shares from 0 to 1 of what is left of every limit, station by station, then fuel.</summary>
    public static (Mass[] Stations, Mass Fuel) Load(WorstLoadingInput input, double[] shares, int first)
    {
        var loads = input.Stations.Select(s => s.Min.Si).ToArray();
        for (var k = 0; k < loads.Length; k++)
        {
            var i = (k + first) % loads.Length;
            loads[i] += shares[k] * Math.Max(0, Room(input, loads, i));
        }

        var fuel = input.MinFuel.Si;
        var left = Math.Min(input.Tanks.Sum(t => t.Usable.Si), input.MaxTakeOff.Si - input.EmptyMass.Si - loads.Sum()) - fuel;
        return ([.. loads.Select(x => new Mass(x))], new Mass(fuel + (shares[^1] * Math.Max(0, left))));
    }

    /// <summary>Fuel in each tank: last burned, first filled.</summary>
    public static double[] Fill(WorstLoadingInput input, double fuel)
    {
        var contents = new double[input.Tanks.Count];
        for (var order = 100; order >= 1; order--)
        {
            var together = Enumerable.Range(0, contents.Length).Where(i => input.Tanks[i].BurnOrder == order).ToArray();
            var usable = together.Sum(i => input.Tanks[i].Usable.Si);
            var here = Math.Min(fuel, usable);
            foreach (var i in usable > 0 ? together : [])
            {
                contents[i] = here * input.Tanks[i].Usable.Si / usable;
            }

            fuel -= here;
        }

        return contents;
    }

    /// <summary>Mass and centre of gravity of one loading.</summary>
    public static (double Mass, double Fs) Weigh(WorstLoadingInput input, IReadOnlyList<Mass> stations, IReadOnlyList<double> tanks)
    {
        var mass = input.EmptyMass.Si + stations.Sum(x => x.Si) + tanks.Sum();
        var moment = (input.EmptyMass * input.EmptyFs).Si + input.Stations.Zip(stations, (s, x) => (x * s.Arm).Si).Sum() + input.Tanks.Zip(tanks, (t, x) => x * t.Arm.Si).Sum();
        return (mass, moment / mass);
    }

    /// <summary>Forward and aft limit at a mass: where a line of constant mass cuts the polygon.</summary>
    public static (double Forward, double Aft) Limits(WorstLoadingInput input, double mass)
    {
        var corners = input.Envelope;
        mass = Math.Clamp(mass, corners.Min(c => c.Mass.Si), corners.Max(c => c.Mass.Si));
        var cuts = new List<double>();
        for (var i = 0; i < corners.Count; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Count]);
            if (a.Mass.Si == b.Mass.Si)
            {
                cuts.AddRange(a.Mass.Si == mass ? [a.Fs.Si, b.Fs.Si] : []);
            }
            else if (mass >= Math.Min(a.Mass.Si, b.Mass.Si) && mass <= Math.Max(a.Mass.Si, b.Mass.Si))
            {
                cuts.Add(a.Fs.Si + ((b.Fs.Si - a.Fs.Si) * (mass - a.Mass.Si) / (b.Mass.Si - a.Mass.Si)));
            }
        }

        return (cuts.Min(), cuts.Max());
    }

    /// <summary>Whether a loading keeps every limit.</summary>
    public static bool IsLegal(WorstLoadingInput input, IReadOnlyList<Mass> stations, double fuel)
    {
        const double slack = 1e-9;
        var zeroFuel = input.EmptyMass.Si + stations.Sum(x => x.Si);
        return input.Stations.Zip(stations).All(x => x.Second.Si >= x.First.Min.Si - slack && x.Second.Si <= x.First.Max.Si + slack)
            && input.Groups.All(g => Members(input, g.Name).Sum(i => stations[i].Si) <= g.Max.Si + slack)
            && fuel >= input.MinFuel.Si - slack && fuel <= input.Tanks.Sum(t => t.Usable.Si) + slack
            && zeroFuel <= (input.MaxZeroFuel?.Si ?? double.PositiveInfinity) + slack && zeroFuel + fuel <= input.MaxTakeOff.Si + slack;
    }

    private static double Room(WorstLoadingInput input, double[] loads, int i)
    {
        var room = input.Groups.Where(g => Members(input, g.Name).Contains(i)).Select(g => g.Max.Si - Members(input, g.Name).Sum(k => loads[k]))
            .Append(input.Stations[i].Max.Si - loads[i])
            .Append((input.MaxZeroFuel?.Si ?? double.PositiveInfinity) - input.EmptyMass.Si - loads.Sum())
            .Append(input.MaxTakeOff.Si - input.EmptyMass.Si - loads.Sum() - input.MinFuel.Si);
        return room.Min();
    }

    private static IEnumerable<int> Members(WorstLoadingInput input, string group) =>
        Enumerable.Range(0, input.Stations.Count).Where(i => input.Stations[i].Groups.Split('+').Contains(group));

    private static WorstLoadingInput Make(
        (int Arm, int Min, int More)[] stations, (int Arm, int Usable, int Order)[] tanks, int inA, int inB, bool bApart, int roomA, int roomB,
        (int Mass, int Fs) empty, int take, int? zero, double leastFuel, Sequence<EnvelopeRow> envelope)
    {
        bool A(int i) => i < inA;
        bool B(int i) => bApart ? i >= inA && i < inA + inB : i < Math.Min(inA, inB);
        var rows = stations.Select((s, i) => new LoadingStationRow(
            $"S{i}", Length.Of(10 * s.Arm, Inch), Mass.Of(s.Min + s.More, Pound), Mass.Of(s.Min, Pound), (A(i), B(i)) switch { (true, true) => "A+B", (true, false) => "A", (false, true) => "B", _ => "" })).ToSequence();
        var fuel = leastFuel * tanks.Sum(t => t.Usable);
        double Least(Func<int, bool> member) => stations.Where((_, i) => member(i)).Sum(s => s.Min);
        var zeroFuel = empty.Mass + Least(_ => true);
        return new(
            Mass.Of(empty.Mass, Pound), Length.Of(empty.Fs, Inch), rows,
            tanks.Select((t, i) => new LoadingTankRow($"T{i}", Length.Of(10 * t.Arm, Inch), Mass.Of(t.Usable, Pound), t.Order)).ToSequence(),
            envelope, Mass.Of(zeroFuel + fuel + take, Pound), zero is { } z ? Mass.Of(zeroFuel + z, Pound) : null, null, Mass.Of(fuel, Pound),
            [new("A", Mass.Of(Least(A) + roomA, Pound)), new("B", Mass.Of(Least(B) + roomB, Pound))]);
    }

    private static EnvelopeRow Corner(double mass, double fs) => new(Mass.Of(mass, Pound), Length.Of(fs, Inch));
}
