namespace Fairlead.Calculations;

/// <summary>How a value came to us. Sheets print it wherever it is not <see cref="Read"/>.</summary>
public enum Basis
{
    /// <summary>Read in the named document.</summary>
    Read,

    /// <summary>Recalled from the named document and not re-read: confirm before relying on it.</summary>
    Memory,

    /// <summary>Arithmetic or physics from stated inputs.</summary>
    Derived,

    /// <summary>Common practice of the trade, in no document we can name.</summary>
    CommonPractice,

    /// <summary>Stated by the user, who is responsible for it.</summary>
    Stated,
}

/// <summary>Where a rule, formula or value comes from.</summary>
/// <param name="Document">The document, for example "FAA AC 43.13-1B".</param>
/// <param name="Edition">Its edition or date.</param>
/// <param name="Paragraph">Paragraph, table or figure.</param>
/// <param name="Basis">How it came to us.</param>
public sealed record Source(string Document, string Edition, string Paragraph, Basis Basis = Basis.Read)
{
    /// <summary>The mark printed after a source that was not read in its document; empty when it was.</summary>
    public string Mark => Basis switch
    {
        Basis.Memory => " [from memory: confirm]",
        Basis.CommonPractice => " [common practice]",
        Basis.Stated => " [as stated by the user]",
        _ => "",
    };

    /// <inheritdoc/>
    public override string ToString() =>
        string.Join(", ", new[] { Document, Edition, Paragraph }.Where(s => s.Length > 0)) + Mark;
}
