using System.Globalization;
using System.Text;
using Fairlead.Records;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;

namespace Fairlead.Server.Records;

/// <summary>What came of checking a proof.</summary>
/// <param name="Entry">The entry; null when it proves nothing.</param>
/// <param name="Log">Number of entries and root of the log it belongs to.</param>
/// <param name="Fault">Why it proves nothing; empty when the entry belongs to that log.</param>
public sealed record ProofCheck(LogLine? Entry, string Log, string Fault);

/// <summary>That one entry belongs to the log, shown without the rest; and checked, for which no job is needed.</summary>
internal static class ProofEndpoints
{
    private const int MostBytes = 1024 * 1024;

    public static void MapProofs(this IEndpointRouteBuilder routes)
    {
        routes.MapGroup("/jobs/{job}").MapGet("/log/{sequence:long}/proof", (JobRef job, long sequence) => job.Look(f => Prove(f, job.Jobs.Read(f).Job?.Order.Number ?? Path.GetFileName(f), sequence))).WithTags("log").WithSummary("The proof that an entry belongs to the log.").RequireAuthorization(Policies.View);
        routes.MapPost("/proofs", Check).WithTags("log").WithSummary("Checks the proof of an entry.").RequireAuthorization(Policies.View).Accepts<byte[]>("application/octet-stream");
    }

    private static IResult Prove(string folder, string number, long sequence)
    {
        using var store = JobStore.OpenLog(folder);
        var report = ChainCheck.Check(store.Lines(0));
        return report.Fault is { } fault ? TypedResults.Problem(string.Create(CultureInfo.InvariantCulture, $"Entry {fault.Sequence} of the log was altered, so it proves nothing."), statusCode: StatusCodes.Status409Conflict)
            : sequence < 1 || sequence > report.Entries.Count ? TypedResults.NotFound()
            : TypedResults.File(Encoding.UTF8.GetBytes(Proof.Of(report.Entries, sequence).Json()), "application/json", string.Create(CultureInfo.InvariantCulture, $"{number}-entry-{sequence}.json"));
    }

    private static async Task<IResult> Check(HttpRequest request, CancellationToken stop)
    {
        if (await Body.Read(request, MostBytes, stop) is not { } bytes)
        {
            return TypedResults.Problem("The file is too long for a proof.", statusCode: StatusCodes.Status413PayloadTooLarge);
        }

        try
        {
            var proof = Proof.Read(CanonicalJson.FromBytes(bytes));
            return TypedResults.Ok(proof.Fault() is { } fault ? new ProofCheck(null, proof.Log.ToString(), fault) : new ProofCheck(LogEndpoints.Line(Entry.Read(proof.Line)), proof.Log.ToString(), ""));
        }
        catch (FormatException e)
        {
            return TypedResults.Ok(new ProofCheck(null, "", e.Message));
        }
    }
}
