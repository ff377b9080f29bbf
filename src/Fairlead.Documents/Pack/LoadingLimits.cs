using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>The envelope with the empty aircraft on it, and the worst loadings that the limits allow, before and after the change.</summary>
internal static class LoadingLimits
{
    public static IEnumerable<Block> Of(Assessment assessment, PackOptions options)
    {
        yield return new Heading(2, "Loadings");
        yield return new Figure(
            EnvelopePlot.Draw(AssessmentPlots.Envelope(assessment, options.ArmUnit, options.MassUnit)),
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
}
