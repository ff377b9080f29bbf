namespace Fairlead.Drawings;

/// <summary>Font sizes of drawings, mm. The least nominal height of lettering in ISO 3098-1 is 1.8 mm, measured at a capital [from memory]; no text of a sheet is smaller.</summary>
public static class Lettering
{
    /// <summary>The least nominal height of a capital letter, mm.</summary>
    public const double LeastHeight = 1.8;

    /// <summary>Notes, wire marks, contacts.</summary>
    public const double Small = 2.6;

    /// <summary>Names of boxes and points.</summary>
    public const double Name = 3;
}
