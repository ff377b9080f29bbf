using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>What stands behind a bus: the source that feeds it and the resistance up to the bus.</summary>
internal sealed record Supply(PowerSource Source, Resistance Resistance, string Origin)
{
    /// <summary>The first source that feeds a bus, directly or through feeders, whose resistance is known all the way; null when there is none.</summary>
    public static Supply? Of(Bus? bus, WiringContext context)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return bus is null ? null : Of(bus.Id, context, seen);
    }

    private static Supply? Of(string bus, WiringContext context, HashSet<string> seen)
    {
        if (!seen.Add(bus))
        {
            return null;
        }

        var feeders = context.Aircraft.Feeders.OrEmpty().Where(f => f.To == bus).ToArray();
        var direct = context.Aircraft.Sources.OrEmpty().FirstOrDefault(s => s.Bus == bus && s.Resistance is not null);
        if (direct is not null && feeders.All(f => f.From != direct.Id))
        {
            return new Supply(direct, direct.Resistance!.Value, direct.Id);
        }

        foreach (var feeder in feeders)
        {
            var behind = context.Aircraft.Sources?.Find(feeder.From) is { Resistance: { } own } source ? new Supply(source, own, source.Id) : Of(feeder.From, context, seen);
            if (behind is not null && ColdOf(context.Parts.Wires?.Find(feeder.Wire), feeder.Length) is { } wire)
            {
                return behind with { Resistance = behind.Resistance + wire, Origin = $"{behind.Origin} + {feeder.Id}" };
            }
        }

        return null;
    }

    /// <summary>Resistance of a wire at 20 °C, or null when neither its part nor the table gives one.</summary>
    public static Resistance? ColdOf(WirePart? wire, Length length) => wire is null ? null : PerLength(wire) is { } r ? r * length : null;

    /// <summary>Resistance per length at 20 °C, of the part or else of the table.</summary>
    public static LinearResistance? PerLength(WirePart wire) =>
        wire.Resistance ?? (WireTable.Resistance(wire.Gauge, WiringContext.MaterialOf(wire)) is { IsKnown: true } table ? table.Value : null);
}
