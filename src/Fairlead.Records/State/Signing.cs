using System.Globalization;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>Why a signature is not taken.</summary>
internal static class Signing
{
    public static IEnumerable<string> Of(Candidate c)
    {
        var (entry, role) = (c.Entry, c.Entry.Payload.Text("role"));
        var present = c.State.Signatures(entry.Subject);
        if (role is not ("work" or "inspection"))
        {
            yield return $"'{role}' is no role of a signature: 'work' or 'inspection'.";
        }

        if (present.FirstOrDefault(s => s.Who == entry.Who) is { } own)
        {
            yield return $"{entry.Who} signed {entry.Subject} already ({own.Payload.Text("role")}, entry {own.Sequence.ToString(CultureInfo.InvariantCulture)}): a second signature is a second person's.";
        }

        else if (present.FirstOrDefault(s => One(c.Register, s.Who, entry.Who)) is { } twin)
        {
            yield return $"job.yaml gives {twin.Who}, who signed {entry.Subject} (entry {twin.Sequence.ToString(CultureInfo.InvariantCulture)}), and {entry.Who} the same name or authorisation number: a second signature is a second person's.";
        }

        if (role == "inspection" && Kinds.ClassOf(entry.Subject) != "stage" && present.All(s => s.Payload.Text("role") != "work"))
        {
            yield return $"The work on {entry.Subject} is not signed yet: who did it signs first, who inspects it second.";
        }

        if (Worker(c, role) is { } worker)
        {
            yield return worker;
        }

        foreach (var reason in Authorised(c).Concat(Ready(c)))
        {
            yield return reason;
        }
    }

    /// <summary>The authorisation of a scope that a person has, the one that lasts longest; null when there is none.</summary>
    public static Authorisation? Find(Register register, string who, string scope) =>
        register.People.Find(who)?.Authorisations.Where(a => a.Scope == scope).MaxBy(a => a.Until);

    /// <summary>Whether two ids are one person, as far as the job shows: the same id or name, or the same authorisation number for the same scope.</summary>
    private static bool One(Register register, string one, string other) => one == other
        || (register.People.Find(one) is { } first && register.People.Find(other) is { } second
            && (string.Equals(first.Name.Trim(), second.Name.Trim(), StringComparison.OrdinalIgnoreCase)
                || first.Authorisations.Any(a => second.Authorisations.Any(b => b.Scope == a.Scope && b.Number == a.Number))));

    // Whoever did any of the work cannot be the second pair of eyes on it, though another signed for it; a stage is always looked at by a second person.
    public static string? Worker(Candidate c, string role)
    {
        var (kind, id) = (Kinds.ClassOf(c.Entry.Subject), Kinds.IdOf(c.Entry.Subject));
        var subject = kind == "stage" && id.LastIndexOf('/') is > 0 and var slash ? "task/" + id[..slash] : c.Entry.Subject;
        return (role == "inspection" || kind == "stage") && c.State.Story(subject).LastOrDefault(e => One(c.Register, e.Who, c.Entry.Who) && (Kinds.Find(e.Kind)!.Effect != Effect.Tells || Results.Is(e))) is { } did
            ? $"{c.Entry.Who} worked on {subject} (entry {did.Sequence.ToString(CultureInfo.InvariantCulture)}) and cannot inspect it." : null;
    }

    private static IEnumerable<string> Authorised(Candidate c)
    {
        var (who, scope) = (c.Entry.Who, c.Entry.Payload.Text("scope"));
        if (Find(c.Register, who, scope) is not { } authorisation)
        {
            yield return $"{who} has no authorisation for '{scope}'.";
        }
        else if (c.Today > authorisation.Until)
        {
            yield return $"The authorisation of {who} for '{scope}' ({authorisation.Number}) ended on {authorisation.Until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}.";
        }

        if (Needed(c) is { Length: > 0 } needed && needed != scope)
        {
            yield return $"{c.Entry.Subject} is signed under '{needed}', not '{scope}'.";
        }
    }

    // What its card asks; a stage has one signature, in whatever role. A release, a concession and a clock set right are for whoever may certify, in whatever role.
    private static string? Needed(Candidate c) => Kinds.ClassOf(c.Entry.Subject) switch
    {
        "release" or "finding" or "clock" => c.Register.Required.Certifying,
        var kind => c.Register.Required.Asks.FirstOrDefault(a => a.Subject == c.Entry.Subject && (kind == "stage" || a.Role == c.Entry.Payload.Text("role")))?.Scope,
    };

    private static IEnumerable<string> Ready(Candidate c)
    {
        var (subject, id) = (c.Entry.Subject, Kinds.IdOf(c.Entry.Subject));
        return Kinds.ClassOf(subject) switch
        {
            "task" when c.Standing is not { Kind: "done" } => [$"{subject} is not done, so there is nothing to sign."],
            "panel" when c.Standing is not { Kind: "closed" } => [$"{subject} was not opened and closed, so there is nothing to sign."],
            "controls" when c.State.Standing("panel/" + id) is not { Kind: "closed" } => [$"panel/{id} is not closed: the controls behind it are checked after that."],
            "stage" when c.State.Stage(id) is null => [$"Stage {id} was not reached."],
            "test" when Results.Last(c.State, subject) is null => [$"Nothing was measured for {subject}."],
            "defect" when c.Standing is not { Kind: "cleared" } => [$"{subject} is not cleared, so there is nothing to sign."],
            "finding" when c.State.Last(subject, "conceded") is null => [$"{subject} is not conceded, so there is nothing to sign."],
            "clock" when c.State.Last(subject, Kinds.ClockSet) is null => [$"{subject} was not set, so there is nothing to sign."],
            "release" when c.Register.Job is { Length: > 0 } job && id != job => [$"This is work order {job}: what is released is 'release/{job}'."],
            "release" => Gate.WhatStandsOpen(c.State, c.Register.Required, c.Now).Select(open => "The release gate is shut: " + open.Text),
            _ => [],
        };
    }
}
