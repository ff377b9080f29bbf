using Fairlead.Calculations;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Planning.Cards;

/// <summary>The register of panels: one line, one bag and one signature for each.</summary>
public static class PanelRegister
{
    /// <summary>Every panel and furnishing that is opened, in the order of opening.</summary>
    public static CardTable Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        return new CardTable("Panels and furnishings", ["Panel, bag", "Name", "Zone", "Fasteners", "Kind", "Out", "By", "In", "By", "Signed"],
            TaskList.Opened(assessment).Select(p => (Sequence<string>)[p.Controls ? p.Id + " (controls)" : p.Id, p.Name, p.Zone, NumberFormat.Text(p.Fasteners), p.Fastener, "", "", "", "", ""]).ToSequence())
        {
            Note = "One line, one bag, one signature for each: there is no signature for all. They are closed in the reverse order. Behind those marked, flight controls are checked by two persons after closing.",
        };
    }
}
