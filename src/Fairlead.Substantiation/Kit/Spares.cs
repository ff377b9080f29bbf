using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>How much is taken beyond what the change uses: the job's own rule, or common practice where it states none.</summary>
internal sealed class Spares(SpareRules? rules)
{
    private static readonly Dictionary<KitKind, SpareRule> Practice = new()
    {
        [KitKind.Wire] = new(new(0.15)),
        [KitKind.Contact] = new(new(0.2), 5),
        [KitKind.Terminal] = new(new(0.2), 5),
        [KitKind.Shield] = new(new(0.2), 5),
        [KitKind.Fastener] = new(new(0.2), 10),
        [KitKind.Rivet] = new(new(0.2), 10),
        [KitKind.AnchorNut] = new(new(0.1), 2),
        [KitKind.Marking] = new(new(0.2), 5),
        [KitKind.Tie] = new(new(0.2), 5),
        [KitKind.Plug] = new(new(0.2), 5),
        [KitKind.Sealant] = new(new(0), 1),
    };

    /// <summary>The spare of a quantity in its unit, and the rule in words; whole pieces unless it is a length.</summary>
    public (double Spare, string Rule) Of(KitKind kind, double used)
    {
        var (rule, own) = Rule(kind);
        if (rule is null || used <= 0)
        {
            return (0, "no spare");
        }

        var share = used * rule.Share.Si;
        var spare = kind == KitKind.Wire ? share : Math.Max(Math.Ceiling(share - 1e-9), rule.Least);
        var least = rule.Least == 0 ? "" : rule.Share.Si == 0 ? $"{NumberFormat.Text(rule.Least)}" : $", at least {NumberFormat.Text(rule.Least)}";
        var words = rule.Share.Si > 0 || rule.Least == 0 ? $"{rule.Share.As("%")}{least}" : least;
        return (spare, $"spare {words} {(own ? "[as stated by the user]" : "[common practice]")}");
    }

    private (SpareRule? Rule, bool Own) Rule(KitKind kind)
    {
        var own = kind switch
        {
            KitKind.Wire => rules?.Wire,
            KitKind.Contact => rules?.Contacts,
            KitKind.Terminal or KitKind.Shield => rules?.Terminations,
            KitKind.Fastener => rules?.Fasteners,
            KitKind.Rivet => rules?.Rivets,
            KitKind.AnchorNut => rules?.AnchorNuts,
            KitKind.Marking or KitKind.Tie or KitKind.Plug => rules?.Consumables,
            KitKind.Sealant => rules?.Sealants,
            _ => null,
        };
        return own is null ? (Practice.GetValueOrDefault(kind), false) : (own, true);
    }
}
