using Fairlead.Model;

namespace Fairlead.Planning.Tasks;

/// <summary>The zones of a segment of raceway, whose ends may lie in two.</summary>
internal static class Ways
{
    /// <summary>The zone in which wires are run through a segment: of its two ends' the one into which more of its panels open, and with as many the one in which it begins.
    /// Whoever runs a wire stands in one place, so that room is taken in that zone alone.</summary>
    public static string WorkedIn(Aircraft aircraft, RacewaySegment segment)
    {
        var (from, to) = (ZoneOf(aircraft, segment.From), ZoneOf(aircraft, segment.To));
        return Openings(to) > Openings(from) ? to : from;

        int Openings(string zone) => segment.Panels.Count(p => aircraft.Panels?.Find(p)?.Zone == zone);
    }

    /// <summary>Every zone that a segment passes: those of its ends and those into which its panels open.</summary>
    public static IEnumerable<string> Passed(Aircraft aircraft, RacewaySegment segment) =>
        segment.Panels.Select(p => aircraft.Panels?.Find(p)?.Zone ?? "").Prepend(ZoneOf(aircraft, segment.To)).Prepend(ZoneOf(aircraft, segment.From)).Where(z => z.Length > 0).Distinct(StringComparer.Ordinal);

    /// <summary>The zone of a raceway point; empty where it is not known.</summary>
    public static string ZoneOf(Aircraft aircraft, string node) => aircraft.Nodes?.Find(node)?.Zone ?? "";
}
