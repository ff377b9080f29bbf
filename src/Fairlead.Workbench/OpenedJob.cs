using Fairlead.Model.Editing;
using Fairlead.Model.Reading;
using Fairlead.Substantiation;

namespace Fairlead.Workbench;

/// <summary>A job that was opened: read and assessed once, by whoever needs it first, so that many desks can begin with it. Safe for several threads.</summary>
public sealed class OpenedJob
{
    private readonly ReadMemory memory = new();
    private readonly Assessor assessor = new();
    private readonly Lazy<Standing> standing;

    /// <summary>A job of some texts.</summary>
    public OpenedJob(JobTexts texts)
    {
        Texts = texts;
        standing = new(() => Standing.Of(texts, null, memory, assessor, null, CancellationToken.None));
    }

    /// <summary>The texts.</summary>
    public JobTexts Texts { get; }

    /// <summary>Whether it is a job of these texts.</summary>
    public bool Has(JobTexts texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return Texts.Files.SequenceEqual(texts.Files);
    }

    /// <summary>A desk that begins with it.</summary>
    /// <param name="steps">Edits that are made at once, step by step.</param>
    /// <param name="stop">Asks for an end.</param>
    /// <exception cref="FormatException">One of the edits cannot be made.</exception>
    public Desk Desk(IReadOnlyList<IReadOnlyList<JobEdit>>? steps = null, CancellationToken stop = default) => new(standing.Value, memory.Another(), assessor.Another(), steps ?? [], stop);
}
