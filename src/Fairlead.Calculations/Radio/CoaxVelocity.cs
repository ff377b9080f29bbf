using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Radio;

/// <summary>Velocity and delay in a cable.</summary>
public static class CoaxVelocity
{
    /// <summary>Time a wave takes along a length of cable: L / (vf · c).</summary>
    public static Duration Delay(Length length, Fraction velocity) => Propagation.Delay(length) / velocity.Si;

    /// <summary>Puts the velocity factor on the sheet, stated or of a cable of the table, or says why there is none and returns null.</summary>
    internal static Fraction? Add(SheetBuilder s, string symbol, Coax? cable, Fraction? stated)
    {
        if (stated is { } given)
        {
            return s.Step(symbol, "velocity over that of light", "as stated", given, "%", RadioSources.Stated);
        }

        if (cable is { } known)
        {
            return s.Step(symbol, "velocity over that of light", "table by cable", CoaxTable.Velocity(known), "%");
        }

        s.CannotTell("Give a cable of the table, or the velocity factor from its sheet.");
        return null;
    }
}
