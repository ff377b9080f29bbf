using CsCheck;
using Fairlead.Model;
using Fairlead.Substantiation;
using static Fairlead.Tests.Substantiation.PowerJob;

namespace Fairlead.Tests.Substantiation;

/// <summary>After an edit the power stage runs what the edit bears on, and the result is that of a fresh assessment.</summary>
public sealed class PowerIncrementTests
{
    // Lights on the main bus with one generator lost: the analysis of the left generator in that condition and its before-and-after; the voltages of the network in it, and those at the boxes.
    // All of that twice: no condition states the loss of the left generator, so it is judged with what stays on when the right one is lost.
    [Fact]
    public void Editing_a_load_in_one_condition_runs_that_condition_only() =>
        Assert.Equal(4 + 4, RunsAfter(WithLoad(Start, Draw(Start.Aircraft.Loads!["LIGHT"], "one-out", 12.5))));

    // Pitot heat in cruise: two generators twice each; the three feeders carry more, the tie with its drop; the battery's first stretch draws more; the network in cruise.
    [Fact]
    public void Editing_an_essential_load_runs_its_sources_feeders_and_battery() =>
        Assert.Equal(4 + 3 + 1 + 1 + 2, RunsAfter(WithLoad(Start, Draw(Start.Aircraft.Loads!["PITOT"], "cruise", 8.5))));

    [Fact]
    public void Editing_the_battery_runs_the_battery_only() =>
        Assert.Equal(1, RunsAfter(WithBattery(Start, Start.Aircraft.Batteries![0] with { Capacity = Charge.Of(20, "A·h") })));

    [Fact]
    public void Editing_what_power_does_not_depend_on_runs_nothing() =>
        Assert.Equal(0, RunsAfter(Start with { Aircraft = Start.Aircraft with { Serial = "0002" } }));

