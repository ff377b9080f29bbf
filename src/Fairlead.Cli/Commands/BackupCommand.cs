using System.CommandLine;
using System.Globalization;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead backup</c> and <c>fairlead restore</c>: a job with its log on a stick, and back.</summary>
internal static class BackupCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var to = new Option<string>("--to") { Description = "The folder to copy to, for example that of a stick.", Required = true, HelpName = "FOLDER" };
        var command = new Command("backup", "Copy a job with its log to another place, and read the copy back.") { folder, to };
        command.SetAction(parsed =>
        {
            var (directory, target) = (parsed.GetValue(folder)!, parsed.GetValue(to)!);
            if (!Directory.Exists(target))
            {
                throw new BadInputException($"There is no folder '{target}'.");
            }

            JobArguments.RequireOutside(directory, target);

            // A job whose text has problems is worth keeping too.
            using var store = LogPlace.FindIn(terminal, directory);
            var zip = terminal.Work("packing the job", () => JobArchive.Zip(JobArguments.Files(directory), store));
            var file = Path.Combine(target, Name(Number(directory), terminal.Clock.GetUtcNow()));
            if (File.Exists(file))
            {
                throw new BadInputException($"'{file}' exists already; a backup never replaces one.");
            }

            SafeWrite.Bytes(file, zip);
            terminal.Out.WriteLine($"wrote {file}");
            return Told(terminal, terminal.Work("reading it back", () => Back(file, zip)));
        });
        return command;
    }

    public static Command Restore(Terminal terminal)
    {
        var zip = new Argument<string>("FILE.zip") { Description = "What 'fairlead backup' wrote." };
        var folder = NewFolder.Argument();
        var command = new Command("restore", "Check a backup and unpack it into a new folder, log and all.") { zip, folder };
        command.SetAction(parsed =>
        {
            var (file, directory) = (parsed.GetValue(zip)!, parsed.GetValue(folder)!);
            var log = terminal.Work("restoring the job", () => Unpacking.Run(terminal, file, directory));
            return Told(terminal, log);
        });
        return command;
    }

    // What was written is compared with what was packed, byte for byte, and its log is recomputed.
    private static ChainReport? Back(string file, byte[] zip) =>
        File.ReadAllBytes(file).AsSpan().SequenceEqual(zip) ? JobArchive.Open(JobFolder.Read(file, archive: true)).Log
            : throw new InvalidDataException($"'{file}' does not read back as it was written: the medium is bad. Take another.");

    private static int Told(Terminal terminal, ChainReport? log)
    {
        terminal.Out.WriteLine("read back: every byte as it was written");
        terminal.Out.WriteLine(log is null ? "The job has no log." : $"Log {log.Head}");
        terminal.Print(log is null ? "" : "PINs and passwords are never copied: each person sets a new one with 'fairlead log pin'.");
        return ExitCode.Holds;
    }

    private static string Number(string directory) =>
        JobFolder.Load(directory).Job?.Order.Number ?? Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(directory)));

    private static string Name(string number, DateTimeOffset now) =>
        string.Concat(number.Select(c => char.IsAsciiLetterOrDigit(c) || c == '-' ? c : '-')) + "-" + now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture) + ".zip";
}
