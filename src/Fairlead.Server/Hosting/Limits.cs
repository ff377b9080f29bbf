using System.Threading.RateLimiting;

namespace Fairlead.Server.Hosting;

/// <summary>How often may be asked. Only the hangar's network is limited: this machine would only limit itself.</summary>
internal static class Limits
{
    /// <summary>For what takes a password.</summary>
    public const string SignIn = "sign-in";

    private const int TriesPerMinute = 10;
    private const int Burst = 200;
    private const int PerSecond = 50;

    public static void Add(IServiceCollection services, bool lan) => services.AddRateLimiter(limiter =>
    {
        limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limiter.AddPolicy(SignIn, context => lan ? RateLimitPartition.GetFixedWindowLimiter(Address(context), _ => new FixedWindowRateLimiterOptions { PermitLimit = TriesPerMinute, Window = TimeSpan.FromMinutes(1) })
            : RateLimitPartition.GetNoLimiter(""));
        limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => lan && context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            ? RateLimitPartition.GetTokenBucketLimiter(Caller(context), _ => new TokenBucketRateLimiterOptions { TokenLimit = Burst, TokensPerPeriod = PerSecond, ReplenishmentPeriod = TimeSpan.FromSeconds(1) })
            : RateLimitPartition.GetNoLimiter(""));
    });

    // A person at several tablets is one caller; who is not signed in counts by address.
    private static string Caller(HttpContext context) => context.User.Identity is { IsAuthenticated: true, Name: { } name } ? "name " + name : "address " + Address(context);

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";
}
