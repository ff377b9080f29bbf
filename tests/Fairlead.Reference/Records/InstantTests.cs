using Fairlead.Records;

namespace Fairlead.Tests.Reference.Records;

/// <summary>RFC 3339 (July 2002) section 5.8, its examples from memory: confirm.</summary>
public sealed class InstantTests
{
    [Theory]
    [InlineData("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.520Z")]
    [InlineData("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57.000Z")]
    [InlineData("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.870Z")]
    public void The_examples_of_section_5_8_are_read(string given, string kept)
    {
        Assert.True(Instant.TryReadAny(given, out var time));
        Assert.Equal(kept, Instant.Text(time));
    }

    [Theory]
    [InlineData("2023-02-29T00:00:00Z")]
    [InlineData("2023-13-01T00:00:00Z")]
    [InlineData("2023-01-01T24:00:00Z")]
    [InlineData("2023-01-01T00:00:00,5Z")]
    [InlineData("2023-01-01")]
    public void What_is_no_time_of_the_standard_is_not_read(string given) => Assert.False(Instant.TryReadAny(given, out _));
}
