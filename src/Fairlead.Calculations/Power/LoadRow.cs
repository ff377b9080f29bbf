namespace Fairlead.Calculations.Power;

/// <summary>A load of the load analysis in one operating condition.</summary>
/// <param name="Name">Name.</param>
/// <param name="Current">Current while on, 0 A to 2000 A.</param>
/// <param name="On">How long it is on; continuous when left out.</param>
/// <param name="Bus">The bus it stands on.</param>
public sealed record LoadRow(
    [In("name", "load")] string Name,
    [In("I", "current", "A", Min = 0, Max = 2000)] Current Current,
    [In("on", "time on", "s", Min = 0, Max = 86400, Default = "continuous")] Duration? On = null,
    [In("bus", "bus", Default = "none")] string Bus = "");

/// <summary>What a source can give.</summary>
internal static class SourceChecks
{
    private static readonly Source Method = new("ASTM F2490", "", "4.3: demand under all conditions against capacity");
    private static readonly Source RuleOfThumb = Wiring.Ac4313.Paragraph("11-35");

    /// <summary>Average demand over an interval of many loads.</summary>
    public static Current Sum(Sequence<LoadRow> loads, Duration interval) =>
        new(loads.Sum(l => Intervals.Average(l.Current, l.On, interval).Si));

    /// <summary>Checks the three intervals against the ratings, and the continuous load against the rule of thumb.</summary>
    public static void Add(SheetBuilder s, Current short5, Current medium5, Current continuous, Current rating, Current? rating5min, Current? rating5s)
    {
        s.Check("continuous demand", continuous.As("A"), Sense.AtMost, rating.As("A"), "the continuous demand stays within the source's continuous rating", Method);
        s.Check("5 minute demand", medium5.As("A"), Sense.AtMost, (rating5min ?? rating).As("A"), "the 5 minute demand stays within the source's rating for it", Method);
        s.Check("5 second demand", short5.As("A"), Sense.AtMost, (rating5s ?? rating5min ?? rating).As("A"), "the 5 second demand stays within the source's rating for it", Method);
        s.Check("80 % of the rating", continuous.As("A"), Sense.AtMost, (rating * 0.8).As("A"),
            "a continuous load above 80 % of the rating wants placards or monitoring; a rule of thumb, not a load analysis", RuleOfThumb, Verdict.Caution);
    }
}
