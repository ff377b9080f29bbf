using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead log</c>: adds to the log of a job, shows it, checks it and proves single entries.</summary>
internal static class LogCommand
{
    public static Command Create(Terminal terminal) => new("log", "The log of the work: who did what, when; what was altered shows.")
    {
        Add(terminal), Sign(terminal), Pin(terminal), Show(terminal), Verify(terminal), Prove(terminal), CheckProof(terminal), KindsOf(terminal),
    };

    private static Option<string> Who() => new("--who") { Description = "The id of the person, as in job.yaml.", Required = true, HelpName = "ID" };

    private static Argument<string> Subject() => new("SUBJECT") { Description = "What it is about: a class and an id, 'panel/FLOOR-1'." };

    private static Command Add(Terminal terminal)
    {
        var (folder, who) = (JobArguments.Folder(), Who());
        var words = new Argument<string[]>("ENTRY") { Description = "KIND CLASS/ID [name=value ...], as 'opened panel/FLOOR-1 fasteners=22'; without it, one entry a line is read from the input." };
        var command = new Command("add", "Add entries; 'fairlead log kinds' lists what can be said.") { folder, words, who };
        words.Arity = ArgumentArity.ZeroOrMore;
        command.SetAction(parsed =>
        {
            var place = LogPlace.Of(terminal, parsed.GetValue(folder)!);
            using var store = place.Open();
            var book = new LogBook(store, place.Register, terminal.Clock);
            var (person, entry) = (parsed.GetValue(who)!, parsed.GetValue(words) ?? []);
            return entry.Length > 0 ? Taken(terminal, book.Append(DraftWords.Read(person, entry))) : Lines(terminal, book, person);
        });
        return command;
    }

    // Each line is answered before the next is read, so whoever sends them knows what is on the disk.
    private static int Lines(Terminal terminal, LogBook book, string who)
    {
        var code = ExitCode.Holds;
        while (terminal.In.ReadLine() is { } line)
        {
            terminal.Stop.ThrowIfCancellationRequested();
            if (string.IsNullOrWhiteSpace(line))
            {
                continue;
            }

            var outcome = book.Append(DraftWords.Read(who, DraftWords.Split(line)));
            terminal.Out.WriteLine(outcome.Entry is { } entry ? Acknowledged(entry) : "refused: " + string.Join(' ', outcome.Refused));
            terminal.Out.Flush();
            code = outcome.Entry is null ? ExitCode.Open : code;
        }

        return code;
    }

    private static Command Sign(Terminal terminal)
    {
        var (folder, subject, who) = (JobArguments.Folder(), Subject(), Who());
        var scope = new Option<string>("--scope") { Description = "The authorisation used, as in job.yaml.", Required = true, HelpName = "SCOPE" };
        var role = new Option<string>("--role") { Description = "'work' by who did it, 'inspection' by a second person.", DefaultValueFactory = _ => "work", HelpName = "ROLE" };
        var command = new Command("sign", "Sign for something; the PIN or password is asked for again each time.") { folder, subject, who, scope, role };
        command.SetAction(parsed =>
        {
            var place = LogPlace.Of(terminal, parsed.GetValue(folder)!);
            using var store = place.Open();
            var draft = new Draft(parsed.GetValue(who)!, "signed", parsed.GetValue(subject)!, Payload.Empty.With("role", parsed.GetValue(role)!).With("scope", parsed.GetValue(scope)!));
            var secret = terminal.Secret($"PIN or password of {draft.Who}: ");
            return Taken(terminal, new LogBook(store, place.Register, terminal.Clock).Sign(draft, new SignIns(store, place.Register.People, terminal.Clock), secret));
        });
        return command;
    }

    private static Command Pin(Terminal terminal)
    {
        var (folder, who) = (JobArguments.Folder(), Who());
        var command = new Command("pin", "Set the PIN or password of a person; the one that is set has to be given first.") { folder, who };
        command.SetAction(parsed =>
        {
            var (place, person) = (LogPlace.Of(terminal, parsed.GetValue(folder)!), parsed.GetValue(who)!);
            using var store = place.Open();
            var present = store.FindSignIn(person) is null ? "" : terminal.Secret($"Present PIN or password of {person}: ");
            var next = terminal.Secret($"New PIN or password of {person}: ");
            var refused = new SignIns(store, place.Register.People, terminal.Clock).Set(person, present, next, RandomNumberGenerator.GetBytes(Passwords.SaltBytes));
            return refused is not null ? Taken(terminal, new Outcome(null, [refused]))
                : Taken(terminal, new LogBook(store, place.Register, terminal.Clock).Append(new Draft(person, "pin-set", "person/" + person)));
        });
        return command;
    }

    private static Command Show(Terminal terminal)
    {
        var (folder, format) = (JobArguments.Folder(), Formats.Option("text", "json"));
        var command = new Command("show", "Show the entries, oldest first.") { folder, format };
        command.SetAction(parsed =>
        {
            using var store = LogPlace.Of(terminal, parsed.GetValue(folder)!).Find();
            foreach (var line in store?.Lines(0) ?? [])
            {
                terminal.Out.WriteLine(parsed.GetValue(format) == "json" ? line : Text(line));
            }

            return ExitCode.Holds;
        });
        return command;
    }

