using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;

namespace Fairlead.Tests.Reference.Traffic;

/// <summary>Mode C codes. Rules read in an encyclopaedia (reflected Gray count and C pulses) and in "The 1090 megahertz riddle" (h = 500·N500 + 100·N100 − 1300);
/// the abstract of the ICAO table of 1962 gives the range and the datum. Rows computed outside the project from the first and confirmed by the second.</summary>
public sealed class GillhamTests
{
    [Theory]
    [InlineData(-1200, "0040", 0x0100)]
    [InlineData(-1000, "0020", 0x0400)]
    [InlineData(-500, "0420", 0x0402)]
    [InlineData(-100, "0660", 0x050A)]
    [InlineData(0, "0620", 0x040A)]
    [InlineData(100, "0630", 0x140A)]
    [InlineData(200, "0610", 0x100A)]
    [InlineData(300, "0210", 0x1008)]
    [InlineData(400, "0230", 0x1408)]
    [InlineData(500, "0220", 0x0408)]
    [InlineData(600, "0260", 0x0508)]
    [InlineData(700, "0240", 0x0108)]
    [InlineData(800, "0340", 0x0128)]
    [InlineData(900, "0360", 0x0528)]
    [InlineData(1000, "0320", 0x0428)]
    [InlineData(1500, "0720", 0x042A)]
    [InlineData(2000, "0520", 0x0422)]
    [InlineData(2500, "0120", 0x0420)]
    [InlineData(3000, "4120", 0x04A0)]
    [InlineData(5000, "4220", 0x0488)]
    [InlineData(8000, "6620", 0x068A)]
    [InlineData(10000, "6520", 0x06A2)]
    [InlineData(12500, "2320", 0x0628)]
    [InlineData(15000, "3020", 0x0E00)]
    [InlineData(18000, "3520", 0x0E22)]
    [InlineData(20000, "7720", 0x0EAA)]
    [InlineData(25000, "5320", 0x0CA8)]
    [InlineData(30000, "1420", 0x0C02)]
    [InlineData(30700, "1040", 0x0900)]
    [InlineData(30800, "1044", 0x0901)]
    [InlineData(35000, "5124", 0x0CA1)]
    [InlineData(40000, "7624", 0x0E8B)]
    [InlineData(45000, "3224", 0x0E09)]
    [InlineData(62700, "0044", 0x0101)]
    [InlineData(62800, "0046", 0x0105)]
    [InlineData(126700, "0042", 0x0104)]
    public void Code_of_an_altitude(int feet, string code, int field)
    {
        var sheet = AltitudeCode.Run(new(Length.Of(feet, "ft")));
        Assert.Equal(code, sheet.Given.Single(g => g.Symbol == "gillham").Value.Words);
        Assert.Equal(field, ModeACode.ToField(AltitudeEncoding.Gillham(feet / 100)));
        Assert.Equal(feet, AltitudeCode.Run(new(Code: code))["hr"].Value, 1e-6);
        Assert.Equal(feet, AltitudeEncoding.FromField13(field));
    }

    // 14 CFR 91.217(a)(2) (read): within 125 ft of the altimeter.
    [Theory]
    [InlineData(10000, Verdict.Holds)]
    [InlineData(10125, Verdict.Holds)]
    [InlineData(9875, Verdict.Holds)]
    [InlineData(10126, Verdict.Fails)]
    [InlineData(9874, Verdict.Fails)]
    public void A_code_corresponds_to_the_altimeter_within_125_ft(double altimeter, Verdict verdict) =>
        Assert.Equal(verdict, AltitudeCode.Run(new(Length.Of(altimeter, "ft"), "6520")).Verdict);

    [Fact]
    public void Every_code_agrees_with_the_second_rule()
    {
        for (var hundreds = AltitudeEncoding.Lowest; hundreds <= AltitudeEncoding.Highest; hundreds++)
        {
            Assert.Equal(100 * hundreds, BookAltitude(AltitudeEncoding.Gillham(hundreds)));
        }
    }

    // A code of unit distance (read): one pulse changes from one hundred feet to the next, and D1 is never sent.
    [Fact]
    public void One_pulse_changes_at_every_step()
    {
        for (var hundreds = AltitudeEncoding.Lowest; hundreds < AltitudeEncoding.Highest; hundreds++)
        {
            Assert.Equal(1, int.PopCount(AltitudeEncoding.Gillham(hundreds) ^ AltitudeEncoding.Gillham(hundreds + 1)));
            Assert.DoesNotContain("D1", ModeACode.Pulses(AltitudeEncoding.Gillham(hundreds)));
        }
    }

    // The book's rule: Gray to binary of both groups, N100 7 read as 5, and counted backwards when N500 is odd.
    private static int BookAltitude(int code)
    {
        var pulses = ModeACode.Pulses(code);
        int Binary(params string[] order)
        {
            var value = 0;
            foreach (var name in order)
            {
                value = (2 * value) + ((value & 1) ^ (pulses.Contains(name) ? 1 : 0));
            }

            return value;
        }

        var (five, one) = (Binary("D2", "D4", "A1", "A2", "A4", "B1", "B2", "B4"), Binary("C1", "C2", "C4"));
        one = one == 7 ? 5 : one;
        return (500 * five) + (100 * (five % 2 == 0 ? one : 6 - one)) - 1300;
    }
}
