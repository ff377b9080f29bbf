using System.Text.RegularExpressions;

namespace Fairlead.Model;

/// <summary>One end of a circuit: a contact of an item (<c>A1 P1-12</c>: item, connector half, contact), or a single point such as
/// a breaker, ground stud, splice or terminal (<c>CB12</c>).</summary>
/// <param name="Item">Reference designator of the item or point.</param>
/// <param name="Connector">The connector half; empty for a single point.</param>
/// <param name="Contact">The contact; empty for a single point.</param>
public readonly partial record struct Endpoint(string Item, string Connector = "", string Contact = "")
{
    /// <summary>What a good value looks like.</summary>
    public const string Expected = "an end such as 'A1 P1-12' (item, connector half, contact) or 'CB12' (breaker, ground, splice or terminal)";

    /// <summary>Whether this is a single point and not a contact.</summary>
    public bool IsPoint => Connector.Length == 0;

    /// <summary>The pin name within the item, <c>P1-12</c>; empty for a single point.</summary>
    public string Pin => IsPoint ? "" : $"{Connector}-{Contact}";

    /// <summary>Reads an end.</summary>
    public static bool TryRead(string text, out Endpoint end)
    {
        var match = Form().Match(text ?? "");
        end = match.Success ? new Endpoint(match.Groups["item"].Value, match.Groups["connector"].Value, match.Groups["contact"].Value) : default;
        return match.Success;
    }

    /// <summary>The contact of an item that a pin such as <c>P1-12</c> names; what is no pin names a contact that nothing ends on.</summary>
    public static Endpoint OfPin(string item, string pin) => TryRead($"{item} {pin}", out var end) ? end : new Endpoint(item, pin);

    /// <inheritdoc/>
    public override string ToString() => IsPoint ? Item : $"{Item} {Pin}";

    [GeneratedRegex("^(?<item>[A-Za-z0-9._-]+)(?: +(?<connector>[A-Za-z0-9._]+)-(?<contact>[A-Za-z0-9._-]+))?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Form();
}
