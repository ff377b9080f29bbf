namespace Fairlead.Calculations.Radio;

/// <summary>What the equipment asks of the run between box and antenna: a window of loss, and of power at the antenna end.</summary>
internal static class RunLimits
{
    /// <summary>Checks the loss of a run, dB, against the limits that are given.</summary>
    public static void Check(SheetBuilder s, double loss, double? greatest, double? least)
    {
        if (greatest is { } max)
        {
            s.Check("loss (dB)", Measure.Number(loss), Sense.AtMost, Measure.Number(max), "the run loses no more than allowed", RadioSources.Stated);
        }

        if (least is { } min)
        {
            s.Check("loss (dB)", Measure.Number(loss), Sense.AtLeast, Measure.Number(min), "the run loses at least what the equipment asks for", RadioSources.Stated);
        }
    }

    /// <summary>Works out what power is left behind a loss A and checks it against the limits that are given.</summary>
    public static void CheckPower(SheetBuilder s, double loss, Wattage? power, Wattage? least, Wattage? greatest)
    {
        if (power is not { } sent)
        {
            return;
        }

        var left = s.Step("Pa", "power at the antenna end", "P · 10^(−A / 10)", sent * Math.Pow(10, -loss / 10), "W");
        if (least is { } min)
        {
            s.Check("power at the antenna end", left.As("W"), Sense.AtLeast, min.As("W"), "enough power is left at the antenna end", RadioSources.Stated);
        }

        if (greatest is { } max)
        {
            s.Check("power at the antenna end", left.As("W"), Sense.AtMost, max.As("W"), "not too much power at the antenna end", RadioSources.Stated);
        }
    }
}
