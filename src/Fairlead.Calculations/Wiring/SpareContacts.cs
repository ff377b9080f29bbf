namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="SpareContacts"/>.</summary>
/// <param name="Cavities">Cavities of the connector.</param>
/// <param name="Wired">Cavities in which a circuit ends.</param>
/// <param name="Reserved">Cavities without a circuit that must stay so.</param>
/// <param name="MinShare">Least share of the cavities that stays free for later use.</param>
public sealed record SpareContactsInput(
    [In("n", "cavities of the connector", Min = 1, Max = 1000)] int Cavities,
    [In("w", "cavities in which a circuit ends", Min = 0, Max = 1000)] int Wired,
    [In("r", "cavities without a circuit that must stay so", Min = 0, Max = 1000, Default = "0")] int Reserved = 0,
    [In("smin", "least share of the cavities that stays free", "%", Min = 0, Max = 100, Default = "not checked")] Fraction? MinShare = null);

/// <summary>What a connector leaves free for later use, and how many of its cavities stay empty.</summary>
/// <remarks>Free: n − w − r; empty: n − w. Check value: of 26 cavities with 22 wired and 1 reserved, 3 are free (11.5 %) and 4 empty.</remarks>
public sealed class SpareContacts : ICalculation<SpareContactsInput>
{
    private static readonly Source Practice = new("Wiring of avionics", "", "spare contacts; empty cavities sealed", Basis.CommonPractice);
    private static readonly Source Stated = new("This job", "", "spare contacts asked for", Basis.Stated);

    /// <inheritdoc/>
    public static CalculationInfo<SpareContactsInput> Info { get; } = new(
        "spare-contacts", "Spare contacts of a connector", Discipline.Wiring,
        "Whether a connector keeps enough contacts free for later use, and how many cavities stay empty", "n=26 w=22 r=1 smin='10 %'", Practice);

    /// <inheritdoc/>
    public static Sheet Run(SpareContactsInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Wired + input.Reserved > input.Cavities)
        {
            s.CannotTell("More cavities are wired or reserved than the connector has.");
            return;
        }

        s.Step("e", "empty cavities", "n − w", input.Cavities - input.Wired);
        var free = s.Step("free", "cavities free for later use", "n − w − r", input.Cavities - input.Wired - input.Reserved);
        var share = s.Step("s", "share of the cavities that is free", "free / n", new Fraction(free / input.Cavities), "%");
        if (input.MinShare is { } least)
        {
            s.Check("share that is free", share.As("%"), Sense.AtLeast, least.As("%"), "the connector keeps the spare contacts asked for", Stated);
        }

        if (input.Wired < input.Cavities)
        {
            s.Caution("Empty cavities of a sealed connector take a plug each, and as its maker says a contact too: an open cavity lets moisture in behind the seal.");
        }
    });
}
