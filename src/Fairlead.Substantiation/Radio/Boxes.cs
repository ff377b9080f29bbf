using Fairlead.Model;
using Fairlead.Substantiation.Interconnect;

namespace Fairlead.Substantiation.Radio;

/// <summary>What the radio rules need to know of boxes.</summary>
internal static class Boxes
{
    /// <summary>The part of each box, what the change fits before what was there.</summary>
    public static Dictionary<string, EquipmentPart?> Parts(Job job)
    {
        var parts = new Dictionary<string, EquipmentPart?>(StringComparer.Ordinal);
        foreach (var (id, part) in job.Change.Fit.OrEmpty().Select(f => (f.Id, (string?)f.Part)).Concat(job.Aircraft.Equipment.OrEmpty().Select(i => (i.Id, i.Part))))
        {
            parts.TryAdd(id, job.Parts.Equipment?.Find(part));
        }

        return parts;
    }

    /// <summary>Pairs of boxes that a mutual suppression line joins: while one transmits the other does not listen.</summary>
    public static HashSet<(string One, string Other)> Suppressed(IEnumerable<Net> nets) =>
    [
        .. from net in nets
           let boxes = net.Of(SignalKind.Suppression).Select(c => c.End.Item).Distinct(StringComparer.Ordinal).ToArray()
           from one in boxes
           from other in boxes
           where one != other
           select (one, other),
    ];
}
