using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Drawings.Views;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Workbench;
using Fairlead.Workbench.Maps;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Fairlead.Server.Desks;

/// <summary>Editing a job: open it, edit, look at what follows, keep it as a revision.</summary>
internal static class DeskEndpoints
{
    public static void MapDesks(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/jobs/{job}/desk", Open).WithSummary("Opens a job for editing.").RequireAuthorization(Policies.View);
        var desk = routes.MapGroup("/desks/{desk}").WithTags("desk").RequireAuthorization(Policies.View);
        desk.MapGet("", (OpenDeskRef desk, CancellationToken stop) => desk.Do(d => d.View, stop)).WithSummary("How the job stands.");
        desk.MapPost("/edits", (OpenDeskRef desk, JobEdit[] edits, CancellationToken stop) => desk.Do(d => d.Apply(edits, stop), stop)).WithSummary("Makes some edits as one step.");
        desk.MapPost("/undo", (OpenDeskRef desk, CancellationToken stop) => desk.Do(d => d.Undo(stop), stop)).WithSummary("Takes the last edit back.");
        desk.MapPost("/redo", (OpenDeskRef desk, CancellationToken stop) => desk.Do(d => d.Redo(stop), stop)).WithSummary("Makes the edit again that was taken back.");
        desk.MapGet("/form", (OpenDeskRef desk, string path, CancellationToken stop) => desk.Do(d => d.Form.Fields(path), stop)).WithSummary("The fields under a model path.");
        desk.MapGet("/grid", (OpenDeskRef desk, string path, CancellationToken stop) => desk.DoOrNot(d => d.Form.Grid(path), stop)).WithSummary("A catalogue as rows and columns.");
        desk.MapGet("/sheet", (OpenDeskRef desk, string subject, CancellationToken stop) => desk.DoOrNot(d => d.Sheet(subject), stop)).WithSummary("The working of one subject.");
        desk.MapGet("/discipline/{discipline}", (OpenDeskRef desk, Discipline discipline, CancellationToken stop) => desk.Do(d => d.Discipline(discipline), stop)).WithSummary("What was found, drawn and worked in a discipline.");
        desk.MapGet("/drawings/{kind}", (OpenDeskRef desk, DrawingKind kind, CancellationToken stop) => desk.Do(d => d.Drawings(kind), stop)).WithSummary("The drawings of a kind.");
        desk.MapGet("/map/{aspect}", (OpenDeskRef desk, Aspect aspect, double? zoom, double? across, double? down, CancellationToken stop) => desk.DoOrNot(d => d.Map(aspect, new MapLook(zoom ?? 1, across ?? 0.5, down ?? 0.5)), stop)).WithSummary("The aircraft from one side, with what can be picked and moved.");
        desk.MapGet("/about", (OpenDeskRef desk, string path, CancellationToken stop) => desk.DoOrNot(d => d.About(path), stop)).WithSummary("Findings and sheets of something on the map.");
        desk.MapGet("/scenarios", (OpenDeskRef desk, CancellationToken stop) => desk.Do(d => d.TrafficScenarios, stop)).WithSummary("What a traffic display must show, second by second.");
        desk.MapGet("/connectors", (OpenDeskRef desk, CancellationToken stop) => desk.Do(d => d.Connectors, stop)).WithSummary("Connectors with their faces and contacts.");
        desk.MapGet("/others", (OpenDeskRef desk, CancellationToken stop) => desk.Others(stop)).WithSummary("Files that others have changed since the job was opened or last kept here.");
        desk.MapGet("/text", (OpenDeskRef desk, CancellationToken stop) => desk.Do(d => d.Texts.Files, stop)).WithSummary("The text of every file as it stands.");
        desk.MapPost("/keep", (OpenDeskRef desk, KeepRequest keep, Keeper keeper, CancellationToken stop) => desk.Keep(keep, keeper, stop)).WithSummary("Keeps the edits as a revision.").RequireAuthorization(Policies.Edit);
    }

    private static Results<Ok<OpenedDesk>, NotFound> Open(string job, JobStore jobs, DeskHall hall) =>
        jobs.Find(job) is { } directory ? TypedResults.Ok(new OpenedDesk(hall.Open(job, directory).Id)) : TypedResults.NotFound();
}

/// <summary>A desk that was opened.</summary>
/// <param name="Desk">Its id.</param>
public sealed record OpenedDesk(string Desk);

/// <summary>Asks for the edits to be kept.</summary>
/// <param name="Who">The person of the job who keeps them.</param>
/// <param name="Why">Why.</param>
/// <param name="Over">Hashes of the versions of others that were seen and are to be replaced, by file.</param>
public sealed record KeepRequest(string Who, string Why, IReadOnlyDictionary<string, string>? Over = null) : INamesPerson;

/// <summary>The desk a request names.</summary>
internal sealed record OpenDeskRef(OpenDesk? Desk)
{
    public static ValueTask<OpenDeskRef> BindAsync(HttpContext context) =>
        ValueTask.FromResult(new OpenDeskRef(context.RequestServices.GetRequiredService<DeskHall>().Find(context.Request.RouteValues["desk"] as string ?? "")));

    /// <summary>Works on the desk. A desk that is not open any more is gone (410): the page opens another and makes its edits there again.</summary>
    public async Task<IResult> Do<T>(Func<Desk, T> work, CancellationToken stop)
    {
        if (Desk is null)
        {
            return TypedResults.StatusCode(StatusCodes.Status410Gone);
        }

        try
        {
            return TypedResults.Ok(await Desk.Use(work, stop));
        }
        catch (FormatException e)
        {
            return TypedResults.Problem(e.Message, statusCode: StatusCodes.Status400BadRequest, title: "The edit cannot be made.");
        }
    }

    public async Task<IResult> DoOrNot<T>(Func<Desk, T?> work, CancellationToken stop)
        where T : class
    {
        var result = await Do(work, stop);
        return result is Ok<T> { Value: null } ? TypedResults.NotFound() : result;
    }

    public async Task<IResult> Others(CancellationToken stop) =>
        Desk is null ? TypedResults.StatusCode(StatusCodes.Status410Gone) : TypedResults.Ok(await Desk.Use(d => Keeper.Others(Desk, d).ToArray(), stop));

    public async Task<IResult> Keep(KeepRequest keep, Keeper keeper, CancellationToken stop) =>
        Desk is null ? TypedResults.StatusCode(StatusCodes.Status410Gone) : await Desk.Use(d => keeper.Keep(Desk, d, keep), stop);
}
