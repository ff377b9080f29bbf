namespace Fairlead.Calculations.Balance;

/// <summary>The documents most balance rules come from.</summary>
internal static class BalanceSources
{
    /// <summary>The weight and balance handbook: equipment changes, ballast, percentage of the chord.</summary>
    public static readonly Source Handbook = new("FAA-H-8083-1B", "2016", "ch. 7", Basis.Memory);

    /// <summary>A paragraph or figure of chapter 10 of the circular.</summary>
    public static Source Circular(string paragraph) => new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", paragraph);
}
