using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Findings of the choice of ways.</summary>
internal static class RoutingFindings
{
    private static readonly Source Ways = new("This job", "", "separation classes", Basis.Stated);
    private static readonly Source Redundancy = new("Redundant systems", "", "ways apart", Basis.CommonPractice);

    /// <summary>One finding for each pair that meets, with every segment in which it does.</summary>
    public static IEnumerable<Finding> Of(IEnumerable<Clash> clashes, bool proved) => clashes
        .Where(c => c.Kind is ClashKind.Classes or ClashKind.Redundant)
        .GroupBy(c => (c.Kind, string.Join(" and ", c.Names)))
        .Select(g => g.Key.Kind == ClashKind.Classes ? Meeting(g.Key.Item2, [.. g]) : Shared(g.Key.Item2, [.. g], proved));

    /// <summary>What the search for other ways adds to the finding of a full segment.</summary>
    public static string Full(Clash clash, bool proved) =>
        $"No other ways {(proved ? "exist, as a search through all arrangements proves" : "were found")} for {Listed(clash)}. More room in {clash.Segment}, a new segment round it, or a lifted 'avoid' would free it.";

    private static Finding Meeting(string classes, Clash[] clashes) => new(
        "separation-class", Verdict.Fails, $"segment/{clashes[0].Segment}", $"Circuits of the classes {classes}, which stay apart, both need {Segments(clashes)}.", "", Ways,
        "Add a segment for one of the classes, or move what its circuits end on.", $"aircraft/segments/{clashes[0].Segment}");

    private static Finding Shared(string sides, Clash[] clashes, bool proved) => new(
        "redundant-way", Verdict.Caution, $"redundant/{string.Join('/', clashes[0].Names)}", $"The circuits of {sides}, which back each other up, share {Segments(clashes)}: no ways that keep apart {(proved ? "exist" : "were found")}.", "", Redundancy,
        "Add a segment, or place one of them elsewhere; or accept it by a concession that says why.", $"aircraft/segments/{clashes[0].Segment}");

    private static string Segments(Clash[] clashes) => clashes.Length == 1 ? $"segment {clashes[0].Segment}" : $"the segments {string.Join(", ", clashes.Select(c => c.Segment))}";

    private static string Listed(Clash clash) => clash.Names.Length <= 4 ? string.Join(", ", clash.Names) : $"{string.Join(", ", clash.Names.Take(3))} and {NumberFormat.Text(clash.Names.Length - 3)} more";
}
