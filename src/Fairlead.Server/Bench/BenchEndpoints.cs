using Fairlead.Server.Hosting;
using Fairlead.Workbench.Views;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Fairlead.Server.Bench;

/// <summary>Every calculation, to be run by itself.</summary>
internal static class BenchEndpoints
{
    public static void MapBench(this IEndpointRouteBuilder routes)
    {
        var calculations = routes.MapGroup("/calculations").WithTags("bench").RequireAuthorization(Policies.View);
        calculations.MapGet("", () => Workbench.Bench.All).WithSummary("All calculations with their inputs.");
        calculations.MapPost("/{name}", Run).WithSummary("Runs a calculation.");
    }

    private static Results<Ok<BenchResult>, NotFound> Run(string name, Dictionary<string, string?> inputs) =>
        Workbench.Bench.Run(name, inputs.ToDictionary(i => i.Key, i => i.Value ?? "", StringComparer.Ordinal)) is { } result ? TypedResults.Ok(result) : TypedResults.NotFound();
}
