using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Fairlead.Server;
using Fairlead.Server.Hosting;

namespace Fairlead.Tests.Server;

public sealed class CertificateTests
{
    private const string Secret = "of the file";

    // OWASP ASVS 4.0.3, 9.1.1 and 14.4.5. The framework leaves localhost out of HSTS, so the server is asked by another of its names.
    [Fact]
    public async Task A_certificate_that_is_given_is_the_one_served_and_browsers_are_told_to_keep_to_TLS()
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("fairlead-pfx").FullName, "hangar.pfx");
        var print = Make(file, "hangar.example");
        await using var server = await RunningServer.Start(certificate: file, certificatePassword: Secret);
        string? served = null;
        using var handler = new SocketsHttpHandler();
        handler.SslOptions.RemoteCertificateValidationCallback = (_, shown, _, _) =>
        {
            served = shown?.GetCertHashString();
            return shown is not null;
        };
        using var browser = new HttpClient(handler) { BaseAddress = server.Anybody().BaseAddress, DefaultRequestHeaders = { Host = "hangar.example" } };
        using var answer = await browser.GetAsync("/health");

        Assert.Equal(print, served);
        Assert.Contains("max-age", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")), StringComparison.Ordinal);
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    [Fact]
    public async Task A_certificate_of_another_password_is_refused_at_the_start()
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("fairlead-pfx").FullName, "hangar.pfx");
        Make(file, "hangar.example");
        await Assert.ThrowsAsync<CryptographicException>(() => RunningServer.Start(certificate: file, certificatePassword: "another"));
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    // One made while the clock was years ahead is not valid yet once it is right.
    [Fact]
    public void A_certificate_made_by_a_clock_that_was_ahead_is_made_anew()
    {
        var folder = Directory.CreateTempSubdirectory("fairlead-pfx");
        var options = new ServerOptions(folder.FullName, Lan: true);
        using (var ahead = Certificates.Of(options, new Moved(TimeSpan.FromDays(1000))))
        {
            Assert.True(ahead.NotBefore > DateTime.Now);
        }

        using var right = Certificates.Of(options, TimeProvider.System);
        Assert.True(right.NotBefore <= DateTime.Now && right.NotAfter > DateTime.Now);
        using var kept = Certificates.Of(options, TimeProvider.System);
        Assert.Equal(right.GetCertHashString(), kept.GetCertHashString());
        folder.Delete(recursive: true);
    }

    private sealed class Moved(TimeSpan by) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + by;
    }

    private static string Make(string file, string name)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName(name);
        request.CertificateExtensions.Add(names.Build());
        using var made = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        File.WriteAllBytes(file, made.Export(X509ContentType.Pkcs12, Secret));
        return made.GetCertHashString();
    }
}
