using System.Collections.Concurrent;
using System.Text;
using System.Text.Json;

namespace Fairlead.Tests.Server;

/// <summary>How a server is watched from outside.</summary>
public sealed class WatchingTests
{
    // OpenTelemetry Protocol Specification 1.x, OTLP/HTTP: metrics are posted in protobuf to /v1/metrics below the endpoint. Names stand in it as they are.
    [Fact]
    public async Task Metrics_go_to_the_collector_that_the_usual_variable_names_and_hold_no_names()
    {
        var got = new ConcurrentQueue<(string Path, string Type, string Body)>();
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        await using var collector = builder.Build();
        collector.MapFallback(async context =>
        {
            using var reader = new StreamReader(context.Request.Body, Encoding.Latin1);
            got.Enqueue((context.Request.Path, context.Request.ContentType ?? "", await reader.ReadToEndAsync()));
        });
        await collector.StartAsync(TestContext.Current.CancellationToken);

        var variables = new Dictionary<string, string> { ["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.Urls.First(), ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf" };
        foreach (var (name, value) in variables)
        {
            Environment.SetEnvironmentVariable(name, value);
        }

        // What was counted is sent at the latest when the server stops.
        await using (var server = await RunningServer.Start())
        {
            foreach (var name in variables.Keys)
            {
                Environment.SetEnvironmentVariable(name, null);
            }

            using var keeper = await server.Keeper();
            (await keeper.GetAsync("/api/jobs")).EnsureSuccessStatusCode();
        }

        Assert.All(got, g => Assert.Equal(("/v1/metrics", "application/x-protobuf"), (g.Path, g.Type)));
        var sent = string.Concat(got.Select(g => g.Body));
        Assert.All(["fairlead.sign_ins", "signed in", "http.server.request.duration", "/api/jobs"], word => Assert.Contains(word, sent, StringComparison.Ordinal));
        Assert.All(["keeper.one", RunningServer.Password], word => Assert.DoesNotContain(word, sent, StringComparison.Ordinal));
    }

    // OpenAPI 3.1.1, 4.8.14: an example of a media type or of a schema shows what is to be sent.
    [Fact]
    public async Task Every_body_that_the_description_of_the_api_asks_for_has_an_example_that_the_server_takes()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        using var api = JsonDocument.Parse(await browser.GetStringAsync("/api/openapi.json", TestContext.Current.CancellationToken));
        var bodies = api.RootElement.GetProperty("paths").EnumerateObject().SelectMany(p => p.Value.EnumerateObject().Select(o => (Path: p.Name, Method: o.Name, Operation: o.Value)))
            .Where(o => o.Operation.TryGetProperty("requestBody", out var body) && body.GetProperty("content").TryGetProperty("application/json", out _)).ToArray();
        Assert.True(bodies.Length > 12, $"only {bodies.Length} bodies were found");
        foreach (var (path, method, operation) in bodies)
        {
            var content = operation.GetProperty("requestBody").GetProperty("content").GetProperty("application/json");
            Assert.True(content.TryGetProperty("example", out var example), $"{method} {path} has no example");
            using var request = new HttpRequestMessage(new HttpMethod(method.ToUpperInvariant()), path.Replace("{job}", "demo", StringComparison.Ordinal).Replace("{desk}", "none", StringComparison.Ordinal).Replace("{name}", "conductor-temperature", StringComparison.Ordinal))
            {
                Content = new StringContent(example.GetRawText(), Encoding.UTF8, "application/json"),
            };
            using var answer = await browser.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.True(answer.StatusCode != System.Net.HttpStatusCode.BadRequest && answer.StatusCode < System.Net.HttpStatusCode.InternalServerError, $"{method} {path}: {answer.StatusCode} {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
        }
    }
}
