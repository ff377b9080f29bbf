namespace Fairlead.Planning.Tasks;

/// <summary>The skills that derived tasks ask for. People of a job name them among theirs.</summary>
public static class Skills
{
    /// <summary>Opening and closing panels, seats and linings.</summary>
    public const string Access = "access";

    /// <summary>Holes, rivets, anchor nuts, mounting.</summary>
    public const string Structure = "structure";

    /// <summary>Sealant and paint.</summary>
    public const string Sealing = "sealing";

    /// <summary>Wires, contacts, continuity, insulation, bonding, power.</summary>
    public const string Electrical = "electrical";

    /// <summary>Boxes, data lines, coaxial cables, system tests.</summary>
    public const string Avionics = "avionics";

    /// <summary>Software and settings.</summary>
    public const string Configuration = "configuration";

    /// <summary>Inspections.</summary>
    public const string Inspection = "inspection";

    /// <summary>Authorisation to release to service.</summary>
    public const string Release = "release to service";

    /// <summary>A second signature: whoever holds any authorisation may give it, if he had no part in the work.</summary>
    public const string Second = "second signature";

    /// <summary>The authorisation under which work of a skill is signed; empty when anybody may.</summary>
    public static string Authorisation(string skill) => skill switch
    {
        Sealing => Structure,
        Configuration => Avionics,
        Structure or Electrical or Avionics or Inspection => skill,
        _ => "",
    };
}