    [Fact]
    public void After_any_edits_the_result_is_that_of_a_fresh_assessment() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 5], Gen.Int[0, 40]).Array[1, 8].Sample(edits =>
        {
            var (job, assessor) = (Start, new Assessor());
            assessor.Assess(job);
            foreach (var (kind, which, number) in edits)
            {
                job = Edited(job, kind, which, number);
                AssertSame(new Assessor().Assess(job), assessor.Assess(job));
            }
        }, iter: 60);

    // Records that a reader would refuse can still be built by hand; they are answered, not thrown at.
    [Theory]
    [InlineData("", "main", "CB2", "cruise", "record")]
    [InlineData("REC1", "none", "CB2", "cruise", "record")]
    [InlineData("REC1", "main", "none", "cruise", "record")]
    [InlineData("REC1", "main", "CB2", "none", "record")]
    [InlineData("REC1", "main", "CB2", "cruise", "none")]
    public void A_feed_that_names_what_is_not_there_draws_nothing(string item, string input, string breaker, string condition, string state)
    {
        var assessment = new Assessor().Assess(WithFeed(Start, new PowerFeed("REC", item, input, breaker, [new(condition, state)])));
        Assert.Equal(28 * 2 / 3.0, assessment.SourceLoads[0].After.In("A"), 1e-9);
        Assert.NotNull(assessment.Sheet("load/G1/cruise"));
    }

    [Fact]
    public void A_record_full_of_loose_ends_is_answered()
    {
        var aircraft = Start.Aircraft;
        Job[] jobs =
        [
            Start with { Aircraft = aircraft with { Buses = null, Sources = null, Feeders = null, Batteries = null, Conditions = null, Loads = null, Breakers = null } },
            Start with { Aircraft = aircraft with { Conditions = null } },
            Start with { Aircraft = aircraft with { Conditions = new(aircraft.Conditions!.Select(c => c with { Sources = ["none", "G1", "G1"] })) } },
            Start with { Aircraft = aircraft with { Feeders = new(aircraft.Feeders!.Select(f => f with { From = "none", To = "nowhere", Wire = "W-none" })) } },
            Start with { Aircraft = aircraft with { Feeders = aircraft.Feeders!.With(new Feeder("LOOP", "ESS", "MAIN", "W8", Length.Of(20, "in"))) } },
            Start with { Aircraft = aircraft with { Loads = new(aircraft.Loads!.Select(l => l with { Bus = "none", Breaker = "none" })) } },
            Start with { Aircraft = aircraft with { Loads = new(aircraft.Loads!.Select(l => l with { ShedAt = Duration.Zero, Demands = [new("on-battery", A(3000), Duration.Zero)] })) } },
            WithBattery(Start, aircraft.Batteries![0] with { Bus = "none", Condition = "none", Landing = "none", LandingTime = Min(90), Required = Duration.Zero, Recognition = Duration.Zero }),
            WithBattery(Start, aircraft.Batteries![0] with { Capacity = Charge.Zero, Landing = "battery-landing", LandingTime = Min(40) }),
            Start with { Change = Start.Change with { Power = null, Fit = null, Breakers = null, Remove = null } },
        ];
        Assert.All(jobs, job => Assert.All(new Assessor().Assess(job).Sheets, s => Assert.All(s.Sheet.Steps, step => Assert.True(double.IsFinite(step.Value.Si), s.Subject))));
    }

    private static long RunsAfter(Job edited)
    {
        var assessor = new Assessor();
        assessor.Assess(Start);
        var before = assessor.Runs;
        assessor.Assess(edited);
        return assessor.Runs - before;
    }

    private static Job Edited(Job job, int kind, int which, int number)
    {
        var (aircraft, change) = (job.Aircraft, job.Change);
        var load = aircraft.Loads![which % aircraft.Loads.Count];
        var feed = change.Power![0];
        return kind switch
        {
            0 => WithLoad(job, load with { Demands = [.. load.Demands.Select((d, i) => i == number % load.Demands.Count ? d with { Current = A(number) } : d)] }),
            1 => WithLoad(job, load with { Bus = number % 2 == 0 ? "MAIN" : "ESS", ShedAt = number % 3 == 0 ? null : Min(number) }),
            2 => WithLoad(job, load with { Demands = [.. load.Demands.Select(d => d with { On = number % 3 == 0 ? null : Duration.Of(10 * number, "s") })] }),
            3 => WithFeed(job, feed with { Breaker = number % 2 == 0 ? "CB1" : "CB2", ShedAt = number % 3 == 0 ? null : Min(number) }),
            4 => WithFeed(job, feed with { Conditions = [.. feed.Conditions.Select(c => c with { State = number % 2 == 0 ? "record" : "standby" })] }),
            5 => job with { Change = change with { Breakers = change.Breakers!.With(change.Breakers[0] with { Bus = number % 2 == 0 ? "MAIN" : "ESS", Part = number % 3 == 0 ? "BR5" : "BR3" }) } },
            6 => job with { Change = change with { Circuits = change.Circuits!.With(change.Circuits[which % change.Circuits.Count] with { Wire = number % 2 == 0 ? "W20" : "auto", Length = Length.Of(5 + number, "ft") }) } },
            7 => WithBattery(job, aircraft.Batteries![0] with { Recognition = Min(number % 12), Landing = number % 2 == 0 ? "battery-landing" : null, LandingTime = number % 2 == 0 ? Min(10) : null }),
            8 => job with { Aircraft = aircraft with { Conditions = aircraft.Conditions!.With(aircraft.Conditions[number % 2] with { Sources = which % 2 == 0 ? ["G1"] : ["G2", "G1"] }) } },
            _ => job with { Change = change with { Remove = new([change.Remove![0] with { Loads = number % 2 == 0 ? ["OLD"] : ["OLD", "LIGHT"] }]) } },
        };
    }

    private static void AssertSame(Assessment fresh, Assessment kept)
    {
        Assert.Equal(fresh.Findings, kept.Findings);
        Assert.Equal(fresh.SourceLoads, kept.SourceLoads);
        Assert.Equal(fresh.BusLoads, kept.BusLoads);
        Assert.Equal(fresh.BreakerLoads, kept.BreakerLoads);
        Assert.Equal(fresh.Batteries.Select(Text), kept.Batteries.Select(Text));
        Assert.Equal(fresh.Feeds.Select(f => f.ToString()), kept.Feeds.Select(f => f.ToString()));
    }

    private static string Text(BatteryResult result) => $"{result.Battery} {result.Endurance} {result.Verdict} {string.Join(", ", result.Timeline)}";
}
