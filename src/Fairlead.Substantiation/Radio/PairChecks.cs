using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Model;

namespace Fairlead.Substantiation.Radio;

/// <summary>Each antenna that transmits beside each other antenna. Two antennas that were there before, and antennas of one box, are not the
/// change's affair.</summary>
internal sealed class PairChecks(Job job, Memo memo, IReadOnlySet<(string, string)> suppressed, RadioFindings found)
{
    private const string Apart = "Move the antennas apart.";

    // No base of an antenna is smaller.
    private static readonly Length OnePlace = Length.Of(1, "in");

    public void Check(IReadOnlyList<Aerial> aerials)
    {
        Places();
        foreach (var receiver in aerials)
        {
            foreach (var sender in aerials.Where(a => a.Id != receiver.Id && a.Transmits && (a.Touched || receiver.Touched) && (a.Box.Length == 0 || a.Box != receiver.Box)))
            {
                Spacing(sender, receiver);
                Isolation(sender, receiver);
            }
        }
    }

    // Every antenna that stays has a place, whether or not its part is known.
    private void Places()
    {
        var gone = job.Change.Remove.OrEmpty().Select(r => r.Item).ToHashSet(StringComparer.Ordinal);
        var standing = job.Aircraft.Antennas.OrEmpty().Where(a => !gone.Contains(a.Id)).Select(a => (a.Id, a.Place)).ToList();
        foreach (var antenna in job.Change.Antennas.OrEmpty())
        {
            foreach (var (other, place) in standing.Where(s => s.Place.To(antenna.Place) < OnePlace))
            {
                found.Add(new(
                    "antenna-place", Verdict.Fails, $"antenna/{antenna.Id}", $"{antenna.Id} and {other} stand in one place.", $"spacing {place.To(antenna.Place).As("in")}, at least {OnePlace.As("in")}",
                    RadioFindings.Stated, "Correct the place of one of them.", $"change/antennas/{antenna.Id}"));
            }

            standing.Add((antenna.Id, antenna.Place));
        }
    }

    private void Spacing(Aerial sender, Aerial receiver)
    {
        var spacing = sender.Place.To(receiver.Place);
        if (receiver.Part.Clearance is { } least && spacing < least)
        {
            found.Add(new(
                "antenna-spacing", Verdict.Fails, receiver.Subject, $"{receiver.Id} stands too near {sender.Id}, which transmits.", $"demand {least.As("in")}, spacing {spacing.As("in")}",
                RadioFindings.Stated, Apart, receiver.Path));
        }
    }

    // Levels that makers state hold in the band of the antenna; what is transmitted elsewhere is a matter of its harmonics.
    private void Isolation(Aerial sender, Aerial receiver)
    {
        var outcomes = from tx in sender.Ports
                       where tx.Transmit is not null && tx.Transmit.Touches(receiver.Band)
                       from rx in receiver.Ports
                       where rx.Receive is not null
                       let measured = Measured(sender, tx, receiver)
                       select (Outcome: memo.Run<AntennaIsolation, AntennaIsolationInput>(Input(sender, tx, receiver, rx, measured?.Isolation), "I", "Pr"), Report: measured?.Report);
        if (outcomes.Select(o => ((Outcome, string?)?)o).MaxBy(o => o!.Value.Item1.Verdict) is var (worst, report))
        {
            var limits = suppressed.Contains((sender.Box, receiver.Box)) ? $"part of {receiver.Box}; it does not listen while {sender.Box} transmits (mutual suppression)" : $"part of {receiver.Box}";
            found.Add(worst, $"{receiver.Subject}/from-{sender.Id}", receiver.Subject, receiver.Path, $"{Apart[..^1]}, here {receiver.Id} and {sender.Id}, or show by a measurement that they are isolated enough.",
                ("f", $"lowest that {sender.Box} transmits in the band of {receiver.Id}"), ("d", $"positions of {sender.Id} and {receiver.Id}"), ("pair", "2.15 dBi each along the skin, the safe side for flush and shadowed antennas"),
                ("P", $"part of {sender.Box}, loss of its cable left out"), ("Ldam", limits), ("Ldes", limits), ("Imin", $"part of {receiver.Box}"), ("Im", $"measured, report {report}"));
        }
    }

    private MeasuredIsolation? Measured(Aerial sender, RadioPort tx, Aerial receiver) =>
        job.Change.Isolations.OrEmpty().FirstOrDefault(m => m.Holds(sender.Id, receiver.Id, Lowest(tx, receiver)));

    private static Frequency Lowest(RadioPort tx, Aerial receiver) => tx.Transmit!.From > receiver.Band.From ? tx.Transmit.From : receiver.Band.From;

    private AntennaIsolationInput Input(Aerial sender, RadioPort tx, Aerial receiver, RadioPort rx, double? measured)
    {
        var desense = suppressed.Contains((sender.Box, receiver.Box)) ? null : rx.Desense;
        return new(
            Lowest(tx, receiver), sender.Place.To(receiver.Place), AntennaPair.MonopolesOnOnePlane, MinIsolation: rx.Isolation,
            Power: tx.Power, Damage: tx.Power is null ? null : rx.Damage, Desense: tx.Power is null ? null : desense, Measured: measured);
    }
}
