using System.CommandLine;
using System.Globalization;
using System.Text;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead log</c>: adds to the log of a job, shows it, checks it and proves single entries.</summary>
internal static class LogCommand
{
    public static Command Create(Terminal terminal) => new("log", "The log of the work: who did what, when; what was altered shows.")
    {
        Add(terminal), LogSigning.Sign(terminal), LogSigning.Pin(terminal), Show(terminal), LogChecking.Verify(terminal), LogChecking.Prove(terminal), LogChecking.CheckProof(terminal), KindsOf(terminal),
    };

    /// <summary>The person an entry is of.</summary>
    public static Option<string> Who() => new("--who") { Description = "The id of the person, as in job.yaml.", Required = true, HelpName = "ID" };

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

            var (answer, became) = Answer(book, who, line);
            terminal.Out.WriteLine(answer);
            terminal.Out.Flush();
            code = Math.Max(code, became);
        }

        return code;
    }

    // A line that cannot be read is answered too, and those after it are entered all the same.
    private static (string Answer, int Code) Answer(LogBook book, string who, string line)
    {
        try
        {
            var outcome = book.Append(DraftWords.Read(who, DraftWords.Split(line)));
            return outcome.Entry is { } entry ? (Acknowledged(entry), ExitCode.Holds) : ("refused: " + string.Join(' ', outcome.Refused), ExitCode.Open);
        }
        catch (BadInputException e)
        {
            return ("not read: " + string.Join(' ', e.Lines), ExitCode.BadInput);
        }
    }

    private static Command Show(Terminal terminal)
    {
        var (folder, format) = (JobArguments.Folder(), Formats.Option("text", "json"));
        var command = new Command("show", "Show the entries, oldest first, up to the first that was altered.") { folder, format };
        command.SetAction(parsed =>
        {
            using var store = LogPlace.FindIn(terminal, parsed.GetValue(folder)!);
            var report = ChainCheck.Check(store?.Lines(0) ?? []);
            foreach (var entry in report.Entries)
            {
                terminal.Out.WriteLine(parsed.GetValue(format) == "json" ? entry.Line() : Text(entry));
            }

            return report.Fault is { } fault ? Altered(terminal, fault) : ExitCode.Holds;
        });
        return command;
    }

    // What follows an altered entry rests on it, so it is not shown as if it stood; not among the entries, which a program may read.
    private static int Altered(Terminal terminal, ChainFault fault)
    {
        terminal.Error.WriteLine(LogChecking.Altered(fault) + " What follows is not shown.");
        return ExitCode.Open;
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

    /// <summary>Says what became of an entry.</summary>
    public static int Taken(Terminal terminal, Outcome outcome)
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

    /// <summary>An entry of the log as a person reads it.</summary>
    public static string Text(Entry entry)
    {
        var told = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{entry.Sequence,6}  {Instant.Text(entry.At)}  {entry.Who}  {entry.Kind} {entry.Subject}"));
        return PlainText.Shown((entry.Payload.Names.Any() ? told.Append(": ").Append(entry.Payload) : told).ToString());
    }
}
