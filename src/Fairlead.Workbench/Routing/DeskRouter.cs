using System.Collections.Immutable;
using System.Net;
using System.Text.Json;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Drawings.Views;
using Fairlead.Model.Editing;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench.Routing;

/// <summary>What a desk answered.</summary>
/// <param name="Status">Done (200), cannot be done (400), or not there (404).</param>
/// <param name="Json">The answer, or a <see cref="DeskProblem"/>.</param>
public sealed record DeskAnswer(HttpStatusCode Status, string Json);

/// <summary>All that can be asked of a desk. The server and the browser answer from here, so that they answer alike.</summary>
public static class DeskRouter
{
    private static readonly DeskParameter Path = new("path", typeof(string));

    /// <summary>How everything is written.</summary>
    public static JsonSerializerOptions Json => DeskJson.Default.Options;

    /// <summary>The routes.</summary>
    public static ImmutableArray<DeskRoute> Routes { get; } =
    [
        Get<DeskView>("", "How the job stands.", (d, _) => d.View),
        Post<DeskView>("/edits", "Makes some edits as one step.", (d, ask) => d.Apply(Whole(ask.Read<JobEdit[]>()), ask.Stop)) with { Body = typeof(JobEdit[]) },
        Post<DeskView>("/undo", "Takes the last edit back.", (d, ask) => d.Undo(ask.Stop)),
        Post<DeskView>("/redo", "Makes the edit again that was taken back.", (d, ask) => d.Redo(ask.Stop)),
        Get<ImmutableArray<FormField>>("/form", "The fields under a model path.", (d, ask) => d.Form.Fields(ask.Of<string>("path")), Path),
        Get<FormGrid>("/grid", "A catalogue as rows and columns.", (d, ask) => d.Form.Grid(ask.Of<string>("path")), Path),
        Get<SheetView>("/sheet", "The working of one subject.", (d, ask) => d.Sheet(ask.Of<string>("subject")), new DeskParameter("subject", typeof(string))),
        Get<DisciplineView>("/discipline/{discipline}", "What was found, drawn and worked in a discipline.", (d, ask) => d.Discipline(ask.Of<Discipline>("discipline")), new DeskParameter("discipline", typeof(Discipline))),
        Get<ImmutableArray<PictureView>>("/drawings/{kind}", "The drawings of a kind.", (d, ask) => d.Drawings(ask.Of<DrawingKind>("kind")), new DeskParameter("kind", typeof(DrawingKind))),
        Get<MapView>("/map/{aspect}", "The aircraft from one side, with what can be picked and moved.", (d, ask) => d.Map(ask.Of<Aspect>("aspect"), new MapLook(ask.Number("zoom", 1), ask.Number("across", 0.5), ask.Number("down", 0.5))),
            new DeskParameter("aspect", typeof(Aspect)), new DeskParameter("zoom", typeof(double), Required: false), new DeskParameter("across", typeof(double), Required: false), new DeskParameter("down", typeof(double), Required: false)),
        Get<MapAbout>("/about", "Findings and sheets of something on the map.", (d, ask) => d.About(ask.Of<string>("path")), Path),
        Get<ImmutableArray<ScenarioView>>("/scenarios", "What a traffic display must show, second by second.", (d, _) => d.TrafficScenarios),
        Get<ImmutableArray<ConnectorPage>>("/connectors", "Connectors with their faces and contacts.", (d, _) => d.Connectors),
        Get<IReadOnlyDictionary<string, string>>("/text", "The text of every file as it stands.", (d, _) => d.Texts.Files),
    ];

    /// <summary>Asks something of a desk.</summary>
    /// <param name="desk">The desk.</param>
    /// <param name="method">GET or POST.</param>
    /// <param name="route">The route below the desk, with its query: <c>form?path=change/fit</c>.</param>
    /// <param name="body">The body as JSON; empty for none.</param>
    /// <param name="stop">Asks for an end.</param>
    public static DeskAnswer Ask(Desk desk, string method, string route, string body, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(route);
        var (path, query) = route.Split('?', 2) is [var before, var after] ? (before, after) : (route, "");
        string[] parts = [.. path.Trim('/').Split('/').Select(Uri.UnescapeDataString)];
        if (Routes.FirstOrDefault(r => r.Method == method && Fits(r.Pattern, parts)) is not { } found)
        {
            return Refused(HttpStatusCode.NotFound, $"A desk has no route '{method} /{path.TrimStart('/')}'.");
        }

        var named = System.Web.HttpUtility.ParseQueryString(query);
        var at = Words(found.Pattern).Index().Where(w => w.Item.StartsWith('{')).ToDictionary(w => w.Item[1..^1], w => parts[w.Index], StringComparer.Ordinal);
        return Ask(desk, found, name => at.GetValueOrDefault(name) ?? named[name], body, stop);
    }

    /// <summary>Asks something of a desk that was found to be this route.</summary>
    /// <param name="desk">The desk.</param>
    /// <param name="route">The route.</param>
    /// <param name="given">The words given for a parameter; null for none.</param>
    /// <param name="body">The body as JSON; empty for none.</param>
    /// <param name="stop">Asks for an end.</param>
    public static DeskAnswer Ask(Desk desk, DeskRoute route, Func<string, string?> given, string body, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(route);
        try
        {
            var values = route.Parameters.ToDictionary(p => p.Name, p => p.Read(given(p.Name)), StringComparer.Ordinal);
            return route.Work(desk, new DeskAsk(values, body, stop)) is { } answer ? new DeskAnswer(HttpStatusCode.OK, JsonSerializer.Serialize(answer, Json.GetTypeInfo(route.Answer)))
                : Refused(HttpStatusCode.NotFound, "There is nothing of that name on the desk.");
        }
        catch (FormatException e)
        {
            return Refused(HttpStatusCode.BadRequest, e.Message);
        }
    }

    /// <summary>The answer to what could not be done.</summary>
    public static DeskAnswer Refused(HttpStatusCode status, string why) => new(status, JsonSerializer.Serialize(
        new DeskProblem(status == HttpStatusCode.NotFound ? "It is not there." : "It cannot be done.", (int)status, why), DeskJson.Default.DeskProblem));

    private static JobEdit[] Whole(JobEdit[] edits) => edits.All(JobEdit.IsWhole) ? edits : throw new FormatException("An edit has a kind, a path and words.");

    private static bool Fits(string pattern, string[] parts) => Words(pattern) is var words && words.Length == parts.Length && words.Zip(parts).All(p => p.First.StartsWith('{') || p.First == p.Second);

    private static string[] Words(string pattern) => pattern.Trim('/').Split('/');

    private static DeskRoute Get<T>(string pattern, string summary, Func<Desk, DeskAsk, object?> work, params ImmutableArray<DeskParameter> parameters) =>
        new("GET", pattern, summary, parameters, null, typeof(T)) { Work = work };

    private static DeskRoute Post<T>(string pattern, string summary, Func<Desk, DeskAsk, object?> work) => new("POST", pattern, summary, [], null, typeof(T)) { Work = work };
}
