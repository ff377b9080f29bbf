using Fairlead.Model;
using Fairlead.Model.Storage;

namespace Fairlead.Bench;

/// <summary>Jobs to measure with, and edits of them.</summary>
internal static class BenchJobs
{
    /// <summary>The demonstration job.</summary>
    public static Job Demo() => JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job
        ?? throw new InvalidOperationException("The demonstration job cannot be read.");

    /// <summary>A job with the current of one signal in the middle changed, one way or the other.</summary>
    public static Job Edited(Job job, bool odd)
    {
        var circuits = job.Change.Circuits!;
        var circuit = circuits.Skip(circuits.Count / 2).First(c => !c.From.IsPoint && !c.To.IsPoint);
        return job with { Change = job.Change with { Circuits = circuits.With(circuit with { Current = Current.Of(odd ? 0.11 : 0.12, "A") }) } };
    }
}
