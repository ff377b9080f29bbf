using CsCheck;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Tests.Substantiation;

/// <summary>Marks of wires and where their sleeves stand.</summary>
public sealed class MarkTests
{
    private static readonly Assessment Twin = new Assessor().Assess(JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!);

    // By hand, from the pattern: letters, number, segment, gauge, N to ground; one number where wires meet at a terminal; no gauge on coax.
    [Theory]
    [InlineData("C101", "UA101A22")]
    [InlineData("C103", "UA103A22N")]
    [InlineData("C105", "UG105A24")]
    [InlineData("C120", "UA120A22")]
    [InlineData("C121", "UA120B22")]
    [InlineData("C122", "UA120C22")]
    [InlineData("C124", "UA124A")]
    [InlineData("C401", "ST401A20")]
    [InlineData("C604", "LP601D22")]
    public void A_mark_follows_the_pattern(string circuit, string mark) => Assert.Equal(mark, Twin.Marks.Single(m => m.Id == circuit).Text);

    [Fact]
    public void Every_circuit_has_a_mark_and_no_two_are_the_same()
    {
        Assert.Equal(Twin.Circuits.Select(c => c.Circuit.Id), Twin.Marks.Where(m => m.Carrier != MarkCarrier.Jacket).Select(m => m.Id));
        Assert.Equal(Twin.Marks.Length, Twin.Marks.Select(m => m.Text).Distinct().Count());
    }

    // By hand from the rule: none below 3 in, the middle up to 7 in, else 3 in from both ends and no more than 6 ft between.
    [Theory]
    [InlineData(2, new double[0])]
    [InlineData(6, new[] { 3.0 })]
    [InlineData(10, new[] { 3.0, 7 })]
    [InlineData(78, new[] { 3.0, 75 })]
    [InlineData(79, new[] { 3.0, 39.5, 76 })]
    public void Sleeves_stand_where_the_rule_has_them(double inches, double[] at) =>
        Assert.Equal(at, MarkPlaces.Of(Length.Of(inches, "in")).Select(p => Math.Round(p.In("in"), 6)));

    [Fact]
    public void Sleeves_are_never_further_apart_than_six_feet_nor_further_than_three_inches_from_an_end() => Gen.Double[7.01, 5000].Sample(inches =>
    {
        var places = MarkPlaces.Of(Length.Of(inches, "in")).Select(p => p.In("in")).ToArray();
        Assert.Equal(3, places[0], 6);
        Assert.Equal(inches - 3, places[^1], 6);
        Assert.All(places.Zip(places.Skip(1)), g => Assert.InRange(g.Second - g.First, 0, 72 + 1e-6));
    });

    [Fact]
    public void An_edit_that_changes_no_mark_marks_no_other_wire_again()
    {
        var (assessor, circuits) = (new Assessor(), Twin.Job.Change.Circuits!);
        var before = assessor.Assess(Twin.Job).Marks;
        var circuit = circuits["C101"];
        var after = assessor.Assess(Twin.Job with { Change = Twin.Job.Change with { Circuits = circuits.With(circuit with { Length = Length.Of(31, "ft") }) } }).Marks;
        Assert.Equal(31, after.Single(m => m.Id == "C101").Length!.Value.In("ft"), 9);
        Assert.All(before.Zip(after).Where(x => x.First.Id != "C101"), x => Assert.Same(x.First, x.Second));
    }

    [Fact]
    public void Sleeves_are_printed_as_often_as_they_stand_on_the_wire() =>
        Assert.Equal(Twin.Marks.Sum(m => m.Places.Count), Twin.PrintLines.Where(l => l.Kind.StartsWith("sleeve", StringComparison.Ordinal)).Sum(l => l.Copies));
}
