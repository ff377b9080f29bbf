using Fairlead.Calculations;

namespace Fairlead.Tests.Calculations;

public sealed class InputReaderTests
{
    private static IReadOnlyList<string> Errors(params (string Symbol, string Text)[] arguments)
    {
        var sheet = CalculationCatalog.Find("conductor-temperature")!.Run(arguments.ToDictionary(a => a.Symbol, a => a.Text, StringComparer.Ordinal), out var errors);
        Assert.Equal(errors.IsEmpty, sheet is not null);
        return [.. errors.Select(e => $"{e.Symbol}: found {e.Found}; {e.Fix}")];
    }

    [Fact]
    public void Everything_that_is_wrong_is_said_in_one_go() => Assert.Equal(
        ["Imx: found 26 A; did you mean 'Imax'?", "T1: found 50 A; ", "I: found nothing; give I=... (circuit current)", "Imax: found nothing; give Imax=... (allowed current at the rating)"],
        Errors(("T1", "50 A"), ("TR", "200 degC"), ("Imx", "26 A")));

    [Fact]
    public void Good_texts_run() => Assert.Empty(Errors(("T1", "50 degC"), ("TR", "200 degC"), ("I", "20 A"), ("Imax", "26 A")));

    [Theory]
    [InlineData("volage-drop", "voltage-drop")]
    [InlineData("VOLTAGE-DROP", "voltage-drop")]
    [InlineData("votlage-drop", "voltage-drop")]
    [InlineData("xyz", null)]
    public void The_nearest_name_is_found(string typed, string? nearest) => Assert.Equal(nearest, Words.Nearest(typed, ["voltage-drop", "wire-size"]));
}
