using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Server.Jobs;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Server.Work;

/// <summary>A job as it was kept last, with what the work on it follows from.</summary>
internal sealed record AssessedJob(string Folder, string Hash, Assessment Assessment, Sequence<JobTask> Tasks, Required Required)
{
    private readonly Lazy<KitList> kit = new(() => PlannedKit.Of(Assessment));

    public Job Job => Assessment.Job;

    /// <summary>The kit with the days of a plan made at once.</summary>
    public KitList Kit => kit.Value;

    public Register Register => Register.Of(Job, Required);

    /// <summary>How things stand by the log.</summary>
    public HangarState State(TimeProvider clock)
    {
        using var store = JobStore.OpenLog(Folder);
        return new LogBook(store, Register, clock).CatchUp();
    }
}

/// <summary>Assesses kept jobs, each revision once.</summary>
/// <param name="clock">The clock.</param>
internal sealed class AssessedJobs(TimeProvider clock)
{
    private readonly Remembered<Lazy<AssessedJob>> known = new(clock);

    public AssessedJob Of(ReadJob job)
    {
        var found = known.Of(job.Folder, old => old is null || (old.IsValueCreated && old.Value.Hash != job.Hash) ? New(job) : old);
        return found.Value.Hash == job.Hash ? found.Value : New(job).Value;
    }

    private static Lazy<AssessedJob> New(ReadJob job) => new(() =>
    {
        var assessment = new Assessor().Assess(job.Job);
        var tasks = TaskList.Of(assessment);
        return new AssessedJob(job.Folder, job.Hash, assessment, tasks, Requirements.Of(assessment));
    });
}
