using System.CommandLine;
using Fairlead.Cli.Output;
using Fairlead.Model.Storage;
using Fairlead.Server;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead demo</c>: writes the demo jobs, checks the first, writes its release pack, and serves the workbench on them to whoever watches.</summary>
internal static class DemoCommand
{
    private const string Prefix = "demo/";
    private const string Usual = "fairlead-demo";
    private const string Sound = "survey-twin";
    private const string Faulty = "with-faults";

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("DIR") { Description = $"The folder to write, new or empty; {Usual} when it is left out.", Arity = ArgumentArity.ZeroOrOne };
        var noServe = new Option<bool>("--no-serve") { Description = "End when the pack is written; the workbench is not started." };
        var port = new Option<int>("--port") { Description = "The port of the workbench; 0 for any that is free.", DefaultValueFactory = _ => ServerOptions.UsualPort, HelpName = "N" };
        var command = new Command("demo", "Write, check and pack a demo job, and start the workbench on it, to see what you get.") { folder, noServe, port };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder) ?? Usual, !parsed.GetValue(noServe), ServeCommand.Port(parsed.GetValue(port))));
        return command;
    }

    private static int Run(Terminal terminal, string directory, bool serve, int port)
    {
        NewFolder.Require(directory);
        SafeWrite.Folder(directory, Files());
        var (sound, faulty, pack) = (Path.Combine(directory, Sound), Path.Combine(directory, Faulty), Path.Combine(directory, Sound + "-pack.pdf"));
        var code = CheckCommand.Run(terminal, sound, "text", output: null);
        PackCommand.Write(terminal, sound, pack, PackCommand.Today(terminal));
        List<string[]> lines = [["the job", sound], ["its release pack", pack], ["check it again", $"{terminal.Command} check {Terminal.Quoted(sound)}"], ["see the working", $"{terminal.Command} sheet {Terminal.Quoted(sound)}"]];
        if (Directory.Exists(faulty))
        {
            lines.Add(["the same with faults", $"{terminal.Command} check {Terminal.Quoted(faulty)}"]);
        }

        terminal.Out.WriteLine();
        Wrapping.Columns(terminal.Out, lines, terminal.Width, 0);

        // A script that runs this waits for its end; a person who watches sees the workbench.
        if (serve && terminal.Watched)
        {
            terminal.Out.WriteLine();
            ServeCommand.Run(terminal, new ServerOptions(Path.GetFullPath(directory), port) { Jobs = Path.GetFullPath(directory) });
        }

        return code;
    }

    private static IEnumerable<KeyValuePair<string, byte[]>> Files()
    {
        var assembly = typeof(DemoCommand).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            yield return KeyValuePair.Create(name[Prefix.Length..].Replace('\\', '/'), bytes.ToArray());
        }
    }
}
