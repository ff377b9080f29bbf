using System.Security.Cryptography;
using System.Text.Json.Serialization;
using Fairlead.Server.Bench;
using Fairlead.Server.Desks;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Server.People;
using Fairlead.Server.Records;
using Fairlead.Server.Work;

namespace Fairlead.Server;

/// <summary>The server: API, store and the pages of the workbench in one process.</summary>
public static class FairleadServer
{
    private const int IdBytes = 16;

    /// <summary>The server, ready to be run.</summary>
    /// <param name="options">How it is started.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="more">What is set up besides; null for nothing.</param>
    public static WebApplication Create(ServerOptions options, TimeProvider clock, Action<WebApplicationBuilder>? more = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        PrivateFiles.Folder(options.Data);
        PrivateFiles.Folder(options.Jobs);
        if (options.Lan)
        {
            Array.ForEach([options.Jobs, options.Keys, options.People, options.SealKey, options.OwnCertificate], PrivateFiles.Shut);
        }

        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseStaticWebAssets();
        Listening.Add(builder, options, clock);
        builder.Services.AddSingleton(options).AddSingleton(clock).AddSingleton<JobStore>().AddSingleton<Keeper>().AddSingleton<AssessedJobs>().AddSingleton<Plans>().AddSingleton<Seals>()
            .AddSingleton(new DeskHall(clock, () => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(IdBytes))));
        builder.Services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Converters.Add(new JsonStringEnumConverter());
            (json.SerializerOptions.RespectNullableAnnotations, json.SerializerOptions.RespectRequiredConstructorParameters) = (true, true);
        });
        Faults.Add(builder.Services);
        ApiDescription.Add(builder.Services);
        builder.Services.AddPeople(options);
        builder.Services.AddAuthorization(Policies.Add);
        Limits.Add(builder.Services, options.Lan);
        builder.Services.AddHealthChecks();
        Watching.Add(builder, options);
        more?.Invoke(builder);
        var app = builder.Build();
        Map(app, options);
        return app;
    }

    private static void Map(WebApplication app, ServerOptions options)
    {
        app.UseRequestLog();
        app.UseFaults();
        app.UseHostFiltering();
        if (options.Certificate.Length > 0)
        {
            app.UseHsts();
        }

        app.UseGuards();
        app.UseAuthentication();
        app.UseRateLimiter();
        app.UseAuthorization();
        app.MapHealthChecks("/health");
        app.MapOpenApi("/api/openapi.json").RequireAuthorization(Policies.View);
        var api = app.MapGroup("/api").AddEndpointFilter<RouteGroupBuilder, OwnName>();
        api.MapSignIn();
        api.MapPasskeys();
        api.MapPeople();
        api.MapJobs();
        api.MapDesks();
        api.MapRecords();
        api.MapProofs();
        api.MapResults();
        api.MapPhotographs();
        api.MapRevisions();
        api.MapWork();
        api.MapPapers();
        api.MapBench();
        api.MapFallback(() => TypedResults.NotFound()).RequireAuthorization(Policies.View);
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
    }
}
