using Fairlead.Calculations;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Cli.Output;

/// <summary>A kit for other programs.</summary>
internal sealed record KitJson(bool Complete, string Verdict, DateOnly? UseDate, IReadOnlyList<string> Missing, IReadOnlyList<KitLineJson> Lines)
{
    public static KitJson Of(KitList kit) => new(kit.IsComplete, kit.Verdict, kit.UseDate, kit.Missing, [.. kit.Lines.Select(KitLineJson.Of)]);
}

/// <summary>A line of a kit; what is on hand is null where the job does not say.</summary>
internal sealed record KitLineJson(
    string Kind, string? Part, string Name, string Unit, double Need, double Used, double Spare, double? OnHand, double Shortage, string State, DateOnly? NeededOn, DateOnly? OrderBy, IReadOnlyList<string> For, string How, string Remark)
{
    public static KitLineJson Of(KitLine l) => new(
        Words.Kebab(l.Kind.ToString()), l.Part.Length > 0 ? l.Part : null, l.Name, l.Unit, l.Need, l.Used, l.Spare, l.OnHand, l.Shortage, Words.Kebab(l.State.ToString()), l.NeededOn, l.OrderBy, [.. l.For], l.How, l.Remark);
}
