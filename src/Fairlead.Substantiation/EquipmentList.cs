using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation;

/// <summary>The equipment list after the change, antennas included: what stays, what comes out, what goes in.</summary>
internal static class EquipmentList
{
    public static ImmutableArray<EquipmentLine> Of(Job job)
    {
        var (aircraft, change) = (job.Aircraft, job.Change);
        var removed = change.Remove.OrEmpty().Select(r => r.Item).ToHashSet(StringComparer.Ordinal);
        ListAction Existing(string id) => removed.Contains(id) ? ListAction.Removed : ListAction.Kept;
        return
        [
            .. aircraft.Equipment.OrEmpty().Select(i => new EquipmentLine(i.Id, i.Name, i.Mass, i.Place, i.Category, Existing(i.Id))),
            .. aircraft.Antennas.OrEmpty().Select(a => new EquipmentLine(a.Id, a.Name, a.Mass, a.Place, EquipmentCategory.Optional, Existing(a.Id))),
            .. change.Fit.OrEmpty().Select(f => (f, part: job.Parts.Equipment?.Find(f.Part))).Where(x => x.part is not null)
                .Select(x => new EquipmentLine(x.f.Id, x.part!.Name, x.part.Mass + x.f.Mounting, x.f.Place, x.f.Category, ListAction.Fitted)),
            .. change.Antennas.OrEmpty().Select(a => (a, part: job.Parts.Antennas?.Find(a.Part))).Where(x => x.part is not null)
                .Select(x => new EquipmentLine(x.a.Id, x.part!.Name, x.part.Mass + x.a.Doubler, x.a.Place, EquipmentCategory.Optional, ListAction.Fitted)),
        ];
    }
}