    private static Command Verify(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var known = new Option<string?>("--witness") { Description = "What was noted of the log before, 'ENTRIES:ROOT': finds an end cut off as well.", HelpName = "NOTE" };
        var command = new Command("verify", "Recompute the whole log and name the first altered entry.") { folder, known };
        command.SetAction(parsed =>
        {
            var noted = parsed.GetValue(known);
            var witness = noted is null ? null : Witness.TryRead(noted, out var read) ? read : throw new BadInputException($"--witness: found '{noted}', expected a number and a root as 'log verify' prints them, 42:5dc9da79…");
            using var store = LogPlace.Of(terminal, parsed.GetValue(folder)!).Find();
            var report = terminal.Work("checking the log", () => ChainCheck.Check(store?.Lines(0) ?? [], witness));
            return Told(terminal, report, store);
        });
        return command;
    }

    private static int Told(Terminal terminal, ChainReport report, ILogStore? store)
    {
        var altered = store?.Contents().Where(hash => Convert.ToHexStringLower(SHA256.HashData(store.Content(hash)!)) != hash).ToArray() ?? [];
        foreach (var sequence in report.ClockWentBack)
        {
            terminal.Print(string.Create(CultureInfo.InvariantCulture, $"note: the clock had been set back before entry {sequence}; the order of the entries stands by their numbers."));
        }

        foreach (var hash in altered)
        {
            terminal.Print($"ALTERED: the text kept under {hash} is not the one that was entered.");
        }

        if (report.Fault is { } fault)
        {
            terminal.Print(string.Create(CultureInfo.InvariantCulture, $"ALTERED: entry {fault.Sequence}: {fault.What}. The entries before it are as they were entered."));
            return ExitCode.Open;
        }

        terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{report.Head.Entries} entries, each as it was entered. Note this and keep it elsewhere:"));
        terminal.Out.WriteLine(report.Head);
        return altered.Length > 0 ? ExitCode.Open : ExitCode.Holds;
    }

    private static Command Prove(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var sequence = new Argument<long>("NUMBER") { Description = "The number of the entry." };
        var command = new Command("prove", "Show that one entry belongs to the log, without showing the rest.") { folder, sequence };
        command.SetAction(parsed =>
        {
            using var store = LogPlace.Of(terminal, parsed.GetValue(folder)!).Find();
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

    private static Command CheckProof(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "What 'fairlead log prove' printed." };
        var command = new Command("check-proof", "Check the proof of one entry; it needs no job.") { file };
        command.SetAction(parsed =>
        {
            Proof proof;
            try
            {
                proof = Proof.Read(CanonicalJson.FromBytes(File.ReadAllBytes(parsed.GetValue(file)!)));
            }
            catch (FormatException e)
            {
                throw new BadInputException(e.Message);
            }

            var fault = proof.Fault();
            terminal.Print(fault is null ? Text(proof.Line) : $"It proves nothing: {fault}.");
            terminal.Print(fault is null ? $"This entry belongs to the log {proof.Log}. Compare that with what was noted of the log." : "");
            return fault is null ? ExitCode.Holds : ExitCode.Open;
        });
        return command;
    }

    private static Command KindsOf(Terminal terminal)
    {
        var command = new Command("kinds", "List what can be said in the log.");
        command.SetAction(_ =>
        {
            foreach (var kind in Kinds.All)
            {
                terminal.Out.WriteLine($"{kind.Name} {(kind.Class.Length > 0 ? kind.Class : "CLASS")}/ID{string.Concat(kind.Fields.Select(f => f.Needed ? $" {f.Name}=" : $" [{f.Name}=]"))}");
                terminal.Print(kind.Doc, 4);
                foreach (var field in kind.Fields)
                {
                    terminal.Print($"{field.Name}: {field.Doc}", 8);
                }
            }

            return ExitCode.Holds;
        });
        return command;
    }

    private static int Taken(Terminal terminal, Outcome outcome)
    {
        if (outcome.Entry is { } entry)
        {
            terminal.Out.WriteLine(Acknowledged(entry));
            return ExitCode.Holds;
        }

        terminal.Print("Refused, and not entered:");
        foreach (var reason in outcome.Refused)
        {
            terminal.Print(reason, 2);
        }

        return ExitCode.Open;
    }

    private static string Acknowledged(Entry entry) => string.Create(CultureInfo.InvariantCulture, $"entered {entry.Sequence} {entry.Hash}");

    private static string Text(string line)
    {
        var entry = Entry.Read(line);
        var told = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{entry.Sequence,6}  {Instant.Text(entry.At)}  {entry.Who}  {entry.Kind} {entry.Subject}"));
        return entry.Payload.Names.Any() ? told.Append(": ").Append(entry.Payload).ToString() : told.ToString();
    }
}
