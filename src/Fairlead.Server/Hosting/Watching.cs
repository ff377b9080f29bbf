using Fairlead.Server.People;
using OpenTelemetry.Metrics;

namespace Fairlead.Server.Hosting;

/// <summary>How a server is watched: lines of JSON on its console, and metrics to where the usual variable of OpenTelemetry names.</summary>
internal static class Watching
{
    public static void Add(WebApplicationBuilder builder, ServerOptions options)
    {
        builder.Logging.ClearProviders();
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Fairlead", LogLevel.Information);
        if (options.Log)
        {
            builder.Logging.AddJsonConsole(json => (json.UseUtcTimestamp, json.TimestampFormat) = (true, "yyyy-MM-ddTHH:mm:ss.fffZ"));
        }

        if (!string.IsNullOrEmpty(builder.Configuration["OTEL_EXPORTER_OTLP_ENDPOINT"]))
        {
            builder.Services.AddOpenTelemetry().WithMetrics(metrics => metrics.AddAspNetCoreInstrumentation().AddMeter(SignInAudit.Meter).AddOtlpExporter());
        }
    }
}
