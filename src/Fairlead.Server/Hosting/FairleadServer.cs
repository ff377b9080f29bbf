using System.Security.Cryptography;
using System.Text.Json.Serialization;
using Fairlead.Server.Bench;
using Fairlead.Server.Desks;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Server.Records;
using Fairlead.Server.Work;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.HostFiltering;

namespace Fairlead.Server;

/// <summary>The server: API, store and the pages of the workbench in one process.</summary>
public static class FairleadServer
{
    private const int IdBytes = 16;

    /// <summary>The server, ready to be run.</summary>
    /// <param name="options">How it is started.</param>
    /// <param name="clock">The clock.</param>
    public static WebApplication Create(ServerOptions options, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(options);
        Directory.CreateDirectory(options.Jobs);
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = "fairlead", ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = 64 * 1024 * 1024;
            k.ListenLocalhost(options.Port);
        });
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(options).AddSingleton(clock).AddSingleton<JobStore>().AddSingleton<Keeper>().AddSingleton<AssessedJobs>().AddSingleton<Plans>()
            .AddSingleton(new DeskHall(clock, () => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(IdBytes))));
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.Converters.Add(new JsonStringEnumConverter()));
        builder.Services.AddProblemDetails();
        builder.Services.AddOpenApi();
        builder.Services.Configure<HostFilteringOptions>(o => o.AllowedHosts = ["localhost", "127.0.0.1", "[::1]"]);
        builder.Services.AddAuthentication(LocalSignIn.SchemeName).AddScheme<AuthenticationSchemeOptions, LocalSignIn>(LocalSignIn.SchemeName, configureOptions: null);
        builder.Services.AddAuthorization(Policies.Add);
        builder.Services.AddHealthChecks();
        var app = builder.Build();
        Map(app);
        return app;
    }

    private static void Map(WebApplication app)
    {
        app.UseExceptionHandler();
        app.UseHostFiltering();
        app.UseGuards();
        app.UseAuthentication();
        app.UseAuthorization();
        app.MapHealthChecks("/health");
        app.MapOpenApi("/api/openapi.json");
        var api = app.MapGroup("/api");
        api.MapJobs();
        api.MapDesks();
        api.MapRecords();
        api.MapRevisions();
        api.MapWork();
        api.MapBench();
        api.MapFallback(() => TypedResults.NotFound());
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
    }
}
