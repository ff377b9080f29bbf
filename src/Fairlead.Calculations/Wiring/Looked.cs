namespace Fairlead.Calculations.Wiring;

/// <summary>A value looked up in a table or derived from one, or why there is none.</summary>
/// <param name="Value">The value; meaningless when there is none.</param>
/// <param name="Source">Where it was looked up.</param>
/// <param name="WhyNot">Why there is no value, in a sentence; null when there is one.</param>
public readonly record struct Looked<T>(T Value, Source Source, string? WhyNot = null)
    where T : struct
{
    /// <summary>Whether there is a value.</summary>
    public bool IsKnown => WhyNot is null;
}

internal static class LookedSteps
{
    /// <summary>Puts a looked-up number on the sheet as a step, or says why there is none and returns null.</summary>
    public static double? Step(this SheetBuilder s, string symbol, string meaning, string formula, Looked<double> looked)
    {
        if (looked.WhyNot is { } why)
        {
            s.CannotTell(why);
            return null;
        }

        return s.Step(symbol, meaning, formula, looked.Value, looked.Source);
    }

    /// <summary>Puts a looked-up quantity on the sheet as a step, or says why there is none and returns null.</summary>
    public static Quantity<TKind>? Step<TKind>(this SheetBuilder s, string symbol, string meaning, string formula, Looked<Quantity<TKind>> looked, string unit)
        where TKind : IKind
    {
        if (looked.WhyNot is { } why)
        {
            s.CannotTell(why);
            return null;
        }

        return s.Step(symbol, meaning, formula, looked.Value, unit, looked.Source);
    }
}
