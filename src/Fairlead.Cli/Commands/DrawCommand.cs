using System.CommandLine;
using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Drawings;
using Fairlead.Drawings.Harness;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead draw</c>: the drawings of a job as SVG files.</summary>
internal static class DrawCommand
{
    private static readonly DrawingKind[] All = Enum.GetValues<DrawingKind>();

    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var output = new Option<string>("--output", "-o") { Description = "The folder to fill; it must be new or empty.", Required = true, HelpName = "FOLDER" };
        var kind = new Option<string[]>("--kind") { Description = $"What to draw, of: {string.Join(", ", All.Select(Name))}; all unless given. It may stand several times.", HelpName = "KIND" };
        var tiles = new Option<string>("--tiles") { Description = "The paper of form-board tiles: A3, or A4 for any printer.", HelpName = "PAPER", DefaultValueFactory = _ => TilePaper.A3.Name };
        tiles.AcceptOnlyFromAmong([.. TilePaper.All.Select(p => p.Name)]);
        var command = new Command("draw", "Write the drawings of a job as SVG files.") { folder, output, kind, tiles };
        command.SetAction(parsed =>
        {
            var kinds = Kinds(parsed.GetValue(kind) ?? []);
            var paper = TilePaper.All.First(p => p.Name == parsed.GetValue(tiles));
            var (directory, target) = (parsed.GetValue(folder)!, parsed.GetValue(output)!);
            NewFolder.Require(target);
            var read = JobArguments.Load(terminal, directory);
            var assessment = JobArguments.Assess(terminal, directory, read);
            var files = terminal.Work("drawing", progress => Draw(assessment, read.Hash, kinds, paper, progress, terminal.Stop));
            SafeWrite.Folder(target, files);
            terminal.Error.WriteLine($"wrote {Counted.Of(files.Count, "drawing")} to {target}");
            terminal.Print(SheetText.Advice);
            return ExitCode.Holds;
        });
        return command;
    }

    private static List<KeyValuePair<string, byte[]>> Draw(Assessment assessment, string hash, DrawingKind[] kinds, TilePaper paper, IProgress<int> progress, CancellationToken stop)
    {
        var files = new List<KeyValuePair<string, byte[]>>();
        for (var i = 0; i < kinds.Length; i++)
        {
            foreach (var drawing in DrawingSet.Of(assessment, hash, kinds[i], paper))
            {
                stop.ThrowIfCancellationRequested();
                files.Add(DrawingSet.File(drawing));
            }

            progress.Report(100 * (i + 1) / kinds.Length);
        }

        return files;
    }

    private static DrawingKind[] Kinds(string[] names) => names.Length == 0 ? All : [.. names.Distinct(StringComparer.Ordinal).Select(name =>
        All.Any(k => Name(k) == name) ? All.First(k => Name(k) == name)
        : throw new BadInputException($"--kind: there is no drawing '{name}'.{Nearest.Hint(name, All.Select(Name), "See 'fairlead draw --help'.")}"))];

    private static string Name(DrawingKind kind) => Words.Kebab(kind.ToString());
}
