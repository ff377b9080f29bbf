using System.Globalization;

namespace Fairlead.Records;

/// <summary>Why an entry is not taken. Each reason is a sentence for the person who wanted it.</summary>
public static class Refusals
{
    /// <summary>All reasons against an entry as the next of a log; none when it is taken.</summary>
    public static IReadOnlyList<string> Of(HangarState state, Register register, Entry entry)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(entry);
        var form = Form(register, entry).ToArray();
        var candidate = new Candidate(state, register, entry);
        return form.Length > 0 ? form
            : Naming.Of(candidate).ToArray() is { Length: > 0 } unknown ? unknown
            : [.. Stranger(candidate), .. Sense(candidate), .. Order.Of(candidate)];
    }

    // A log that was copied here from another job would mix two aircraft.
    private static IEnumerable<string> Stranger(Candidate c) =>
        !Evidence.Writes(c.Entry.Kind) && Gate.OfAnother(c.State, c.Register.Job) is { } other ? [other] : [];

    private static IEnumerable<string> Form(Register register, Entry entry)
    {
        if (!register.People.Contains(entry.Who))
        {
            yield return $"'{entry.Who}' is not a person of this job.";
        }

        if (Kinds.Find(entry.Kind) is not { } kind)
        {
            yield return $"There is no kind of entry '{entry.Kind}'.";
            yield break;
        }

        var named = Kinds.ClassOf(entry.Subject);
        if (named.Length == 0 || Kinds.IdOf(entry.Subject).Length == 0 || (kind.Class.Length > 0 && named != kind.Class))
        {
            yield return $"'{kind.Name}' is said of '{(kind.Class.Length > 0 ? kind.Class : "class")}/ID', and '{entry.Subject}' is not.";
        }

        foreach (var name in entry.Payload.Names.Where(n => kind.Fields.All(f => f.Name != n) && !Evidence.Names.Contains(n)))
        {
            yield return $"'{kind.Name}' has no field '{name}'.";
        }

        foreach (var fault in PlainText.Faults(entry))
        {
            yield return fault;
        }

        foreach (var field in kind.Fields)
        {
            var text = entry.Payload.Text(field.Name);
            if (text.Length == 0 ? field.Needed : !Fits(field.Form, entry.Payload, field.Name))
            {
                yield return text.Length == 0 ? $"'{kind.Name}' needs '{field.Name}': {field.Doc}." : $"'{field.Name}' is '{text}', expected {Expected(field.Form)}.";
            }
        }
    }

    private static bool Fits(FieldForm form, Payload payload, string name) => form switch
    {
        FieldForm.Number => payload.Number(name) is not null,
        FieldForm.Time => payload.Time(name) is not null,
        FieldForm.Hash => payload.Text(name) is { Length: 64 } hash && hash.All(c => char.IsAsciiDigit(c) || c is >= 'a' and <= 'f'),
        _ => payload.Number(name) is null,
    };

    private static string Expected(FieldForm form) => form switch
    {
        FieldForm.Number => "a number",
        FieldForm.Time => "a time as 2027-03-31T14:05:06.000Z",
        FieldForm.Hash => "a SHA-256 of 64 hexadecimal digits",
        _ => "a text",
    };

    private static IEnumerable<string> Sense(Candidate c) => c.Entry.Kind switch
    {
        "closed" => Standing(c).Concat(Closing.Of(c)),
        "staged" => Working(c),
        "done" => Working(c).Concat(Order.Finishing(c)),
        "started" => c.Standing is { Kind: "started" or "staged" } ? ["It is being worked on already: entry " + Number(c.Standing) + "."] : [],
        "stopped" => c.State.IsOpen(c.Entry.Subject) ? [] : [c.Entry.Subject + " was not started."],
        "signed" => Signing.Of(c),
        "measured" => Measuring(c).Concat(Order.Radiating(c)),
        "observed" => Order.Radiating(c),
        "mixed" => Mixing.Of(c),
        "torqued" => Standing(c).Concat(Measuring(c)),
        "fitted" => Fitting.Of(c).Concat(Bedding(c)),
        "removed" => Fitting.Of(c),
        "permitted" => Standing(c).Concat(Permits.Of(c)),
        "revised" => Revising(c),
        "struck" => Striking(c),
        Kinds.ClockSet => c.Entry.At < c.State.Latest ? [] : ["No entry has a later time than the clock, so nothing has to be set right."],
        _ => Standing(c),
    };

    private static IEnumerable<string> Standing(Candidate c)
    {
        var open = c.State.IsOpen(c.Entry.Subject);
        switch (Kinds.Find(c.Entry.Kind)!.Effect)
        {
            case Effect.Opens when open:
                yield return $"{c.Entry.Subject} was {c.Standing!.Kind} already: entry {Number(c.Standing)} by {c.Standing.Who}.";
                break;
            case Effect.Shuts when !open && !Mated(c):
                yield return $"{c.Entry.Subject} cannot be {c.Entry.Kind}: the log does not have it open.";
                break;
        }
    }

    // A connector of what goes in is mated for the first time without having been parted.
    private static bool Mated(Candidate c) => c.Entry.Kind == "plugged" && c.Standing is null && c.Register.Required.Connectors.Contains(Kinds.IdOf(c.Entry.Subject));

    private static IEnumerable<string> Working(Candidate c)
    {
        if (c.Standing is not { Kind: "started" or "staged" })
        {
            yield return $"{c.Entry.Subject} is not being worked on: it has to be started.";
            yield break;
        }

        foreach (var stage in Held(c))
        {
            yield return $"Stage '{stage}' of {c.Entry.Subject} is held until it is signed.";
        }
    }

    private static IEnumerable<string> Held(Candidate c) => c.State.Story(c.Entry.Subject)
        .Where(e => e.Kind == "staged" && e.Payload.Text("hold") == "yes")
        .Select(e => e.Payload.Text("stage")).Distinct()
        .Where(stage => c.State.Signatures($"stage/{Kinds.IdOf(c.Entry.Subject)}/{stage}").Count == 0);

    private static IEnumerable<string> Measuring(Candidate c)
    {
        var id = c.Entry.Payload.Text("instrument");
        var (known, until) = c.Register.Instruments.Find(id) is { } instrument ? (true, (DateOnly?)instrument.CalibrationDue)
            : c.Register.Tools.Find(id) is { } tool ? (true, tool.CalibrationDue) : (false, null);
        if (!known)
        {
            yield return $"'{id}' is not an instrument or tool of this job.";
        }
        else if (until is null)
        {
            yield return $"'{id}' has no calibration, so nothing can be measured with it.";
        }
        else if (c.Today > until)
        {
            yield return $"The calibration of '{id}' ended on {Day(until.Value)}.";
        }
    }

    private static IEnumerable<string> Bedding(Candidate c) => c.Entry.Payload.Text("sealant") is { Length: > 0 } mix ? Mixing.Used(c, mix) : [];

    private static IEnumerable<string> Revising(Candidate c)
    {
        var revisions = c.State.Story(c.Entry.Subject).Where(e => e.Kind == "revised").ToArray();
        if (c.Entry.Payload.Number("base") != revisions.Length)
        {
            yield return revisions.Length == 0 ? $"{c.Entry.Subject} has no revision yet: the base of its first is 0."
                : $"{c.Entry.Subject} stands at revision {Count(revisions.Length)}, made by {revisions[^1].Who} at {Instant.Text(revisions[^1].At)} ({Why(revisions[^1])}), and yours was made from revision {c.Entry.Payload.Text("base")}. Look at both and revise from {Count(revisions.Length)}.";
        }
    }

    private static IEnumerable<string> Striking(Candidate c)
    {
        var id = Kinds.IdOf(c.Entry.Subject);
        if (!long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) || sequence > c.State.Sequence)
        {
            yield return $"There is no entry '{id}'.";
        }
        else if (c.State.CanStrike(sequence) is null)
        {
            yield return $"Entry {id} cannot be struck out: either it was, or it opened or shut something, and the aircraft does not change with the paper. Enter what is so now.";
        }
    }

    private static string Number(Entry entry) => entry.Sequence.ToString(CultureInfo.InvariantCulture);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Why(Entry entry) => entry.Payload.Text("why") is { Length: > 0 } why ? why : "no reason told";
}
