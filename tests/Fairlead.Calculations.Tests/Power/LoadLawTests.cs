using CsCheck;
using Fairlead.Calculations;
using Fairlead.Calculations.Power;

namespace Fairlead.Tests.Calculations.Power;

/// <summary>Laws that any load analysis obeys.</summary>
public sealed class LoadLawTests
{
    private static readonly string[] Demands = ["D5s", "D5min", "Dcont"];

    private static readonly Gen<LoadRow> Load =
        from ampere in Gen.Double[0, 40]
        from seconds in Gen.OneOf(Gen.Const((double?)null), Gen.Double[1, 2000].Select(s => (double?)s))
        from bus in Gen.OneOf(Gen.Const("MAIN"), Gen.Const("ESS"), Gen.Const(""))
        select new LoadRow("load", Current.Of(ampere, "A"), seconds is { } s ? Duration.Of(s, "s") : null, bus);

    private static readonly Gen<Sequence<LoadRow>> Loads = Load.List[0, 8].Select(l => l.ToSequence());

    [Fact]
    public void The_demand_of_two_lists_is_the_sum_of_their_demands() => Gen.Select(Loads, Loads).Sample((a, b) =>
    {
        var (both, first, second) = (Run(a.Concat(b)), Run(a), Run(b));
        Assert.All(Demands, d => Assert.Equal(first[d].Value + second[d].Value, both[d].Value, 1e-9));
    });

    [Fact]
    public void The_order_of_the_loads_makes_no_difference() => Loads.Sample(loads =>
        Assert.All(Demands, d => Assert.Equal(Run(loads)[d].Value, Run(loads.Reverse())[d].Value, 1e-9)));

    [Fact]
    public void Another_load_lowers_no_demand_and_betters_no_verdict() => Gen.Select(Loads, Load).Sample((loads, more) =>
    {
        var (before, after) = (Run(loads), Run(loads.Append(more)));
        Assert.All(Demands, d => Assert.True(after[d].Value >= before[d].Value - 1e-9));
        Assert.True(after.Verdict >= before.Verdict);
    });

    [Fact]
    public void The_longer_the_interval_the_smaller_the_average() => Loads.Sample(loads =>
    {
        var sheet = Run(loads);
        Assert.True(sheet["D5s"].Value >= sheet["D5min"].Value - 1e-9);
        Assert.True(sheet["D5min"].Value >= sheet["Dcont"].Value - 1e-9);
    });

    [Fact]
    public void Loads_and_ratings_grown_alike_keep_the_verdict() => Gen.Select(Loads, Gen.Double[0.5, 4]).Sample((loads, k) =>
    {
        var grown = LoadAnalysis.Run(new(loads.Select(l => l with { Current = l.Current * k }).ToSequence(), Rating * k, FiveMinutes * k));
        var sheet = Run(loads);
        Assert.Equal(sheet.Verdict, grown.Verdict);
        Assert.Equal(sheet["Dcont"].Value * k, grown["Dcont"].Value, 1e-9);
    });

    [Fact]
    public void The_demand_by_bus_adds_up_to_the_demand_of_the_loads_on_buses() => Loads.Sample(loads =>
    {
        var rows = Run(loads).Tables.First(t => t.Title == "Continuous demand by bus").Rows;
        var onBuses = Run(loads.Where(l => l.Bus.Length > 0))["Dcont"].Value;
        Assert.Equal(onBuses, rows.Sum(r => r[1].Number!.Value.Value), 1e-9);
    });

    [Fact]
    public void What_is_on_all_the_time_counts_in_full_and_what_is_on_for_a_while_with_its_charge() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 3000]).Sample((ampere, seconds) =>
        {
            var sheet = IntervalDemand.Run(new(Current.Of(ampere, "A"), Duration.Of(seconds, "s")));
            foreach (var (symbol, interval) in new[] { ("I5s", 5.0), ("I5min", 300), ("Icont", 900) })
            {
                Assert.Equal(ampere * Math.Min(seconds, interval), sheet[symbol].Value * interval, 1e-6);
            }
        });

    // Differential: the change reckons from sums, the analysis from the list as it is afterwards.
    [Fact]
    public void The_load_after_a_change_is_that_of_the_analysis_of_what_is_then_there() => Gen.Select(Loads, Loads, Loads).Sample((stays, goes, comes) =>
    {
        var change = LoadChange.Run(new(stays.Concat(goes).ToSequence(), goes, comes, Rating, FiveMinutes));
        var after = Run(stays.Concat(comes));
        Assert.All(Demands, d => Assert.Equal(after[d].Value, change[d].Value, 1e-9));
        Assert.Equal(after.Verdict, change.Verdict);
        Assert.Equal(change["Mbefore"].Value - change["Mafter"].Value, after["Dcont"].Value - Run(stays.Concat(goes))["Dcont"].Value, 1e-9);
    });

    [Fact]
    public void More_taken_out_than_was_there_is_no_change_of_this_source()
    {
        var sheet = LoadChange.Run(new([new("there", Current.Of(3, "A"))], [new("not there", Current.Of(4, "A"))], [], Rating));
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Contains("do not belong", Assert.Single(sheet.CannotTell), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40, Verdict.Holds)]
    [InlineData(40.01, Verdict.Caution)]
    [InlineData(50, Verdict.Caution)]
    [InlineData(50.01, Verdict.Fails)]
    public void Four_fifths_of_the_rating_want_an_eye_and_more_than_the_rating_fails(double ampere, Verdict verdict) =>
        Assert.Equal(verdict, LoadAnalysis.Run(new([new("all", Current.Of(ampere, "A"))], Rating)).Verdict);

    [Fact]
    public void A_short_load_is_judged_by_the_rating_for_its_interval()
    {
        LoadRow motor = new("motor", Current.Of(70, "A"), Duration.Of(10, "s"));
        Assert.Equal("5 second demand", Assert.Single(LoadAnalysis.Run(new([motor], Rating)).Checks, c => !c.Holds).Name);
        Assert.Equal(Verdict.Holds, LoadAnalysis.Run(new([motor], Rating, FiveSeconds: Current.Of(75, "A"))).Verdict);
        Assert.Equal(Verdict.Holds, LoadAnalysis.Run(new([motor], Rating, FiveMinutes: Current.Of(75, "A"))).Verdict);
    }

    [Fact]
    public void Units_make_no_difference()
    {
        var amperes = Run([new("motor", Current.Of(30, "A"), Duration.Of(12, "s"))]);
        var others = Run([new("motor", Current.Of(30000, "mA"), Duration.Of(0.2, "min"))]);
        Assert.All(Demands, d => Assert.Equal(amperes[d].Value, others[d].Value, 1e-12));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(2001)]
    [InlineData(double.NaN)]
    public void A_current_out_of_range_gives_no_demand(double ampere)
    {
        var sheet = Run([new("load", Current.Of(ampere, "A"))]);
        Assert.Equal(Verdict.CannotTell, sheet.Verdict);
        Assert.Empty(sheet.Steps);
        Assert.Contains("row 1", Assert.Single(sheet.CannotTell), StringComparison.Ordinal);
    }

    private static Current Rating => Current.Of(50, "A");

    private static Current FiveMinutes => Current.Of(60, "A");

    private static Sheet Run(IEnumerable<LoadRow> loads) => LoadAnalysis.Run(new(loads.ToSequence(), Rating, FiveMinutes));
}
