using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>What circuits end on: grounds and breakers, which many nets share and which join none, and the contacts of the items.</summary>
internal sealed class Terminals
{
    private readonly Job job;
    private readonly HashSet<string> grounds;
    private readonly HashSet<string> breakers;
    private readonly Dictionary<string, EquipmentPart?> parts = new(StringComparer.Ordinal);

    public Terminals(Job job)
    {
        this.job = job;
        grounds = job.Aircraft.Grounds.OrEmpty().Concat(job.Change.Grounds.OrEmpty()).Select(g => g.Id).ToHashSet(StringComparer.Ordinal);
        breakers = job.Aircraft.Breakers.OrEmpty().Concat(job.Change.Breakers.OrEmpty()).Select(b => b.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var (id, part) in job.Change.Fit.OrEmpty().Select(f => (f.Id, (string?)f.Part)).Concat(job.Aircraft.Equipment.OrEmpty().Select(i => (i.Id, i.Part))))
        {
            parts.TryAdd(id, job.Parts.Equipment?.Find(part));
        }
    }

    /// <summary>Whether this still holds for another job.</summary>
    public bool Serves(Job other) => ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Parts, other.Parts) && ReferenceEquals(job.Change.Fit, other.Change.Fit)
        && ReferenceEquals(job.Change.Grounds, other.Change.Grounds) && ReferenceEquals(job.Change.Breakers, other.Change.Breakers);

    public bool IsGround(Endpoint end) => end.IsPoint && grounds.Contains(end.Item);

    public bool IsBreaker(Endpoint end) => end.IsPoint && breakers.Contains(end.Item);

    /// <summary>What the part says of a contact, or null.</summary>
    public ContactUse? UseOf(Endpoint end) => parts.GetValueOrDefault(end.Item)?.Contacts?.Find(end.Pin);
}
