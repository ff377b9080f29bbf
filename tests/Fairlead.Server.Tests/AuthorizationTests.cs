using System.Net;
using Fairlead.Server.Hosting;
using Fairlead.Server.Records;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.Metadata;

namespace Fairlead.Tests.Server;

public sealed class AuthorizationTests
{
    // What may be asked by nobody in particular. A new one is a reviewed change to this list.
    private static readonly string[] Open = ["/api/first-keeper", "/api/me", "/api/sign-in", "/api/sign-in/passkey", "/api/sign-in/passkey/offer"];

    private static readonly Dictionary<string, string> Values = new() { ["job"] = "demo", ["desk"] = "none", ["name"] = "nobody", ["discipline"] = "Wiring", ["kind"] = "ViewPlan" };

    [Fact]
    public async Task Every_endpoint_of_the_api_names_a_policy()
    {
        await using var server = await RunningServer.Start();
        var endpoints = server.Endpoints.Where(e => Route(e).StartsWith("/api", StringComparison.Ordinal)).ToArray();

        Assert.True(endpoints.Length > 30, $"only {endpoints.Length} endpoints were found");
        Assert.Equal(Open, endpoints.Where(e => e.Metadata.GetMetadata<IAllowAnonymous>() is not null).Select(Route).Order(StringComparer.Ordinal));
        Assert.Empty(endpoints.Where(e => e.Metadata.GetMetadata<IAllowAnonymous>() is null && !e.Metadata.GetOrderedMetadata<IAuthorizeData>().Any(a => a.Policy is { Length: > 0 })).Select(Route));
    }

    [Fact]
    public async Task Nobody_reaches_anything_of_the_api_without_signing_in()
    {
        await using var server = await RunningServer.Start();
        using var anybody = server.Anybody();
        foreach (var endpoint in Closed(server))
        {
            using var answer = await anybody.SendAsync(Request(endpoint));
            Assert.True(answer.StatusCode == HttpStatusCode.Unauthorized, $"{Route(endpoint)} answered {answer.StatusCode}");
        }
    }

    [Fact]
    public async Task A_viewer_is_refused_whatever_changes_something()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var viewer = await server.Member(keeper, "viewer.one", "", "viewer");
        var beyond = Closed(server).Where(e => e.Metadata.GetOrderedMetadata<IAuthorizeData>().Any(a => a.Policy is not null and not Policies.View)).ToArray();

        Assert.True(beyond.Length > 8, $"only {beyond.Length} endpoints were found");
        foreach (var endpoint in beyond)
        {
            using var answer = await viewer.SendAsync(Request(endpoint));
            Assert.True(answer.StatusCode == HttpStatusCode.Forbidden, $"{Route(endpoint)} answered {answer.StatusCode}");
        }

        Assert.Equal(HttpStatusCode.OK, (await viewer.GetAsync("/api/jobs")).StatusCode);
    }

    [Fact]
    public async Task Whoever_is_named_in_a_request_is_checked_against_who_signed_in()
    {
        await using var server = await RunningServer.Start();
        var naming = server.Endpoints.SelectMany(e => e.Metadata.GetMetadata<System.Reflection.MethodInfo>()?.GetParameters() ?? [])
            .Select(p => p.ParameterType.GetElementType() ?? p.ParameterType.GetGenericArguments().FirstOrDefault() ?? p.ParameterType)
            .Where(t => t.GetProperty("Who") is not null).Distinct().ToArray();

        Assert.NotEmpty(naming);
        Assert.All(naming, t => Assert.True(t.IsAssignableTo(typeof(INamesPerson)), $"{t.Name} names a person unchecked"));
    }

    [Fact]
    public async Task A_member_makes_entries_in_their_own_name_only()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        var people = await keeper.GetFromJsonAsync<PersonLine[]>("/api/jobs/demo/people");
        var (own, other) = (people![0].Id, people[1].Id);
        using var technician = await server.Member(keeper, "tech.one", own, "technician");
        using var nameless = await server.Member(keeper, "tech.two", "", "technician");

        Assert.Equal(HttpStatusCode.Forbidden, (await Note(technician, other)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Note(nameless, own)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Note(technician, own)).StatusCode);
        var inspection = new NewEntry(own, "signed", "task/any", new Dictionary<string, string> { ["role"] = "inspection", ["scope"] = "any" }, "123456");
        Assert.Contains("inspect", await (await technician.PostAsJsonAsync("/api/jobs/demo/log", inspection)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.PostAsJsonAsync("/api/jobs/demo/log", inspection with { Subject = "release/any" })).StatusCode);
    }

    private static Task<HttpResponseMessage> Note(HttpClient client, string who) =>
        client.PostAsJsonAsync("/api/jobs/demo/log", new NewEntry(who, "noted", "zone/any", new Dictionary<string, string> { ["text"] = "looked" }));

    private static IEnumerable<RouteEndpoint> Closed(RunningServer server) =>
        server.Endpoints.Where(e => Route(e).StartsWith("/api", StringComparison.Ordinal) && e.Metadata.GetMetadata<IAllowAnonymous>() is null);

    private static string Route(RouteEndpoint endpoint) => "/" + (endpoint.RoutePattern.RawText ?? "").TrimStart('/').TrimEnd('/');

    private static HttpRequestMessage Request(RouteEndpoint endpoint)
    {
        var path = string.Join('/', endpoint.RoutePattern.PathSegments.Select(s => string.Concat(s.Parts.Select(p => p switch
        {
            Microsoft.AspNetCore.Routing.Patterns.RoutePatternParameterPart v => Values.GetValueOrDefault(v.Name, "none"),
            Microsoft.AspNetCore.Routing.Patterns.RoutePatternLiteralPart l => l.Content,
            _ => "",
        }))));
        var method = endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods[0] ?? "GET";
        var request = new HttpRequestMessage(new HttpMethod(method), "/" + path);
        if (method is "POST" or "PUT")
        {
            request.Content = JsonContent.Create(new { });
            request.Content.Headers.ContentType = new(endpoint.Metadata.GetMetadata<IAcceptsMetadata>()?.ContentTypes[0] ?? "application/json");
        }

        return request;
    }
}
