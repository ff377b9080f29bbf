namespace Fairlead.Calculations.Structure;

/// <summary>The documents most structure rules come from.</summary>
internal static class StructureSources
{
    /// <summary>The handbook of fastener groups: rigid plate, areas as weights.</summary>
    public static readonly Source FastenerGroups = new("NASA RP-1228", "1990", "loads on fastener groups");

    /// <summary>The joint chapter of the materials handbook.</summary>
    public static readonly Source Joints = new("MIL-HDBK-5H", "", "page 8-9, solid rivets");

    /// <summary>A paragraph or table of the circular on acceptable repairs.</summary>
    public static Source Repair(string paragraph, Basis basis = Basis.Read) => new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", paragraph, basis);

    /// <summary>A paragraph or figure of the circular on acceptable alterations.</summary>
    public static Source Alteration(string paragraph) => new("FAA AC 43.13-2B", "3 Mar 2008", paragraph);

    /// <summary>A figure or section of the airframe handbook.</summary>
    public static Source Handbook(string section) => new("FAA-H-8083-31B", "vol. 1", "ch. 4, " + section);

    /// <summary>Arithmetic or mechanics that needs no document.</summary>
    public static Source Derived(string what) => new(what, "", "", Basis.Derived);
}

internal static class StructureCautions
{
    /// <summary>Reminds that approved data come first.</summary>
    public static void DeferToApprovedData(this SheetBuilder s) =>
        s.Caution("The approved data, the aircraft's structural repair manual and its certification basis come before this sheet; where they give a value or a limit, theirs holds. Check that the documents named are the editions in force.");
}

internal static class Weight
{
    /// <summary>Standard gravity, m/s².</summary>
    public const double Gravity = 9.80665;

    /// <summary>Force on a mass at a load factor.</summary>
    public static Force At(Mass mass, double factor) => new(mass.Si * Gravity * factor);
}
