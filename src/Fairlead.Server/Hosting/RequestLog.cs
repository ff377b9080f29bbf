namespace Fairlead.Server.Hosting;

/// <summary>Tells each request in one line: id, method, route, status, time taken. Neither bodies, queries, cookies nor names are told.</summary>
internal static partial class RequestLog
{
    public static void UseRequestLog(this WebApplication app)
    {
        var (log, clock) = (app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Fairlead.Requests"), app.Services.GetRequiredService<TimeProvider>());
        app.Use(async (context, next) =>
        {
            var begun = clock.GetTimestamp();
            try
            {
                await next(context);
            }
            finally
            {
                if (log.IsEnabled(LogLevel.Information))
                {
                    var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "";
                    var milliseconds = clock.GetElapsedTime(begun).TotalMilliseconds;
                    Told(log, context.TraceIdentifier, context.Request.Method, route, context.Response.StatusCode, milliseconds);
                }
            }
        });
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "{Request} {Method} {Route} {Status} {Milliseconds:0.0} ms")]
    private static partial void Told(ILogger log, string request, string method, string route, int status, double milliseconds);
}
