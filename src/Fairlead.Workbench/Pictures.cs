using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>The pictures of a discipline.</summary>
internal static class Pictures
{
    public static ImmutableArray<PictureView> Of(Assessment assessment, Discipline discipline) => discipline switch
    {
        Discipline.Power =>
        [
            .. assessment.SourceLoads.GroupBy(l => l.Source.Id, StringComparer.Ordinal).Select(g => View($"load-{g.Key}", LoadChart.Draw(AssessmentPlots.Load([.. g])))),
            .. assessment.Batteries.Where(b => b.Endurance is not null && !b.Timeline.IsEmpty).Select(b => View($"discharge-{b.Battery.Id}", SheddingTimelinePlot(b))),
        ],
        Discipline.Balance => [View("envelope", EnvelopePlot.Draw(AssessmentPlots.Envelope(assessment, "m", "kg")))],
        _ => [],
    };

    private static Picture SheddingTimelinePlot(BatteryResult battery) => Drawings.SheddingTimeline.Draw(AssessmentPlots.Discharge(battery, battery.Endurance!.Value));

    private static PictureView View(string name, Picture picture) => new(name, picture.Title, SvgWriter.Write(picture));
}
