using System.Net;
using System.Net.NetworkInformation;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Fairlead.Server.Hosting;

/// <summary>The certificate of the hangar's network: one that was given, else one made here and kept in the data folder.</summary>
internal static class Certificates
{
    private const int Days = 800;
    private const int RenewDays = 30;
    private const string ServerUse = "1.3.6.1.5.5.7.3.1";

    /// <summary>The certificate to serve with.</summary>
    /// <exception cref="CryptographicException">The file that was given is not one, or its password is another.</exception>
    public static X509Certificate2 Of(ServerOptions options, TimeProvider clock)
    {
        if (options.Certificate.Length > 0)
        {
            return X509CertificateLoader.LoadPkcs12FromFile(options.Certificate, options.CertificatePassword);
        }

        if (File.Exists(options.OwnCertificate) && X509CertificateLoader.LoadPkcs12FromFile(options.OwnCertificate, password: null) is var kept
            && kept.NotAfter.ToUniversalTime() > clock.GetUtcNow().AddDays(RenewDays).UtcDateTime && kept.NotBefore.ToUniversalTime() <= clock.GetUtcNow().UtcDateTime)
        {
            return kept;
        }

        using var made = Make(clock.GetUtcNow());
        PrivateFiles.Write(options.OwnCertificate, made.Export(X509ContentType.Pkcs12));
        return X509CertificateLoader.LoadPkcs12FromFile(options.OwnCertificate, password: null);
    }

    /// <summary>The names a browser may call this server by: those of the certificate, and those of this machine.</summary>
    public static string[] Hosts(X509Certificate2 certificate)
    {
        var names = certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>().SelectMany(e => e.EnumerateDnsNames().Concat(e.EnumerateIPAddresses().Select(Written)));
        return [.. names.Concat(OwnNames()).Concat(OwnAddresses().Select(Written)).Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    private static X509Certificate2 Make(DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={Dns.GetHostName()}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        foreach (var name in OwnNames())
        {
            names.AddDnsName(name);
        }

        foreach (var address in OwnAddresses())
        {
            names.AddIpAddress(address);
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: false, hasPathLengthConstraint: false, pathLengthConstraint: 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerUse)], critical: false));
        return request.CreateSelfSigned(now.AddDays(-1), now.AddDays(Days));
    }

    private static string[] OwnNames() => ["localhost", Dns.GetHostName(), Dns.GetHostName() + ".local"];

    private static IEnumerable<IPAddress> OwnAddresses() => NetworkInterface.GetAllNetworkInterfaces()
        .SelectMany(i => i.GetIPProperties().UnicastAddresses).Select(a => a.Address).Where(a => !a.IsIPv6LinkLocal).Distinct();

    private static string Written(IPAddress address) => address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? "[" + address + "]" : address.ToString();
}
