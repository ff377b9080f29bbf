using System.CommandLine;
using System.Security.Cryptography;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead log sign</c> and <c>fairlead log pin</c>: what takes a person's PIN or password.</summary>
internal static class LogSigning
{
    public static Command Sign(Terminal terminal)
    {
        var (folder, subject, who) = (JobArguments.Folder(), Subject(), LogCommand.Who());
        var scope = new Option<string>("--scope") { Description = "The authorisation used, as in job.yaml.", Required = true, HelpName = "SCOPE" };
        var role = new Option<string>("--role") { Description = "'work' by who did it, 'inspection' by a second person.", DefaultValueFactory = _ => "work", HelpName = "ROLE" };
        var command = new Command("sign", "Sign for something; the PIN or password is asked for again each time.") { folder, subject, who, scope, role };
        command.SetAction(parsed =>
        {
            var place = LogPlace.Of(terminal, parsed.GetValue(folder)!);
            using var store = place.Open();
            var draft = new Draft(parsed.GetValue(who)!, "signed", parsed.GetValue(subject)!, Payload.Empty.With("role", parsed.GetValue(role)!).With("scope", parsed.GetValue(scope)!));
            var secret = terminal.Secret($"PIN or password of {draft.Who}: ");
            return LogCommand.Taken(terminal, new LogBook(store, place.Register, terminal.Clock).Sign(draft, new SignIns(store, place.Register.People, terminal.Clock), secret));
        });
        return command;
    }

    public static Command Pin(Terminal terminal)
    {
        var (folder, who) = (JobArguments.Folder(), LogCommand.Who());
        var command = new Command("pin", "Set the PIN or password of a person; the one that is set has to be given first.") { folder, who };
        command.SetAction(parsed =>
        {
            var (place, person) = (LogPlace.Of(terminal, parsed.GetValue(folder)!), parsed.GetValue(who)!);
            using var store = place.Open();
            var present = store.FindSignIn(person) is null ? "" : terminal.Secret($"Present PIN or password of {person}: ");
            var next = terminal.Secret($"New PIN or password of {person}: ");
            var refused = new SignIns(store, place.Register.People, terminal.Clock).Set(person, present, next, RandomNumberGenerator.GetBytes(Passwords.SaltBytes));
            return refused is not null ? LogCommand.Taken(terminal, new Outcome(null, [refused]))
                : LogCommand.Taken(terminal, new LogBook(store, place.Register, terminal.Clock).Append(new Draft(person, "pin-set", "person/" + person)));
        });
        return command;
    }

    private static Argument<string> Subject() => new("SUBJECT") { Description = "What it is about: a class and an id, 'panel/FLOOR-1'." };
}
