using System.Collections.Immutable;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Substantiation.Kit;

/// <summary>What the bundles need: sleeves and labels, clamps of the size that the bundle has after the change, ties between clamps that stand far apart.</summary>
internal static class BundleNeeds
{
    private static readonly Length TieAbove = Length.Of(12, "in");

    // AC 43.13-1B 11-96 a, as in the calculation of support spacing.
    private static readonly Length SupportAbove = Length.Of(24, "in");

    public static void Add(Job job, ImmutableArray<SegmentUse> segments, ImmutableArray<WireMark> marks, KitNeeds needs)
    {
        foreach (var line in PrintFile.Of(job, marks))
        {
            var sleeve = line.Kind.StartsWith("sleeve", StringComparison.Ordinal);
            var part = job.Parts.Consumables.OrEmpty().FirstOrDefault(p => sleeve ? p.Use == ConsumableUse.Sleeve && line.Diameter is { } d && WiringNeeds.Around(p, d) : p.Use == ConsumableUse.Label);
            if (line.Copies > 0)
            {
                needs.Add(KitKind.Marking, part?.Id ?? "", part?.Name ?? (sleeve ? $"marker sleeve for {line.Diameter?.As("in").ToString() ?? "a wire not known"}" : "label"), line.Copies, line.Text,
                    sleeve ? $"at both ends and no more than 6 ft apart ({MarkPlaces.Rule})" : "one for each item, connector, breaker, stud and joint");
            }
        }

        foreach (var segment in segments)
        {
            Segment(job, segment, needs);
        }
    }

    private static void Segment(Job job, SegmentUse result, KitNeeds needs)
    {
        if (job.Aircraft.Segments?.Find(result.Segment) is not { } segment || Long(job, segment) is not { } length)
        {
            return;
        }

        // A record without clamps is one that does not tell: then the rule for supports gives the number.
        var told = segment.Clamps > 0;
        var clamps = told ? segment.Clamps : Math.Max(0, (int)Math.Ceiling((length / SupportAbove) - 1e-9) - 1);
        if (clamps > 0)
        {
            var part = result.Diameter is { } d ? job.Parts.Clamps.OrEmpty().Where(c => c.Diameter >= d).MinBy(c => c.Diameter.Si) : null;
            needs.Add(KitKind.Clamp, part?.Id ?? "", part?.Name ?? $"clamp for a bundle of {result.Diameter?.As("in").ToString() ?? "a diameter not known"}", clamps, segment.Id,
                told ? "the clamps of each segment, for the bundle as it is after the change" : "supports no more than 24 in apart, for the bundle as it is after the change");
        }

        var gap = length / (clamps + 1);
        var ties = (clamps + 1) * ((int)Math.Ceiling((gap / TieAbove) - 1e-9) - 1);
        if (ties > 0)
        {
            var part = job.Parts.Consumables.OrEmpty().FirstOrDefault(p => p.Use == ConsumableUse.Tie && result.Diameter is { } d && WiringNeeds.Around(p, d));
            needs.Add(KitKind.Tie, part?.Id ?? "", part?.Name ?? "tie", ties, segment.Id, "no more than 12 in apart where supports stand further apart [from memory: confirm]");
        }
    }

    private static Length? Long(Job job, RacewaySegment segment) =>
        segment.Length ?? ((job.Aircraft.Nodes?.Find(segment.From)?.Place, job.Aircraft.Nodes?.Find(segment.To)?.Place) is ({ } a, { } b) ? a.To(b) : null);
}
