using System.Globalization;

namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="ContactFit"/>.</summary>
/// <param name="Contact">Contact size: 22D, 20, 16, 12, 10 or 8, or any name when its own data are given.</param>
/// <param name="Gauge">Gauge of the wire.</param>
/// <param name="Current">Continuous current through the contact.</param>
/// <param name="Thinnest">Thinnest gauge of the contact's own sheet.</param>
/// <param name="Thickest">Thickest gauge of the contact's own sheet.</param>
/// <param name="Rating">Current rating of the contact's own sheet.</param>
public sealed record ContactFitInput(
    [In("contact", "contact size")] string Contact,
    [In("AWG", "wire gauge")] Gauge Gauge,
    [In("I", "continuous current", "A", Min = 0, Max = 1000)] Current Current,
    [In("thinnest", "thinnest gauge of the contact's own sheet", Default = "table")] Gauge? Thinnest = null,
    [In("thickest", "thickest gauge of the contact's own sheet", Default = "table")] Gauge? Thickest = null,
    [In("Ic", "current rating of the contact's own sheet", "A", Min = 0.01, Max = 1000, Default = "table")] Current? Rating = null);

/// <summary>Whether a contact takes a wire and its current. What the contact's own sheet gives goes before the table.</summary>
/// <remarks>Check value: contact 20 takes sizes 24 to 20 and 7.5 A (from memory). Where the wire can carry more, the contact's rating governs (AC 43.13-1B 11-67).</remarks>
public sealed class ContactFit : ICalculation<ContactFitInput>
{
    private static readonly TableFile Table = TableFile.Load("contacts");
    private static readonly Source Rule = Ac4313.Paragraph("11-67");
    private static readonly Source Sheet = new("Contact's own sheet", "", "", Basis.Stated);

    /// <inheritdoc/>
    public static CalculationInfo<ContactFitInput> Info { get; } = new(
        "contact-fit", "Contact against wire", Discipline.Wiring,
        "Whether a crimp contact takes a wire and its current", "contact=22D AWG=22 I='3 A'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(ContactFitInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var table = Find(input.Contact);
        if (table is null && (input.Thinnest is null || input.Thickest is null || input.Rating is null))
        {
            s.CannotTell($"The table has no contact '{input.Contact}' (it has 22D, 20, 16, 12, 10, 8): give thinnest, thickest and Ic from the contact's own sheet.");
            return;
        }

        var (thinnest, thickest) = (input.Thinnest ?? table!.Value.Thinnest, input.Thickest ?? table!.Value.Thickest);
        var rating = input.Rating ?? table!.Value.Rating;
        var range = input.Thinnest is null || input.Thickest is null ? Table.Source : Sheet;
        s.Note("range", "wire gauges the contact takes", $"{thinnest} to {thickest}", range.ToString());
        s.Check("wire not too thin", Number(input.Gauge), Sense.AtMost, Number(thinnest), $"gauge number no higher than {thinnest}", range);
        s.Check("wire not too thick", Number(input.Gauge), Sense.AtLeast, Number(thickest), $"gauge number no lower than {thickest}", range);
        s.Check("contact current", input.Current.As("A"), Sense.AtMost, rating.As("A"), "the contact's rating governs, whatever the wire can carry", input.Rating is null ? Table.Source : Sheet);
        s.Uses(Rule);
    });

    /// <summary>Wire range and rating of a contact size of the table, or null.</summary>
    public static (Gauge Thinnest, Gauge Thickest, Current Rating)? Find(string contact)
    {
        ArgumentNullException.ThrowIfNull(contact);
        var size = contact.Trim() == "22D" ? "22" : contact.Trim() == "22" ? "" : contact.Trim();
        return int.TryParse(size, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && Table.RowWhere("size", number) is { } row
            ? (GaugeAt(row, "thinnest AWG"), GaugeAt(row, "thickest AWG"), Current.Of(Table.Rows[row][Table.Column("A")]!.Value, "A"))
            : null;
    }

    private static Gauge GaugeAt(int row, string column) => new((int)Table.Rows[row][Table.Column(column)]!.Value);

    private static Measure Number(Gauge gauge) => Measure.Number(gauge.Number);
}
