using BenchmarkDotNet.Attributes;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Bench;

/// <summary>The whole check of a job, and the check after one edit.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class AssessmentBench
{
    private Job job = null!;
    private Assessor assessor = null!;
    private bool odd;

    /// <summary>Circuits of the generated job; 0 is the demonstration job.</summary>
    [Params(0, 5000)]
    public int Circuits { get; set; }

    /// <summary>Makes the job and assesses it once.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        job = Circuits == 0 ? BenchJobs.Demo() : GeneratedJob.Of(Circuits);
        assessor = new Assessor();
        assessor.Assess(job);
    }

    /// <summary>Everything, by an assessor that knows nothing.</summary>
    [Benchmark(Baseline = true)]
    public Assessment Whole() => new Assessor().Assess(job);

    /// <summary>After the current of one circuit changed.</summary>
    [Benchmark]
    public Assessment OneEdit() => assessor.Assess(BenchJobs.Edited(job, odd = !odd));
}
