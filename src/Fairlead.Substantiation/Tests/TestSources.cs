using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>Where the limits of test cards come from, and the limits that no calculation gives.</summary>
internal static class TestSources
{
    /// <summary>Greatest resistance of a contact, ohm.</summary>
    public const double Contact = 0.1;

    /// <summary>Greatest resistance of a signal run whose length is not known, ohm.</summary>
    public const double Run = 1;

    /// <summary>Least insulation of fitted wire, megohm.</summary>
    public const double Insulation = 10;

    /// <summary>Greatest voltage at a contact that has to be dead.</summary>
    public const double Dead = 0.5;

    /// <summary>Least current of a box that is alive, A: what an ammeter shows as none.</summary>
    public const double Drawn = 0.01;

    public static readonly Source Wire = new("Trade practice", "", "wire resistance cold by gauge and length, and 0.1 Ω for each contact", Basis.CommonPractice);
    public static readonly Source Short = new("Trade practice", "", "signal run below 1 Ω", Basis.CommonPractice);
    public static readonly Source Isolation = new("Trade practice", "", "at least 10 MΩ on fitted wire, boxes unplugged", Basis.CommonPractice);
    public static readonly Source Coax = new("Trade practice", "", "centre and braid end to end at most 0.5 Ω", Basis.CommonPractice);
    public static readonly Source Power = new("Trade practice", "", "right voltage at the right pins and nowhere else", Basis.CommonPractice);
    public static readonly Source Survey = new("Trade practice", "", "look before measuring", Basis.CommonPractice);
    public static readonly Source Pulses = new("Trade practice", "", "suppression pulse looked at at both ends, not only continuity", Basis.CommonPractice);
    public static readonly Source Transponder = new("14 CFR 43 appendix F", "", "24-month transponder tests", Basis.Memory);
    public static readonly Source Bearing = new("FAA AC 20-131A and AC 20-151", "", "bearing and range of a traffic display", Basis.Memory);

    /// <summary>The part that says so.</summary>
    public static Source Part(string part, string what) => new($"Part {part}", "", what, Basis.Stated);

    /// <summary>The change that says so.</summary>
    public static Source Change(string what) => new("This change", "", what, Basis.Stated);
}
