using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>A wire of a harness under test.</summary>
/// <param name="Id">Circuit.</param>
/// <param name="From">Terminal at one end.</param>
/// <param name="To">Terminal at the other end.</param>
/// <param name="Shield">Terminal of the shield around it; empty for none.</param>
/// <param name="Twist">Wires of one name are twisted together.</param>
public sealed record HarnessWire(string Id, string From, string To, string Shield = "", string Twist = "");

/// <summary>Two cavities next to each other.</summary>
public sealed record Neighbours(string A, string B);

/// <summary>The wiring of one connector with both ends unplugged and breakers pulled, as a meter sees it.</summary>
/// <param name="Connector">The connector, for example <c>XPD1 P1</c>.</param>
/// <param name="Contacts">Its wired contacts.</param>
/// <param name="Wires">Every wire of the nets that reach it.</param>
/// <param name="Neighbours">Pairs of its wired contacts that lie next to each other.</param>
/// <param name="GroundedShields">Shields that are grounded.</param>
/// <param name="Hidden">Splices and other points that no probe reaches.</param>
public sealed record HarnessUnderTest(
    string Connector, Sequence<string> Contacts, Sequence<HarnessWire> Wires, Sequence<Neighbours> Neighbours = default,
    Sequence<string> GroundedShields = default, Sequence<string> Hidden = default)
{
    /// <summary>The airframe as a terminal.</summary>
    public const string Airframe = "airframe";

    /// <summary>Every terminal, those no probe reaches included, in order of name.</summary>
    public ImmutableArray<string> Terminals() =>
        [.. Wires.SelectMany(w => new[] { w.From, w.To, w.Shield }).Where(t => t.Length > 0).Concat(Contacts).Append(Airframe).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>The connector half a terminal belongs to: its name up to the last hyphen; itself when it is a single point.</summary>
    public static string HalfOf(string terminal)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        return terminal.Contains(' ', StringComparison.Ordinal) && terminal.LastIndexOf('-') is > 0 and var at ? terminal[..at] : terminal;
    }
}
