using Fairlead.Calculations.Balance;

namespace Fairlead.Tests.Reference.Balance;

/// <summary>Short forms for numbers typed from the documents, all in pounds and inches.</summary>
internal static class Typed
{
    public static Mass Lb(double value) => Mass.Of(value, "lb");

    public static Length In(double value) => Length.Of(value, "in");

    public static ItemRow Item(double pounds, double station, double? buttock = null) =>
        new("item", Lb(pounds), In(station), buttock is { } b ? In(b) : null);
}
