using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>Ultimate inertia loads of what is fitted, as its attachments feel them, in each direction for which there is a factor.</summary>
internal sealed class ItemLoads
{
    private readonly Outcome outcome;

    private ItemLoads(Outcome outcome) => this.outcome = outcome;

    /// <summary>The loads of a mass; null when the certification basis tells no factors.</summary>
    /// <param name="mass">What is fitted, with all that hangs on it.</param>
    /// <param name="mounted">How it is fitted.</param>
    /// <param name="zone">The zone it is in; null when not known, which is taken as in the cabin.</param>
    /// <param name="context">What the stage knows.</param>
    public static ItemLoads? Of(Mass mass, Mounted mounted, string? zone, StructureContext context)
    {
        var side = zone is null ? CabinSide.Inside : context.Job.Aircraft.Zones.Find(zone)?.Cabin ?? CabinSide.Inside;
        if (context.Basis.For(side) is not { } rule)
        {
            return null;
        }

        var stated = context.Job.Aircraft.LoadFactors;
        var worked = context.Memo.Run<InertiaLoads, InertiaLoadsInput>(
            new(mass, rule, mounted.Fitting, context.Positive, context.Negative, stated?.Up, stated?.Forward, stated?.Side, stated?.Down, stated?.Aft),
            "PU", "PD", "PF", "PA", "PS", "nU", "nD", "nF", "nA", "nS");
        var origin = stated?.Positive is null ? "manoeuvring factor of the category" : "load factors of the aircraft record";
        context.Add(worked, mounted, "loads", "State the load factors of the approved data in the aircraft record.", new()
        {
            ["m"] = "mass with mounting", ["rule"] = side == CabinSide.Inside ? "certification basis, item in the cabin" : $"certification basis, zone {zone} above or behind the cabin", ["fitting"] = mounted.Fitting == FittingFactor.Fitting ? "an attachment" : "an attachment that wears: taken out often", ["n"] = origin, ["nneg"] = origin,
        });
        return new ItemLoads(worked);
    }

    /// <summary>Every direction that has a load, with the load on the attachments.</summary>
    public IEnumerable<(Direction Direction, Force Load)> Cases() =>
        Enum.GetValues<Direction>().Select(d => (d, Force: outcome.Value(Index(d)))).Where(c => c.Force is not null).Select(c => (c.d, new Force(c.Force!.Value)));

    /// <summary>The greatest factor across a face, either way; null when there is none.</summary>
    public double? Across(Direction stands) => stands switch
    {
        Direction.Up or Direction.Down => Greater(outcome.Value(5), outcome.Value(6)),
        Direction.Forward or Direction.Aft => Greater(outcome.Value(7), outcome.Value(8)),
        _ => outcome.Value(9),
    };

    private static int Index(Direction direction) => Math.Min((int)direction, 4);

    private static double? Greater(double? a, double? b) => a is null || b > a ? b : a;
}
