using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Interconnect;

namespace Fairlead.Substantiation.Tests;

/// <summary>Tests beside those of the new systems, raised by what the change disturbs; each is left out where a test of the change covers it.</summary>
internal static class SideCards
{
    // Pressure altitudes in ft, as tests of reporting equipment usually step.
    private static readonly int[] Altitudes = [0, 1000, 2000, 5000, 10000, 15000, 20000];
    private static readonly Source Swing = new("AC 43.13-1B", "Change 1", "12-37a: compass swing after any change to the electrical system, or of ferrous parts in the cockpit", Basis.Read);
    private static readonly Source Deviation = new("14 CFR 23.1327", "before amendment 64", "deviation not above 10° on any heading; read as quoted by others", Basis.Read);
    private static readonly Source Correspondence = new("14 CFR 43 appendix E (c)", "", "altitude reported within 125 ft of the altimeter", Basis.Memory);

    public static IEnumerable<TestCard> Of(Assessment assessment)
    {
        var job = assessment.Job;
        if (job.Aircraft.Compass is not null && (job.Change.Fit is { Count: > 0 } || job.Change.Circuits is { Count: > 0 }) && !Covered(job, SideTest.CompassSwing))
        {
            yield return Compass();
        }

        foreach (var item in Covered(job, SideTest.AltitudeCorrespondence) ? [] : job.Change.Fit.OrEmpty().Where(f => job.Parts.Equipment?.Find(f.Part)?.Radios.OrEmpty().Any(SystemCards.Answers) == true))
        {
            yield return Altitude(item.Id);
        }

        if (!Covered(job, SideTest.Suppression) && Suppressing(assessment) is { Length: > 1 } ends)
        {
            yield return Suppression(ends);
        }
    }

    private static Endpoint[] Suppressing(Assessment assessment)
    {
        var terminals = new Terminals(assessment.Job);
        return [.. assessment.Circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }).Where(e => !e.IsPoint && terminals.UseOf(e)?.Kind == SignalKind.Suppression).Distinct()];
    }

    private static bool Covered(Job job, SideTest side) => job.Change.Tests.OrEmpty().Any(t => t.Covers.Contains(side));

    private static TestCard Compass() => new(
        "COMPASS", TestKind.Ramp, "Compass swing", "", "compass", "compass base or reference compass", ["aircraft closed, on the swinging site, engines and radios as in flight"], ["Keep clear of turning propellers."],
        [
            .. Enumerable.Range(0, 12).Select(n => NumberFormat.Text(n * 30)).Select(h => new TestLine($"heading {h}", $"heading {h}°", "compass", "deviation", Deviation, "the new system does not disturb the compass", "°", -10, 10)),
            new("card", "deviation card", "compass", "new card made out, dated and fitted", Swing, "the pilot reads what is so"),
        ])
    {
        Stage = WorkStage.Outside,
    };

    // A contact pushed back may pass a meter and lose the pulse: so it is looked at where each box hears it.
    private static TestCard Suppression(Endpoint[] ends) => new(
        "SUPPRESSION", TestKind.System, "Suppression pulses at every box on the line", "", "suppression", "oscilloscope at a break-out of the contact",
        ["the systems of the boxes on the line hold", "antennas coupled to the test set or covered"], ["The boxes send while this is looked at: never into an antenna that aircraft or controllers can hear."],
        [.. ends.Select(e => new TestLine(e.ToString(), e.ToString(), "airframe", "a pulse while each other box on the line sends, and none while nothing does", TestSources.Pulses, "boxes do not hear each other: no ghosts, no track of oneself"))])
    {
        Radiates = true,
    };

    private static TestCard Altitude(string item) => new(
        $"ALT-{item}", TestKind.System, $"Altitude reported by {item} against the altimeter", item, item, "air data test set and transponder test set", [$"SYS-{item} holds", "antennas coupled or covered; altitudes far from those of traffic, standby between steps"],
        ["Never exceed the rates of the instruments: vacuum and pressure are let off slowly.", "An altitude that leaks from an antenna reaches controllers and aircraft: couple or cover it."],
        [.. Altitudes.Select(a => NumberFormat.Text(a)).Select(a => new TestLine($"at {a}", $"altimeter at {a} ft", item, "altitude reported less altitude shown", Correspondence, "controllers see what the pilot sees", "ft", -125, 125))])
    {
        Radiates = true,
    };
}
