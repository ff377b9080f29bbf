namespace Fairlead.Model;

/// <summary>Whether the half of a connector is the moving or the fixed one.</summary>
public enum ConnectorForm
{
    /// <summary>Plug: it carries the coupling.</summary>
    Plug,

    /// <summary>Receptacle.</summary>
    Receptacle,
}

/// <summary>The contacts that the half of a connector carries.</summary>
public enum ContactGender
{
    /// <summary>Pins.</summary>
    Pins,

    /// <summary>Sockets.</summary>
    Sockets,
}

/// <summary>What decides whether the half of a connector mates with another. What is left out is not compared.</summary>
public sealed record ConnectorHalf(
    [Doc("its part number")] string Part = "",
    [Doc("plug or receptacle")] ConnectorForm? Form = null,
    [Doc("shell size")] string Shell = "",
    [Doc("insert arrangement")] string Insert = "",
    [Doc("contacts it carries")] ContactGender? Gender = null,
    [Doc("keying position")] string Keying = "");
