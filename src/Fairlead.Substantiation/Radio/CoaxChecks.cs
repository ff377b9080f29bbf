using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Model;
using Losses = Fairlead.Calculations.Radio.CoaxLoss;

namespace Fairlead.Substantiation.Radio;

/// <summary>Loss, delay and length of each coaxial line, and of those that must match.</summary>
internal sealed class CoaxChecks(Job job, Memo memo, RadioFindings found)
{
    private const string Shorter = "Use a cable of less loss, or a shorter way.";

    /// <summary>Checks all lines; the loss of each, dB, where it can be told.</summary>
    public Dictionary<CoaxLine, double> Check(IReadOnlyList<CoaxLine> lines)
    {
        var losses = new Dictionary<CoaxLine, double>(ReferenceEqualityComparer.Instance);
        foreach (var line in lines)
        {
            if (Line(line) is { } loss)
            {
                losses.Add(line, loss);
            }
        }

        foreach (var cable in lines.SelectMany(l => l.Cables).DistinctBy(c => c.Id).Where(c => c.BendRadius is null))
        {
            found.Add(new("coax-bend", Verdict.Caution, $"coax/{cable.Id}", $"'{cable.Id}' states no least bend radius, so nobody can see whether it is bent too sharply.", "", RadioFindings.Stated, "Add the bend radius from the cable's sheet to the part.", $"parts/coax/{cable.Id}"));
        }

        foreach (var group in lines.Where(l => l is { Port.Match: not null, Length: not null }).GroupBy(l => (l.Box, l.Port!.Id)).Where(g => g.Skip(1).Any()))
        {
            Match([.. group]);
        }

        return losses;
    }

    private double? Line(CoaxLine line)
    {
        if (line.Length is not { } length || Frequencies(line) is not var (low, high, origin))
        {
            return null;
        }

        if (line.Mixed)
        {
            return new SeriesChecks(memo, found).Check(line, low, high);
        }

        var (cable, port) = (line.Cables[0], line.Port);
        (string, string)[] origins = [("f", origin), ("L", line.Circuits.Length == 1 ? line.Circuits[0].LengthOrigin : "lengths of the circuits in the row"), ("points", cable.Id), ("vf", cable.Id)];
        var points = cable.Loss.Select(p => new LossPoint(p.At, p.DecibelPer100Ft)).ToSequence();
        var outcome = memo.Run<Losses, CoaxLossInput>(new(high, length, null, points, line.Pairs, null, port?.MaxLoss, null, port?.Power, port?.MinPower, port?.MaxPower), "A");
        var broken = found.Add(outcome, $"{line.Subject}/loss", line.Subject, line.Path, Shorter, origins);
        if (port?.MinLoss is { } least)
        {
            var small = memo.Run<Losses, CoaxLossInput>(new(low, length, null, points, line.Pairs, null, null, least), "A");
            broken |= found.Add(small, $"{line.Subject}/least-loss", line.Subject, line.Path, "Use a cable of more loss, a longer way, or the attenuator of the maker.", origins);
        }

        found.Show(memo.Run<CoaxDelay, CoaxDelayInput>(new(length, null, cable.Velocity, high)), $"{line.Subject}/delay", origins);
        Window(line, high, length, points, broken, origins);
        return outcome.Value(0);
    }

    private static string Names(CoaxLine line) => string.Join(" and ", line.Cables.Select(c => c.Id).Distinct(StringComparer.Ordinal));

    // The window says in lengths what the loss already says in decibel: what it alone can find is a delay out of limits.
    private void Window(CoaxLine line, Frequency frequency, Length length, Sequence<LossPoint> points, bool lossBroken, (string, string)[] origins)
    {
        if (line.Port is not { } port || (port.MaxLoss is null && port.MaxDelay is null))
        {
            return;
        }

        var outcome = memo.Run<CoaxWindow, CoaxWindowInput>(new(frequency, null, points, line.Cables[0].Velocity, line.Pairs, port.MinLoss, port.MaxLoss, port.MinDelay, port.MaxDelay, length));
        if (lossBroken)
        {
            found.Show(outcome, $"{line.Subject}/window", origins);
        }
        else
        {
            found.Add(outcome, $"{line.Subject}/window", line.Subject, line.Path, "Cut the cable to a length within the window of the sheet.", origins);
        }
    }

    private void Match(CoaxLine[] lines)
    {
        var byDelay = lines.OrderBy(l => CoaxVelocity.Delay(l.Length!.Value, l.Velocity)).ToArray();
        var (shortest, longest) = (byDelay[0], byDelay[^1]);
        var port = longest.Port!;
        var outcome = memo.Run<MatchedPair, MatchedPairInput>(new(longest.Length!.Value, shortest.Length!.Value, null, longest.Velocity, shortest.Velocity, Highest(port), port.Match));
        var (first, second) = (longest.Circuits[0].Circuit.Id, shortest.Circuits[0].Circuit.Id);
        found.Add(outcome, $"radio/{longest.Box}/{port.Id}", $"radio/{longest.Box}", longest.Path, $"Cut {first} and {second} to one length, with those between them.",
            ("L1", $"{first}, the longest of the set"), ("L2", $"{second}, the shortest of the set"), ("vf", Names(longest)), ("vf2", Names(shortest)), ("dtmax", $"part of {longest.Box}"));
    }

    private (Frequency Low, Frequency High, string Origin)? Frequencies(CoaxLine line)
    {
        if (line.Port is { } port && Highest(port) is { } high)
        {
            return (Lowest(port)!.Value, high, $"bands of {line.Box}");
        }

        var part = job.Change.Antennas.OrEmpty().Find(line.Antenna)?.Part ?? job.Aircraft.Antennas.OrEmpty().Find(line.Antenna)?.Part;
        return job.Parts.Antennas?.Find(part) is { } antenna ? (antenna.From, antenna.To, $"band of {line.Antenna}") : null;
    }

    private static Frequency? Highest(RadioPort port) => Bands(port) is { Length: > 0 } bands ? bands.Max(b => b.To) : null;

    private static Frequency? Lowest(RadioPort port) => Bands(port) is { Length: > 0 } bands ? bands.Min(b => b.From) : null;

    private static Band[] Bands(RadioPort port) => [.. new[] { port.Transmit, port.Receive }.OfType<Band>()];
}
