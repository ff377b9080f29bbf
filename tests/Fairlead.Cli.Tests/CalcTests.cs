using System.Text.Json;
using CsCheck;
using Fairlead.Calculations;

namespace Fairlead.Tests.Cli;

public sealed class CalcTests
{
    private static readonly string[] Odd = ["", " ", "0", "-0", "1e308", "-1e308 A", "1e999", "NaN", "∞ V", "0 A", "1e-300 ft", ";", ";;,,;", ",,,,,,,,,", "a;a;a", "99999999999999999999", "0 degC", "-300 degC"];

    public static TheoryData<string> Names => [.. CalculationCatalog.All.Select(e => e.Info.Name)];

    [Fact]
    public void The_list_has_every_calculation_with_its_purpose_and_first_source()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "calc");
        Assert.Equal(0, ran.Code);
        Assert.Empty(ran.Error);
        Assert.All(CalculationCatalog.All, e =>
        {
            Assert.Contains($"  {e.Info.Name} ", ran.Out);
            Assert.Contains(e.Info.Purpose, ran.Out);
            Assert.Contains(e.Info.Sources[0].ToString(), ran.Out);
            Assert.Contains(e.Info.Discipline + "\n", ran.Out);
        });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_help_of_a_calculation_has_each_input_and_its_example_runs(string name)
    {
        var info = CalculationCatalog.Find(name)!.Info;
        var help = CommandLine.Run(t => t with { Width = 1000 }, "calc", name, "--help");
        Assert.Equal(0, help.Code);
        Assert.All(info.Inputs.Concat(info.Inputs.SelectMany(i => i.Columns)), i =>
        {
            var lines = help.Out.Split('\n').Where(l => l.StartsWith($"  {i.Symbol} ", StringComparison.Ordinal) && l.Contains(i.Meaning));
            Assert.Contains(lines, l => l.Contains(i.Optional ? i.Default : "required") && l.Contains(i.RangeText));
        });
        Assert.All(info.Sources, s => Assert.Contains(s.ToString(), help.Out));
        var example = help.Out.Split('\n').Single(l => l.StartsWith("  fairlead calc ", StringComparison.Ordinal));
        var ran = CommandLine.Run(CommandLine.Split(example)[1..]);
        Assert.Empty(ran.Error);
        Assert.InRange(ran.Code, 0, 1);
    }

    // FAA AC 43.13-1B CHG 1, table 11-7 (page 11-22, read): size 4, 90 ft, 20 A at 20 °C drops 0.504 V; size 14, 100 ft: 6.12 V.
    [Theory]
    [InlineData("4", "90 ft", 0.504)]
    [InlineData("14", "100 ft", 6.12)]
    public void The_voltage_drop_printed_in_the_circular_is_found_in_text_and_json(string gauge, string run, double printed)
    {
        string[] arguments = ["calc", "voltage-drop", $"legs={run},20 A,100 A,20 degC,200 degC,{gauge}", "V=28 V"];
        using var json = JsonDocument.Parse(CommandLine.Run([.. arguments, "--format", "json"]).Out);
        var drop = json.RootElement.GetProperty("values").GetProperty("VD20");
        Assert.Equal(printed, drop.GetProperty("value").GetDouble(), 5e-4);
        Assert.Equal("V", drop.GetProperty("unit").GetString());
        Assert.Contains($"= {NumberFormat.Text(printed)} V", CommandLine.Run(arguments).Out);
    }

    // The same circular, page 11-27 step 2: 50 °C, 200 °C rating, 20 A of 26 A: 182 °C (the printed value is from memory; its arithmetic closes).
    [Fact]
    public void The_text_has_the_whole_working()
    {
        var ran = CommandLine.Run("calc", "conductor-temperature", "T1=50 degC", "TR=200 degC", "I=20 A", "Imax=26 A");
        Assert.Equal(0, ran.Code);
        Assert.Equal(182, CalculationCatalog.Find("conductor-temperature")!.Run(Arguments(), out _)!["T2"].Value, 0.5);
        Golden.Check(ran.Out, "conductor-temperature.txt");
    }

    [Fact]
    public void The_json_has_exactly_the_stated_properties()
    {
        var ran = CommandLine.Run("calc", "conductor-temperature", "T1=50 degC", "TR=200 degC", "I=20 A", "Imax=26 A", "--format", "json");
        using var json = JsonDocument.Parse(ran.Out);
        var root = json.RootElement;
        Assert.Equal(["name", "verdict", "values", "checks", "sources", "cautions"], Keys(root));
        Assert.Equal("conductor-temperature", root.GetProperty("name").GetString());
        Assert.Equal("holds", root.GetProperty("verdict").GetString());
        Assert.All(root.GetProperty("values").EnumerateObject(), v => Assert.Equal(["value", "unit"], Keys(v.Value)));
        var check = Assert.Single(root.GetProperty("checks").EnumerateArray());
        Assert.Equal(["demand", "limit", "margin", "rule", "source"], Keys(check));
        Assert.Equal(200, check.GetProperty("limit").GetProperty("value").GetDouble());
        Assert.Equal(
            check.GetProperty("limit").GetProperty("value").GetDouble() - check.GetProperty("demand").GetProperty("value").GetDouble(),
            check.GetProperty("margin").GetProperty("value").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_value_from_memory_is_marked_where_it_is_used()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "calc", "voltage-drop", "legs=90 ft,20 A,100 A,20 degC,200 degC,4", "V=28 V");
        Assert.Contains("table 11-6 [from memory: confirm]", ran.Out);
    }

    [Fact]
    public void A_check_that_fails_gives_one() => Assert.Equal(1, CommandLine.Run("calc", "voltage-drop", "legs=100 ft,20 A,100 A,20 degC,200 degC,14", "V=28 V").Code);

    [Fact]
    public void What_cannot_be_told_gives_one_and_says_why()
    {
        var ran = CommandLine.Run("calc", "voltage-drop", "legs=100 ft,20 A,100 A,20 degC,200 degC,14", "V=27 V");
        Assert.Equal(1, ran.Code);
        Assert.Contains("CANNOT TELL", ran.Out);
        Assert.Contains("give the allowed drop Vmax", ran.Out.ReplaceLineEndings(" "));
    }

    [Fact]
    public void Everything_wrong_with_the_inputs_is_said_in_one_go()
    {
        var ran = CommandLine.Run("calc", "conductor-temperature", "T1=50 amperes", "TR=400 degC", "Imx=26 A", "20", "TR=1 degC");
        Assert.Equal(2, ran.Code);
        Assert.Empty(ran.Out);
        Assert.Contains("'20': expected symbol=value", ran.Error);
        Assert.Contains("TR: given twice", ran.Error);
        Assert.Contains("Imx: found '26 A', expected one of T1, TR, I, Imax; did you mean 'Imax'?", ran.Error);
        Assert.Contains("T1: found '50 amperes', expected a number with a unit of temperature", ran.Error);
        Assert.Contains("TR: found '400 degC', expected 60 to 260 °C", ran.Error);
        Assert.Contains("I: found nothing", ran.Error);
        Assert.Contains("Imax: found nothing", ran.Error);
    }

    [Theory]
    [InlineData("conductr-temperature", "'conductor-temperature'")]
    [InlineData("temperature", "'conductor-temperature'")]
    [InlineData("qqq", "'fairlead calc' lists them all")]
    public void An_unknown_name_gets_the_nearest(string typed, string hint)
    {
        foreach (var ran in new[] { CommandLine.Run("calc", typed), CommandLine.Run("calc", typed, "--help") })
        {
            Assert.Equal(2, ran.Code);
            Assert.Contains(hint, ran.Error);
        }
    }

    [Fact]
    public void No_text_however_odd_is_more_than_bad_input() =>
        Gen.Select(Gen.Int[0, CalculationCatalog.All.Length - 1], Gen.Int[0, 20], Gen.OneOf(Gen.String, Gen.Int[0, Odd.Length - 1].Select(i => Odd[i]))).Sample(
            (calculation, place, odd) =>
            {
                var info = CalculationCatalog.All[calculation].Info;
                var example = CommandLine.Split(info.Example);
                var symbol = example[place % example.Length].Split('=')[0] + "=";
                string[] arguments = ["calc", info.Name, .. example.Where(a => !a.StartsWith(symbol, StringComparison.Ordinal)), symbol + odd];
                return CommandLine.Run(arguments).Code is 0 or 1 or 2;
            },
            iter: 500);

    [Fact]
    public void A_form_that_does_not_exist_is_refused_with_those_that_do()
    {
        var ran = CommandLine.Run("calc", "--format", "xml");
        Assert.Equal(2, ran.Code);
        Assert.Contains("'xml'", ran.Error);
        Assert.Contains("'json'", ran.Error);
    }

    private static Dictionary<string, string> Arguments() => new() { ["T1"] = "50 degC", ["TR"] = "200 degC", ["I"] = "20 A", ["Imax"] = "26 A" };

    private static IEnumerable<string> Keys(JsonElement element) => element.EnumerateObject().Select(p => p.Name);
}
