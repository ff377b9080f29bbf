using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;
using Fairlead.Model;
using Fairlead.Substantiation.Radio;

namespace Fairlead.Substantiation.Traffic;

/// <summary>What traffic displays and buses must show of the simulated targets of the job, and whether the scenarios raise what they are meant to.</summary>
internal sealed class TrafficWork
{
    private static readonly Source Stated = new("This job", "", "scenarios and parts", Basis.Stated);
    private static readonly string[] OfTarget = ["R", "B", "Vt", "T", "h", "w", "H", "lasts", "t0", "expect", "tE"];
    private static readonly string[] OfSensor = ["logic", "u", "dB", "Rmax", "hmax", "number"];
    private static readonly Angle Ahead = Angle.Of(180, "°");
    private readonly Job job;
    private readonly Memo memo;

    private TrafficWork(Job job, Memo memo)
    {
        (this.job, this.memo) = (job, memo);
        var parts = Boxes.Parts(job);
        foreach (var scenario in job.Change.Scenarios.OrEmpty())
        {
            if (parts.GetValueOrDefault(scenario.Sensor)?.Traffic is { } sensor)
            {
                Run(scenario, sensor);
            }
            else
            {
                Findings.Add(new(
                    "traffic-unknown", Verdict.CannotTell, $"scenario/{scenario.Id}", $"What {scenario.Sensor} shows of traffic is not known.", "", Stated,
                    "Add 'traffic' to its part, or name the traffic sensor.", $"change/scenarios/{scenario.Id}"));
            }
        }
    }

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    /// <summary>The work of a job: the last one as long as nothing it rests on has changed.</summary>
    public static TrafficWork Of(Job job, Memo memo, TrafficWork? last) => last?.Rests(job) == true ? last : new TrafficWork(job, memo);

    private bool Rests(Job other) => ReferenceEquals(job.Parts, other.Parts) && ReferenceEquals(job.Change.Scenarios, other.Change.Scenarios)
        && ReferenceEquals(job.Change.Fit, other.Change.Fit) && ReferenceEquals(job.Aircraft.Equipment, other.Aircraft.Equipment);

    private void Run(Scenario scenario, TrafficSensor sensor)
    {
        var number = 0;
        foreach (var target in scenario.Targets)
        {
            number++;
            var subject = $"scenario/{scenario.Id}/{target.Id}";
            var outcome = memo.Run<TrafficScenario, TrafficScenarioInput>(Input(scenario, target, sensor, sensor.Words && number <= 31 ? number : 0));
            Shown.Add(new Shown(subject, outcome, () => Origins(scenario)));

            // A ramp test always asks for care with other aircraft; that stands on the sheet and is no finding.
            if ((!outcome.Broken.IsEmpty || !outcome.CannotTell.IsEmpty)
                && Substantiation.Findings.Of(outcome, subject, $"change/scenarios/{scenario.Id}/targets/{target.Id}", "Correct the target, or what the scenario expects of it.") is { } finding)
            {
                Findings.Add(finding);
            }
        }
    }

    // Straight at us with the closing rate, or straight away.
    internal static TrafficScenarioInput Input(Scenario scenario, SimulatedTarget target, TrafficSensor sensor, int number) => new(
        target.Range, target.Bearing, new Speed(Math.Abs(target.Closing.Si)), target.Closing.Si < 0 ? target.Bearing : target.Bearing + (target.Bearing.Si > 0 ? -Ahead : Ahead),
        target.Above, target.Climb, default, scenario.Altitude, Logic(sensor, scenario.Level), target.Reports, target.End - target.Start, null, sensor.Update, sensor.BearingError,
        target.Start, sensor.Range, sensor.Altitude, Kind(target.Expect), target.At, number);

    private static TrafficLogic Logic(TrafficSensor sensor, SensitivityLevel level) =>
        sensor.Thresholds == TrafficThresholds.Tcas2 ? TrafficLogic.Tcas2 : level == SensitivityLevel.A ? TrafficLogic.TasA : TrafficLogic.TasB;

    private static AdvisoryKind? Kind(ExpectedAdvisory? expected) => expected switch
    {
        ExpectedAdvisory.None => AdvisoryKind.None,
        ExpectedAdvisory.Traffic => AdvisoryKind.Traffic,
        ExpectedAdvisory.Resolution => AdvisoryKind.Resolution,
        _ => null,
    };

    private static Dictionary<string, string> Origins(Scenario scenario) =>
        OfTarget.Select(s => (s, $"scenario {scenario.Id}")).Concat(OfSensor.Select(s => (s, $"part of {scenario.Sensor}"))).ToDictionary(StringComparer.Ordinal);
}
