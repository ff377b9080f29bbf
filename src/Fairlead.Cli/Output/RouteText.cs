using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Routing;

namespace Fairlead.Cli.Output;

/// <summary>Ways as text.</summary>
internal static class RouteText
{
    public static void Write(Terminal terminal, Assessment assessment)
    {
        var detours = assessment.Routing.Detours.ToHashSet(StringComparer.Ordinal);
        Wrapping.Columns(
            terminal.Out,
            [
                ["circuit", "way", "shortest", "length", "cut", "segments"],
                .. assessment.Circuits.Select(c => (string[])[
                    c.Circuit.Id, Text(c.Way?.Length), Text(c.Shortest), Text(c.Length), Text(c.Cut),
                    c.Way is null ? "no way" : string.Join(' ', c.Way.Segments) + (detours.Contains(c.Circuit.Id) ? " (round what is full or barred)" : "")]),
            ],
            terminal.Width, 0);
        terminal.Out.WriteLine();
        Wrapping.Columns(
            terminal.Out,
            [["segment", "bundle", "room"], .. assessment.Segments.Select(s => (string[])[s.Segment, Text(s.Diameter), s.Capacity is null ? "not stated" : Text(s.Capacity)])], terminal.Width, 0);
        terminal.Out.WriteLine();
        terminal.Print(Summary(assessment.Routing, assessment.Findings.Any(f => f.Rule is "raceway-fill" or "separation-class" or "redundant-way")));
        if (assessment.Circuits.Count(c => c.Way is null) is > 0 and var without)
        {
            terminal.Print($"{Counted.Of(without, "circuit")} without a way {(without == 1 ? "is" : "are")} not counted: 'check' says what stands between.");
        }
    }

    /// <summary>The nets that one shared tree would save much of: a note, since how a net is drawn is the user's choice.</summary>
    public static void WriteNets(Terminal terminal, ImmutableArray<SharedTree> trees, int percent)
    {
        var worth = trees.Where(t => 100 * t.Saving.Si >= percent && t.Tree < t.Drawn).ToArray();
        if (worth.Length == 0)
        {
            return;
        }

        terminal.Out.WriteLine();
        Wrapping.Columns(
            terminal.Out,
            [
                ["net", "drawn", "tree", "bound", "joints now", "joints of the tree at"],
                .. worth.Select(t => (string[])[string.Join(' ', t.Circuits), Text(t.Drawn), Text(t.Tree), t.Proved ? "least" : Text(t.Bound), t.Loose.IsEmpty ? "-" : string.Join(' ', t.Loose.Select(j => $"{j.Joint}@{j.Point}")), t.Branches.IsEmpty ? "none" : string.Join(' ', t.Branches)]),
            ],
            terminal.Width, 0);
        terminal.Out.WriteLine();
        terminal.Print($"On one shared tree through the raceways each of these nets would take at least {NumberFormat.Text(percent)} % less wire along its ways. The bound is what no tree goes below; room in segments and joints that cost mass of their own are not counted.{(worth.Any(t => t.Loose.Length > 0) ? " Joints without a point of their own already stand where the wires as drawn weigh least, so moving one saves nothing: the tree asks for circuits from joint to joint, with joints at the points named." : "")}");
    }

    /// <summary>How good the ways are together, in a sentence.</summary>
    public static string Summary(RoutingResult routing, bool broken)
    {
        var mass = $"Wire along the ways: {routing.Mass.As("kg")}; no arrangement has less than {routing.Bound.As("kg")}";
        return routing.Proved && broken ? $"{mass}, and none keeps every rule."
            : routing.Proved ? $"{mass}: this is the least there is."
            : $"{mass}: within {new Fraction((routing.Mass.Si - routing.Bound.Si) / routing.Bound.Si).As("%")} of the least.";
    }

    private static string Text(Length? length) => length is { } known ? known.As("in").ToString() : "-";
}
