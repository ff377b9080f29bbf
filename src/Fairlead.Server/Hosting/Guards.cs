namespace Fairlead.Server.Hosting;

/// <summary>What guards every request: headers of the answers, and that a request that changes something was made by our own page.</summary>
internal static class Guards
{
    /// <summary>The header our page sends with every request that changes something. Another site's page cannot send it.</summary>
    public const string Own = "X-Fairlead";

    // WebAssembly needs its own word to be compiled; drawings and long lists place things by style attributes, which cannot carry script.
    private const string Content =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public static void UseGuards(this WebApplication app) => app.Use(async (context, next) =>
    {
        var api = context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase);
        Head(context.Response.Headers, api);

        // An answer to a fault begins anew, without what stood on it.
        context.Response.OnStarting(() =>
        {
            Head(context.Response.Headers, api);
            return Task.CompletedTask;
        });
        if (api && !HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method) && !context.Request.Headers.ContainsKey(Own))
        {
            await TypedResults.Problem($"A request that changes something carries the header {Own}.", statusCode: StatusCodes.Status403Forbidden).ExecuteAsync(context);
            return;
        }

        await next(context);
    });

    // What an answer says of itself stands.
    private static void Head(IHeaderDictionary headers, bool api)
    {
        headers.TryAdd("Content-Security-Policy", Content);
        headers.TryAdd("X-Content-Type-Options", "nosniff");
        headers.TryAdd("Referrer-Policy", "no-referrer");
        headers.TryAdd("Cross-Origin-Opener-Policy", "same-origin");
        headers.TryAdd("Cross-Origin-Resource-Policy", "same-origin");
        headers.TryAdd("Permissions-Policy", "camera=(self), geolocation=(), microphone=()");
        if (api)
        {
            headers.CacheControl = "no-store";
        }
    }
}
