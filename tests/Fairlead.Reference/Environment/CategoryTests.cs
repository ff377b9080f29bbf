using Fairlead.Calculations;
using Fairlead.Calculations.Environment;

namespace Fairlead.Tests.Reference.Environment;

/// <summary>Categories of the environmental standard against each other. Which covers which is from memory of RTCA DO-160; the sections by number are read in public lists of its contents.</summary>
public sealed class CategoryTests
{
    [Theory]
    [InlineData("temperature-altitude", 4)]
    [InlineData("temperature-variation", 5)]
    [InlineData("humidity", 6)]
    [InlineData("vibration", 8)]
    [InlineData("waterproofness", 10)]
    [InlineData("fungus", 13)]
    [InlineData("magnetic-effect", 15)]
    [InlineData("power-input", 16)]
    [InlineData("lightning-induced", 22)]
    [InlineData("fire", 26)]
    [InlineData("22", 22)]
    public void Sections_have_their_numbers(string name, int number) => Assert.Equal(number, QualificationSections.Number(name));

    // Memory: severe humidity B over standard A; stream S and spray R over drip W; sand and dust S over dust D; severe salt T over S; magnetic class Y over C; spike A over B.
    [Theory]
    [InlineData("temperature-variation", "A", "C")]
    [InlineData("humidity", "B", "A")]
    [InlineData("humidity", "C", "A")]
    [InlineData("shock", "B", "A")]
    [InlineData("waterproofness", "R", "W")]
    [InlineData("waterproofness", "S", "W")]
    [InlineData("sand-dust", "S", "D")]
    [InlineData("salt", "T", "S")]
    [InlineData("magnetic-effect", "Y", "C")]
    [InlineData("voltage-spike", "A", "B")]
    [InlineData("lightning-induced", "A4J43", "A3J33")]
    [InlineData("lightning-induced", "A3J3L3", "A3XXXX")]
    public void A_severer_category_covers_a_milder_one_with_a_caution_and_not_the_other_way(string section, string severe, string mild)
    {
        Assert.Equal(Verdict.Caution, Match(section, mild, severe));
        Assert.Equal(Verdict.Fails, Match(section, severe, mild));
    }

    // Nothing orders these: vibration curves, condensing against spray, sprays from all sides against a stream, power classes, other waveforms.
    [Theory]
    [InlineData("vibration", "S", "R")]
    [InlineData("waterproofness", "Y", "R")]
    [InlineData("waterproofness", "R", "S")]
    [InlineData("power-input", "A", "Z")]
    [InlineData("lightning-induced", "A3J33", "B3K33")]
    [InlineData("lightning-induced", "A3J33", "A3J3L3")]
    [InlineData("no-such-section", "A", "A")]
    public void What_no_table_orders_cannot_be_told(string section, string need, string has) => Assert.Equal(Verdict.CannotTell, Match(section, need, has));

    [Fact]
    public void One_of_several_categories_stated_is_enough()
    {
        Assert.Equal(Verdict.Holds, Match("vibration", "M", "B, M"));
        Assert.Equal(Verdict.CannotTell, Match("vibration", "S", "B, M"));
    }

    [Fact]
    public void A_section_matches_by_name_or_number() =>
        Assert.Equal(Verdict.Holds, QualificationMatch.Run(new([new CategoryRow("8", "S")], [new CategoryRow("vibration", "S")])).Verdict);

    // An order: nothing covers itself, no two cover each other, and what covers reaches on.
    [Fact]
    public void What_the_table_lists_is_an_order()
    {
        var table = TableFile.Load("do160-covers");
        var pairs = table.Rows.Select(r => (Section: r[0]!.Value, Over: r[1]!.Value, Under: r[2]!.Value)).ToHashSet();
        Assert.Equal(table.Rows.Length, pairs.Count);
        Assert.All(pairs, p => Assert.DoesNotContain((p.Section, p.Under, p.Over), pairs));
        Assert.All(pairs, p => Assert.All(pairs.Where(q => q.Section == p.Section && q.Over == p.Under), q => Assert.Contains((p.Section, p.Over, q.Under), pairs)));
    }

    private static Verdict Match(string section, string need, string has) =>
        QualificationMatch.Run(new([new CategoryRow(section, need)], [new CategoryRow(section, has)])).Verdict;
}
