using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>A loading station with its place across the aircraft.</summary>
/// <param name="Name">Name; each only once.</param>
/// <param name="Arm">Buttock line of the load.</param>
/// <param name="Max">Greatest mass.</param>
/// <param name="Min">Least mass.</param>
/// <param name="Groups">The groups it belongs to, joined by <c>+</c>.</param>
public sealed record LateralStationRow(
    [In("name", "loading station")] string Name,
    [In("BL", "buttock line", "in", Min = -2000, Max = 2000)] Length Arm,
    [In("max", "greatest mass", "lb", Min = 0, Max = 200000)] Mass Max,
    [In("min", "least mass", "lb", Min = 0, Max = 200000, Default = "0")] Mass Min = default,
    [In("group", "groups, joined by +", Default = "none")] string Groups = "");

/// <summary>A fuel tank with its place across the aircraft.</summary>
/// <param name="Name">Name; each only once.</param>
/// <param name="Arm">Buttock line of its contents.</param>
/// <param name="Usable">Usable fuel when full.</param>
/// <param name="BurnOrder">Which empties first.</param>
public sealed record LateralTankRow(
    [In("name", "tank")] string Name,
    [In("BL", "buttock line", "in", Min = -2000, Max = 2000)] Length Arm,
    [In("usable", "usable fuel", "lb", Min = 0, Max = 500000)] Mass Usable,
    [In("order", "burn order", Min = 1, Max = 100, Default = "1")] int BurnOrder = 1);

/// <summary>Input of <see cref="WorstLateral"/>.</summary>
/// <param name="EmptyMass">Empty mass.</param>
/// <param name="EmptyBl">Buttock line of the centre of gravity when empty.</param>
/// <param name="Stations">Loading stations.</param>
/// <param name="Tanks">Tanks with the order in which they burn.</param>
/// <param name="Left">Limit to the left.</param>
/// <param name="Right">Limit to the right.</param>
/// <param name="MaxTakeOff">Greatest take-off mass.</param>
/// <param name="MaxZeroFuel">Greatest mass without fuel.</param>
/// <param name="Groups">Limits shared by several stations.</param>
public sealed record WorstLateralInput(
    [In("We", "empty mass", "lb", Min = 1, Max = 1000000)] Mass EmptyMass,
    [In("BLe", "buttock line of the centre of gravity when empty", "in", Min = -2000, Max = 2000)] Length EmptyBl,
    [In("stations", "loading stations")] Sequence<LateralStationRow> Stations,
    [In("tanks", "tanks")] Sequence<LateralTankRow> Tanks,
    [In("left", "limit to the left", "in", Min = -2000, Max = 2000)] Length Left,
    [In("right", "limit to the right", "in", Min = -2000, Max = 2000)] Length Right,
    [In("MTOW", "greatest take-off mass", "lb", Min = 1, Max = 2000000)] Mass MaxTakeOff,
    [In("MZFW", "greatest mass without fuel", "lb", Min = 1, Max = 2000000, Default = "no limit")] Mass? MaxZeroFuel = null,
    [In("groups", "limits shared by stations", Default = "none")] Sequence<LoadingGroupRow> Groups = default);

/// <summary>The worst legal loading across the aircraft: the legal loads and fuel whose centre of gravity lies furthest left and furthest right.</summary>
/// <remarks>
/// The same exact search as <see cref="WorstLoading"/>, with buttock lines for stations and the same limits at every mass.
/// Check value: 1,545 lb at 0.2 in, pilot 170 lb at 12.2 in always there, 200 lb allowed at −13.3 in and 288 lb of fuel at −8.4 in: the
/// furthest left is with all of them, −1.2 in (FAA-H-8083-1B, loaded centre of gravity of a helicopter).
/// </remarks>
public sealed class WorstLateral : ICalculation<WorstLateralInput>
{
    /// <inheritdoc/>
    public static CalculationInfo<WorstLateralInput> Info { get; } = new(
        "worst-lateral", "Worst legal loading across", Discipline.Balance,
        "Whether any legal loading leaves the lateral limits, and which comes closest",
        "We='1545 lb' BLe='0.2 in' stations='pilot,12.2 in,170 lb,170 lb;passenger,-13.3 in,200 lb' tanks='main,-8.4 in,288 lb' left='-2 in' right='2 in' MTOW='2500 lb'",
        WorstLoading.Extremes, new Source("FAA-H-8083-1B", "2016", "lateral balance of helicopters", Basis.Memory));

    /// <inheritdoc/>
    public static Sheet Run(WorstLateralInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Left >= input.Right)
        {
            s.CannotTell("The limit to the left lies right of the limit to the right.");
            return;
        }

        var along = Turned(input);
        if (WorstLoading.Find(along) is not { Proved: true } worst)
        {
            foreach (var why in WorstLoading.Run(along).CannotTell.DefaultIfEmpty("No loading is legal: the least loads alone break a limit."))
            {
                s.CannotTell(why);
            }

            return;
        }

        s.Step("gap", "greatest relative gap between a loading found and the bound proved for all", "proof by duality", worst.ProofGap);
        Case(s, "l", "furthest left", worst.Forward);
        Case(s, "r", "furthest right", worst.Aft);
        s.Check("left limit", worst.Forward.Fs.As("in"), Sense.AtLeast, input.Left.As("in"), "no legal loading is left of the limit, at take-off or in flight", WorstLoading.Extremes);
        s.Check("right limit", worst.Aft.Fs.As("in"), Sense.AtMost, input.Right.As("in"), "no legal loading is right of the limit, at take-off or in flight", WorstLoading.Extremes);
        s.Table("The loadings found", ["station or tank", "furthest left", "furthest right"], Rows(worst.Forward).Zip(Rows(worst.Aft)).Select(x =>
            ImmutableArray.Create<SheetValue>(x.First.Name, x.First.Mass.As("lb"), x.Second.Mass.As("lb"))));
        s.Caution("Fuel is taken to lie along the burn path, tanks of equal order alike: fuel drawn from one side only is not covered.");
    });

    // Across instead of along; the limits are the same at every mass, from the least that can fly upwards.
    private static WorstLoadingInput Turned(WorstLateralInput input) => new(
        input.EmptyMass, input.EmptyBl,
        input.Stations.Select(x => new LoadingStationRow(x.Name, x.Arm, x.Max, x.Min, x.Groups)).ToSequence(),
        input.Tanks.Select(x => new LoadingTankRow(x.Name, x.Arm, x.Usable, x.BurnOrder)).ToSequence(),
        [new(input.EmptyMass * 0.5, input.Left), new(input.MaxTakeOff * 2, input.Left), new(input.MaxTakeOff * 2, input.Right), new(input.EmptyMass * 0.5, input.Right)],
        input.MaxTakeOff, input.MaxZeroFuel, Groups: input.Groups);

    private static void Case(SheetBuilder s, string mark, string name, LoadingCase found)
    {
        s.Step("W" + mark, $"mass of the loading {name}", "We + loads + fuel of the table", found.Mass, "lb");
        s.Step("M" + mark, "its lateral moment", "We · BLe + sum of mass · buttock line of the table", found.Mass * found.Fs, "lb·in");
        s.Step("BL" + mark, "its buttock line", $"M{mark} / W{mark}", found.Fs, "in");
    }

    private static IEnumerable<LoadedMass> Rows(LoadingCase found) => found.Stations.Concat(found.Tanks);
}
