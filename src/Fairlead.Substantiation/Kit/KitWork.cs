using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Substantiation.Kit;

/// <summary>Works out the kit: what the change needs, with spares, against what is on hand.</summary>
internal static class KitWork
{
    public static KitList Of(Job job, IReadOnlyList<CircuitResult> circuits, ImmutableArray<SegmentUse> segments, ImmutableArray<WireMark> marks, ImmutableArray<CutPlan> cuts, KitDates? dates = null)
    {
        var needs = new KitNeeds();
        FittedNeeds.Add(job, circuits, needs);
        WiringNeeds.Add(job, circuits, cuts, needs);
        BundleNeeds.Add(job, segments, marks, needs);
        FixingNeeds.Add(job, needs);
        ToolNeeds.Add(job, circuits, needs);
        var (use, origin) = dates is not null ? (dates.Opening, "the day the plan opens the aircraft") : job.Stock?.Use is { } stated ? ((DateOnly?)stated, "the day work starts, as the stock file states") : job.Order.Promised is { } promised ? (promised, "the day the aircraft was promised for") : (null, "not stated");
        var stock = new StockOnHand(job);
        var spares = new Spares(job.Stock?.Spares);
        var missing = cuts.ToDictionary(c => c.Part, c => c.Missing, StringComparer.Ordinal);
        (DateOnly? First, DateOnly? Last) Days(Need need) => dates?.Days.TryGetValue((need.Kind, need.Part.Length > 0 ? need.Part : need.Name), out var days) == true ? days : (use, use);
        ImmutableArray<KitLine> lines = [.. needs.All.Select(n => n.Kind is KitKind.Tool or KitKind.TestGear ? Tool(job, n, Days(n)) : Line(job, n, stock, spares, missing.GetValueOrDefault(n.Part), Days(n)))];
        return new KitList(lines, use, origin, [.. Missing(job, lines, use)]);
    }

    private static KitLine Line(Job job, Need need, StockOnHand stock, Spares spares, Length uncut, (DateOnly? First, DateOnly? Last) days)
    {
        var (spare, rule) = spares.Of(need.Kind, need.Used);
        var how = need.Used > 0 ? $"{need.How}: {NumberFormat.Text(Math.Round(need.Used, 3))}; {rule}" : need.How;
        var line = new KitLine(need.Kind, need.Part, need.Name, need.Unit, need.Used, spare, need.For, how, KitState.NotStated, Remark: need.Remark, NeededOn: days.First);
        if (need.Part.Length == 0)
        {
            return line;
        }

        if (need.Kind == KitKind.Drill)
        {
            return line with { State = KitState.Covered };
        }

        if (job.Stock is null)
        {
            return line with { State = KitState.StockUnknown };
        }

        var onHand = stock.Of(need.Part, days.Last);
        var shortage = Math.Max(Math.Max(0, need.Used + spare - onHand), need.Kind == KitKind.Wire ? uncut.Si : 0);
        shortage = shortage < 1e-9 ? 0 : shortage;
        return line with
        {
            State = shortage > 0 ? KitState.Short : KitState.Covered, OnHand = onHand, Shortage = shortage, OrderBy = shortage > 0 ? stock.OrderBy(need.Part, days.First) : null, Batches = stock.Batches(need.Part, days.Last),
            Remark = string.Join("; ", stock.Expired(need.Part, days.Last).Select(e => $"{e.Lot.Id} left out: {(e.Until is { } day ? $"may be used until {Day(day)}" : "its last day is not stated")}").Prepend(need.Remark).Where(r => r.Length > 0)),
        };
    }

    private static KitLine Tool(Job job, Need need, (DateOnly? First, DateOnly? Last) days)
    {
        var tool = job.Aircraft.Tools?.Find(need.Part);
        var instrument = job.Aircraft.Instruments?.Find(need.Part);
        var due = tool?.CalibrationDue ?? instrument?.CalibrationDue;
        var state = need.Part.Length == 0 ? KitState.NotStated : tool is null && instrument is null ? KitState.Short : due < days.Last ? KitState.CalibrationEnds : KitState.Covered;
        return new KitLine(need.Kind, need.Part, tool?.Name ?? need.Name, need.Unit, Math.Min(1, need.Used), 0, need.For, need.How, state,
            need.Part.Length == 0 ? null : state == KitState.Short ? 0 : 1, state == KitState.Short ? 1 : 0, Remark: due is { } day ? $"calibrated until {Day(day)}" : state == KitState.Covered ? "not calibrated" : "", NeededOn: days.First);
    }

    private static IEnumerable<string> Missing(Job job, ImmutableArray<KitLine> lines, DateOnly? use)
    {
        if (job.Stock is null)
        {
            yield return "The job does not say what is on hand: no stock file is named in job.yaml.";
        }

        if (use is null)
        {
            yield return "The day of use is not stated, so shelf lives and calibrations are not judged.";
        }

        foreach (var line in lines)
        {
            var what = $"{line.PartText} ({line.Name})";
            if (line.State == KitState.Short)
            {
                yield return $"{what}: {NumberFormat.Text(Math.Round(line.Shortage, 3))} {line.Unit} missing{(line.NeededOn is { } on ? $", needed on {Day(on)}" : "")}{(line.OrderBy is { } day ? $", to be ordered by {Day(day)}" : "")}.";
            }
            else if (line.State == KitState.NotStated)
            {
                yield return $"{line.Name}: not stated, for {string.Join(", ", line.For)}.";
            }
            else if (line.State == KitState.CalibrationEnds)
            {
                yield return $"{what}: {line.Remark}, before its last use.";
            }
        }
    }

    internal static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
