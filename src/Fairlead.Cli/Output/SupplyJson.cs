using System.Collections.Immutable;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;

namespace Fairlead.Cli.Output;

/// <summary>Cutting plans and marks as JSON: lengths in millimetres as they are cut, places and diameters in metres.</summary>
internal static class SupplyJson
{
    /// <summary>The cutting plans; what is planned is null where the job does not say what is on hand.</summary>
    public static object Of(ImmutableArray<CutPlan> plans) => plans.Select(p => new
    {
        p.Part,
        Pieces = p.Pieces.Select(c => new { c.Name, c.Circuits, c.Millimetres }),
        p.Unknown,
        p.Splices,
        Plan = p.Plan is not { } plan ? null : new
        {
            Lengths = plan.Lengths.Select(l => new { From = l.Stock.Name, Remnant = !l.Stock.IsNew, Pieces = l.Pieces.Select(i => p.Pieces[i].Name), l.Left }),
            TooLong = plan.TooLong.Select(i => p.Pieces[i].Name),
            NotPlaced = plan.NotPlaced.Select(i => p.Pieces[i].Name),
            plan.NewReels,
            plan.NewReelsBound,
            plan.Scrap,
            plan.ScrapBound,
            Proved = plan.IsOptimal,
        },
    });

    /// <summary>The sleeves and labels to print.</summary>
    public static object Of(ImmutableArray<PrintLine> lines) =>
        lines.Select(l => new { l.Text, l.Copies, l.Kind, l.For, Diameter = l.Diameter?.Si, Places = l.Places.Select(p => p.Si) });
}
