using System.Globalization;
using System.Net;
using System.Text.Json;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Workbench;
using Fairlead.Workbench.Routing;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.OpenApi;

namespace Fairlead.Server.Desks;

/// <summary>Editing a job: open it, edit, look at what follows, keep it as a revision.</summary>
internal static class DeskEndpoints
{
    public static void MapDesks(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/jobs/{job}/desk", Open).WithSummary("Opens a job for editing.").RequireAuthorization(Policies.View);
        var desk = routes.MapGroup("/desks/{desk}").WithTags("desk").RequireAuthorization(Policies.View);
        foreach (var route in DeskRouter.Routes)
        {
            Map(desk, route);
        }

        desk.MapGet("/others", (OpenDeskRef desk, CancellationToken stop) => desk.Others(stop)).WithSummary("Files that others have changed since the job was opened or last kept here.");
        desk.MapPost("/keep", (OpenDeskRef desk, KeepRequest keep, Keeper keeper, CancellationToken stop) => desk.Keep(keep, keeper, stop)).WithSummary("Keeps the edits as a revision.").RequireAuthorization(Policies.Edit);
    }

    // The routes are described by the table they are in: the desk in the browser is asked by the same.
    private static void Map(RouteGroupBuilder desk, DeskRoute route)
    {
        var mapped = desk.MapMethods(route.Pattern, [route.Method], (OpenDeskRef desk, HttpRequest request, CancellationToken stop) => desk.Ask(route, request, stop))
            .WithSummary(route.Summary).Produces(StatusCodes.Status200OK, route.Answer).ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status404NotFound).Produces(StatusCodes.Status410Gone);
        if (route.Body is { } body)
        {
            mapped.Accepts(body, "application/json");
        }

        mapped.AddOpenApiOperationTransformer(async (operation, context, stop) =>
        {
            operation.Parameters ??= [];
            foreach (var parameter in route.Parameters.Prepend(new DeskParameter("desk", typeof(string))))
            {
                operation.Parameters.Add(new OpenApiParameter
                {
                    Name = parameter.Name, Required = parameter.Required, Schema = await context.GetOrCreateSchemaAsync(parameter.Type, cancellationToken: stop),
                    In = parameter.Name == "desk" || parameter.IsIn(route.Pattern) ? ParameterLocation.Path : ParameterLocation.Query,
                });
            }
        });
    }

    // The body may be left out, which a parameter of its type would not allow.
    private static async Task<Results<Ok<OpenedDesk>, NotFound, ProblemHttpResult>> Open(string job, HttpRequest request, JobStore jobs, DeskHall hall, CancellationToken stop)
    {
        if (jobs.Find(job) is not { } directory)
        {
            return TypedResults.NotFound();
        }

        try
        {
            var asked = request.HasJsonContentType() ? await request.ReadFromJsonAsync<DeskAsked>(stop) : null;
            if (asked?.From?.Values.Any(t => t is null) == true || asked?.Steps?.All(s => s is not null && s.All(JobEdit.IsWhole)) == false)
            {
                throw new FormatException("A text or an edit is missing.");
            }

            if (asked?.From?.Count > Model.Limits.Files)
            {
                throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"A job has at most {Model.Limits.Files} texts."));
            }

            return TypedResults.Ok(new OpenedDesk(hall.Open(job, directory, asked?.From, asked?.Steps ?? [], request.HttpContext.User.Identity?.Name ?? "").Id));
        }
        catch (Exception e) when (e is ArgumentException or FormatException or JsonException)
        {
            return TypedResults.Problem(e.Message, statusCode: StatusCodes.Status400BadRequest, title: "The desk cannot be opened.");
        }
    }
}

/// <summary>Asks for a desk.</summary>
/// <param name="From">The texts, by file, that edits were made from elsewhere and that the desk is to be opened with; null for those that stand in the job's folder.
/// What others have kept since is then shown as it is for any desk that was open meanwhile.</param>
/// <param name="Steps">The edits, step by step, that were made elsewhere and not kept.</param>
public sealed record DeskAsked(IReadOnlyDictionary<string, string>? From = null, JobEdit[][]? Steps = null);

/// <summary>A desk that was opened.</summary>
/// <param name="Desk">Its id.</param>
public sealed record OpenedDesk(string Desk);

/// <summary>Asks for the edits to be kept.</summary>
/// <param name="Who">The person of the job who keeps them.</param>
/// <param name="Why">Why.</param>
/// <param name="Over">Hashes of the versions of others that were seen and are to be replaced, by file.</param>
public sealed record KeepRequest(string Who, string Why, IReadOnlyDictionary<string, string>? Over = null) : INamesPerson;

/// <summary>The desk a request names, if it is that of who asks: for anybody else it is not open.</summary>
internal sealed record OpenDeskRef(OpenDesk? Desk)
{
    public static ValueTask<OpenDeskRef> BindAsync(HttpContext context) =>
        ValueTask.FromResult(new OpenDeskRef(context.RequestServices.GetRequiredService<DeskHall>().Find(context.Request.RouteValues["desk"] as string ?? "", context.User.Identity?.Name ?? "")));

    /// <summary>Asks something of the desk. One that is not open any more is gone (410): the page opens another and makes its edits there again.</summary>
    public async Task<IResult> Ask(DeskRoute route, HttpRequest request, CancellationToken stop)
    {
        if (Desk is null)
        {
            return TypedResults.StatusCode(StatusCodes.Status410Gone);
        }

        using var reader = new StreamReader(request.Body);
        var body = await reader.ReadToEndAsync(stop);
        DeskAnswer answer;
        try
        {
            answer = await Desk.Use(d => DeskRouter.Ask(d, route, name => request.RouteValues[name] as string ?? request.Query[name], body, stop), stop);
        }
        catch (FormatException e)
        {
            // One of the edits it was to be opened with cannot be made.
            answer = DeskRouter.Refused(HttpStatusCode.BadRequest, e.Message);
        }

        return TypedResults.Text(answer.Json, answer.Status == HttpStatusCode.OK ? "application/json" : "application/problem+json", statusCode: (int)answer.Status);
    }

    public async Task<IResult> Others(CancellationToken stop) =>
        Desk is null ? TypedResults.StatusCode(StatusCodes.Status410Gone) : TypedResults.Ok(await Desk.Use(d => Keeper.Others(Desk, d).ToArray(), stop));

    public async Task<IResult> Keep(KeepRequest keep, Keeper keeper, CancellationToken stop) =>
        Desk is null ? TypedResults.StatusCode(StatusCodes.Status410Gone) : await Desk.Use(d => keeper.Keep(Desk, d, keep), stop);
}
