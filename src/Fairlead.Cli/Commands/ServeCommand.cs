using System.CommandLine;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using Fairlead.Server;
using Fairlead.Server.People;
using Microsoft.AspNetCore.Connections;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead serve</c>: the workbench in a browser, on this machine or on the hangar's network.</summary>
internal static class ServeCommand
{
    private const int MostPort = 65535;

    public static Command Create(Terminal terminal)
    {
        var data = new Option<string>("--data") { Description = "The folder that holds the jobs.", DefaultValueFactory = _ => ServerOptions.UsualData, HelpName = "DIR" };
        var port = new Option<int>("--port") { Description = "The port; 0 for any that is free.", DefaultValueFactory = _ => ServerOptions.UsualPort, HelpName = "N" };
        var lan = new Option<bool>("--lan") { Description = "Serve the hangar's network, with TLS and sign-in, and not this machine alone." };
        var certificate = new Option<string>("--certificate") { Description = "A PFX file to serve the network with, its password in FAIRLEAD_CERTIFICATE_PASSWORD; without it one is made and kept with the data.", DefaultValueFactory = _ => "", HelpName = "PFX" };
        var log = new Option<bool>("--log") { Description = "Tell each request as a line of JSON, without what it carried." };
        var command = new Command("serve", "Serve the workbench to browsers on this machine, or on the hangar's network.") { data, port, lan, certificate, log };
        command.SetAction(parsed => Run(terminal, new ServerOptions(parsed.GetValue(data)!, Port(parsed.GetValue(port)), parsed.GetValue(lan))
        {
            Certificate = parsed.GetValue(certificate)!,
            CertificatePassword = Environment.GetEnvironmentVariable("FAIRLEAD_CERTIFICATE_PASSWORD") ?? "",
            Log = parsed.GetValue(log),
        }));
        return command;
    }

    /// <summary>A port, if it can be one.</summary>
    public static int Port(int port) => port is >= 0 and <= MostPort ? port
        : throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--port: found {port}, expected a number from 0 to {MostPort}."));

    /// <summary>Serves until it is stopped.</summary>
    public static int Run(Terminal terminal, ServerOptions options)
    {
        using var app = Create(terminal, options);
        try
        {
            app.StartAsync(terminal.Stop).GetAwaiter().GetResult();
        }
        catch (IOException e)
        {
            var why = e.InnerException is AddressInUseException ? "another program, perhaps Fairlead itself, is served there already." : e.Message;
            throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"Port {options.Port} cannot be served: {why} Choose another with --port, or --port 0 for any that is free."));
        }

        terminal.Out.WriteLine($"Fairlead is at {Address(app.Urls.First(), options)}");
        terminal.Print($"Jobs are kept in {options.Data}. Ctrl-C ends it.");
        if (app.Services.GetRequiredService<FirstKey>() is { Needed: true } first)
        {
            terminal.Print($"Nobody may sign in yet. Open the address and make the first keeper with the key {first.Words}");
        }

        using var ended = new ManualResetEventSlim();
        using var stop = terminal.Stop.Register(ended.Set);
        app.Lifetime.ApplicationStopping.Register(ended.Set);
        ended.Wait(CancellationToken.None);
        app.StopAsync(CancellationToken.None).GetAwaiter().GetResult();
        return ExitCode.Holds;
    }

    private static WebApplication Create(Terminal terminal, ServerOptions options)
    {
        try
        {
            return FairleadServer.Create(options, terminal.Clock);
        }
        catch (Exception e) when (e is CryptographicException or IOException or UnauthorizedAccessException or InvalidDataException)
        {
            throw new BadInputException($"The server cannot begin in {options.Data}: {e.Message}");
        }
    }

    // The network calls this machine by its name.
    private static string Address(string url, ServerOptions options) =>
        options.Lan ? string.Create(CultureInfo.InvariantCulture, $"https://{Dns.GetHostName()}:{new Uri(url).Port}") : url;
}
