using System.Collections.Immutable;
using Fairlead.Substantiation;

namespace Fairlead.Documents;

/// <summary>What a release pack needs beside the assessment.</summary>
/// <param name="Date">The date of issue.</param>
/// <param name="JobHash">SHA-256 of the job's zip, in hexadecimal: printed on every page.</param>
/// <param name="JobZip">The job itself: it is attached, so that the pack can be made again.</param>
/// <param name="MassUnit">Unit of masses.</param>
/// <param name="ArmUnit">Unit of arms and stations.</param>
/// <param name="MomentUnit">Unit of moments.</param>
/// <param name="LengthUnit">Unit of wire lengths.</param>
public sealed record PackOptions(
    DateTimeOffset Date, string JobHash, ImmutableArray<byte> JobZip,
    string MassUnit = "lb", string ArmUnit = "in", string MomentUnit = "lb·in", string LengthUnit = "in");

/// <summary>The release pack: the papers of a change, as one file made for keeping.</summary>
public static class ReleasePack
{
    /// <summary>The name of the job inside the pack.</summary>
    public const string JobFile = "job.zip";

    /// <summary>The bytes of the pack as PDF. The same assessment and options give the same bytes.</summary>
    public static byte[] Write(Assessment assessment, PackOptions options) => PdfWriter.Write(Of(assessment, options));

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
                .. ChangeSummary.Of(assessment),
                .. FindingList.Of(assessment, options),
                .. BalanceAmendment.Of(assessment, options),
                .. LoadAnalysis.Of(assessment),
                .. CircuitList.Of(assessment, options),
                .. SheetCollection.Of(assessment),
                .. SourceList.Of(assessment),
            ],
            [new Attachment(JobFile, "application/zip", "The job this pack was made from", Relationship.Source, options.JobZip)]);
    }
}
