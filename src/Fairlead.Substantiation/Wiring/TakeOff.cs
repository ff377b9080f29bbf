using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Takes off a circuit what does not depend on other circuits: its ends, way, length and part.</summary>
internal static class TakeOff
{
    private static readonly Source Route = new("This job", "", "raceways", Basis.Stated);

    public static CircuitState Of(Circuit circuit, WiringContext context)
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
        Measure(state, context);
        return state;
    }

    private static void Measure(CircuitState state, WiringContext context)
    {
        var circuit = state.Circuit;
        var (from, to) = (context.FixtureOf(circuit.From), context.FixtureOf(circuit.To));
        state.Node = from?.Node ?? to?.Node;
        state.Way = from?.Node is { } a && to?.Node is { } b ? context.Raceways.Find(new Journey(a, b, circuit.Avoid, circuit.Via)) : null;
        if (circuit.Length is { } stated)
        {
            (state.Length, state.LengthOrigin) = (stated, "stated for the circuit");
        }
        else if (state.Way is { } way)
        {
            (state.Length, state.LengthOrigin) = Cut(way, context.Defaults, (from!.Kind == FixtureKind.Box ? 1 : 0) + (to!.Kind == FixtureKind.Box ? 1 : 0));
        }

        state.RouteFinding = state.Way is null ? NoRoute(state, from, to) : null;
        state.LengthFinding = circuit.Length is { } given && state.Way is { } along && given < along.Length ? TooShort(state, given, along) : null;
    }

    private static (Length Length, string Origin) Cut(Way way, WiringDefaults defaults, int boxes)
    {
        var length = (way.Length * (1 + defaults.Slack.Si)) + (defaults.Termination * 2) + (defaults.ServiceLoop * boxes);
        var loops = boxes == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" + {boxes} service loop{(boxes == 1 ? "" : "s")} of {defaults.ServiceLoop.As("in")}");
        return (length, $"way {way.Length.As("in")} + {defaults.Slack.As("%")} slack + 2 terminations of {defaults.Termination.As("in")}{loops}");
    }

    private static Finding TooShort(CircuitState state, Length given, Way way) => new(
        "length-short", Verdict.Fails, state.Subject, $"The length stated for {state.Circuit.Id}, {given.As("in")}, is less than its way through the raceways, {way.Length.As("in")}: drop and mass come out too small.", "", Route,
        "State the length with slack and terminations, or leave it out and it follows from the way.", state.Path);

    private static Finding NoRoute(CircuitState state, Fixture? from, Fixture? to)
    {
        var circuit = state.Circuit;
        var homeless = from?.Node is null ? circuit.From : to?.Node is null ? circuit.To : (Endpoint?)null;
        var message = homeless is { } end ? $"{end} stands at no raceway point, so the circuit has no way."
            : $"No way through the raceways leads from {from!.Node} to {to!.Node}{(circuit.Avoid.Count + circuit.Via.Count > 0 ? " under the circuit's 'avoid' and 'via'" : "")}.";
        return new("no-route", state.Length is null ? Verdict.Fails : Verdict.CannotTell, state.Subject, message, "", Route,
            homeless is { } e ? $"Give {e.Item} a raceway point." : "Add a segment, or change 'avoid' and 'via'.", state.Path);
    }
}
