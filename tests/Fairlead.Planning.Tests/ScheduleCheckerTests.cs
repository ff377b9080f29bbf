using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Planning;

public sealed class ScheduleCheckerTests
{
    private static readonly Problem Job = new(
        20,
        [new("A", 2, default, [new("a", 1)], [new("tool", 1)]), new("B", 3, [new("A", 1)], [new("a", 1)], [new("tool", 1)], Windows: [new(0, 8)], NotBefore: 1)],
        [new("P", ["a"], [new(0, 10)]), new("Q", ["b"], [new(0, 10)])],
        [new("tool", 1)]);

    [Fact]
    public void A_plan_that_keeps_every_rule_has_no_fault() => Assert.Empty(ScheduleChecker.Faults(Job, Plan(new(0, 2), new(3, 6))));

    [Theory]
    [InlineData(0, 2, 2, 5, "P", "B does not wait for A")]
    [InlineData(0, 3, 4, 7, "P", "A is not done in the pieces asked for")]
    [InlineData(0, 2, 6, 9, "P", "B is done outside its windows")]
    [InlineData(9, 11, 3, 6, "P", "P is not at work for all of A")]
    [InlineData(0, 2, 3, 6, "Q", "Q does not have the skill a for B")]
    [InlineData(3, 5, 4, 7, "P", "P does two things at 4")]
    [InlineData(3, 5, 4, 7, "P", "more of tool is used at 4 than there is")]
    [InlineData(0, 2, 0, 3, "P", "B starts too early, ends too late, or its pieces are out of order")]
    public void A_broken_rule_is_told(int from, int to, int next, int end, string who, string fault) =>
        Assert.Contains(fault, ScheduleChecker.Faults(Job, Plan(new(from, to), new(next, end), who)));

    [Fact]
    public void A_circle_of_tasks_cannot_be_built() =>
        Assert.Contains("A, B", Assert.Throws<ArgumentException>(() => new Problem(9, [new("A", 1, [new("B")]), new("B", 1, [new("A")])])).Message, StringComparison.Ordinal);

    private static Schedule Plan(Slot a, Slot b, string who = "P") => Schedule.Of(Job, [new("A", [a], ["P"]), new("B", [b], [who])]);
}
