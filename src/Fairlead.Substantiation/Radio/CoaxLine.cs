using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Radio;

/// <summary>A coaxial line: one circuit, or several in a row that joints connect.</summary>
/// <param name="Circuits">Its circuits, from the box on.</param>
/// <param name="Cables">The coax of each.</param>
/// <param name="Box">The box it begins at; empty when it begins at none.</param>
/// <param name="Port">What its maker says of the contact; null when nothing.</param>
/// <param name="Antenna">The antenna at an end; empty when there is none.</param>
internal sealed record CoaxLine(ImmutableArray<CircuitResult> Circuits, ImmutableArray<CoaxPart> Cables, string Box, RadioPort? Port, string Antenna)
{
    /// <summary>What findings about it are named after: its first circuit.</summary>
    public string Subject => $"circuit/{Circuits[0].Circuit.Id}";

    /// <summary>Where it stands in the files.</summary>
    public string Path => $"change/circuits/{Circuits[0].Circuit.Id}";

    /// <summary>Whether its cables are of more than one kind.</summary>
    public bool Mixed => Cables.Any(c => c != Cables[0]);

    /// <summary>Cut lengths together; null when one cannot be told.</summary>
    public Length? Length => Circuits.All(c => c.Length is not null) ? new Length(Circuits.Sum(c => c.Length!.Value.Si)) : null;

    /// <summary>Velocity factor of the line: of cables of different kinds the one that gives the delay of all.</summary>
    public Fraction Velocity => Mixed && Length is { Si: > 0 } length ? new Fraction(length.Si / Circuits.Zip(Cables).Sum(p => p.First.Length!.Value.Si / p.Second.Velocity.Si)) : Cables[0].Velocity;

    /// <summary>Mated pairs of connectors: one at each end and one at each joint.</summary>
    public int Pairs => Circuits.Length + 1;

    /// <summary>The lines that coaxial circuits make, in the order of their first circuits.</summary>
    public static ImmutableArray<CoaxLine> All(Job job, ImmutableArray<CircuitResult> coax)
    {
        var walk = new Walk(job, coax);
        // Those that end on a contact are followed first, so that every line begins at its box.
        foreach (var circuit in coax.OrderBy(c => c.Circuit.From.IsPoint && c.Circuit.To.IsPoint))
        {
            walk.From(circuit);
        }

        var order = coax.Select((c, i) => (c.Circuit.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        return [.. walk.Lines.OrderBy(l => order[l.Circuits[0].Circuit.Id])];
    }

    private sealed class Walk(Job job, ImmutableArray<CircuitResult> coax)
    {
        private readonly HashSet<string> joints = job.Change.Joints.OrEmpty().Select(j => j.Id).ToHashSet(StringComparer.Ordinal);
        private readonly HashSet<string> antennas = job.Aircraft.Antennas.OrEmpty().Select(a => a.Id).Concat(job.Change.Antennas.OrEmpty().Select(a => a.Id)).ToHashSet(StringComparer.Ordinal);
        private readonly Dictionary<string, EquipmentPart?> parts = Boxes.Parts(job);
        private readonly ILookup<string, CircuitResult> at = coax.SelectMany(c => new[] { (c.Circuit.From.Item, c), (c.Circuit.To.Item, c) }).ToLookup(x => x.Item, x => x.c, StringComparer.Ordinal);
        private readonly HashSet<string> used = new(StringComparer.Ordinal);

        public List<CoaxLine> Lines { get; } = [];

        public void From(CircuitResult first)
        {
            if (used.Contains(first.Circuit.Id))
            {
                return;
            }

            var start = first.Circuit.From.IsPoint && (!first.Circuit.To.IsPoint || joints.Contains(first.Circuit.From.Item)) ? first.Circuit.To : first.Circuit.From;
            var (run, end, next) = (ImmutableArray.CreateBuilder<CircuitResult>(), start, first);
            while (next is not null && used.Add(next.Circuit.Id))
            {
                run.Add(next);
                end = next.Circuit.From == end ? next.Circuit.To : next.Circuit.From;
                next = joints.Contains(end.Item) ? at[end.Item].FirstOrDefault(c => !used.Contains(c.Circuit.Id)) : null;
            }

            var port = Port(start) ?? Port(end);
            var box = !start.IsPoint && (Port(start) is not null || end.IsPoint) ? start.Item : end.IsPoint ? "" : end.Item;
            var antenna = antennas.Contains(end.Item) ? end.Item : antennas.Contains(start.Item) ? start.Item : "";
            Lines.Add(new CoaxLine(run.ToImmutable(), [.. run.Select(c => job.Parts.Coax![c.Part])], box, port, antenna));
        }

        private RadioPort? Port(Endpoint end) => end.IsPoint ? null : parts.GetValueOrDefault(end.Item)?.Radios.OrEmpty().FirstOrDefault(r => r.Contacts.Contains(end.Pin));
    }
}
