using Fairlead.Calculations;
using Fairlead.Planning.Tasks;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary>The derived tasks as the release gate requires them: done, and signed under their authorisation. Panels, controls, tests and the release itself the gate follows by other entries.</summary>
internal static class RequiredTasks
{
    private static readonly TaskKind[] Elsewhere = [TaskKind.Open, TaskKind.Close, TaskKind.Controls, TaskKind.Test, TaskKind.HarnessCheck, TaskKind.PrePower, TaskKind.Release];

    /// <summary>One for each task.</summary>
    public static Sequence<RequiredTask> Of(Sequence<JobTask> tasks) => tasks.Where(t => !Elsewhere.Contains(t.Kind))
        .Select(t => new RequiredTask(Id(t), t.Title, t.Panels, t.Authorisation, t.Independent)).ToSequence();

    /// <summary>The id under which the log knows a task: that of the job for its own tasks and tests.</summary>
    public static string Id(JobTask task) => task.Kind is TaskKind.Extra or TaskKind.Test ? task.Id[(task.Id.IndexOf('-', StringComparison.Ordinal) + 1)..] : task.Id;
}
