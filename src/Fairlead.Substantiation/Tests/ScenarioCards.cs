using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;
using Fairlead.Model;
using Fairlead.Substantiation.Radio;
using Fairlead.Substantiation.Traffic;

namespace Fairlead.Substantiation.Tests;

/// <summary>Cards of simulated traffic: what the display must show of each target when it appears, and when its advisory must begin, with what the display shows meanwhile.</summary>
internal static class ScenarioCards
{
    private const double UsualBearingError = 15;

    public static IEnumerable<TestCard> Of(Job job, Sequence<string> before, Sequence<string> cautions)
    {
        var parts = Boxes.Parts(job);
        foreach (var scenario in job.Change.Scenarios.OrEmpty())
        {
            if (parts.GetValueOrDefault(scenario.Sensor)?.Traffic is { } sensor)
            {
                yield return new TestCard(
                    $"SCEN-{scenario.Id}", TestKind.Ramp, $"Simulated traffic {scenario.Id} for {scenario.Sensor}, own altitude {scenario.Altitude.As("ft")}", scenario.Sensor, scenario.Sensor, "traffic test set, coupled or hooded",
                    [.. before, .. scenario.Targets.Select(Set)], cautions, scenario.Targets.SelectMany(t => Lines(scenario, t, sensor)).ToSequence())
                {
                    Stage = WorkStage.Outside, Radiates = true,
                    Tracks = scenario.Targets.Select(t => new ExpectedTrack(t.Id, TrafficScenario.Shown(TrafficWork.Input(scenario, t, sensor, 0)).ToSequence())).ToSequence(),
                };
            }
        }
    }

    // What the test set is set to, at the place where it is set.
    private static string Set(SimulatedTarget target)
    {
        string Signed(double value, string unit, string more, string less) => value == 0 ? "" : $", {NumberFormat.Text(Math.Abs(value))} {unit} {(value > 0 ? more : less)}";
        return $"target {target.Id} set: from {NumberFormat.Text(target.Start.In("s"))} s to {NumberFormat.Text(target.End.In("s"))} s, {target.Range.As("nmi")}, bearing {target.Bearing.As("°")}"
            + Signed(target.Closing.In("kt"), "kt", "closing", "drawing away") + (target.Above.Si == 0 ? ", at our altitude" : Signed(target.Above.In("ft"), "ft", "above", "below"))
            + Signed(target.Climb.In("ft/min"), "ft/min", "climbing", "descending") + (target.Reports ? "" : ", no altitude reported");
    }

    // Range within a tenth or 0.2 nmi: from memory, so marked.
    private static IEnumerable<TestLine> Lines(Scenario scenario, SimulatedTarget target, TrafficSensor sensor)
    {
        var (nmi, bearing) = (target.Range.In("nmi"), target.Bearing.In("°"));
        var (off, error) = (Math.Max(0.1 * nmi, 0.2), sensor.BearingError?.In("°") ?? UsualBearingError);
        var stated = TestSources.Change($"scenario {scenario.Id}");
        TestLine Line(string what, Source source, string unit, double? least, double? most) =>
            new($"{target.Id} {what}", $"target {target.Id} at {NumberFormat.Text(target.Start.In("s"))} s", what, "as it appears", source, "sensor, antennas and display together", unit, least, most);
        yield return Line("range", TestSources.Bearing, "nmi", Math.Max(0, nmi - off), nmi + off);
        yield return Line("bearing", sensor.BearingError is null ? TestSources.Bearing : TestSources.Part(scenario.Sensor, "bearing error"), "°", bearing - error, bearing + error);
        if (target.Reports)
        {
            yield return Line("relative altitude", TestSources.Bearing, "ft", target.Above.In("ft") - 200, target.Above.In("ft") + 200);
        }

        var advisories = TrafficScenario.Advisories(TrafficWork.Input(scenario, target, sensor, 0));
        var update = (sensor.Update ?? Duration.Of(1, "s")).In("s");
        foreach (var (number, advisory) in advisories.Index())
        {
            // By plain time it may not come at all: then only the earliest moment is a limit.
            yield return Line($"{advisory.Advisory} {NumberFormat.Text(number + 1)} begins", stated, "s", Begin(target, advisory.EarliestStart), advisory.LatestStart is { } latest ? Begin(target, latest + update) : null);
        }

        yield return advisories.IsEmpty
            ? new($"{target.Id} silent", $"target {target.Id}", "display and aural", "no advisory", stated, "no false alert")
            : new($"{target.Id} aural", $"target {target.Id}", "display and aural", $"symbol, arrow and call as the table of the display and sheet scenario/{scenario.Id}/{target.Id} say", stated, "alert shown and heard");
    }

    private static double Begin(SimulatedTarget target, double since) => Math.Round(target.Start.In("s") + since, 1);
}
