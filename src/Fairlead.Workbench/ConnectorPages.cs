using System.Collections.Immutable;
using Fairlead.Drawings;
using Fairlead.Drawings.Connectors;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench;

/// <summary>Connectors with their contacts and what was found of the circuits that end there.</summary>
internal static class ConnectorPages
{
    public static ImmutableArray<ConnectorPage> Of(Assessment assessment)
    {
        var findings = assessment.Findings.Select(Standing.Of).ToArray();
        return [.. ConnectorTables.Of(assessment).Select(t => new ConnectorPage(
            t.Item, t.Name, t.Designator, t.Part, t.Face is { } face ? SvgWriter.Write(face) : "", [.. t.Rows.Select(r => new ContactRow(r.Cavity, r.Circuit, r.Wire, r.To, r.Signal, Found(r.Circuit, findings)))]))];
    }

    private static ImmutableArray<FindingView> Found(string circuit, FindingView[] findings) => circuit.Length == 0 ? []
        : [.. findings.Where(f => f.Subject.Split('/').Contains(circuit) || f.Path.Split('/').Contains(circuit))];
}
