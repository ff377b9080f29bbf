namespace Fairlead.Server;

/// <summary>How the server is started.</summary>
/// <param name="Data">The folder that holds jobs, people and keys.</param>
/// <param name="Port">The port; 0 for any that is free.</param>
/// <param name="Lan">Whether it serves the hangar's network, with TLS and sign-in, and not this machine alone.</param>
public sealed record ServerOptions(string Data, int Port = ServerOptions.UsualPort, bool Lan = false)
{
    /// <summary>The port used when none is named.</summary>
    public const int UsualPort = 7430;

    /// <summary>The folder used when none is named.</summary>
    public static string UsualData => Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "fairlead");

    /// <summary>The folder of the jobs.</summary>
    public string Jobs { get; init; } = Path.Combine(Data, "jobs");

    /// <summary>The file of the people who may sign in.</summary>
    public string People => Path.Combine(Data, "people.db");

    /// <summary>The folder of the keys that cookies are protected with.</summary>
    public string Keys => Path.Combine(Data, "keys");

    /// <summary>The key that opens what was sealed on tablets.</summary>
    public string SealKey => Path.Combine(Data, "seal.pem");

    /// <summary>The certificate made here.</summary>
    public string OwnCertificate => Path.Combine(Data, "certificate.pfx");

    /// <summary>A PFX file to serve the network with; empty to use one made here.</summary>
    public string Certificate { get; init; } = "";

    /// <summary>The password of <see cref="Certificate"/>.</summary>
    public string CertificatePassword { get; init; } = "";

    /// <summary>Whether each request is told on the console, as one line of JSON without bodies.</summary>
    public bool Log { get; init; }

    /// <summary>The options without the password.</summary>
    public override string ToString() => $"{Data}, port {Port.ToString(System.Globalization.CultureInfo.InvariantCulture)}{(Lan ? ", network" : "")}";
}
