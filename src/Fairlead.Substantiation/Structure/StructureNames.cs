using Fairlead.Calculations.Structure;

namespace Fairlead.Substantiation.Structure;

/// <summary>Alloys by the names that parts and structure sheets give them.</summary>
internal static class StructureNames
{
    /// <summary>The alloy of a rivet; null when the name is not known.</summary>
    public static RivetAlloy? Alloy(string material) =>
        Starts(material, "2017-T31") ? RivetAlloy.Hd2017
        : Starts(material, "2117") ? RivetAlloy.Ad2117
        : Starts(material, "2017") ? RivetAlloy.D2017
        : Starts(material, "2024") ? RivetAlloy.Dd2024
        : Starts(material, "5056") ? RivetAlloy.B5056
        : Starts(material, "1100") ? RivetAlloy.A1100
        : Starts(material, "monel") ? RivetAlloy.Monel
        : null;

    /// <summary>The table of rivets per inch for a sheet. Tables 4-9 and 4-10 both name 2024-T3; the first asks more rivets and is taken. Null when no table names it.</summary>
    public static SheetGroup? Group(string material) =>
        Starts(material, "2014-T6") || Starts(material, "2024-T3") || Starts(material, "7075-T6") ? SheetGroup.HighStrength
        : Starts(material, "2017") ? SheetGroup.Alclad2024
        : Starts(material, "5052") ? SheetGroup.Alloy5052
        : null;

    private static bool Starts(string material, string name) => material.StartsWith(name, StringComparison.OrdinalIgnoreCase);
}
