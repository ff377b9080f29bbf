using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Workbench;

/// <summary>What is entered on a tablet is judged there as the log will judge it.</summary>
public sealed class TestLineViewTests
{
    [Theory]
    [InlineData("9", "holds")]
    [InlineData("8", "fails")]
    [InlineData("some", "cannot-tell")]
    public void What_was_counted_is_judged_while_it_waits_to_be_sent(string found, string verdict)
    {
        var line = new TestLineView("contacts P1", "P1", "", "9 contacts", "contacts", "the change", "", "") { Due = new TestDue(9, 9, "contacts wired") };
        Assert.Equal(verdict, line.Judged("visual", new Dictionary<string, string> { ["line"] = "contacts P1", ["found"] = found }, "AV1"));
    }
}
