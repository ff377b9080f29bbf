using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Routing;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Takes off a circuit what does not depend on other circuits: its ends, way, length and part.</summary>
internal static class TakeOff
{
    private static readonly Source Route = new("This job", "", "raceways", Basis.Stated);

    /// <param name="circuit">The circuit.</param>
    /// <param name="context">Where it runs.</param>
    /// <param name="detour">The way it takes in place of its shortest one.</param>
    public static CircuitState Of(Circuit circuit, WiringContext context, Way? detour = null)
    {
        var state = new CircuitState(circuit)
        {
            FromContact = context.ContactOf(circuit.From),
            ToContact = context.ContactOf(circuit.To),
            Cable = context.Parts.Cables?.Find(circuit.Wire),
            Coax = context.Parts.Coax?.Find(circuit.Wire),
            Direct = new[] { circuit.From, circuit.To }.Where(e => e.IsPoint && context.FixtureOf(e)?.Kind == FixtureKind.Breaker && context.BreakerPartOf(e.Item) is not null)
                .Select(e => (Protection?)new Protection(e.Item, context.BreakerPartOf(e.Item)!.Rating)).MaxBy(p => p?.Rating.Si),
        };
        state.Named = context.Parts.Wires?.Find(circuit.Wire) ?? context.Parts.Wires?.Find(state.Cable?.Core);
        Measure(state, context, detour);
        return state;
    }

    private static void Measure(CircuitState state, WiringContext context, Way? detour)
    {
        var circuit = state.Circuit;
        var (from, to) = (context.FixtureOf(circuit.From), context.FixtureOf(circuit.To));
        state.Node = from?.Node ?? to?.Node;
        if (from?.Node is { } a && to?.Node is { } b)
        {
            var barred = context.Routing.ClosedTo(circuit.Separation);
            state.Journey = new Journey(a, b, barred.Count == 0 ? circuit.Avoid : circuit.Avoid.Concat(barred).ToSequence(), circuit.Via);
            state.Free = context.Raceways.Find(state.Journey);
            state.Way = detour ?? state.Free;
        }

        Cut(state, context.Defaults, from?.Kind == FixtureKind.Box, to?.Kind == FixtureKind.Box);
        state.RouteFinding = state.Way is null ? NoRoute(state, from, to, context) : null;
        state.LengthFinding = circuit.Length is { } given && state.Way is { } along && given < along.Length ? TooShort(state, given, along) : state.Length is { Si: <= 0 } ? NoLength(state) : null;
    }

    // What a stated length has beyond the way lies in halves at its ends.
    private static void Cut(CircuitState state, WiringDefaults defaults, bool boxFrom, bool boxTo)
    {
        if (state.Circuit.Length is { } stated)
        {
            var way = state.Way?.Length ?? default;
            var end = way < stated ? (stated - way) / 2 : Length.Zero;
            (state.Length, state.LengthOrigin, state.Spread) = (stated, "stated for the circuit", new(stated - (end * 2), end, end));
        }
        else if (state.Way is { } way)
        {
            Length End(bool box) => defaults.Termination + defaults.DripLoop + (box ? defaults.ServiceLoop + defaults.Withdrawal : Length.Zero);
            state.Spread = new(way.Length * (1 + defaults.Slack.Si), End(boxFrom), End(boxTo));
            state.Length = state.Spread.Along + state.Spread.From + state.Spread.To;
            state.LengthOrigin = Origin(way, defaults, (boxFrom ? 1 : 0) + (boxTo ? 1 : 0));
        }
    }

    private static string Origin(Way way, WiringDefaults defaults, int boxes)
    {
        static string Each(int count, string name, Length each) => count == 0 || each.Si == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" + {count} {name}{(count == 1 ? "" : "s")} of {each.As("in")}");
        var loops = boxes == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" + {boxes} service loop{(boxes == 1 ? "" : "s")} of {defaults.ServiceLoop.As("in")}");
        return $"way {way.Length.As("in")} + {defaults.Slack.As("%")} slack + 2 terminations of {defaults.Termination.As("in")}{Each(2, "drip loop", defaults.DripLoop)}{loops}{Each(boxes, "withdrawal", defaults.Withdrawal)}";
    }

    private static Finding TooShort(CircuitState state, Length given, Way way) => new(
        "length-short", Verdict.Fails, state.Subject, $"The length stated for {state.Circuit.Id}, {given.As("in")}, is less than its way through the raceways, {way.Length.As("in")}: drop and mass come out too small.", "", Route,
        "State the length with slack and terminations, or leave it out and it follows from the way.", state.Path);

    private static Finding NoLength(CircuitState state) => new(
        "length-short", Verdict.Fails, state.Subject, $"{state.Circuit.Id} has no length: both its ends stand at {state.Node}, and the change adds no slack, termination or loop.", "", Route,
        "State the termination length of the change, or the length of the circuit.", state.Path);

    private static Finding NoRoute(CircuitState state, Fixture? from, Fixture? to, WiringContext context)
    {
        var circuit = state.Circuit;
        var homeless = from?.Node is null ? circuit.From : to?.Node is null ? circuit.To : (Endpoint?)null;
        var message = homeless is { } end ? $"{end} stands at no raceway point, so the circuit has no way."
            : $"No way through the raceways leads from {from!.Node} to {to!.Node}{(circuit.Avoid.Count + circuit.Via.Count > 0 ? " under the circuit's 'avoid' and 'via'" : "")}.{Blocking.Text(state, context)}";
        return new("no-route", state.Length is null ? Verdict.Fails : Verdict.CannotTell, state.Subject, message, "", Route,
            homeless is { } e ? $"Give {e.Item} a raceway point." : "Add a segment, or change 'avoid' and 'via'.", state.Path);
    }
}
