using System.Collections.Immutable;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Network;

/// <summary>Which ends of a wire are shorted.</summary>
public enum ShortedEnds
{
    /// <summary>Either end, one at a time.</summary>
    Both,

    /// <summary>The second end only: the first stands at the terminals of a source, where no breaker lies in between and the source's own control must act.</summary>
    Second,
}

/// <summary>A wire whose ends may be shorted.</summary>
/// <param name="Branch">The branch it is.</param>
/// <param name="Gauge">Gauge.</param>
/// <param name="Initial">Conductor temperature before the short.</param>
/// <param name="Final">Greatest conductor temperature.</param>
/// <param name="Conductor">Copper or aluminium.</param>
/// <param name="Ends">Which ends are shorted.</param>
public sealed record ShortWire(
    [In("branch", "branch that is the wire")] string Branch,
    [In("AWG", "gauge")] Gauge Gauge,
    [In("Ti", "conductor temperature before the short", "°C", Min = -65, Max = 260)] Temperature Initial,
    [In("Tf", "greatest conductor temperature", "°C", Min = 0, Max = 400)] Temperature Final,
    [In("conductor", "what the strands are made of", Default = "copper")] Conductor Conductor = Conductor.Copper,
    [In("ends", "which ends are shorted", Default = "both")] ShortedEnds Ends = ShortedEnds.Both);

/// <summary>Input of <see cref="ShortSurvey"/>.</summary>
/// <param name="Sources">Sources; node <c>0</c> is the reference.</param>
/// <param name="Branches">Resistances between nodes.</param>
/// <param name="Wires">Wires, each shorted to the reference at either end, one end at a time.</param>
/// <param name="Breakers">Breakers by branch.</param>
/// <param name="Curves">Their trip curves.</param>
public sealed record ShortSurveyInput(
    [In("sources", "sources")] Sequence<NetworkSource> Sources,
    [In("branches", "feeders, wires, breakers")] Sequence<NetworkBranch> Branches,
    [In("wires", "wires shorted at either end")] Sequence<ShortWire> Wires,
    [In("breakers", "breakers")] Sequence<NetworkBreaker> Breakers,
    [In("curves", "trip curves")] Sequence<NetworkTrip> Curves);

/// <summary>Every single short at a wire end: whether the nearest breaker opens, before its wires are too hot, and before one behind it can.</summary>
/// <remarks>
/// If as in short-circuit, without loads, which only take current from the short. The wire carries Iw: what comes along it or, the short lying
/// just inside its end, what comes in by that end, whichever is more; so a wire's greatest current is that of a short right behind its breaker.
/// Where wires lie in parallel, the shorts they carry are worked again with each of them broken, which nothing shows in service.
/// The let-through Iw² · tt, tt the longest time of the nearest breaker at its current, is held against the adiabatic limit of the wire.
/// Check value: 28 V behind 30 mΩ and a breaker of 70 mΩ: 280 A at the near end of the wire.
/// </remarks>
public sealed class ShortSurvey : ICalculation<ShortSurveyInput>
{
    private static readonly Source Thevenin = new("Theorem of Helmholtz and Thévenin", "", "", Basis.Derived);
    private static readonly Source Curve = new("Trip curve of the breaker", "", "", Basis.Stated);
    private static readonly Source Adiabatic = new("IEC 60949", "", "adiabatic short-circuit current");

    // The limit takes the wire to keep all its heat, which it does for a few seconds.
    private static readonly Duration Longest = Duration.Of(5, "s");

    /// <inheritdoc/>
    public static CalculationInfo<ShortSurveyInput> Info { get; } = new(
        "short-survey", "Shorts at every wire end", Discipline.Network,
        "Whether the nearest breaker alone clears a short at either end of each wire, before the wire is too hot",
        "sources='generator,gen,28 V,30 mohm' branches='feeder,gen,bus,2 mohm;breaker,bus,out,70 mohm;wire,out,box,93 mohm' wires='wire,20,70 degC,150 degC' "
        + "breakers='feeder,100 A;breaker,5 A' curves='feeder,200 %,20 s,90 s;feeder,1000 %,1 s,4 s;breaker,200 %,3 s,20 s;breaker,1000 %,0.06 s,0.3 s;breaker,4000 %,0.008 s,0.022 s'",
        Adiabatic, Thevenin, VoltageSurvey.Kirchhoff);

