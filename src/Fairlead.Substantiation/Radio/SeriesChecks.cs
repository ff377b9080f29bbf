using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Losses = Fairlead.Calculations.Radio.CoaxLoss;

namespace Fairlead.Substantiation.Radio;

/// <summary>A coaxial line of cables of different kinds: a sheet for each cable, and one that adds them up. A window of lengths has no meaning
/// there, so the delay itself is checked.</summary>
internal sealed class SeriesChecks(Memo memo, RadioFindings found)
{
    private const string Remedy = "Use cables of less loss, or a shorter way.";

    /// <summary>Checks the line; its loss at the highest frequency, dB, or null where it cannot be told.</summary>
    public double? Check(CoaxLine line, Frequency low, Frequency high)
    {
        Impedance(line);
        var port = line.Port;
        if (Pieces(line, high, show: true) is not { } pieces)
        {
            return null;
        }

        (string, string)[] origins = [("f", "the line's highest"), ("cables", "sheets of its circuits"), ("n", "one at each end and one at each joint")];
        var sum = memo.Run<CoaxSeries, CoaxSeriesInput>(
            new(high, pieces, line.Pairs, port?.MaxLoss, null, port?.Power, port?.MinPower, port?.MaxPower, port?.MinDelay, port?.MaxDelay), "A");
        found.Add(sum, $"{line.Subject}/series", line.Subject, line.Path, Remedy, origins);
        if (port?.MinLoss is { } least && Pieces(line, low, show: false) is { } below)
        {
            found.Add(memo.Run<CoaxSeries, CoaxSeriesInput>(new(low, below, line.Pairs, null, least), "A"), $"{line.Subject}/series-least", line.Subject, line.Path,
                "Use cables of more loss, a longer way, or the attenuator of the maker.", ("f", "the line's lowest"), origins[1], origins[2]);
        }

        return sum.Value(0);
    }

    private Sequence<CoaxPiece>? Pieces(CoaxLine line, Frequency frequency, bool show)
    {
        var pieces = new List<CoaxPiece>();
        foreach (var (circuit, cable) in line.Circuits.Zip(line.Cables))
        {
            var points = cable.Loss.Select(p => new LossPoint(p.At, p.DecibelPer100Ft)).ToSequence();
            var outcome = memo.Run<Losses, CoaxLossInput>(new(frequency, circuit.Length!.Value, null, points, 0), "A");
            if (show)
            {
                found.Add(outcome, $"circuit/{circuit.Circuit.Id}/loss", $"circuit/{circuit.Circuit.Id}", $"change/circuits/{circuit.Circuit.Id}", Remedy, ("L", circuit.LengthOrigin), ("points", cable.Id));
            }

            if (outcome.Value(0) is not { } loss)
            {
                return null;
            }

            pieces.Add(new(cable.Id, circuit.Length.Value, loss, cable.Velocity));
        }

        return pieces.ToSequence();
    }

    private void Impedance(CoaxLine line)
    {
        if (line.Cables.FirstOrDefault(c => c.Impedance != line.Cables[0].Impedance) is { } other)
        {
            found.Add(new(
                "coax-impedance", Verdict.Fails, line.Subject, $"'{line.Cables[0].Id}' and '{other.Id}' are joined, but differ in impedance: part of the signal comes back at the joint.",
                $"{line.Cables[0].Impedance.As("ohm")} and {other.Impedance.As("ohm")}", RadioFindings.Stated, "Use cables of one impedance.", line.Path));
        }
    }
}
