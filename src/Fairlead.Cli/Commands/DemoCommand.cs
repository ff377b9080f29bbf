using System.CommandLine;
using Fairlead.Cli.Output;
using Fairlead.Model.Storage;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead demo</c>: writes the demo jobs, checks the first and writes its release pack.</summary>
internal static class DemoCommand
{
    private const string Prefix = "demo/";
    private const string Usual = "fairlead-demo";
    private const string Sound = "survey-twin";
    private const string Faulty = "with-faults";

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("DIR") { Description = $"The folder to write, new or empty; {Usual} when it is left out.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("demo", "Write, check and pack a demo job, to see what you get.") { folder };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder) ?? Usual));
        return command;
    }

    private static int Run(Terminal terminal, string directory)
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
