using System.Text;
using System.Text.Json;
using Fairlead.Model.Storage;
using Fairlead.Server.Desks;
using Fairlead.Workbench;
using Fairlead.Workbench.Routing;

namespace Fairlead.Tests.Server;

/// <summary>The desk on the server and the one in the browser are asked by the same routes and answer alike.</summary>
public sealed class DeskRouteTests
{
    private const string Below = "/api/desks/{desk}";

    // What only a server can do: it knows what others have kept.
    private static readonly string[] OfTheServer = ["GET /others", "POST /keep"];

    private static readonly JobEdit[][] Steps =
    [
        [new(EditKind.Set, "change/title", "Another title, with ünusual words & <marks>")],
        [new(EditKind.Set, "job/revision", "B"), new(EditKind.Set, "aircraft/ceiling", "nonsense")],
        [new(EditKind.Set, "change/nowhere", "1")],
    ];

    [Fact]
    public async Task The_server_serves_every_route_of_a_desk_and_only_its_own_besides()
    {
        await using var server = await RunningServer.Start(lan: false);
        var served = server.Endpoints.Where(e => Route(e).StartsWith(Below, StringComparison.Ordinal)).Select(e => $"{e.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods[0]} {Route(e)[Below.Length..].TrimEnd('/')}");
        Assert.Equal(DeskRouter.Routes.Select(r => $"{r.Method} {r.Pattern}").Concat(OfTheServer).Order(StringComparer.Ordinal), served.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task The_same_edits_give_the_same_answers_from_the_server_and_from_the_router()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var http = server.Anybody();
        var opened = await (await http.PostAsJsonAsync("/api/jobs/demo/desk", new { })).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<OpenedDesk>();
        var desk = new Desk(new FolderFiles(Path.Combine(server.Data, "jobs", "demo")));
        string[] asked = [.. DeskRouter.Routes.Where(r => r.Method == "GET").SelectMany(r => Examples(r.Pattern))];
        foreach (var body in Steps.Select(s => JsonSerializer.Serialize(s, DeskRouter.Json)).Append("not JSON"))
        {
            await Same("POST", "edits", body);
            foreach (var route in asked)
            {
                await Same("GET", route, "");
            }
        }

        foreach (var route in new[] { "undo", "undo", "redo", "undo", "undo" })
        {
            await Same("POST", route, "[]");
        }

        async Task Same(string method, string route, string body)
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), $"/api/desks/{opened!.Desk}/{route}") { Content = body.Length == 0 ? null : new StringContent(body, Encoding.UTF8, "application/json") };
            using var served = await http.SendAsync(request);
            var here = DeskRouter.Ask(desk, method, route, body);
            Assert.Equal((route, here.Status, here.Json), (route, served.StatusCode, await served.Content.ReadAsStringAsync()));
        }
    }

    [Fact]
    public async Task The_description_of_the_api_names_what_each_route_takes_and_gives()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var http = server.Anybody();
        var paths = (await http.GetFromJsonAsync<JsonElement>("/api/openapi.json")).GetProperty("paths");
        foreach (var route in DeskRouter.Routes)
        {
            var said = paths.GetProperty(Below + route.Pattern).GetProperty(route.Method == "GET" ? "get" : "post");
            Assert.Equal(route.Parameters.Select(p => p.Name).Prepend("desk"), said.GetProperty("parameters").EnumerateArray().Select(p => p.GetProperty("name").GetString()!));
            Assert.Equal(route.Body is not null, said.TryGetProperty("requestBody", out _));
            Assert.True(said.GetProperty("responses").GetProperty("200").TryGetProperty("content", out _), route.Pattern);
        }
    }

    private static string[] Examples(string pattern) => pattern switch
    {
        "/form" => ["form?path=change", "form?path=aircraft/zones", "form"],
        "/grid" => ["grid?path=change/fit", "grid?path=aircraft%2Fzones", "grid?path=change"],
        "/sheet" => ["sheet?subject=balance/empty", "sheet?subject=none+such"],
        "/about" => ["about?path=change/fit/BOX1"],
        "/discipline/{discipline}" => ["discipline/Power", "discipline/balance", "discipline/Alchemy"],
        "/drawings/{kind}" => [.. Enum.GetNames<Fairlead.Drawings.DrawingKind>().Select(k => "drawings/" + k)],
        "/map/{aspect}" => ["map/Side", "map/Plan?zoom=2&across=0.25", "map/Front?zoom=near"],
        _ when pattern.Contains('{', StringComparison.Ordinal) => throw new InvalidOperationException($"{pattern} has no example."),
        _ => [pattern.TrimStart('/')],
    };

    private static string Route(RouteEndpoint endpoint) => "/" + (endpoint.RoutePattern.RawText ?? "").TrimStart('/');
}
