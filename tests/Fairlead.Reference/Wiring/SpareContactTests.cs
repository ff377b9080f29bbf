using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>Spare contacts, counted by hand.</summary>
public sealed class SpareContactTests
{
    [Theory]
    [InlineData(26, 22, 1, 10, Verdict.Holds)] // 3 of 26, 11.5 %
    [InlineData(26, 23, 1, 10, Verdict.Fails)] // 2 of 26, 7.7 %
    [InlineData(20, 18, 0, 10, Verdict.Holds)] // exactly a tenth
    [InlineData(20, 20, 1, 0, Verdict.CannotTell)]
    public void Share_that_is_free(int cavities, int wired, int reserved, double least, Verdict verdict)
    {
        var sheet = SpareContacts.Run(new(cavities, wired, reserved, Fraction.Of(least, "%")));
        Assert.Equal(verdict, sheet.Verdict);
        if (verdict != Verdict.CannotTell)
        {
            Assert.Equal(cavities - wired - reserved, sheet["free"].Value);
            Assert.Equal(cavities - wired, sheet["e"].Value);
        }
    }
}
