using System.Collections.Immutable;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Workbench;

/// <summary>A plan on a screen: a part of it at a time. 2027-03-22 is a Monday.</summary>
public sealed class PlanPictureTests
{
    private static readonly PlanSummaryView Plan = new(
        false, true, "", "2027-03-30 12:00", "2027-03-30 12:00", true, "2027-04-02", true, "90 %", [], [], [], [], "A plan",
        [
            Row("SURVEY", ["AV1"], holding: true, new(2027, 3, 22, 7, 0, 0), new(2027, 3, 22, 12, 0, 0)),
            Row("CUT-P", ["EL1"], holding: false, new(2027, 3, 23, 7, 0, 0), new(2027, 3, 23, 9, 0, 0)),
            Row("RIVET", ["ST1", "AV1"], holding: true, new(2027, 3, 26, 13, 0, 0), new(2027, 3, 29, 9, 0, 0)),
        ],
        []);

    [Fact]
    public void Each_week_that_has_work_and_each_person_who_has_some_can_be_chosen() =>
        Assert.Equal(["holding", "2027-03-22", "2027-03-29", "AV1", "EL1", "ST1", "whole"], PlanPicture.Choices(Plan).Select(c => c.Key));

    [Theory]
    [InlineData("holding", "SURVEY RIVET")]
    [InlineData("2027-03-22", "SURVEY CUT-P RIVET")]
    [InlineData("2027-03-29", "RIVET")]
    [InlineData("AV1", "SURVEY RIVET")]
    [InlineData("EL1", "CUT-P")]
    [InlineData("whole", "SURVEY CUT-P RIVET")]
    public void What_is_chosen_is_drawn_and_no_more(string choice, string tasks)
    {
        var svg = PlanPicture.Draw(Plan, choice);
        Assert.Equal(tasks.Split(' '), Plan.Rows.Select(r => r.Task).Where(t => svg.Contains($">{t}<", StringComparison.Ordinal)));
        Assert.Equal(choice is "holding" or "whole", svg.Contains("promised 2027-04-02", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_a_week_only_what_falls_into_it_is_drawn()
    {
        Assert.Contains("RIVET, ST1 AV1: 2027-03-26 13:00 to 2027-03-29 00:00.", PlanPicture.Draw(Plan, "2027-03-22"), StringComparison.Ordinal);
        Assert.Contains("RIVET, ST1 AV1: 2027-03-29 00:00 to 2027-03-29 09:00.", PlanPicture.Draw(Plan, "2027-03-29"), StringComparison.Ordinal);
        Assert.Equal("", PlanPicture.Draw(Plan, "nobody"));
    }

    private static PlanRowView Row(string task, ImmutableArray<string> people, bool holding, params ImmutableArray<DateTime> times) => new(task, people, times, holding, false);
}
