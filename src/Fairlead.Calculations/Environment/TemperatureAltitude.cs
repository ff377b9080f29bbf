namespace Fairlead.Calculations.Environment;

/// <summary>What a temperature and altitude category stands for, for example <c>B2</c>. A limit is null where the maker declares it or
/// it is not known here.</summary>
/// <param name="Altitude">Highest pressure altitude.</param>
/// <param name="OperatingHigh">Highest temperature of continuous operation.</param>
/// <param name="ShortTimeHigh">Highest temperature of operation for a short time; never below <paramref name="OperatingHigh"/>.</param>
/// <param name="ShortTimeLow">Lowest temperature of operation for a short time.</param>
/// <param name="OperatingLow">Lowest temperature of continuous operation.</param>
public sealed record TemperatureAltitude(Length Altitude, Temperature? OperatingHigh, Temperature? ShortTimeHigh, Temperature? ShortTimeLow, Temperature? OperatingLow)
{
    /// <summary>The name of the section in lists of categories.</summary>
    public static string Section => "temperature-altitude";

    /// <summary>The number of the section.</summary>
    public static int Number => 4;

    private static readonly TableFile Table = TableFile.Load("do160-temperature-altitude");
    private static readonly TableFile Lows = TableFile.Load("do160-operating-low");

    /// <summary>Where all limits but the operating low come from.</summary>
    public static Source Limits => Table.Source;

    /// <summary>Where the operating low temperature comes from.</summary>
    public static Source LowLimits => Lows.Source;

    /// <summary>The category of a code such as <c>B2</c>; null when the code is none of the table. Check value: B2 is 25,000 ft and 70 °C.</summary>
    public static TemperatureAltitude? Find(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        var text = code.Trim().ToUpperInvariant();
        if (text.Length != 2 || Row(Table, text) is not { } row || Row(Lows, text) is not { } low)
        {
            return null;
        }

        var high = Degrees(Table, row, "operating high degC");
        return new(
            Length.Of(Table.Rows[row][Table.Column("altitude ft")]!.Value, "ft"), high, Degrees(Table, row, "short-time high degC") ?? high,
            Degrees(Table, row, "short-time low degC"), Degrees(Lows, low, "operating low degC"));
    }

    private static int? Row(TableFile table, string code)
    {
        for (var row = 0; row < table.Rows.Length; row++)
        {
            if (table.Rows[row][0] == code[0] - 'A' + 1 && table.Rows[row][1] == code[1] - '0')
            {
                return row;
            }
        }

        return null;
    }

    private static Temperature? Degrees(TableFile table, int row, string column) =>
        table.Rows[row][table.Column(column)] is { } value ? Temperature.Of(value, "°C") : null;
}
