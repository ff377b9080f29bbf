using System.Collections.Immutable;

namespace Fairlead.Calculations.Balance;

/// <summary>Writes the worst loading on its sheet.</summary>
internal static class WorstLoadingSheet
{
    public static void Add(SheetBuilder s, WorstLoadingInput input, ImmutableArray<LoadingStretch> stretches, EnvelopeLimits limits)
    {
        CheckLeast(s, input);
        if (stretches.IsEmpty)
        {
            s.CannotTell("No loading is legal: the least loads alone break a limit.");
            return;
        }

        var worst = WorstLoading.Find(input, stretches, limits);
        s.Step("gap", "greatest relative gap between a loading found and the bound proved for all", "proof by duality", worst.ProofGap);
        if (!worst.Proved)
        {
            s.CannotTell("The proof that no loading goes beyond those found does not close for these numbers.");
            return;
        }

        Range(s, worst);
        Case(s, "f", "loading nearest the forward limit", worst.Forward, worst.Forward.Fs - worst.Forward.Margin, "forward");
        Case(s, "a", "loading nearest the aft limit", worst.Aft, worst.Aft.Fs + worst.Aft.Margin, "aft");
        s.Step("Wh", "mass of the heaviest loading", "least mass + what the limits leave room for", worst.Heaviest.Mass, "lb");
        Cg(s, "h", "its centre of gravity; of the loadings of that mass the one nearest a limit", worst.Heaviest);
        Check(s, worst, limits);
        CheckLanding(s, input, stretches[0]);
        Table(s, worst);
        Cautions(s, worst, limits);
    }

    // The least loading is part of every other: if it breaks a limit there is no legal loading.
    private static void CheckLeast(SheetBuilder s, WorstLoadingInput input)
    {
        var zeroFuel = s.Step("W0", "least mass without fuel", "We + sum of the least loads", input.EmptyMass + new Mass(input.Stations.Sum(x => x.Min.Si)), "lb");
        var least = s.Step("W1", "least mass", "W0 + Fmin", zeroFuel + input.MinFuel, "lb");
        s.Check("least mass", least.As("lb"), Sense.AtMost, input.MaxTakeOff.As("lb"), "the least loading is within the take-off mass", WorstLoading.Extremes);
        if (input.MaxZeroFuel is { } limit)
        {
            s.Check("least mass without fuel", zeroFuel.As("lb"), Sense.AtMost, limit.As("lb"), "the least loading is within the zero-fuel mass", WorstLoading.Extremes);
        }

        foreach (var group in input.Groups)
        {
            var loads = new Mass(LoadingSpace.Members(input.Stations, group.Name).Sum(i => input.Stations[i].Min.Si));
            if (loads > group.Max)
            {
                s.Check($"least loads of '{group.Name}'", loads.As("lb"), Sense.AtMost, group.Max.As("lb"), "the least loads are within the group's limit", WorstLoading.Extremes);
            }
        }
    }

    private static void Range(SheetBuilder s, WorstLoadings worst)
    {
        s.Step("FSmin", "most forward centre of gravity at any mass", "least of moment / mass", worst.MostForwardCg, "in");
        s.Step("FSmax", "most aft centre of gravity at any mass", "greatest of moment / mass", worst.MostAftCg, "in");
    }

    private static void Case(SheetBuilder s, string mark, string name, LoadingCase found, Length limit, string side)
    {
        s.Step("W" + mark, $"mass of the {name}", "We + loads + fuel of the table", found.Mass, "lb");
        s.Step("F" + mark, "its fuel", "sum of the tanks", found.Fuel, "lb");
        Cg(s, mark, "its centre of gravity", found);
        s.Step("L" + mark, $"{side} limit at that mass", $"envelope at W{mark}", limit, "in");
    }

    private static void Cg(SheetBuilder s, string mark, string meaning, LoadingCase found)
    {
        s.Step("M" + mark, "its moment", "We · FSe + sum of mass · arm of the table", found.Mass * found.Fs, "lb·in");
        s.Step("FS" + mark, meaning, $"M{mark} / W{mark}", found.Fs, "in");
    }

    private static void Check(SheetBuilder s, WorstLoadings worst, EnvelopeLimits limits)
    {
        s.Check("forward limit", worst.Forward.Fs.As("in"), Sense.AtLeast, (worst.Forward.Fs - worst.Forward.Margin).As("in"),
            "no legal loading is ahead of the forward limit, at take-off or in flight", WorstLoading.Extremes);
        s.Check("aft limit", worst.Aft.Fs.As("in"), Sense.AtMost, (worst.Aft.Fs + worst.Aft.Margin).As("in"),
            "no legal loading is behind the aft limit, at take-off or in flight", WorstLoading.Extremes);
        s.Check("top of the envelope", worst.Heaviest.Mass.As("lb"), Sense.AtMost, new Mass(limits.Highest).As("lb"),
            "the heaviest legal loading is within the envelope", WorstLoading.Extremes);
    }

    private static void CheckLanding(SheetBuilder s, WorstLoadingInput input, LoadingStretch lowest)
    {
        if (input.MaxLanding is not { } limit)
        {
            return;
        }

        var heaviest = s.Step("Wl", "heaviest loading when its fuel is down to the least", "greatest mass with fuel Fmin", new Mass(lowest.GreatestMassAtLeastFuel), "lb");
        s.Check("landing mass", heaviest.As("lb"), Sense.AtMost, limit.As("lb"),
            "every legal loading can burn down to the landing mass; if not, the load must be planned for it", WorstLoading.Extremes, Verdict.Caution);
    }

    private static void Table(SheetBuilder s, WorstLoadings worst) => s.Table(
        "The loadings found", ["station or tank", "nearest the forward limit", "nearest the aft limit", "heaviest"],
        Rows(worst.Forward).Select((x, i) => ImmutableArray.Create<SheetValue>(
            x.Name, x.Mass.As("lb"), Rows(worst.Aft).ElementAt(i).Mass.As("lb"), Rows(worst.Heaviest).ElementAt(i).Mass.As("lb"))));

    private static IEnumerable<LoadedMass> Rows(LoadingCase found) => found.Stations.Concat(found.Tanks);

    private static void Cautions(SheetBuilder s, WorstLoadings worst, EnvelopeLimits limits)
    {
        s.Caution("Fuel is taken to lie along the burn path: the tanks that burn last are filled first, tanks of equal order alike. Other fillings, transfer and trapped fuel are not covered.");
        s.Caution("A station's load is taken at its arm and may be any mass between its least and greatest: people who move about are not covered.");
        s.Caution("The aircraft's flight manual and loading instructions govern; the mass and balance report needs the signature of authorised staff.");
        if (worst.LeastMass.Si < limits.Lowest)
        {
            s.Caution($"Loadings below the lowest corner of the envelope ({new Mass(limits.Lowest).As("lb")}) are judged by the limits at that corner, which the envelope itself does not state.", affectsVerdict: true);
        }
    }
}
