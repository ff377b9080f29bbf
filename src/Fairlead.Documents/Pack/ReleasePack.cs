using System.Collections.Immutable;
using Fairlead.Model.Reading;
using Fairlead.Planning.Plans;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>What a release pack needs beside the assessment.</summary>
/// <param name="Date">The date of issue.</param>
/// <param name="JobHash">The hash of the job's description, SHA-256 in hexadecimal: printed on every page.</param>
/// <param name="JobZip">The job folder as one zip: it is attached, so that the pack can be made again.</param>
/// <param name="MassUnit">Unit of masses.</param>
/// <param name="ArmUnit">Unit of arms and stations.</param>
/// <param name="MomentUnit">Unit of moments.</param>
/// <param name="LengthUnit">Unit of wire lengths.</param>
public sealed record PackOptions(
    DateTimeOffset Date, string JobHash, ImmutableArray<byte> JobZip,
    string MassUnit = "lb", string ArmUnit = "in", string MomentUnit = "lb·in", string LengthUnit = "in")
{
    /// <summary>The plan of the work; null for a pack without one.</summary>
    public JobPlan? Plan { get; init; }

    /// <summary>The log, when nothing in it stands open; null for a pack before release.</summary>
    public ReleaseRecord? Record { get; init; }
}

/// <summary>The release pack: the papers of a change, as one file made for keeping.</summary>
public static class ReleasePack
{
    /// <summary>The name of the job inside the pack.</summary>
    public const string JobFile = "job.zip";

    /// <summary>The name of the log inside the pack of a release.</summary>
    public const string LogFile = "log.jsonl";

    /// <summary>Makes the pack of a job: a PDF with the job attached. The same job, zip and date give the same bytes.</summary>
    /// <param name="load">The job as it was read.</param>
    /// <param name="assessment">The assessment of that job.</param>
    /// <param name="zip">The job folder as one zip, as <c>JobFolder.Zip</c> gives it.</param>
    /// <param name="date">The date of issue; nothing here reads a clock.</param>
    /// <param name="plan">The plan of the work; null for a pack without one.</param>
    /// <param name="progress">Told how much is done, in per cent.</param>
    /// <param name="cancellation">Stops the work between two pages.</param>
    /// <exception cref="ArgumentException">The job could not be read, or the assessment is of another job.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static byte[] Write(
        LoadResult load, Assessment assessment, byte[] zip, DateTimeOffset date, JobPlan? plan = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(load);
        ArgumentNullException.ThrowIfNull(assessment);
        ArgumentNullException.ThrowIfNull(zip);
        return !ReferenceEquals(load.Job, assessment.Job)
            ? throw new ArgumentException(load.Job is null ? "The job has problems and could not be read, so there is nothing to release." : "The assessment is not of the job that was read.", nameof(assessment))
            : Write(assessment, new PackOptions(date, load.Hash, [.. zip]) { Plan = plan }, progress, cancellation);
    }

    /// <summary>Makes the pack of an assessment, in units to choose. The same assessment and options give the same bytes.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="options">Date, identity of the job, units.</param>
    /// <param name="progress">Told how much is done, in per cent.</param>
    /// <param name="cancellation">Stops the work between two pages.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static byte[] Write(Assessment assessment, PackOptions options, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        progress?.Report(0);
        return PdfWriter.Write(Of(assessment, options), progress, cancellation);
    }

    /// <summary>The pack as a document.</summary>
    public static Document Of(Assessment assessment, PackOptions options)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        ArgumentNullException.ThrowIfNull(options);
        var (order, aircraft) = (assessment.Job.Order, assessment.Job.Aircraft);
        return new Document(
            new DocumentInfo(
                $"Release pack: {aircraft.Registration}, work order {order.Number}, revision {order.Revision}", order.Title, order.Operator, options.Date, options.JobHash),
            [
                .. Cover.Of(assessment, options),
                .. ChangeSummary.Of(assessment, options),
                .. FindingList.Of(assessment, options),
                .. DrawingSection.Aircraft(assessment, options),
                .. BalanceAmendment.Of(assessment, options),
                .. LoadAnalysis.Of(assessment),
                .. CircuitList.Of(assessment, options),
                .. options.Plan is { } plan ? PlanPages.Of(plan) : [],
                .. DrawingSection.Others(assessment, options),
                .. KitSection.Of(options.Plan is { } made && KitDays.Of(assessment, made) is { } days ? assessment.KitOn(days) : assessment.Kit),
                .. CuttingSection.Of(assessment),
                .. options.Record is { } record ? RecordSection.Of(assessment, record) : [],
                .. CardSection.Of(assessment, options),
                .. SheetCollection.Of(assessment),
                .. SourceList.Of(assessment),
            ],
            [
                new Attachment(JobFile, "application/zip", "The job this pack was made from", Relationship.Source, options.JobZip),
                .. options.Record is { } kept ? [new Attachment(LogFile, "application/x-ndjson", "The log of the work", Relationship.Data, kept.Log)] : Array.Empty<Attachment>(),
            ]);
    }
}
