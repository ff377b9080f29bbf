using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Harness.Identification;

/// <summary>The marks of a job and their findings. After an edit that leaves every text as it was, only the circuits it touches are marked again.</summary>
internal sealed class MarkWork
{
    private readonly Job job;
    private readonly ImmutableArray<CircuitResult> circuits;

    private MarkWork(Job job, ImmutableArray<CircuitResult> circuits, ImmutableArray<WireMark> marks, ImmutableArray<Finding> findings) =>
        (this.job, this.circuits, Marks, Findings) = (job, circuits, marks, findings);

    /// <summary>The marks: a circuit each in their order, then the jackets.</summary>
    public ImmutableArray<WireMark> Marks { get; }

    public ImmutableArray<Finding> Findings { get; }

    /// <summary>The marks of a job, from what is known already where that serves.</summary>
    public static MarkWork Of(Job job, ImmutableArray<CircuitResult> circuits, MarkWork? known)
    {
        if (known?.Serves(job, circuits) == true)
        {
            return new MarkWork(job, circuits, known.Again(circuits), known.Findings);
        }

        var marks = WireMarks.Of(job, circuits);
        return new MarkWork(job, circuits, marks, [.. WireMarks.Findings(job, marks)]);
    }

    // Texts, and what is said of them, follow from these alone.
    private bool Serves(Job other, ImmutableArray<CircuitResult> others)
    {
        var same = ReferenceEquals(job.Parts, other.Parts) && ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Change.Grounds, other.Change.Grounds)
            && ReferenceEquals(job.Change.Joints, other.Change.Joints) && circuits.Length == others.Length;
        for (var i = 0; same && i < circuits.Length; i++)
        {
            var (a, b) = (circuits[i], others[i]);
            same = ReferenceEquals(a, b) || ((a.Circuit.Id, a.Circuit.From, a.Circuit.To, a.Circuit.Function, a.Circuit.Mark) == (b.Circuit.Id, b.Circuit.From, b.Circuit.To, b.Circuit.Function, b.Circuit.Mark)
                && a.Part == b.Part && a.Wire == b.Wire && (a.Circuit.Cable, b.Circuit.Cable) is ("", ""));
        }

        return same;
    }

    private ImmutableArray<WireMark> Again(ImmutableArray<CircuitResult> others)
    {
        ImmutableArray<WireMark>.Builder? marks = null;
        for (var i = 0; i < others.Length; i++)
        {
            if (!ReferenceEquals(circuits[i], others[i]) && circuits[i].Length != others[i].Length)
            {
                marks ??= Marks.ToBuilder();
                marks[i] = WireMarks.Mark(job, others[i], Marks[i].Text);
            }
        }

        return marks?.MoveToImmutable() ?? Marks;
    }
}
