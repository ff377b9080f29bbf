namespace Fairlead.Calculations.Power;

/// <summary>The rate at which a battery's capacity is quoted.</summary>
public enum QuotedRate
{
    /// <summary>One-hour rate.</summary>
    OneHour,

    /// <summary>Five-hour rate: 85 % of it counts as one-hour capacity.</summary>
    FiveHour,
}

/// <summary>Which share of the capacity may be counted on.</summary>
public enum CapacityRule
{
    /// <summary>0.80 of the one-hour capacity, times 0.90 state of charge.</summary>
    AgedAndPartlyCharged,

    /// <summary>0.75 of the nameplate capacity, small-aircraft practice.</summary>
    ThreeQuarters,
}

/// <summary>The charge that may be counted on.</summary>
internal static class BatteryCapacity
{
    private static readonly Source Leaflet = new("UK CAA CAP 562", "", "battery leaflet, paragraph 4.1");
    private static readonly Source StateOfCharge = new("UK CAA CAP 562 and AMC 25.1351(d)", "", "state of charge 90 %", Basis.Memory);
    private static readonly Source Practice = new("Equipment makers' published installation manuals", "", "emergency battery calculation, 75 % of nameplate");

    /// <summary>Adds the steps from nameplate to usable charge.</summary>
    public static Charge Add(SheetBuilder s, QuotedRate rate, CapacityRule rule)
    {
        var nameplate = new Charge(s.Given("C").Si);
        if (rule == CapacityRule.ThreeQuarters)
        {
            return s.Step("Cu", "usable charge", "0.75 · C", nameplate * 0.75, "A·min", Practice);
        }

        var oneHour = rate == QuotedRate.OneHour
            ? s.Step("C1", "one-hour capacity", "C", nameplate, "A·min", Leaflet)
            : s.Step("C1", "one-hour capacity", "0.85 · C", nameplate * 0.85, "A·min", Leaflet);
        var aged = s.Step("Ca", "usable share when aged", "0.80 · C1", oneHour * 0.80, "A·min", Leaflet);
        return s.Step("Cu", "usable charge at 90 % state of charge", "0.90 · Ca", aged * 0.90, "A·min", StateOfCharge);
    }
}
