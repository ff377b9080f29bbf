using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>One set of conditions that a wire meets along its way.</summary>
/// <param name="Where">Segment or raceway point.</param>
/// <param name="At">How hot and how high.</param>
/// <param name="Wires">Wires in the bundle.</param>
/// <param name="Loading">Loading of the bundle.</param>
/// <param name="Coolest">Lowest temperature rating in the bundle.</param>
internal readonly record struct Condition(string Where, Surroundings At, int Wires, Fraction Loading, Temperature? Coolest = null)
{
    /// <summary>The temperature rating that counts for a wire there: no neighbour may be made hotter than it stands.</summary>
    public Temperature Rating(WirePart wire) => Coolest is { } coolest && coolest < wire.Rating ? coolest : wire.Rating;
}

/// <summary>Chooses wires for 'auto'.</summary>
/// <remarks>
/// The loading curve p of a bundle depends on the wires chosen, and the wires on the curve. It settles after one pass:
/// start with the smallest wire S0 that serves on the 20 % curve, take the bundle's curve p0 with those, and choose the greater of S0
/// and what serves on p0. A greater wire carries more, so the same currents load the bundle no more than before: p1 is at most p0. What
/// p1 asks for is then already there: on a curve between 20 % and p0 a wire is allowed at least what it is on p0, and on 20 % it is S0 that
/// was chosen for it. (Both are needed: the breaker chart of AC 43.13-1B table 11-3 applies only up to 20 %, where it may be
/// stricter than the bundle current of a higher curve.) Sizes thus only grow, once, and the result does not depend on the order of edits.
/// </remarks>
internal static class Sizing
{
    private static readonly Fraction Lowest = BundleDerating.Curves[0];

    /// <summary>Answer of <see cref="WireSize.Choose"/>, boxed so that "none" can be kept too.</summary>
    internal sealed record Choice(CandidateWire? Wire);

    /// <summary>The conditions met along the way, each once: those of the bundles, or of the place where the circuit uses no segment.</summary>
    /// <param name="state">The circuit.</param>
    /// <param name="context">Where it runs.</param>
    /// <param name="loading">The loading of a bundle; where it is null the bundle's conditions are left out.</param>
    public static IEnumerable<Condition> Conditions(CircuitState state, WiringContext context, Func<BundleState, Fraction?> loading) =>
        state.Bundles.IsEmpty
            ? [new(state.Node ?? "", context.AtNode(state.Node), 1, Lowest)]
            : state.Bundles.Where(b => loading(b) is not null)
                .Select(b => new Condition(b.Segment, b.At, b.Wires, loading(b)!.Value, b.Coolest)).DistinctBy(c => (c.At, c.Wires, c.Loading, c.Coolest));

    /// <summary>The smallest candidate on the lowest curve; -1 when none serves.</summary>
    public static int Start(CircuitState state, WiringContext context, Memo memo) => context.Candidates.IsEmpty ? -1 :
        Greatest(Conditions(state, context, _ => Lowest).Select(c => Choose(state, context, memo, c)));

    /// <summary>The smallest candidate on the bundles' own curves, no smaller than the start; -1 when none serves.</summary>
    public static int Settle(CircuitState state, WiringContext context, Memo memo) => state.Start < 0 ? -1
        : Greatest(Conditions(state, context, b => b.StartLoading).Select(c => Choose(state, context, memo, c)).Prepend(state.Start));

    /// <summary>Input of 'wire-size' under some conditions.</summary>
    public static WireSizeInput Input(CircuitState state, WiringContext context, Condition condition)
    {
        var family = context.Candidates[0];
        var (budget, nominal) = Budget(state, context);
        return new WireSizeInput(
            state.Current, state.Length ?? default, nominal, condition.Rating(family), condition.At.Ambient, condition.At.Altitude, condition.Wires, condition.Loading,
            Limit: budget, Breaker: state.Protection?.Rating, Thinnest: Thinnest(state), Thickest: Thickest(state),
            Conductor: WiringContext.MaterialOf(family), Candidates: context.CandidateInput);
    }

    /// <summary>The drop this circuit may take: its share, by length, of what its feed allows; the whole of the strictest bus where no feed runs through it.</summary>
    private static (Voltage? Limit, Voltage Nominal) Budget(CircuitState state, WiringContext context)
    {
        if (state.Shares.Count == 0)
        {
            return (null, context.StrictestNominal);
        }

        var tightest = state.Shares.Min(s => s.Feed.DropPerMetre);
        var nominal = state.Shares[0].Feed.Bus?.Nominal ?? context.StrictestNominal;
        return (tightest is { } perMetre && state.Length is { } length ? new Voltage(Math.Max(perMetre * length.Si, 0.001)) : null, nominal);
    }

    /// <summary>The smallest candidate that serves under some conditions, by index; -1 when none does. Where none keeps the circuit's share of
    /// its feed's drop, the thickest that serves otherwise: the feed's own check tells whether the whole way drops too much, and names the wire
    /// that drops most of it, which may be another.</summary>
    public static int Choose(CircuitState state, WiringContext context, Memo memo, Condition condition)
    {
        var choice = memo.Get<WireSize, WireSizeInput, Choice>(Input(state, context, condition), i => new Choice(WireSize.Choose(i) ?? (i.Limit is null ? null : WireSize.Thickest(i))));
        return choice.Wire is null ? -1 : context.CandidateInput.Span.IndexOf(choice.Wire);
    }

    private static int Greatest(IEnumerable<int> choices) => choices.Aggregate((a, b) => a < 0 || b < 0 ? -1 : Math.Max(a, b));

    // The wire must suit both contacts: the thicker of the two lower limits, the thinner of the two upper ones.
    private static Gauge? Thinnest(CircuitState state) => Ends(state).Select(c => (Gauge?)c.Thinnest).Max();

    private static Gauge? Thickest(CircuitState state) => Ends(state).Select(c => (Gauge?)c.Thickest).Min();

    private static IEnumerable<ContactPart> Ends(CircuitState state) => new[] { state.FromContact, state.ToContact }.OfType<ContactPart>();
}
