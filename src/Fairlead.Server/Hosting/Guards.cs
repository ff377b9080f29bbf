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
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Content;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=()";
        if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
        {
            headers.CacheControl = "no-store";
            if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method) && !context.Request.Headers.ContainsKey(Own))
            {
                await TypedResults.Problem($"A request that changes something carries the header {Own}.", statusCode: StatusCodes.Status403Forbidden).ExecuteAsync(context);
                return;
            }
        }

        await next(context);
    });
}
