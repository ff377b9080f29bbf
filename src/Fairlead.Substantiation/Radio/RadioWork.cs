using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Substantiation.Interconnect;

namespace Fairlead.Substantiation.Radio;

/// <summary>Coaxial lines, antennas, and what one radio does to another.</summary>
internal sealed class RadioWork
{
    private readonly Job job;
    private readonly ImmutableArray<CircuitResult> coax;
    private readonly ImmutableArray<Net> nets;
    private readonly RadioFindings found = new();

    private RadioWork(Job job, Memo memo, ImmutableArray<CircuitResult> coax, ImmutableArray<Net> nets)
    {
        (this.job, this.coax, this.nets) = (job, coax, nets);
        var lines = CoaxLine.All(job, coax);
        var aerials = Aerial.All(job, lines);
        var suppressed = Boxes.Suppressed(nets);
        var losses = new CoaxChecks(job, memo, found).Check(lines);
        new AntennaChecks(job, memo, lines.ToLookup(l => l.Antenna, StringComparer.Ordinal), losses, found).Check(aerials);
        new PairChecks(job, memo, suppressed, found).Check(aerials);
        new HarmonicChecks(job, memo, suppressed, found).Check(aerials);
    }

    public List<Finding> Findings => found.Findings;

    public List<Shown> Shown => found.Shown;

    /// <summary>The work of a job: the last one as long as nothing it rests on has changed.</summary>
    public static RadioWork Of(Job job, Memo memo, ImmutableArray<CircuitResult> circuits, ImmutableArray<Net> nets, RadioWork? last)
    {
        ImmutableArray<CircuitResult> now = [.. circuits.Where(c => c.Wire is null && job.Parts.Coax?.Find(c.Part) is not null)];
        return last is not null && last.nets == nets && last.Rests(job) && last.coax.AsSpan().SequenceEqual(now.AsSpan(), ReferenceEqualityComparer.Instance) ? last : new RadioWork(job, memo, now, nets);
    }

    private bool Rests(Job other)
    {
        var (aircraft, change) = (job.Aircraft, job.Change);
        return ReferenceEquals(job.Parts, other.Parts) && ReferenceEquals(aircraft.Antennas, other.Aircraft.Antennas) && ReferenceEquals(aircraft.Equipment, other.Aircraft.Equipment)
            && ReferenceEquals(change.Antennas, other.Change.Antennas) && ReferenceEquals(change.Fit, other.Change.Fit) && ReferenceEquals(change.Remove, other.Change.Remove)
            && ReferenceEquals(change.Joints, other.Change.Joints) && ReferenceEquals(change.Tests, other.Change.Tests) && ReferenceEquals(change.Ramp, other.Change.Ramp)
            && ReferenceEquals(change.Isolations, other.Change.Isolations);
    }
}
