using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The envelope with the empty aircraft on it, and the worst loadings that the limits allow, before and after the change.</summary>
internal static class LoadingLimits
{
    // Points closer than this share of the envelope's extent are one mark with two names.
    private const double SamePlace = 0.02;

    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        yield return new Heading(2, "Loadings");
        yield return new Figure(
            EnvelopePlot.Draw(View(assessment, options)),
            "Envelope: circles are the empty aircraft, squares the worst loadings; open before the change, filled after it. A loading outside is named so.");
        if (assessment.LoadingAfter.IsEmpty && assessment.LoadingBefore.IsEmpty)
        {
            yield return new Paragraph("Worst loadings were not worked out, so nothing is said here of the loaded aircraft.", Voice.Caution);
            yield break;
        }

        yield return Loadings(assessment, options);
    }

    private static Table Loadings(Assessment assessment, PackOptions options)
    {
        IEnumerable<Sequence<Cell>> Rows(string when, IEnumerable<LoadingExtreme> loadings) => loadings.Select(l => (Sequence<Cell>)
        [
            l.Name, when, Figures.Fixed(l.Mass, options.MassUnit, 1), Figures.Fixed(l.Fs, options.ArmUnit, 2),
            new Cell(Figures.Fixed(l.Margin, options.ArmUnit, 2), Strong: l.Margin < Length.Zero),
            l.Margin < Length.Zero ? new Cell("outside", Mark: Verdict.Fails, Strong: true) : new Cell("inside", Mark: Verdict.Holds),
        ]);
        return new Table(
            [new("Extreme loading"), new("When"), new($"Mass, {options.MassUnit}", Right: true), new($"FS, {options.ArmUnit}", Right: true), new($"Margin, {options.ArmUnit}", Right: true), new("Envelope")],
            [.. Rows("before", assessment.LoadingBefore), .. Rows("after", assessment.LoadingAfter)],
            "Worst loadings that the limits allow");
    }

    private static EnvelopeView View(Assessment assessment, PackOptions options)
    {
        var aircraft = assessment.Job.Aircraft;
        var corners = aircraft.Envelope.Points.Select(p => new BalancePoint(p.Fs, p.Mass)).ToArray();
        var near = (Arm: SamePlace * Extent(corners.Select(c => c.Arm.Si)), Mass: SamePlace * Extent(corners.Select(c => c.Mass.Si)));
        return new EnvelopeView(
            $"{aircraft.Registration}: envelope and loadings",
            [new EnvelopeOutline($"{aircraft.Certification.Category} category", corners.ToSequence())],
            [
                .. assessment.LoadingBefore.Select(l => new EnvelopeMark("", new(l.Fs, l.Mass), EnvelopeMarkKind.LoadingBefore)),
                .. Empty(assessment, near),
                .. Together(assessment.LoadingAfter, near),
            ],
            ArmUnit: options.ArmUnit, MassUnit: options.MassUnit);
    }

    private static IEnumerable<EnvelopeMark> Empty(Assessment assessment, (double Arm, double Mass) near)
    {
        var (before, after) = (assessment.EmptyBefore, assessment.EmptyAfter);
        var same = after is not null && Near(before.Fs, before.Mass, after.Fs, after.Mass, near);
        yield return new EnvelopeMark(same ? "" : "empty before", new(before.Fs, before.Mass), EnvelopeMarkKind.EmptyBefore);
        if (after is not null)
        {
            yield return new EnvelopeMark(same ? "empty before and after" : "empty after", new(after.Fs, after.Mass), EnvelopeMarkKind.EmptyAfter);
        }
    }

    private static IEnumerable<EnvelopeMark> Together(IEnumerable<LoadingExtreme> loadings, (double Arm, double Mass) near)
    {
        var groups = new List<List<LoadingExtreme>>();
        foreach (var loading in loadings)
        {
            var group = groups.Find(g => Near(g[0].Fs, g[0].Mass, loading.Fs, loading.Mass, near) && g[0].Margin < Length.Zero == loading.Margin < Length.Zero);
            if (group is null)
            {
                groups.Add(group = []);
            }

            group.Add(loading);
        }

        return groups.Select(g => new EnvelopeMark(string.Join("; ", g.Select(l => l.Name)), new(g[0].Fs, g[0].Mass), EnvelopeMarkKind.Loading, g[0].Margin < Length.Zero));
    }

    private static bool Near(Length arm, Mass mass, Length otherArm, Mass otherMass, (double Arm, double Mass) near) =>
        Math.Abs(arm.Si - otherArm.Si) <= near.Arm && Math.Abs(mass.Si - otherMass.Si) <= near.Mass;

    private static double Extent(IEnumerable<double> values) => values.DefaultIfEmpty(0).Max() - values.DefaultIfEmpty(0).Min();
}
