using Fairlead.Calculations;
using Fairlead.Drawings.Wiring;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Connectors;

/// <summary>A connector with its face and a row for each cavity.</summary>
/// <param name="Item">The box, or whatever it belongs to.</param>
/// <param name="Name">Name of that.</param>
/// <param name="Designator">Designator.</param>
/// <param name="Part">Part and its name.</param>
/// <param name="Face">Its face from the rear; null when the positions of its cavities are not stated.</param>
/// <param name="Rows">Its cavities.</param>
public sealed record ConnectorTable(string Item, string Name, string Designator, string Part, Picture? Face, Sequence<ConnectorRow> Rows);

/// <summary>A cavity.</summary>
/// <param name="Cavity">Its name.</param>
/// <param name="Circuit">Circuit that ends there; empty when none does.</param>
/// <param name="Wire">Circuit and gauge.</param>
/// <param name="To">Where the circuit goes.</param>
/// <param name="Signal">Signal of the contact.</param>
public sealed record ConnectorRow(string Cavity, string Circuit, string Wire, string To, string Signal);

/// <summary>The connectors of a job, as tables.</summary>
public static class ConnectorTables
{
    /// <summary>The connectors that new circuits end in, in the order of the circuits.</summary>
    public static IEnumerable<ConnectorTable> Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var ends = new Ends(assessment.Job);
        return ConnectorSheets.Connectors(assessment).Select(c => new ConnectorTable(
            c.Item, ends.NameOf(c.Item), c.Designator, $"{c.Part.Id}, {c.Part.Name}", ConnectorFace.Alone(c), c.Part.Cavities.SelectMany(cavity => Rows(c, cavity, ends)).ToSequence()));
    }

    private static IEnumerable<ConnectorRow> Rows(Wired connector, string cavity, Ends ends)
    {
        var here = new Endpoint(connector.Item, connector.Designator, cavity);
        var circuits = connector.Circuits.GetValueOrDefault(cavity) ?? [];
        return circuits.Count == 0 ? [new ConnectorRow(cavity, "", "", "", ends.SignalAt(here))]
            : circuits.Select(c => new ConnectorRow(cavity, c.Circuit.Id, ConnectorFace.Wire(c), ConnectorFace.Far(c.Circuit, here), ends.SignalAt(here)));
    }
}
