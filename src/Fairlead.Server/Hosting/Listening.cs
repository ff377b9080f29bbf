using System.Net;
using System.Security.Authentication;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.HttpsPolicy;

namespace Fairlead.Server.Hosting;

/// <summary>Where the server listens: this machine alone, or the hangar's network with TLS.</summary>
internal static class Listening
{
    private const int MostBody = 64 * 1024 * 1024;
    private const int HstsDays = 365;

    public static void Add(WebApplicationBuilder builder, ServerOptions options, TimeProvider clock)
    {
        var certificate = options.Lan ? Certificates.Of(options, clock) : null;
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = MostBody;
            if (certificate is not null)
            {
                k.ConfigureHttpsDefaults(h => h.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13);
                k.ListenAnyIP(options.Port, l => l.UseHttps(certificate));
            }
            else if (options.Port == 0)
            {
                k.Listen(IPAddress.Loopback, 0);
            }
            else
            {
                k.ListenLocalhost(options.Port);
            }
        });
        builder.Services.Configure<HostFilteringOptions>(o => o.AllowedHosts = certificate is null ? ["localhost", "127.0.0.1", "[::1]"] : [.. Certificates.Hosts(certificate)]);
        builder.Services.Configure<HstsOptions>(o => o.MaxAge = TimeSpan.FromDays(HstsDays));
    }
}
