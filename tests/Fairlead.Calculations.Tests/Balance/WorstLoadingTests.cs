using Fairlead.Calculations;
using Fairlead.Calculations.Balance;

namespace Fairlead.Tests.Calculations.Balance;

/// <summary>Small aircraft whose worst loading is found by hand, and input that contradicts itself.</summary>
public sealed class WorstLoadingTests
{
    private static readonly Sequence<EnvelopeRow> Box = [Corner(900, 10), Corner(2000, 10), Corner(2000, 40), Corner(900, 40)];

    private static readonly WorstLoadingInput Plain = new(
        Pounds(1000), Inches(20), [new("front", Inches(10), Pounds(200)), new("rear", Inches(80), Pounds(300))],
        [new("main", Inches(30), Pounds(300))], Box, Pounds(1600));

    // Aft: the rear first, 300 at 80, which makes 33.8; the fuel at 30 is ahead of that and stays ashore.
    [Fact]
    public void Only_what_lies_beyond_the_centre_of_gravity_is_loaded()
    {
        var worst = WorstLoading.Find(Plain)!;
        Assert.Equal((20000 + (300 * 80)) / 1300.0, worst.Aft.Fs.In("in"), 1e-9);
        Assert.Equal([0.0, 300], worst.Aft.Stations.Select(x => x.Mass.In("lb")), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal((20000 + (200 * 10)) / 1200.0, worst.Forward.Fs.In("in"), 1e-9);
        Assert.Equal(1600, worst.Heaviest.Mass.In("lb"), 1e-9);
    }

    // Edge M = 80·W − 60,000, limit −10 + W/24: the distance has its least value 10 where W² = 60,000 · 24, W = 1,200 lb.
    [Fact]
    public void Against_a_sloping_limit_the_worst_lies_between_two_corners()
    {
        var input = new WorstLoadingInput(
            Pounds(1000), Inches(20), [new("rear", Inches(80), Pounds(1000))], [],
            [Corner(240, -500), Corner(2400, -500), Corner(2400, 90), Corner(240, 0)], Pounds(2000));
        var worst = WorstLoading.Find(input)!;
        Assert.Equal(1200, worst.Aft.Mass.In("lb"), 1e-6);
        Assert.Equal(10, worst.Aft.Margin.In("in"), 1e-9);
    }

    // The aft tank burns last: with it full and the forward one empty the aircraft is further aft than with both full or both empty.
    [Fact]
    public void The_worst_is_found_in_flight_when_burning_moves_the_fuel_aft()
    {
        var input = Plain with { Stations = [], Tanks = [new("forward", Inches(0), Pounds(200), 1), new("aft", Inches(70), Pounds(200), 2)] };
        var worst = WorstLoading.Find(input)!;
        Assert.Equal(200, worst.Aft.Fuel.In("lb"), 1e-9);
        Assert.Equal((20000 + (200 * 70)) / 1200.0, worst.Aft.Fs.In("in"), 1e-9);
        Assert.Equal(20, worst.Forward.Fs.In("in"), 1e-9);
        var reachable = WorstLoading.Reachable(input);
        Assert.Equal([0.0, 200, 200, 400], reachable.SelectMany(p => (double[])[p.FuelFrom.In("lb"), p.FuelTo.In("lb")]), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void Tanks_of_equal_order_empty_in_proportion()
    {
        var input = Plain with { Stations = [], Tanks = [new("left", Inches(20), Pounds(100)), new("right", Inches(60), Pounds(300))], MinFuel = Pounds(100) };
        var worst = WorstLoading.Find(input)!;
        Assert.Equal((20000 + (25 * 20) + (75 * 60)) / 1100.0, worst.Forward.Fs.In("in"), 1e-9);
        Assert.Equal([25.0, 75], worst.Forward.Tanks.Select(x => x.Mass.In("lb")), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    // With less load in the rear the fuel at 30 lies behind the centre of gravity, so it goes aboard too.
    [Fact]
    public void Group_and_zero_fuel_limits_bind()
    {
        var stations = Plain.Stations.Select(s => s with { Groups = "cabin" }).ToSequence();
        var grouped = WorstLoading.Find(Plain with { Stations = stations, Groups = [new("cabin", Pounds(150))] })!;
        Assert.Equal((20000 + (150 * 80) + (300 * 30)) / 1450.0, grouped.Aft.Fs.In("in"), 1e-9);
        Assert.Equal(1450, grouped.Heaviest.Mass.In("lb"), 1e-9);
        var light = WorstLoading.Find(Plain with { MaxZeroFuel = Pounds(1100) })!;
        Assert.Equal((20000 + (100 * 80) + (300 * 30)) / 1400.0, light.Aft.Fs.In("in"), 1e-9);
        Assert.Equal(1400, light.Heaviest.Mass.In("lb"), 1e-9);
    }

    // A step: 10 in up to 1,100 lb, 25 in above. Forward loading weighs 1,200 lb at 18.333; just above 1,100 lb it is at 19.0909.
    [Fact]
    public void A_step_of_the_envelope_is_judged_on_each_side_by_its_own_limit()
    {
        Sequence<EnvelopeRow> step = [Corner(900, 10), Corner(1100, 10), Corner(1100, 18), Corner(2000, 18), Corner(2000, 60), Corner(900, 60)];
        Assert.Equal((22000 / 1200.0) - 18, WorstLoading.Find(Plain with { Envelope = step })!.Forward.Margin.In("in"), 1e-9);
        Assert.Equal((21000 / 1100.0) - 10, WorstLoading.Find(Plain with { Envelope = step, MaxTakeOff = Pounds(1100) })!.Forward.Margin.In("in"), 1e-9);
    }

    [Fact]
    public void A_notch_in_the_envelope_is_seen_where_only_middling_loads_reach_it()
    {
        Sequence<EnvelopeRow> notch = [Corner(900, 10), Corner(2000, 10), Corner(2000, 40), Corner(1300, 40), Corner(1150, 25), Corner(1000, 40), Corner(900, 40)];
        var sheet = WorstLoading.Run(Plain with { Envelope = notch });
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Equal(1150, sheet["Wa"].Value, 1e-9);
        Assert.Equal((20000 + (150 * 80)) / 1150.0, sheet["FSa"].Value, 1e-9);
        Assert.Equal(25, sheet["La"].Value, 1e-9);
    }

    [Fact]
    public void A_verdict_says_holds_only_where_the_envelope_speaks_for_every_mass()
    {
        Assert.Equal(Verdict.Holds, WorstLoading.Run(Plain).Verdict);
        Assert.Equal(Verdict.Caution, WorstLoading.Run(Plain with { Envelope = [Corner(1100, 10), Corner(2000, 10), Corner(2000, 40), Corner(1100, 40)] }).Verdict);
        var low = WorstLoading.Run(Plain with { Envelope = [Corner(900, 10), Corner(1500, 10), Corner(1500, 40), Corner(900, 40)] });
        Assert.Equal(Verdict.Fails, low.Verdict);
        Assert.Contains(low.Checks, c => c.Name == "top of the envelope" && !c.Holds);
    }

    [Fact]
    public void A_landing_mass_that_some_loading_cannot_come_down_to_is_a_caution()
    {
        var heavy = WorstLoading.Run(Plain with { MaxLanding = Pounds(1499), MinFuel = Pounds(50) });
        Assert.Equal(1550, heavy["Wl"].Value, 1e-9);
        Assert.Equal(Verdict.Caution, heavy.Verdict);
        Assert.Equal(Verdict.Holds, WorstLoading.Run(Plain with { MaxLanding = Pounds(1550), MinFuel = Pounds(50) }).Verdict);
    }

    [Fact]
    public void Least_loads_above_a_limit_fail_and_say_which()
    {
        var pilot = Plain with { Stations = [new("pilot", Inches(10), Pounds(200), Pounds(170), "cabin")], Groups = [new("cabin", Pounds(150))] };
        var sheet = WorstLoading.Run(pilot);
        Assert.Equal(Verdict.Fails, sheet.Verdict);
        Assert.Equal("least loads of 'cabin'", Assert.Single(sheet.Checks, c => !c.Holds).Name);
        Assert.Null(WorstLoading.Find(pilot));
        Assert.Empty(WorstLoading.Reachable(pilot));
        Assert.Equal("least mass", Assert.Single(WorstLoading.Run(Plain with { MaxTakeOff = Pounds(900) }).Checks, c => !c.Holds).Name);
        Assert.Equal("least mass without fuel", Assert.Single(WorstLoading.Run(Plain with { MaxZeroFuel = Pounds(900) }).Checks, c => !c.Holds).Name);
    }

    [Fact]
    public void Contradictions_are_told_all_at_once()
    {
        var sheet = WorstLoading.Run(Plain with
        {
            Stations = [new("seat", Inches(10), Pounds(100), Pounds(170), "cabn"), new("seat", Inches(20), Pounds(10))],
            Groups = [new("cabin", Pounds(150))],
            MinFuel = Pounds(301),
            Envelope = [Corner(900, 10), Corner(2000, 10)],
        });
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Equal(5, sheet.CannotTell.Length);
        Assert.Contains(sheet.CannotTell, w => w.Contains("did you mean 'cabin'?", StringComparison.Ordinal));
        Assert.Contains(sheet.CannotTell, w => w.Contains("more than one loading station 'seat'", StringComparison.Ordinal));
        Assert.Contains(sheet.CannotTell, w => w.Contains("least fuel (301 lb) is more than the tanks hold (300 lb)", StringComparison.Ordinal));
    }

    // Two horns: at 1,500 lb the centre of gravity may be 10 to 20 or 30 to 40 in. And a bow tie.
    [Fact]
    public void An_envelope_with_two_intervals_at_one_mass_is_refused()
    {
        Sequence<EnvelopeRow> horns = [Corner(900, 10), Corner(2000, 10), Corner(2000, 20), Corner(1200, 25), Corner(2000, 30), Corner(2000, 40), Corner(900, 40)];
        Sequence<EnvelopeRow> tie = [Corner(900, 10), Corner(2000, 40), Corner(2000, 10), Corner(900, 40)];
        Assert.Contains("more than one interval", Assert.Single(WorstLoading.Run(Plain with { Envelope = horns }).CannotTell), StringComparison.Ordinal);
        Assert.Equal(Verdict.CannotTell, WorstLoading.Run(Plain with { Envelope = tie }).Verdict);
    }

    // Loading the aftmost first is not exact when groups cross: c aft of a and b, groups {a,c} and {b,c} of 100. Taking c (arm 30) bars a and b (25 each).
    [Fact]
    public void Crossing_groups_are_refused_and_the_proof_would_not_close()
    {
        var input = Plain with
        {
            EmptyFs = Inches(0),
            Stations = [new("a", Inches(25), Pounds(100), default, "P"), new("b", Inches(25), Pounds(100), default, "Q"), new("c", Inches(30), Pounds(100), default, "P+Q")],
            Groups = [new("P", Pounds(100)), new("Q", Pounds(100))],
        };
        Assert.Contains("'P' and 'Q'", Assert.Single(WorstLoading.Run(input).CannotTell), StringComparison.Ordinal);
        var space = LoadingSpace.Of(input, new BurnPath(input.Tanks).Above(0)[0]);
        Assert.True(LoadingCertificate.Gap(LoadingBoundary.Of(space, Side.Aft)) > 1e-3);
    }

    // A boundary loaded in the wrong order must not pass for one in the right order.
    [Fact]
    public void The_proof_does_not_close_for_a_boundary_that_is_not_the_extreme()
    {
        var space = LoadingSpace.Of(Plain, new BurnPath(Plain.Tanks).Above(0)[0]);
        var forward = LoadingBoundary.Of(space, Side.Forward);
        Assert.True(LoadingCertificate.Gap(forward) <= 1e-12);
        Assert.True(LoadingCertificate.Gap(forward, Side.Aft) > 1e-3);
    }

    private static EnvelopeRow Corner(double mass, double fs) => new(Pounds(mass), Inches(fs));

    private static Mass Pounds(double value) => Mass.Of(value, "lb");

    private static Length Inches(double value) => Length.Of(value, "in");
}
