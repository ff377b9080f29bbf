using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Drawings.Wiring;

/// <summary>What kind of thing a circuit ends on.</summary>
internal enum EndKind
{
    Box,
    Breaker,
    Ground,
    Antenna,
    Joint,
}

/// <summary>Says of the ends of circuits what they are and how they are called.</summary>
internal sealed class Ends(Job job)
{
    public EndKind KindOf(string item) =>
        Breaker(item) is not null ? EndKind.Breaker
        : (job.Change.Grounds?.Contains(item) ?? false) || (job.Aircraft.Grounds?.Contains(item) ?? false) ? EndKind.Ground
        : (job.Change.Antennas?.Contains(item) ?? false) || (job.Aircraft.Antennas?.Contains(item) ?? false) ? EndKind.Antenna
        : job.Change.Joints?.Contains(item) ?? false ? EndKind.Joint
        : EndKind.Box;

    /// <summary>Whether it was in the aircraft before the change.</summary>
    public bool Existing(string item) =>
        (job.Aircraft.Equipment?.Contains(item) ?? false) || (job.Aircraft.Breakers?.Contains(item) ?? false) || (job.Aircraft.Grounds?.Contains(item) ?? false) || (job.Aircraft.Antennas?.Contains(item) ?? false);

    public string NameOf(string item) => KindOf(item) switch
    {
        EndKind.Breaker => Breaker(item) is { } b ? $"{b.Name}, {RatingOf(b)}, bus {b.Bus}" : "",
        EndKind.Ground => "ground stud",
        EndKind.Antenna => job.Parts.Antennas?.Find(job.Change.Antennas?.Find(item)?.Part ?? job.Aircraft.Antennas?.Find(item)?.Part)?.Name ?? job.Aircraft.Antennas?.Find(item)?.Name ?? "",
        EndKind.Joint => job.Change.Joints!.Find(item) is { } j ? $"{Words.Kebab(j.Kind.ToString())}{(j.Node is null ? "" : $" at {j.Node}")}" : "",
        _ => job.Aircraft.Equipment?.Find(item)?.Name ?? PartOf(item)?.Name ?? "",
    };

    public EquipmentPart? PartOf(string item) => job.Parts.Equipment?.Find(job.Change.Fit?.Find(item)?.Part ?? job.Aircraft.Equipment?.Find(item)?.Part);

    public string SignalAt(Endpoint end) => PartOf(end.Item)?.Contacts?.Find(end.Pin)?.Signal ?? "";

    private Breaker? Breaker(string item) => job.BreakerOf(item);

    private string RatingOf(Breaker breaker) => job.Parts.Breakers?.Find(breaker.Part)?.Rating.As("A").ToString() ?? breaker.Part;
}
