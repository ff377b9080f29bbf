using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>Takes the pieces off the circuits and plans their cuts from the reels and remnants on hand. No wire is spliced unless its circuit allows it, and then once,
/// 12 in or more from both ends.</summary>
public static class CutPlans
{
    // A splice stands no nearer to a termination than this, and takes this much of each wire.
    private const long FromEnd = 305;
    private const long Overlap = 25;

    /// <summary>Cut plans by kind of wire, in the order in which the change uses them.</summary>
    /// <param name="job">The job.</param>
    /// <param name="circuits">Its circuits, worked out.</param>
    /// <param name="marks">Their marks.</param>
    /// <param name="known">Plans of an earlier assessment, used again where pieces and stock are the same.</param>
    public static ImmutableArray<CutPlan> Of(Job job, IReadOnlyList<CircuitResult> circuits, ImmutableArray<WireMark> marks, CutMemory? known = null) => Of(job, circuits, marks, known, default);

    internal static ImmutableArray<CutPlan> Of(Job job, IReadOnlyList<CircuitResult> circuits, ImmutableArray<WireMark> marks, CutMemory? known, Watch watch)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(circuits);
        var memory = known ?? new CutMemory();
        var texts = marks.Where(m => m.Carrier != MarkCarrier.Jacket).ToDictionary(m => m.Id, m => m.Text, StringComparer.Ordinal);
        return [.. circuits.Where(c => c.Part.Length > 0).GroupBy(c => c.Part, StringComparer.Ordinal).Select(kind => Plan(job, kind.Key, [.. kind], texts, memory, watch))];
    }

    /// <summary>The pieces of some circuits of one kind of wire: the cores of one cable are one piece, as long as the longest of them.</summary>
    public static (Sequence<CutPiece> Pieces, Sequence<string> Unknown) Pieces(Job job, IEnumerable<CircuitResult> circuits, IReadOnlyDictionary<string, string> texts)
    {
        ArgumentNullException.ThrowIfNull(job);
        var groups = circuits.GroupBy(c => Together(job, c) ? (c.Circuit.Cable, "") : ("", c.Circuit.Id)).ToArray();
        return (
            groups.Where(g => !g.Any(Unmeasured)).Select(g => new CutPiece(
                g.Select(c => c.Circuit.Id).ToSequence(), g.Key.Item1.Length > 0 ? g.Key.Item1 : texts.GetValueOrDefault(g.Key.Item2, g.Key.Item2),
                (long)Math.Ceiling((g.Max(c => c.Cut!.Value.Si) * 1000) - 1e-6), g.All(c => c.Circuit.Splice))).ToSequence(),
            groups.Where(g => g.Any(Unmeasured)).SelectMany(g => g.Select(c => c.Circuit.Id)).ToSequence());
    }

    private static bool Unmeasured(CircuitResult c) => c.Cut is not { Si: > 0 };

    private static bool Together(Job job, CircuitResult c) => c.Circuit.Cable.Length > 0 && job.Parts.Cables?.Contains(c.Part) == true;

    private static CutPlan Plan(Job job, string part, CircuitResult[] circuits, Dictionary<string, string> texts, CutMemory memory, Watch watch)
    {
        var (pieces, unknown) = Pieces(job, circuits, texts);
        if (job.Stock is null)
        {
            return new(part, pieces, unknown, null);
        }

        var stock = job.Stock.Reels.OrEmpty().Where(r => r.Part == part).Select(r => new Stock(r.Id, (long)Math.Floor((r.Length.Si * 1000) + 1e-6), 1, !r.Remnant)).ToSequence();
        return memory.Plan(part, pieces, unknown, stock, new CuttingOptions(Usable: (long)Math.Ceiling((job.Stock.Keep ?? Length.Of(12, "in")).Si * 1000)), watch);
    }

    /// <summary>Plans the cuts; pieces left over that may be spliced are tried in two parts.</summary>
    internal static CutPlan Solve(string part, Sequence<CutPiece> pieces, Sequence<string> unknown, Sequence<Stock> stock, CuttingOptions options, Watch watch = default)
    {
        var steps = new Steps(part, options.StepLimit, watch);
        steps.Report(0);
        var plan = CuttingStock.Solve([.. pieces.Select(p => p.Millimetres)], stock, options, steps, watch.Stop);
        var splices = 0;
        for (var at = Left(plan, pieces); at >= 0; at = Left(plan, pieces))
        {
            var spliced = Split(pieces, at, plan, stock);
            var next = spliced is { } two ? CuttingStock.Solve([.. two.Select(p => p.Millimetres)], stock, options, steps, watch.Stop) : null;
            if (next is null || next.TooLong.Count + next.NotPlaced.Count >= plan.TooLong.Count + plan.NotPlaced.Count)
            {
                break;
            }

            (plan, pieces, splices) = (next, spliced!.Value, splices + 1);
        }

        return new(part, pieces, unknown, plan, splices);
    }

    private static int Left(CuttingPlan plan, Sequence<CutPiece> pieces) => plan.TooLong.Concat(plan.NotPlaced).Where(i => pieces[i].MaySplice).Select(i => (int?)i).Min() ?? -1;

    // One part takes the longest length that is left; the other is what remains.
    private static Sequence<CutPiece>? Split(Sequence<CutPiece> pieces, int at, CuttingPlan plan, Sequence<Stock> stock)
    {
        var piece = pieces[at];
        var used = plan.Lengths.Select(l => l.Stock.Name).ToHashSet(StringComparer.Ordinal);
        var longest = plan.Lengths.Select(l => l.Left).Concat(stock.Where(s => !used.Contains(s.Name)).Select(s => s.Length)).DefaultIfEmpty(0).Max();
        var first = Math.Min(longest, piece.Millimetres - FromEnd);
        var second = piece.Millimetres - first + (2 * Overlap);
        return first < FromEnd || second < FromEnd ? null
            : pieces.SelectMany((p, i) => i != at ? [p] : new[] { Part(p, 1, first), Part(p, 2, second) }).ToSequence();
    }

    private static CutPiece Part(CutPiece piece, int number, long millimetres) =>
        piece with { Name = string.Create(CultureInfo.InvariantCulture, $"{piece.Name} part {number} of 2"), Millimetres = millimetres, MaySplice = false };

    // A search says how many steps it took; few of them are worth a line.
    private sealed class Steps(string part, int most, Watch watch) : IProgress<int>
    {
        private int said = -1;

        public void Report(int value)
        {
            if (said < 0 || value < said || value >= said + (most / 100))
            {
                said = value;
                watch.Tell($"cutting {part}", value, most, "steps at most");
            }
        }
    }
}

/// <summary>Keeps cut plans between assessments.</summary>
public sealed class CutMemory
{
    private readonly Dictionary<string, (Sequence<CutPiece> Pieces, Sequence<Stock> Stock, CuttingOptions Options, CutPlan Plan)> plans = new(StringComparer.Ordinal);

    internal CutPlan Plan(string part, Sequence<CutPiece> pieces, Sequence<string> unknown, Sequence<Stock> stock, CuttingOptions options, Watch watch)
    {
        if (!plans.TryGetValue(part, out var known) || known.Pieces != pieces || known.Stock != stock || known.Options != options)
        {
            plans[part] = known = (pieces, stock, options, CutPlans.Solve(part, pieces, unknown, stock, options, watch));
        }

        return known.Plan with { Unknown = unknown };
    }
}
