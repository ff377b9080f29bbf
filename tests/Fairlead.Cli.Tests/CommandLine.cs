using System.Text;
using Fairlead.Cli;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Cli;

/// <summary>What one run of the command line gave.</summary>
public sealed record Ran(int Code, string Out, string Error);

/// <summary>Runs the command line within the test, without a terminal.</summary>
internal static class CommandLine
{
    public static Ran Run(params string[] args) => Run(t => t, args);

    public static Ran Run(Func<Terminal, Terminal> place, params string[] args)
    {
        using var result = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = FairleadApp.Run(args, place(new Terminal(result, error)));
        return new Ran(code, result.ToString(), error.ToString());
    }

    /// <summary>The arguments of a calculation's worked example, split as a shell does.</summary>
    public static string[] Split(string example)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        var quoted = false;
        foreach (var c in example + " ")
        {
            if (c == '\'')
            {
                quoted = !quoted;
            }
            else if (c == ' ' && !quoted)
            {
                words.Add(word.ToString());
                word.Clear();
            }
            else
            {
                word.Append(c);
            }
        }

        return [.. words.Where(w => w.Length > 0)];
    }
}

/// <summary>A folder for one test, removed after it.</summary>
internal sealed class Workshop : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("fairlead-cli-").FullName;

    /// <summary>A path in the folder.</summary>
    public string this[string name] => Path.Combine(root, name);

    /// <summary>Panels that the change of the starter job does not touch, so that nothing of it waits for them.</summary>
    public static (string File, string Old, string New) Panels { get; } = ("aircraft.yaml", "panels:\n  GLARE:", "panels:\n" + Panel("P1") + Panel("P2") + "  GLARE:");

    /// <summary>The starter job, with pieces of its change replaced.</summary>
    public string Job(params (string File, string Old, string New)[] edits)
    {
        var job = this["job"];
        Starter.Write(job);
        foreach (var (file, old, now) in edits)
        {
            var path = Path.Combine(job, file);
            var text = File.ReadAllText(path);
            Assert.Contains(old, text);
            File.WriteAllText(path, text.Replace(old, now));
        }

        return job;
    }

    /// <summary>Every file in the folder with its contents.</summary>
    public IEnumerable<(string Path, string Text)> Everything() =>
        Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => (f, File.ReadAllText(f)));

    public void Dispose() => Directory.Delete(root, recursive: true);

    private static string Panel(string id) => "  " + id + ": { name: A cover beside the change (invented), kind: cover, zone: COCKPIT, open: { low: 5 min, likely: 6 min, high: 9 min }, close: { low: 5 min, likely: 6 min, high: 9 min }, fasteners: 4, fastener: screw }\n";
}
