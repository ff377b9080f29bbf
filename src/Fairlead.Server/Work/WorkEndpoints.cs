using Fairlead.Documents;
using Fairlead.Model.Storage;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;

namespace Fairlead.Server.Work;

/// <summary>The work on a job: kit, plan, tasks, tests, handover, release.</summary>
internal static class WorkEndpoints
{
    public static void MapWork(this IEndpointRouteBuilder routes)
    {
        var work = routes.MapGroup("/jobs/{job}").WithTags("work").RequireAuthorization(Policies.View);
        work.MapGet("/kit", (JobRef job, AssessedJobs jobs) => job.Do(j => TypedResults.Ok(WorkView.Kit(jobs.Of(j))))).WithSummary("The kit against the stock on hand.");
        work.MapGet("/tasks", (JobRef job, AssessedJobs jobs, TimeProvider clock) => job.Do(j => TypedResults.Ok(WorkView.Tasks(jobs.Of(j), clock)))).WithSummary("Every task with how it stands.");
        work.MapGet("/tests", (JobRef job, AssessedJobs jobs, TimeProvider clock) => job.Do(j => TypedResults.Ok(TestsView.Of(jobs.Of(j), clock)))).WithSummary("The test cards in the safe order, with their results.");
        work.MapGet("/diagnosis", (JobRef job, AssessedJobs jobs, TimeProvider clock) => job.Do(j => TypedResults.Ok(TestsView.Diagnosis(jobs.Of(j), clock)))).WithSummary("Faults the readings point to, and the reading to make next.");
        work.MapGet("/release", (JobRef job, AssessedJobs jobs, TimeProvider clock) => job.Do(j => TypedResults.Ok(WorkView.Release(jobs.Of(j), clock)))).WithSummary("What still stands open.");
        work.MapGet("/handover", (JobRef job, AssessedJobs jobs, TimeProvider clock) => job.Do(j => TypedResults.Ok(WorkView.Handover(jobs.Of(j), clock)), f => TypedResults.Ok(WorkView.Handover(f, clock)))).WithSummary("The handover sheet.");
        work.MapGet("/plan", (JobRef job, AssessedJobs jobs, Plans plans) => job.Do(j => TypedResults.Ok(plans.Of(jobs.Of(j))))).WithSummary("The best plan known: the first is made at once.");
        work.MapPost("/plan", (JobRef job, AssessedJobs jobs, Plans plans) => job.Do(j => TypedResults.Ok(plans.Search(jobs.Of(j))))).WithSummary("Begins the search for a better plan, which goes on while the plan is asked for.");
        work.MapDelete("/plan", (JobRef job, Plans plans) => job.Do(j => plans.Stop(j.Folder))).WithSummary("Ends the search and keeps the best plan so far.").RequireAuthorization(Policies.Edit);
        work.MapGet("/pack", (JobRef job, AssessedJobs jobs, TimeProvider clock, CancellationToken stop) => job.Do(j => Pack(jobs.Of(j), clock, stop))).WithSummary("The release pack as PDF.");
    }

    // The files attached are those that were assessed, or somebody kept another revision in between.
    private static IResult Pack(AssessedJob job, TimeProvider clock, CancellationToken stop)
    {
        var folder = new FolderFiles(job.Folder);
        var files = new MemoryFiles(folder.All.Select(f => KeyValuePair.Create(f, folder.Read(f))));
        if (Model.Reading.JobReader.Read(files).Hash != job.Hash)
        {
            return TypedResults.Problem("The job was changed while its pack was asked for: ask again.", statusCode: StatusCodes.Status409Conflict);
        }

        var options = new PackOptions(new DateTimeOffset(clock.GetLocalNow().Date, TimeSpan.Zero), job.Hash, [.. JobFolder.Zip(files)]) { Record = WorkView.Record(job, clock) };
        var pack = ReleasePack.Write(job.Assessment, options, progress: null, stop);
        return TypedResults.File(pack, "application/pdf", job.Job.Order.Number + ".pdf");
    }
}
