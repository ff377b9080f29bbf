using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

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
