using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>The traffic scenarios of a job, as their sheets tell what a display shows of them.</summary>
internal static class Scenarios
{
    private const string Table = "Expected on the display";

    public static ImmutableArray<ScenarioView> Of(Assessment assessment)
    {
        var sheets = assessment.Sheets.Where(s => s.Subject.StartsWith("scenario/", StringComparison.Ordinal)).ToLookup(s => s.Subject.Split('/')[1], StringComparer.Ordinal);
        return
        [
            .. (assessment.Job.Change.Scenarios ?? Model.Catalog<Model.Scenario>.Empty).Where(s => sheets[s.Id].Any())
                .Select(s => new ScenarioView(s.Id, s.Sensor, s.Altitude.As("ft").ToString(), [.. sheets[s.Id].Select(Track)])),
        ];
    }

    private static TrackView Track(SubjectSheet s) => new(s.Subject.Split('/')[^1], s.Subject, [.. s.Sheet.Tables.Where(t => t.Title == Table).SelectMany(t => t.Rows).Select(Moment)]);

    private static MomentView Moment(ImmutableArray<SheetValue> row) => new(
        Value(row[0]), Value(row[1]), Value(row[2]), row[4].ToString() is var tag && tag == "none" ? "" : tag, row[5].ToString(), Symbol(row[6].ToString()));

    private static double Value(SheetValue value) => value.Number?.Value ?? 0;

    private static string Symbol(string words) =>
        words.Contains("resolution", StringComparison.Ordinal) ? "resolution" : words.Contains("traffic advisory", StringComparison.Ordinal) ? "traffic" : words.Contains("proximate", StringComparison.Ordinal) ? "proximate" : "other";
}
