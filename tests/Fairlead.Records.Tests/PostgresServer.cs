using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

[assembly: AssemblyFixture(typeof(Fairlead.Tests.Records.PostgresServer))]

namespace Fairlead.Tests.Records;

/// <summary>A PostgreSQL server of its own for a run of the tests, durable as in the field. Where none is installed the tests are skipped, or fail when
/// FAIRLEAD_REQUIRE_TOOLS is 1.</summary>
public sealed class PostgresServer : IDisposable
{
    private readonly Lock turn = new();
    private DirectoryInfo? folder;
    private int port;

    /// <summary>How to connect; starts the server at the first call.</summary>
    public string Need()
    {
        lock (turn)
        {
            var message = "PostgreSQL is not installed: run eng/install-test-tools";
            Assert.False(Programs is null && Environment.GetEnvironmentVariable("FAIRLEAD_REQUIRE_TOOLS") == "1", message);
            Assert.SkipWhen(Programs is null, message);
            if (folder is null)
            {
                Create();
            }

            return string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port};Username=postgres;Database=postgres;Pooling=false;Timeout=30;Command Timeout=120");
        }
    }

    /// <summary>Kills every process of the server at once, as a power cut does, and starts it again.</summary>
    public void Crash()
    {
        Run("pg_ctl", "-s", "stop", "-D", Data, "-m", "immediate");
        Start();
    }

    public void Dispose()
    {
        if (folder is not null)
        {
            Run("pg_ctl", "-s", "stop", "-D", Data, "-m", "immediate");
            folder.Delete(recursive: true);
        }
    }

    private static string? Programs { get; } = Directory.Exists("/usr/lib/postgresql")
        ? Directory.GetDirectories("/usr/lib/postgresql").Select(d => Path.Combine(d, "bin")).LastOrDefault(d => File.Exists(Path.Combine(d, "initdb"))) : null;

    private string Data => Path.Combine(folder!.FullName, "data");

    private void Create()
    {
        folder = Directory.CreateTempSubdirectory("fairlead-pg-");
        using (var probe = new TcpListener(IPAddress.Loopback, 0))
        {
            probe.Start();
            port = ((IPEndPoint)probe.LocalEndpoint).Port;
        }

        if (Environment.IsPrivilegedProcess)
        {
            Ended(Process.Start("chown", ["postgres", folder.FullName]));
        }

        Run("initdb", "-D", Data, "-A", "trust", "-U", "postgres", "--no-sync");
        Start();
    }

    private void Start() => Run("pg_ctl", "-s", "start", "-D", Data, "-w", "-l", Path.Combine(folder!.FullName, "log"),
        "-o", string.Create(CultureInfo.InvariantCulture, $"-p {port} -k {folder.FullName} -c listen_addresses=127.0.0.1"));

    // The server refuses to run as root.
    private void Run(string program, params string[] arguments)
    {
        var path = Path.Combine(Programs!, program);
        var start = Environment.IsPrivilegedProcess ? new ProcessStartInfo("runuser", ["-u", "postgres", "--", path, .. arguments]) : new ProcessStartInfo(path, arguments);
        start.WorkingDirectory = folder!.FullName;
        start.RedirectStandardOutput = program == "initdb";
        Ended(Process.Start(start));
    }

    private static void Ended(Process? process)
    {
        using (process)
        {
            if (process!.StartInfo.RedirectStandardOutput)
            {
                process.StandardOutput.ReadToEnd();
            }

            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
        }
    }
}
