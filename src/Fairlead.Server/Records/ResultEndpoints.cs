using Fairlead.Calculations;
using Fairlead.Records;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Server.Work;
using Fairlead.Substantiation.Tests;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Records;

/// <summary>Results in the form of a table, entered in the name of who measured them.</summary>
/// <param name="Who">Who measured.</param>
/// <param name="Table">The table: card, line, value, and where known unit, instrument, by, outside; values separated by commas.</param>
public sealed record NewResults(string Who, string Table) : INamesPerson
{
    /// <summary>The person alone.</summary>
    public override string ToString() => Who;
}

/// <summary>Results that an instrument or a spreadsheet wrote.</summary>
internal static class ResultEndpoints
{
    public static void MapResults(this IEndpointRouteBuilder routes) =>
        routes.MapGroup("/jobs/{job}").MapPost("/results", (JobRef job, NewResults results, AssessedJobs jobs, TimeProvider clock) => job.Do(j => Enter(jobs.Of(j), results, clock)))
            .WithTags("log").WithSummary("Enters results from a table, each judged by its card.").RequireAuthorization(Policies.Work);

    private static IResult Enter(AssessedJob job, NewResults results, TimeProvider clock)
    {
        var problems = new List<string>();
        var rows = ResultFile.Read(results.Table, problems);
        if (problems.Count > 0)
        {
            return TypedResults.Json(new Refused(problems), statusCode: StatusCodes.Status422UnprocessableEntity);
        }

        var strange = rows.Where(r => r.By.Length > 0 && r.By != results.Who).Select(r => $"row {NumberFormat.Text(r.Row)}: measured by {r.By}, who enters it in their own name.");
        var report = TestReport.Of(TestPlan.Of(job.Assessment), rows.Where(r => r.By.Length == 0 || r.By == results.Who).Select(r => r with { By = results.Who }));
        using var store = JobStore.OpenLog(job.Folder);
        var entered = ResultEntries.Add(new LogBook(store, job.Register, clock), report);
        return TypedResults.Ok(new EnteredView(entered.Count, [.. strange, .. entered.Refused]));
    }
}
