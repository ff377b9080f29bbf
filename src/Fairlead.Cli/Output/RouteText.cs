using Fairlead.Substantiation;

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
        terminal.Print(Summary(assessment.Routing));
    }

    /// <summary>How good the ways are together, in a sentence.</summary>
    public static string Summary(RoutingResult routing)
    {
        var mass = $"Wire along the ways: {routing.Mass.As("kg")}; no arrangement has less than {routing.Bound.As("kg")}";
        return routing.Proved && routing.Mass.Si <= routing.Bound.Si * (1 + 1e-9) ? $"{mass}: this is the least there is."
            : routing.Proved ? $"{mass}, and none keeps every rule."
            : $"{mass}: within {new Fraction((routing.Mass.Si - routing.Bound.Si) / routing.Bound.Si).As("%")} of the least.";
    }

    private static string Text(Length? length) => length is { } known ? known.As("in").ToString() : "-";
}
