using System.Collections.Immutable;

namespace Fairlead.Calculations.Traffic;

/// <summary>An advisory that a scenario is to raise.</summary>
public enum AdvisoryKind
{
    /// <summary>None at all.</summary>
    None,

    /// <summary>A traffic advisory.</summary>
    Traffic,

    /// <summary>A resolution advisory.</summary>
    Resolution,
}

/// <summary>Whether a scenario raises the advisory it is meant to, and stays within what the sensor takes in.</summary>
internal static class ScenarioChecks
{
    private static readonly Source Stated = new("This scenario", "", "advisory expected", Basis.Stated);
    private static readonly Source Sensor = new("Data of the sensor", "", "range and altitude of the traffic it shows", Basis.Stated);

    public static void Add(SheetBuilder s, TrafficScenarioInput input, Encounter start, ImmutableArray<AdvisoryWindow> advisories)
    {
        var end = start.After(TrafficScenario.Lasts(input));
        if (input.SensorRange is { } range)
        {
            // In straight flight the range is greatest at one of the ends.
            s.Check("greatest range", new Length(Math.Max(start.Range, end.Range)).As("nmi"), Sense.AtMost, range.As("nmi"), "the sensor reaches as far as the target", Sensor);
        }

        if (input.SensorAltitude is { } altitude)
        {
            s.Check("greatest relative altitude", new Length(Math.Max(Math.Abs(start.H), Math.Abs(end.H))).As("ft"), Sense.AtMost, altitude.As("ft"), "the sensor shows traffic as far above and below", Sensor);
        }

        if (input.Expect == AdvisoryKind.None)
        {
            s.Check("advisories raised", Measure.Number(advisories.Length), Sense.AtMost, Measure.Number(0), "no advisory is raised, as the scenario wants", Stated);
        }
        else if (input.Expect is { } kind)
        {
            Raised(s, input, [.. advisories.Where(a => a.IsResolution == (kind == AdvisoryKind.Resolution))]);
        }
    }

    private static void Raised(SheetBuilder s, TrafficScenarioInput input, ImmutableArray<AdvisoryWindow> wanted)
    {
        s.Check("advisories of the kind wanted", Measure.Number(wanted.Length), Sense.AtLeast, Measure.Number(1), "the advisory that the scenario wants is raised", Stated);
        s.Check(
            "advisories of the kind wanted, by plain time", Measure.Number(wanted.Count(a => a.LatestStart is not null)), Sense.AtLeast, Measure.Number(1),
            "the advisory is raised by equipment that uses plain time too", Stated, Verdict.Caution);
        if (input.ExpectAt is { } at && wanted is [var first, ..])
        {
            s.Check("begin wanted", at.As("s"), Sense.AtLeast, (new Duration(first.EarliestStart) + input.From).As("s"), "the advisory begins no later than wanted", Stated);
            s.Check(
                "begin wanted", at.As("s"), Sense.AtMost, (new Duration((first.LatestStart ?? first.EarliestStart) + TrafficScenario.Update(input)) + input.From).As("s"),
                "the advisory begins no earlier than wanted", Stated);
        }
    }
}
