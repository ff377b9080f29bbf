using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>A reading between two places, each one terminal or several tied together in an adapter.</summary>
/// <param name="From">Terminals at one probe.</param>
/// <param name="To">Terminals at the other.</param>
/// <param name="ShieldsLifted">Whether the shields are lifted from their grounds.</param>
public sealed record Measurement(Sequence<string> From, Sequence<string> To, bool ShieldsLifted = false)
{
    private const string Lifted = " (shields lifted)";

    /// <summary>From one terminal to another.</summary>
    public static Measurement Between(string from, string to) => new([from], [to]);

    /// <summary>Terminals it touches: the fewer, the sooner it is made.</summary>
    public int Size => From.Count + To.Count;

    /// <summary>Its id: <c>A+B&gt;C</c>. Card lines and results name it so.</summary>
    public string Id => $"{string.Join('+', From)}>{string.Join('+', To)}{(ShieldsLifted ? Lifted : "")}";

    /// <summary>How to make it, in words.</summary>
    public string Text => $"from {Place(From)} to {Place(To)}{(ShieldsLifted ? ", shields lifted from their grounds" : "")}";

    /// <summary>Reads an id; null when the text is none.</summary>
    public static Measurement? Read(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var lifted = id.EndsWith(Lifted, StringComparison.Ordinal);
        var sides = (lifted ? id[..^Lifted.Length] : id).Split('>');
        return sides.Length != 2 || sides.Any(s => s.Split('+').Any(string.IsNullOrWhiteSpace)) ? null
            : new(sides[0].Split('+').Select(t => t.Trim()).ToSequence(), sides[1].Split('+').Select(t => t.Trim()).ToSequence(), lifted);
    }

    private static string Place(Sequence<string> side) => side.Count == 1 ? side[0] : $"{string.Join(", ", side)} tied together";
}

/// <summary>A reading that was made.</summary>
/// <param name="Measurement">Where.</param>
/// <param name="Closed">Whether it read through.</param>
public sealed record Reading(Measurement Measurement, bool Closed);
