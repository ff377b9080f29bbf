using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Records;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Records;

/// <summary>Photographs of the work: entries that name a hash, with the bytes kept under it. What a file is, its bytes say and not its name.</summary>
internal static class Photographs
{
    private const string Kind = "photographed";
    private static readonly byte[] JpegBegins = [0xFF, 0xD8, 0xFF], JpegEnds = [0xFF, 0xD9];
    private static readonly byte[] PngBegins = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];
    private static readonly byte[] PngEnds = [0, 0, 0, 0, (byte)'I', (byte)'E', (byte)'N', (byte)'D', 0xAE, 0x42, 0x60, 0x82];

    public static void MapPhotographs(this IEndpointRouteBuilder routes)
    {
        var photographs = routes.MapGroup("/jobs/{job}/photographs").WithTags("log").RequireAuthorization(Policies.View);
        photographs.MapGet("", (JobRef job) => job.Look(List)).WithSummary("Every photograph the log names.");
        photographs.MapGet("/{hash}", (JobRef job, string hash, HttpResponse response) => job.Look(f => Bytes(f, hash, response))).WithSummary("The bytes of a photograph.");
    }

    /// <summary>Why some bytes are not taken as a photograph; null when they are.</summary>
    public static string? Refusal(ReadOnlySpan<byte> bytes) =>
        bytes.Length > Pictures.MostBytes ? string.Create(CultureInfo.InvariantCulture, $"The photograph has {bytes.Length} bytes, and at most {Pictures.MostBytes} are taken.")
        : Type(bytes) is null ? "The file is no whole JPEG or PNG picture." : null;

    private static string? Type(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith(JpegBegins) && bytes.EndsWith(JpegEnds) ? "image/jpeg" : bytes.StartsWith(PngBegins) && bytes.EndsWith(PngEnds) ? "image/png" : null;

    private static Microsoft.AspNetCore.Http.HttpResults.Ok<PhotographView[]> List(string folder)
    {
        using var store = JobStore.OpenLog(folder);
        var kept = store.Contents().ToImmutableHashSet(StringComparer.Ordinal);
        return TypedResults.Ok(Entries(store).Select(e => new PhotographView(e.Sequence, e.At, e.Who, e.Subject, e.Payload.Text("sha256"), e.Payload.Text("caption"), kept.Contains(e.Payload.Text("sha256")))).ToArray());
    }

    private static IResult Bytes(string folder, string hash, HttpResponse response)
    {
        using var store = JobStore.OpenLog(folder);
        if (Entries(store).FirstOrDefault(e => e.Payload.Text("sha256") == hash) is not { } entry || store.Content(hash) is not { } bytes || Type(bytes) is not { } type)
        {
            return TypedResults.NotFound();
        }

        // A picture opened by itself runs nothing, whatever else its bytes might be taken for.
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        response.Headers.ContentDisposition = $"inline; filename=\"{Pictures.Name(entry, bytes)}\"";
        return TypedResults.Bytes(bytes, type);
    }

    private static IEnumerable<Entry> Entries(ILogStore store) => store.Lines(0).Select(Entry.Read).Where(e => e.Kind == Kind);
}
