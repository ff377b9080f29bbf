using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Tests.Reference.Wiring;

/// <summary>Transmitters and receivers on one line, as summaries of the interface standards print them (read; not the standards themselves).</summary>
public sealed class BusLoadingTests
{
    [Theory]
    [InlineData(BusStandard.Arinc429, 1, 20)]
    [InlineData(BusStandard.Rs232, 1, 1)]
    [InlineData(BusStandard.Rs422, 1, 10)]
    [InlineData(BusStandard.Rs485, 32, 32)]
    public void A_line_takes_so_many_and_no_more(BusStandard standard, int drivers, int receivers)
    {
        Assert.Equal(Verdict.Holds, BusLoading.Run(new(standard, drivers, receivers)).Verdict);
        Assert.Equal(Verdict.Fails, BusLoading.Run(new(standard, drivers + 1, receivers)).Verdict);
        Assert.Equal(Verdict.Fails, BusLoading.Run(new(standard, drivers, receivers + 1)).Verdict);
    }

    // AC 43.13-1B table 11-3: the values of both columns were read, but which breaker stands beside which size is from memory; the fuses stand as read.
    [Theory]
    [InlineData(Protector.Breaker, Basis.Memory)]
    [InlineData(Protector.Fuse, Basis.Read)]
    public void The_column_of_breakers_is_marked_as_aligned_from_memory(Protector protector, Basis basis) => Assert.Equal(basis, BreakerWire.Limit(new(
        Current.Of(5, "A"), Gauge.Read("20"), Temperature.Of(150, "°C"), Temperature.Of(50, "°C"), Length.Of(20000, "ft"), 10, Fraction.Of(20, "%"), Protector: protector)).Source.Basis);
}
