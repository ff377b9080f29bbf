using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Radio;

/// <summary>An antenna as it stands after the change.</summary>
/// <param name="Id">Reference designator.</param>
/// <param name="Part">Its part.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Fitted">The antenna as the change fits it; null for one that was there.</param>
/// <param name="Touched">Whether the change fits it or wires it.</param>
/// <param name="Box">The box behind it; empty when none is known.</param>
/// <param name="Ports">What that box transmits and receives through it.</param>
internal sealed record Aerial(string Id, AntennaPart Part, Place Place, FittedAntenna? Fitted, bool Touched, string Box, ImmutableArray<RadioPort> Ports)
{
    /// <summary>What findings about it are named after.</summary>
    public string Subject => $"antenna/{Id}";

    /// <summary>Where it stands in the files.</summary>
    public string Path => Fitted is null ? $"aircraft/antennas/{Id}" : $"change/antennas/{Id}";

    /// <summary>The band it is made for.</summary>
    public Band Band { get; } = new(Part.From, Part.To);

    /// <summary>Whether anything is transmitted through it: as its box says, or its part where the box is not known.</summary>
    public bool Transmits => Ports.IsEmpty ? Part.Transmits : Ports.Any(p => p.Transmit is not null);

    /// <summary>The antennas of a job that have a part and stay: those that were there, then those that go in.</summary>
    public static ImmutableArray<Aerial> All(Job job, ImmutableArray<CoaxLine> lines)
    {
        var gone = job.Change.Remove.OrEmpty().Select(r => r.Item).ToHashSet(StringComparer.Ordinal);
        var parts = Boxes.Parts(job);
        var wired = lines.Where(l => l.Antenna.Length > 0).ToLookup(l => l.Antenna, StringComparer.Ordinal);
        Aerial? Make(string id, string? part, Place place, FittedAntenna? fitted, string? item)
        {
            if (job.Parts.Antennas?.Find(part) is not { } known)
            {
                return null;
            }

            var band = new Band(known.From, known.To);
            var box = wired[id].Select(l => l.Box).FirstOrDefault(b => b.Length > 0) ?? item ?? "";
            ImmutableArray<RadioPort> ports = wired[id].Any()
                ? [.. wired[id].Select(l => l.Port).OfType<RadioPort>().Distinct()]
                : [.. (parts.GetValueOrDefault(box)?.Radios).OrEmpty().Where(p => p.Transmit?.Touches(band) == true || p.Receive?.Touches(band) == true)];
            return new Aerial(id, known, place, fitted, fitted is not null || wired[id].Any(), box, ports);
        }

        return
        [
            .. job.Aircraft.Antennas.OrEmpty().Where(a => !gone.Contains(a.Id)).Select(a => Make(a.Id, a.Part, a.Place, null, a.Item))
                .Concat(job.Change.Antennas.OrEmpty().Select(a => Make(a.Id, a.Part, a.Place, a, null))).OfType<Aerial>(),
        ];
    }
}
