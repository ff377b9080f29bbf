using Fairlead.Model;
using Fairlead.Records;

namespace Fairlead.Server.Jobs;

/// <summary>A job that could be read, as it was kept last.</summary>
internal sealed record ReadJob(string Folder, Job Job, string Hash)
{
    public Register Register => Register.Of(Job);
}

/// <summary>The job a request names.</summary>
internal sealed record JobRef(string? Folder, JobStore Jobs)
{
    public static ValueTask<JobRef> BindAsync(HttpContext context)
    {
        var jobs = context.RequestServices.GetRequiredService<JobStore>();
        return ValueTask.FromResult(new JobRef(jobs.Find(context.Request.RouteValues["job"] as string ?? ""), jobs));
    }

    /// <summary>Looks at the folder of the job, whatever its text is like.</summary>
    public IResult Look(Func<string, IResult> work) => Folder is null ? TypedResults.NotFound() : work(Folder);

    /// <summary>Works on the job; a job whose text has problems lists them instead.</summary>
    /// <param name="work">The work.</param>
    /// <param name="unread">What is done in its folder where the text has problems; null where nothing can be.</param>
    public IResult Do(Func<ReadJob, IResult> work, Func<string, IResult>? unread = null)
    {
        if (Folder is null)
        {
            return TypedResults.NotFound();
        }

        var read = Jobs.Read(Folder);
        return read.Job is { } job ? work(new ReadJob(Folder, job, read.Hash)) : unread is not null ? unread(Folder)
            : TypedResults.ValidationProblem(read.Problems.GroupBy(p => p.Location.ToString()).ToDictionary(g => g.Key, g => g.Select(p => p.ToString()).ToArray(), StringComparer.Ordinal), title: "The text of the job has problems.");
    }
}
