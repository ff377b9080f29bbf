using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead log verify</c>, <c>prove</c> and <c>check-proof</c>: that the log is what it was, and that an entry belongs to it.</summary>
internal static class LogChecking
{
    public static Command Verify(Terminal terminal)
    {
        var folder = new Argument<string>("DIR") { Description = "The folder of the job, or a log as a file: log.jsonl of an export, a backup or a release pack." };
        var known = new Option<string?>("--witness") { Description = "What was noted of the log before, 'ENTRIES:ROOT': finds an end cut off as well.", HelpName = "NOTE" };
        var command = new Command("verify", "Recompute the whole log and name the first altered entry.") { folder, known };
        command.SetAction(parsed =>
        {
            var noted = parsed.GetValue(known);
            var witness = noted is null ? null : Witness.TryRead(noted, out var read) ? read : throw new BadInputException($"--witness: found '{noted}', expected a number and a root as 'log verify' prints them, 42:5dc9da79…");
            if (Path.GetFileName(parsed.GetValue(folder)!) is not (JobReader.Root or FolderFiles.Log) && File.Exists(parsed.GetValue(folder)!))
            {
                return Told(terminal, terminal.Work("checking the log", () => LogFile.Read(File.ReadAllBytes(parsed.GetValue(folder)!), witness)), [], another: null);
            }

            using var store = LogPlace.FindIn(terminal, parsed.GetValue(folder)!);
            var report = terminal.Work("checking the log", () => ChainCheck.Check(store?.Lines(0) ?? [], witness));
            return Told(terminal, report, Texts(store, report), Gate.OfAnother(HangarState.Of(report.Entries), JobFolder.Load(parsed.GetValue(folder)!).Job?.Order.Number ?? ""));
        });
        return command;
    }

    // What the entries name by its hash is there, and is what was entered.
    private static string[] Texts(ILogStore? store, ChainReport report)
    {
        var kept = store?.Contents().ToHashSet(StringComparer.Ordinal) ?? [];
        return
        [
            .. kept.Order(StringComparer.Ordinal).Where(hash => Convert.ToHexStringLower(SHA256.HashData(store!.Content(hash)!)) != hash).Select(hash => $"the text kept under {hash} is not the one that was entered."),
            .. report.Entries.Where(e => e.Kind == "revised" && !kept.Contains(e.Payload.Text("sha256"))).Select(e => string.Create(CultureInfo.InvariantCulture, $"the text of {e.Subject}, entry {e.Sequence}, is missing.")),
        ];
    }

    private static int Told(Terminal terminal, ChainReport report, string[] texts, string? another)
    {
        foreach (var sequence in report.ClockWentBack)
        {
            terminal.Print(string.Create(CultureInfo.InvariantCulture, $"note: the clock had been set back before entry {sequence}; the order of the entries stands by their numbers."));
        }

        foreach (var text in texts)
        {
            terminal.Print("ALTERED: " + text);
        }

        if (report.Fault is { } fault)
        {
            terminal.Print(Altered(fault));
            return ExitCode.Open;
        }

        terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{report.Head.Entries} entries, each as it was entered. Note this and keep it elsewhere:"));
        terminal.Out.WriteLine(report.Head);
        terminal.Print(another ?? "");
        return texts.Length > 0 || another is not null ? ExitCode.Open : ExitCode.Holds;
    }

    /// <summary>Where a log was altered, in words.</summary>
    public static string Altered(ChainFault fault) => string.Create(CultureInfo.InvariantCulture, $"ALTERED: entry {fault.Sequence}: {fault.What}. The entries before it are as they were entered.");

    public static Command Prove(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var sequence = new Argument<long>("NUMBER") { Description = "The number of the entry." };
        var command = new Command("prove", "Show that one entry belongs to the log, without showing the rest.") { folder, sequence };
        command.SetAction(parsed =>
        {
            using var store = LogPlace.FindIn(terminal, parsed.GetValue(folder)!);
            var (report, number) = (ChainCheck.Check(store?.Lines(0) ?? []), parsed.GetValue(sequence));
            if (number < 1 || number > report.Entries.Count || report.Fault is not null)
            {
                throw new BadInputException(report.Fault is { } fault ? string.Create(CultureInfo.InvariantCulture, $"Entry {fault.Sequence} of the log was altered, so it proves nothing.")
                    : string.Create(CultureInfo.InvariantCulture, $"There is no entry {number}: the log has {report.Entries.Count}."));
            }

            terminal.Out.WriteLine(Proof.Of(report.Entries, number).Json());
            return ExitCode.Holds;
        });
        return command;
    }

    public static Command CheckProof(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "What 'fairlead log prove' printed." };
        var command = new Command("check-proof", "Check the proof of one entry; it needs no job.") { file };
        command.SetAction(parsed =>
        {
            var proof = Read(parsed.GetValue(file)!);
            var fault = proof.Fault();
            terminal.Print(fault is null ? LogCommand.Text(Entry.Read(proof.Line)) : $"It proves nothing: {fault}.");
            terminal.Print(fault is null ? $"This entry belongs to the log {proof.Log}. Compare that with what was noted of the log." : "");
            return fault is null ? ExitCode.Holds : ExitCode.Open;
        });
        return command;
    }

    private static Proof Read(string file)
    {
        const string printed = "what 'fairlead log prove DIR NUMBER' printed";
        if (Directory.Exists(file))
        {
            throw new BadInputException($"'{file}' is a folder; give the file with {printed}.");
        }

        if (!File.Exists(file))
        {
            throw new BadInputException($"There is no file '{file}'; give the file with {printed}.");
        }

        try
        {
            return Proof.Read(CanonicalJson.FromBytes(File.ReadAllBytes(file)));
        }
        catch (FormatException e)
        {
            throw new BadInputException($"{file}: {e.Message} Give the file with {printed}.");
        }
    }
}
