using System.Text;
using Fairlead.Records;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;

namespace Fairlead.Server.Records;

/// <summary>A revision that was kept.</summary>
/// <param name="File">The file.</param>
/// <param name="Number">Its number, from 1.</param>
/// <param name="At">When.</param>
/// <param name="Who">Who.</param>
/// <param name="Why">Why.</param>
public sealed record RevisionLine(string File, int Number, DateTimeOffset At, string Who, string Why);

/// <summary>The text of a revision.</summary>
public sealed record RevisionText(string File, int Number, string Text);

/// <summary>What was kept of each file: who, when, why, and the text.</summary>
internal static class RevisionEndpoints
{
    private const string Document = "document/";

    public static void MapRevisions(this IEndpointRouteBuilder routes)
    {
        var revisions = routes.MapGroup("/jobs/{job}/revisions").WithTags("log").RequireAuthorization(Policies.View);
        revisions.MapGet("", (JobRef job, TimeProvider clock) => job.Look(f => List(f, clock))).WithSummary("Every revision that was kept, newest first.");
        revisions.MapGet("/{number:int}", (JobRef job, int number, string file, TimeProvider clock) => job.Look(f => Text(f, file, number, clock))).WithSummary("The text of a revision of a file.");
    }

    private static Microsoft.AspNetCore.Http.HttpResults.Ok<RevisionLine[]> List(string folder, TimeProvider clock)
    {
        using var store = JobStore.OpenLog(folder);
        var state = new LogBook(store, Register.Nobody, clock).CatchUp();
        return TypedResults.Ok(state.Subjects.Where(s => s.StartsWith(Document, StringComparison.Ordinal))
            .SelectMany(s => state.Story(s).Where(e => e.Kind == "revised").Select((e, i) => new RevisionLine(s[Document.Length..], i + 1, e.At, e.Who, e.Payload.Text("why"))))
            .OrderByDescending(r => r.At).ToArray());
    }

    private static IResult Text(string folder, string file, int number, TimeProvider clock)
    {
        using var store = JobStore.OpenLog(folder);
        return new LogBook(store, Register.Nobody, clock).Revision(file, number) is { } revision
            ? TypedResults.Ok(new RevisionText(file, number, Encoding.UTF8.GetString(revision.Content))) : TypedResults.NotFound();
    }
}
