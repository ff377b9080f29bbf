namespace Fairlead.Calculations.Wiring;

/// <summary>A serial data bus.</summary>
public enum BusStandard
{
    /// <summary>ARINC 429.</summary>
    Arinc429 = 429,

    /// <summary>RS-232.</summary>
    Rs232 = 232,

    /// <summary>RS-422.</summary>
    Rs422 = 422,

    /// <summary>RS-485.</summary>
    Rs485 = 485,
}

/// <summary>Input of <see cref="BusLoading"/>.</summary>
/// <param name="Standard">The standard of the bus.</param>
/// <param name="Drivers">Transmitters on the line.</param>
/// <param name="Receivers">Receivers on the line.</param>
public sealed record BusLoadingInput(
    [In("standard", "standard of the bus")] BusStandard Standard,
    [In("drivers", "transmitters on the line", Min = 0, Max = 1000)] int Drivers,
    [In("receivers", "receivers on the line", Min = 0, Max = 1000)] int Receivers);

/// <summary>How many transmitters and receivers share one line of a data bus.</summary>
/// <remarks>Check value: ARINC 429 has one talker and up to 20 listeners.</remarks>
public sealed class BusLoading : ICalculation<BusLoadingInput>
{
    private static readonly TableFile Table = TableFile.Load("bus-standards");

    /// <inheritdoc/>
    public static CalculationInfo<BusLoadingInput> Info { get; } = new(
        "bus-loading", "Transmitters and receivers on a data bus", Discipline.Wiring,
        "Whether a line of a data bus has one driver and no more receivers than its standard allows", "standard=arinc429 drivers=1 receivers=4", Table.Source);

    /// <inheritdoc/>
    public static Sheet Run(BusLoadingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Table.RowWhere("standard", (int)input.Standard) is not { } row)
        {
            s.CannotTell("The limits of this standard are not known.");
            return;
        }

        var drivers = s.Step("dmax", "transmitters allowed", "table by standard", Table.Rows[row][Table.Column("drivers")]!.Value, Table.SourceOf(row));
        var receivers = s.Step("rmax", "receivers allowed", "table by standard", Table.Rows[row][Table.Column("receivers")]!.Value, Table.SourceOf(row));
        s.Check("number of transmitters", Measure.Number(input.Drivers), Sense.AtLeast, Measure.Number(1), "something drives the line", Table.SourceOf(row));
        s.Check("number of transmitters together", Measure.Number(input.Drivers), Sense.AtMost, Measure.Number(drivers), "no more transmitters drive the line than its standard allows", Table.SourceOf(row));
        s.Check("number of receivers", Measure.Number(input.Receivers), Sense.AtMost, Measure.Number(receivers), "no more receivers load the line than its standard allows", Table.SourceOf(row));
    });

    /// <summary>The standard that a text names, for example "ARINC 429 low"; null when it names none of them.</summary>
    public static BusStandard? Named(string text)
    {
        var plain = string.Concat((text ?? "").Where(char.IsLetterOrDigit)).ToUpperInvariant();
        return plain.StartsWith("ARINC429", StringComparison.Ordinal) ? BusStandard.Arinc429
            : plain.StartsWith("RS232", StringComparison.Ordinal) ? BusStandard.Rs232
            : plain.StartsWith("RS422", StringComparison.Ordinal) ? BusStandard.Rs422
            : plain.StartsWith("RS485", StringComparison.Ordinal) ? BusStandard.Rs485
            : null;
    }
}
