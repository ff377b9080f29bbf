using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Tasks;

/// <summary>The new wires that end at one connector, breaker, stud or joint.</summary>
/// <param name="Name">Item with connector half, <c>TS1-P1</c>, or point, <c>CB41</c>.</param>
/// <param name="Item">The item or point.</param>
/// <param name="Node">Raceway point; empty where it is not known.</param>
/// <param name="Circuits">The circuits, once for each end here.</param>
internal sealed record WireEnd(string Name, string Item, string Node, Sequence<CircuitResult> Circuits)
{
    /// <summary>Whether a test card of harness checks is about what ends here: a connector, an item, or a circuit.</summary>
    public bool Reaches(TestCard card) => card.Kind switch
    {
        TestKind.Visual => Item == card.Subject,
        TestKind.Coax => Circuits.Any(c => c.Circuit.Id == card.Subject),
        _ => Name == card.Subject.Replace(' ', '-'),
    };

    /// <summary>Coaxial connectors here.</summary>
    public int Coax(Job job) => Circuits.Count(c => job.Parts.Coax?.Find(c.Part) is not null);

    /// <summary>Shields grounded here: one for each cable.</summary>
    public int Shields => Circuits.Where(c => c.Circuit.Shield == ShieldEnds.Both || (c.Circuit.Shield == ShieldEnds.From && c.Circuit.From.Item == Item) || (c.Circuit.Shield == ShieldEnds.To && c.Circuit.To.Item == Item))
        .Select(c => c.Circuit.Cable.Length > 0 ? c.Circuit.Cable : c.Circuit.Id).Distinct(StringComparer.Ordinal).Count();
}

internal static class Ends
{
    /// <summary>All ends, in the order of the circuits.</summary>
    public static IEnumerable<WireEnd> Of(Assessment assessment) => assessment.Circuits
        .SelectMany(c => new[] { (End: c.Circuit.From, Node: c.Way?.Nodes is [var first, ..] ? first : "", Circuit: c), (End: c.Circuit.To, Node: c.Way?.Nodes is [.., var last] ? last : "", Circuit: c) })
        .GroupBy(x => x.End.IsPoint ? x.End.Item : $"{x.End.Item}-{x.End.Connector}", StringComparer.Ordinal)
        .Select(g => new WireEnd(g.Key, g.First().End.Item, g.Select(x => x.Node).FirstOrDefault(n => n.Length > 0) ?? "", g.Select(x => x.Circuit).ToSequence()));

    /// <summary>The panels through which a raceway point is reached: those that every segment there has, which are in front of the point whichever way its wires go;
    /// where there are none, all those of the segments there that new wires use.</summary>
    public static Sequence<string> PanelsAt(Draft draft, string node)
    {
        var used = draft.Assessment.Circuits.SelectMany(c => c.Way?.Segments ?? []).ToHashSet(StringComparer.Ordinal);
        var there = draft.Aircraft.Segments.Each().Where(s => s.From == node || s.To == node).ToArray();
        var panels = there.Where(s => used.Contains(s.Id)).SelectMany(s => s.Panels).Distinct(StringComparer.Ordinal).ToSequence();
        var common = panels.Where(p => there.All(s => s.Panels.Contains(p))).ToSequence();
        return common.Count > 0 ? common : panels;
    }
}