    /// <inheritdoc/>
    public static Sheet Run(ShortSurveyInput input) => SheetBuilder.Work(Info, input, s =>
    {
        var network = DcNetwork.Of(input.Sources, input.Branches, default);
        var names = input.Branches.Select(b => b.Name).ToHashSet(StringComparer.Ordinal);
        if (input.Wires.FirstOrDefault(w => !names.Contains(w.Branch)) is { } stray)
        {
            s.CannotTell($"No branch is called '{stray.Branch}'.");
        }
        else if (FaultStudy.Of(network) is not { } study)
        {
            s.CannotTell("The network has no solution before the short.");
        }
        else
        {
            Report(s, input, ShortRows.Of(input, study));
            s.Caution("Every branch is closed, ties included: where a tie may be open in service, give the network without it too. Of wires in parallel each is broken in turn, one at a time. Between a wire's end and a breaker in its own branch no short is worked.");
            s.Caution("Bolted shorts, one at a time, with the sources' own resistance. Regulation and current limits of a generator, and arcs, are not in the model: an arc draws less, and a breaker may not see it.");
        }
    });

    private static void Report(SheetBuilder s, ShortSurveyInput input, ImmutableArray<ShortRow> rows)
    {
        s.Table("Shorts", ["shorted at", "current of the short", "nearest breaker", "its current", "longest trip", "wire", "let-through", "it stands"], rows.Select(r => ImmutableArray.Create<SheetValue>(
            r.Where, r.Current.As("A"), string.Join(", ", r.Nearest.Select(n => n.Breaker.Branch)), r.Nearest.IsEmpty ? "" : r.Nearest[0].Current.As("A"), r.Time is { } t ? t.As("s") : "may not trip",
            r.Wire?.Branch ?? "", r.Passed is { } p ? p.As("A²·s") : "", r.Limit is { } l ? l.As("A²·s") : "")));
        if (s.Step("n", "shorts worked", "ends of wires that a source reaches", rows.Count(r => r.Wire is null)) == 0)
        {
            s.CannotTell("No source reaches the wires.");
        }

        if (rows.FirstOrDefault(r => r.Nearest.IsEmpty) is { } bare)
        {
            s.CannotTell($"No breaker lies between {bare.Where} and the sources.");
        }

        if (rows.FirstOrDefault(r => r is { Nearest.IsEmpty: false, Time: null }) is { } slow)
        {
            s.CannotTell($"A short at {slow.Where} may not trip {slow.Nearest.First(n => n.Band is null).Breaker.Branch}: {slow.Nearest[0].Current.As("A")} lies below its trip curve, or it has none.");
        }

        // What can be told of the others is told: one that cannot does not hide one that fails.
        ImmutableArray<ShortRow> cleared = [.. rows.Where(r => r is { Nearest.IsEmpty: false, Time: not null })];
        Heat(s, cleared);
        Order(s, input, cleared);
    }

    // The worst short of each wire.
    private static void Heat(SheetBuilder s, ImmutableArray<ShortRow> rows)
    {
        foreach (var wire in rows.Where(r => r.Wire is not null).GroupBy(r => r.Wire!.Branch, StringComparer.Ordinal))
        {
            if (wire.FirstOrDefault(r => r.Limit is null) is not null)
            {
                s.CannotTell($"What {wire.Key} stands is not known: its gauge is not in the table, or its greatest temperature is not above that before the short.");
                continue;
            }

            // A bound that is too high, or a time in which the wire sheds heat, makes a failed comparison inconclusive; a passed one stays sure.
            var worst = wire.MaxBy(r => (r.Passed!.Value.Si / r.Limit!.Value.Si, r.Where))!;
            var sure = worst.Time!.Value <= Longest && worst.Nearest.All(n => !n.Band!.Value.Bounded);
            s.Check($"let-through in {wire.Key}, short at {worst.Where}", worst.Passed!.Value.As("A²·s"), Sense.AtMost, worst.Limit!.Value.As("A²·s"), "the breaker opens before the wire passes its greatest temperature", Adiabatic, sure ? Verdict.Fails : Verdict.CannotTell);
        }
    }

    private static void Order(SheetBuilder s, ShortSurveyInput input, ImmutableArray<ShortRow> rows)
    {
        foreach (var behind in input.Breakers)
        {
            var races = rows.Where(r => r.Wire is null).Select(r => (Row: r, Behind: r.Bands.FirstOrDefault(b => !b.Nearest && b.Breaker.Branch == behind.Branch))).Where(x => x.Behind.Band is not null).ToArray();
            if (races.Length > 0)
            {
                var (row, slower) = races.MaxBy(x => (x.Row.Time!.Value.Si / x.Behind.Band!.Value.Shortest.Si, x.Row.Where));
                s.Check($"{behind.Branch} stays closed, short at {row.Where}", row.Time!.Value.As("s"), Sense.AtMost, slower.Band!.Value.Shortest.As("s"), "the nearest breaker opens before one behind it can", Curve);
            }
        }
    }
}
