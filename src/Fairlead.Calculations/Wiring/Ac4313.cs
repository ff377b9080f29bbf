namespace Fairlead.Calculations.Wiring;

/// <summary>The circular most wiring rules come from.</summary>
internal static class Ac4313
{
    /// <summary>A paragraph, table or figure of chapter 11.</summary>
    public static Source Paragraph(string paragraph, Basis basis = Basis.Read) =>
        new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", paragraph, basis);
}
