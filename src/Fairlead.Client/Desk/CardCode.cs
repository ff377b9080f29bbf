namespace Fairlead.Client.Desk;

/// <summary>What the square code of a card says: <c>fairlead:ORDER/CARD</c>, or the address of a card, <c>.../job/NAME/work/CARD</c>. A number typed by hand is a code without its order.</summary>
public static class CardCode
{
    private const string Scheme = "fairlead:";

    /// <summary>The work order or job, empty where the code names none, and the number of the card.</summary>
    public static (string Work, string Card) Read(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        var parts = code.Trim().Split('/');
        var job = Array.IndexOf(parts, "job");
        var work = code.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase) ? parts[0][Scheme.Length..] : job >= 0 && job + 1 < parts.Length - 1 ? parts[job + 1] : "";
        return (Uri.UnescapeDataString(work), Uri.UnescapeDataString(parts[^1]));
    }
}
