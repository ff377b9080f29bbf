namespace Fairlead.Calculations;

/// <summary>The products and quotients of different quantities that the calculations use, one line a law.</summary>
public static class Laws
{
    extension(Current)
    {
        /// <summary>Ohm's law.</summary>
        public static Voltage operator *(Current i, Resistance r) => new(i.Si * r.Si);

        /// <summary>Charge drawn in a time.</summary>
        public static Charge operator *(Current i, Duration t) => new(i.Si * t.Si);

        /// <summary>Power at a voltage.</summary>
        public static Wattage operator *(Current i, Voltage v) => new(i.Si * v.Si);
    }

    extension(Voltage)
    {
        /// <summary>Ohm's law.</summary>
        public static Current operator /(Voltage v, Resistance r) => new(v.Si / r.Si);

        /// <summary>Ohm's law.</summary>
        public static Resistance operator /(Voltage v, Current i) => new(v.Si / i.Si);
    }

    extension(Wattage)
    {
        /// <summary>Current drawn at a voltage.</summary>
        public static Current operator /(Wattage p, Voltage v) => new(p.Si / v.Si);
    }

    extension(Charge)
    {
        /// <summary>Time that a charge lasts at a current.</summary>
        public static Duration operator /(Charge q, Current i) => new(q.Si / i.Si);
    }

    extension(LinearResistance)
    {
        /// <summary>Resistance of a length.</summary>
        public static Resistance operator *(LinearResistance r, Length l) => new(r.Si * l.Si);
    }

    extension(LinearMass)
    {
        /// <summary>Mass of a length.</summary>
        public static Mass operator *(LinearMass m, Length l) => new(m.Si * l.Si);
    }

    extension(Mass)
    {
        /// <summary>Moment of a mass about the datum.</summary>
        public static MassMoment operator *(Mass m, Length arm) => new(m.Si * arm.Si);
    }

    extension(MassMoment)
    {
        /// <summary>Arm of a moment.</summary>
        public static Length operator /(MassMoment moment, Mass m) => new(moment.Si / m.Si);
    }

    extension(Density)
    {
        /// <summary>Mass of a volume.</summary>
        public static Mass operator *(Density d, Volume v) => new(d.Si * v.Si);
    }

    extension(AreaMass)
    {
        /// <summary>Mass on an area.</summary>
        public static Mass operator *(AreaMass load, Area a) => new(load.Si * a.Si);
    }

    extension(Temperature)
    {
        /// <summary>Temperature reached by a rise.</summary>
        public static Temperature operator +(Temperature t, TemperatureRise rise) => new(t.Si + rise.Si);

        /// <summary>Rise between two temperatures: <c>to.RiseFrom(from)</c>.</summary>
        public static TemperatureRise Rise(Temperature from, Temperature to) => new(to.Si - from.Si);
    }
}
