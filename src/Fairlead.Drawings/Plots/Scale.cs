using System.Globalization;

namespace Fairlead.Drawings;

/// <summary>A numeric axis with round ticks: steps of 1, 2 or 5 times a power of ten.</summary>
internal sealed class Scale
{
    private readonly int decimals;

    private Scale(double min, double step, int steps)
    {
        Min = min;
        Step = step;
        Max = min + (steps * step);
        Ticks = [.. Enumerable.Range(0, steps + 1).Select(i => min + (i * step))];
        decimals = Math.Max(0, (int)-Math.Floor(Math.Log10(step) + 1e-9));
    }

    public double Min { get; }

    public double Max { get; }

    public double Step { get; }

    public double[] Ticks { get; }

    /// <summary>The scale that covers some values in about a number of steps.</summary>
    public static Scale Covering(IEnumerable<double> values, int steps, bool fromZero = false)
    {
        var finite = values.Where(double.IsFinite).DefaultIfEmpty(0).ToArray();
        var low = fromZero ? Math.Min(0, finite.Min()) : finite.Min();
        var high = fromZero ? Math.Max(0, finite.Max()) : finite.Max();
        if (high - low < 1e-9 * Math.Max(1, Math.Abs(high)))
        {
            high = low + Math.Max(1, Math.Abs(low) * 0.1);
        }

        var step = Round((high - low) / steps);
        var first = Math.Floor((low / step) + 1e-9);
        return new Scale(first * step, step, (int)(Math.Ceiling((high / step) - 1e-9) - first));
    }

    public string Label(double tick) => (Math.Abs(tick) < Step * 1e-6 ? 0 : tick).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−');

    private static double Round(double step)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(step)));
        var lead = step / power;
        return power * (lead <= 1.000001 ? 1 : lead <= 2.000001 ? 2 : lead <= 5.000001 ? 5 : 10);
    }
}
