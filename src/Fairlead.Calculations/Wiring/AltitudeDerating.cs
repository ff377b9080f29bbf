namespace Fairlead.Calculations.Wiring;

/// <summary>Altitude derating factor: AC 43.13-1B figure 11-6, linear between the points that are known (0, 20,000, 35,000 and 60,000 ft).</summary>
/// <remarks>Check value: 20,000 ft gives 0.91 (page 11-27).</remarks>
public static class AltitudeDerating
{
    private static readonly TableFile Table = TableFile.Load("altitude-derating");

    /// <summary>The derating factor at an altitude from 0 to 60,000 ft.</summary>
    public static Looked<double> Factor(Length altitude)
    {
        // A foot to metres and back may lose the last bit; an altitude of 60,000 ft is still on the chart.
        var feet = Math.Round(altitude.In("ft"), 6);
        var above = -1;
        for (var row = Table.Rows.Length - 1; row >= 0 && Table.Rows[row][0] >= feet; row--)
        {
            above = row;
        }

        if (above < 0 || feet < 0)
        {
            return new(default, Table.Source, $"{Table.Source.Paragraph} is known from 0 to 60000 ft and this altitude is {altitude.As("ft")}.");
        }

        var (x1, y1) = (Table.Rows[above][0]!.Value, Table.Rows[above][1]!.Value);
        if (feet == x1)
        {
            return new(y1, Table.SourceOf(above));
        }

        var (x0, y0) = (Table.Rows[above - 1][0]!.Value, Table.Rows[above - 1][1]!.Value);
        return new(y0 + ((y1 - y0) * (feet - x0) / (x1 - x0)), Table.Between(above - 1, above));
    }
}
