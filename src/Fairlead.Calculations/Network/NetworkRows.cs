namespace Fairlead.Calculations.Network;

/// <summary>A generator, battery or external power: a voltage behind its internal resistance.</summary>
/// <param name="Name">Name.</param>
/// <param name="Node">Node of its positive terminal.</param>
/// <param name="Voltage">Voltage without load, 0 V to 1000 V.</param>
/// <param name="Resistance">Internal resistance, 1 µΩ to 1000 Ω.</param>
/// <param name="Return">Node of its negative terminal; the reference when left out.</param>
public sealed record NetworkSource(
    [In("name", "source")] string Name,
    [In("node", "node of its positive terminal")] string Node,
    [In("V", "voltage without load", "V", Min = 0, Max = 1000)] Voltage Voltage,
    [In("r", "internal resistance", "mΩ", Min = 0.001, Max = 1e6)] Resistance Resistance,
    [In("return", "node of its negative terminal", Default = "reference")] string Return = NetworkNodes.Reference);

/// <summary>A feeder, wire, breaker, contact or piece of structure: a resistance between two nodes.</summary>
/// <param name="Name">Name.</param>
/// <param name="From">One end.</param>
/// <param name="To">Other end.</param>
/// <param name="Resistance">Resistance, 1 nΩ to 1 MΩ.</param>
public sealed record NetworkBranch(
    [In("name", "branch")] string Name,
    [In("from", "one end")] string From,
    [In("to", "other end")] string To,
    [In("R", "resistance", "mΩ", Min = 1e-6, Max = 1e9)] Resistance Resistance);

/// <summary>A load. It draws a current, or a power, or is a resistance: exactly one is given.</summary>
/// <param name="Name">Name.</param>
/// <param name="Node">Node of its positive side.</param>
/// <param name="Current">The current it draws whatever the voltage.</param>
/// <param name="Power">The power it draws whatever the voltage.</param>
/// <param name="Resistance">Its resistance.</param>
/// <param name="Return">Node of its negative side; the reference when left out.</param>
/// <param name="Least">Least voltage it works at.</param>
public sealed record NetworkLoad(
    [In("name", "load")] string Name,
    [In("node", "node of its positive side")] string Node,
    [In("I", "current", "A", Min = 0, Max = 5000, Default = "none")] Current? Current = null,
    [In("P", "power", "W", Min = 0, Max = 100000, Default = "none")] Wattage? Power = null,
    [In("R", "resistance", "Ω", Min = 1e-3, Max = 1e9, Default = "none")] Resistance? Resistance = null,
    [In("return", "node of its negative side", Default = "reference")] string Return = NetworkNodes.Reference,
    [In("Vmin", "least voltage it works at", "V", Min = 0, Max = 1000, Default = "not checked")] Voltage? Least = null);

/// <summary>Names of nodes.</summary>
public static class NetworkNodes
{
    /// <summary>The node all voltages are measured from: the airframe at the sources' ground.</summary>
    public const string Reference = "0";
}
