using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation;

/// <summary>Assesses jobs. Keeps what it worked out, so that assessing a job again after an edit costs only what the edit changed.
/// Not safe for use by several threads at once.</summary>
public sealed class Assessor
{
    private Assessment? last;

    /// <summary>Calculations run so far. Sheets worked again to be shown do not count.</summary>
    public long Runs { get; private set; }

    /// <summary>Assesses a job.</summary>
    public Assessment Assess(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (ReferenceEquals(last?.Job, job))
        {
            return last;
        }

        var weighing = job.Aircraft.Weighing;
        return last = new Assessment(job, [], new Lazy<ImmutableArray<SubjectSheet>>(() => []))
        {
            EmptyBefore = new EmptyWeight(weighing.Mass, weighing.Fs, weighing.Bl, weighing.Wl),
            Equipment = EquipmentList.Of(job),
        };
    }
}
