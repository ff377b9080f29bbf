using System.CommandLine;
using System.Globalization;
using Fairlead.Server;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead serve</c>: the workbench in a browser, on this machine or on the hangar's network.</summary>
internal static class ServeCommand
{
    private const int MostPort = 65535;

    public static Command Create(Terminal terminal)
    {
        var data = new Option<string>("--data") { Description = "The folder that holds the jobs.", DefaultValueFactory = _ => ServerOptions.UsualData, HelpName = "DIR" };
        var port = new Option<int>("--port") { Description = "The port.", DefaultValueFactory = _ => ServerOptions.UsualPort, HelpName = "N" };
        var command = new Command("serve", "Serve the workbench to a browser on this machine.") { data, port };
        command.SetAction(parsed => Run(terminal, new ServerOptions(parsed.GetValue(data)!, Port(parsed.GetValue(port)))));
        return command;
    }

    private static int Port(int port) => port is >= 0 and <= MostPort ? port
        : throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--port: found {port}, expected a number from 0 to {MostPort}."));

    /// <summary>Serves until it is stopped.</summary>
    public static int Run(Terminal terminal, ServerOptions options)
    {
        using var app = FairleadServer.Create(options, terminal.Clock);
        try
        {
            app.StartAsync(terminal.Stop).GetAwaiter().GetResult();
        }
        catch (IOException e)
        {
            throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"Port {options.Port} cannot be served: {e.Message} Another one is chosen by --port."));
        }

        terminal.Out.WriteLine($"Fairlead is at {app.Urls.First()}");
        terminal.Print($"Jobs are kept in {options.Data}. Ctrl-C ends it.");
        using var ended = new ManualResetEventSlim();
        using var stop = terminal.Stop.Register(ended.Set);
        app.Lifetime.ApplicationStopping.Register(ended.Set);
        ended.Wait(CancellationToken.None);
        app.StopAsync(CancellationToken.None).GetAwaiter().GetResult();
        return ExitCode.Holds;
    }
}
