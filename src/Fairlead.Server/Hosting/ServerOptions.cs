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
    public string Jobs => Path.Combine(Data, "jobs");
}
