using Fairlead.Model.Storage;
using Fairlead.Records;
using Fairlead.Server.Hosting;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Fairlead.Server.Jobs;

/// <summary>Asks for a new job.</summary>
/// <param name="Name">Its name.</param>
/// <param name="From">The job it is a copy of; empty for the starter job.</param>
public sealed record NewJob(string Name, string From = "");

/// <summary>The list of jobs; new ones, and jobs as one file.</summary>
internal static class JobEndpoints
{
    /// <summary>Most bytes that a zip unpacks to: four times what is taken as a body, since texts pack well and photographs do not.</summary>
    internal const long MostUnpacked = 256L * 1024 * 1024;

    private const string Zip = "application/zip";

    public static void MapJobs(this IEndpointRouteBuilder routes)
    {
        var jobs = routes.MapGroup("/jobs").WithTags("jobs");
        jobs.MapGet("", (JobStore store) => store.All()).WithSummary("All jobs.").RequireAuthorization(Policies.View);
        jobs.MapPost("", Add).WithSummary("Begins a job, from the starter or as a copy.").RequireAuthorization(Policies.Edit);
        jobs.MapGet("/{job}/zip", Export).WithSummary("A job with its log as one zip file.").RequireAuthorization(Policies.View);
        jobs.MapPut("/{job}/zip", Import).WithSummary("A new job from a zip file.").RequireAuthorization(Policies.Edit).Accepts<byte[]>(Zip);
    }

    private static Results<Created<NewJob>, ProblemHttpResult> Add(NewJob job, JobStore store)
    {
        var source = job.From.Length > 0 ? store.Find(job.From) : null;
        if (store.Refusal(job.Name) is { } refusal || (job.From.Length > 0 && source is null && (refusal = $"There is no job '{job.From}'.") is not null))
        {
            return TypedResults.Problem(refusal, statusCode: StatusCodes.Status400BadRequest, title: "The job cannot be made.");
        }

        store.Add(job.Name, source is null ? Starter.Files() : new FolderFiles(source));
        return TypedResults.Created($"/api/jobs/{job.Name}", job);
    }

    private static Results<FileContentHttpResult, NotFound> Export(string job, JobStore store) =>
        store.Find(job) is { } directory ? TypedResults.File(JobStore.Archive(directory), Zip, job + ".zip") : TypedResults.NotFound();

    private static async Task<Results<Created, ProblemHttpResult>> Import(string job, HttpRequest request, JobStore store, CancellationToken stop)
    {
        if (store.Refusal(job) is { } refusal)
        {
            return Refused(refusal);
        }

        using var bytes = new MemoryStream();
        await request.Body.CopyToAsync(bytes, stop);
        bytes.Position = 0;
        try
        {
            store.Add(job, JobArchive.Folder(JobFolder.Read(bytes, archive: true, MostUnpacked)));
            return TypedResults.Created($"/api/jobs/{job}");
        }
        catch (InvalidDataException e)
        {
            return Refused(e.Message);
        }
    }

    private static ProblemHttpResult Refused(string why) => TypedResults.Problem(why, statusCode: StatusCodes.Status400BadRequest, title: "The file is not a job.");
}
