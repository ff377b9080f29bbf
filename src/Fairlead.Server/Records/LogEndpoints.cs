using System.Collections.Immutable;
using System.Security.Cryptography;
using Fairlead.Model;
using Fairlead.Records;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Fairlead.Server.Work;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Records;

/// <summary>An entry of the log as it is shown.</summary>
public sealed record LogLine(long Sequence, DateTimeOffset At, string Who, string Kind, string Subject, IReadOnlyDictionary<string, string> Payload, string Hash);

/// <summary>Asks for an entry.</summary>
public sealed record NewEntry(string Who, string Kind, string Subject, IReadOnlyDictionary<string, string>? Payload = null, string Secret = "") : INamesPerson
{
    string? INamesPerson.Needs => Kind != "signed" ? null : Subject.StartsWith("release/", StringComparison.Ordinal) ? Policies.Certify : Payload?.GetValueOrDefault("role") == "inspection" ? Policies.Inspect : null;

    /// <summary>What the tablet tells on which it was made; null when it was made on none.</summary>
    public TabletNote? Tablet { get; init; }

    /// <summary>The bytes of a photograph; null for none.</summary>
    public byte[]? Photograph { get; init; }

    /// <summary>The entry without the secret.</summary>
    public override string ToString() => $"{Who} {Kind} {Subject}";
}

/// <summary>Asks for a PIN or password to be set.</summary>
public sealed record NewPin(string Who, string Present, string Next) : INamesPerson
{
    /// <summary>The person alone.</summary>
    public override string ToString() => Who;
}

/// <summary>Why an entry was not taken.</summary>
public sealed record Refused(IReadOnlyList<string> Reasons);

/// <summary>What computing every hash again gave.</summary>
public sealed record LogCheck(string Head, int Entries, string Fault);

/// <summary>A person of the job.</summary>
public sealed record PersonLine(string Id, string Name, bool HasPin, ImmutableArray<string> Authorisations);

/// <summary>The log of a job: read, added to, signed, verified. To read it the text of the job is not needed.</summary>
internal static class LogEndpoints
{
    public static void MapRecords(this IEndpointRouteBuilder routes)
    {
        var log = routes.MapGroup("/jobs/{job}").WithTags("log");
        log.MapGet("/log", (JobRef job, long? after) => job.Look(f => Lines(f, after ?? 0))).WithSummary("The entries after one.").RequireAuthorization(Policies.View);
        log.MapGet("/log/head", (JobRef job) => job.Look(Head)).WithSummary("The last entry.").RequireAuthorization(Policies.View);
        log.MapPost("/log", (JobRef job, NewEntry entry, AssessedJobs jobs, Seals seals, TimeProvider clock) => job.Do(j => Add(jobs.Of(j), entry, seals, clock))).WithSummary("Adds an entry, signed when it is a signature.").RequireAuthorization(Policies.Work);
        log.MapGet("/log/kinds", () => Kinds.All).WithSummary("The kinds of entries.").RequireAuthorization(Policies.View);
        log.MapGet("/log/check", (JobRef job) => job.Look(Check)).WithSummary("Computes every hash again.").RequireAuthorization(Policies.View);
        log.MapGet("/people", (JobRef job) => job.Do(People)).WithSummary("Who works on the job.").RequireAuthorization(Policies.View);
        routes.MapGet("/seal-key", (Seals seals) => TypedResults.Ok(seals.Public)).WithTags("log").WithSummary("The key that tablets seal secrets with.").RequireAuthorization(Policies.View);
        log.MapPost("/pin", (JobRef job, NewPin pin, TimeProvider clock) => job.Do(j => SetPin(j, pin, clock))).WithSummary("Sets a PIN or password.").RequireAuthorization(Policies.Work);
    }

    private static Microsoft.AspNetCore.Http.HttpResults.Ok<LogLine[]> Lines(string folder, long after)
    {
        using var store = JobStore.OpenLog(folder);
        return TypedResults.Ok(store.Lines(after).Select(Entry.Read).Select(Line).ToArray());
    }

    private static IResult Add(AssessedJob job, NewEntry entry, Seals seals, TimeProvider clock)
    {
        if (entry.Payload?.Values.Any(v => v is null) == true)
        {
            return TypedResults.Problem("A field without a value is left out.", statusCode: StatusCodes.Status400BadRequest);
        }

        if (entry.Tablet is { IsSound: false })
        {
            return TypedResults.Problem("What the tablet tells of itself is not in the form that is taken.", statusCode: StatusCodes.Status400BadRequest);
        }

        using var store = JobStore.OpenLog(job.Folder);
        if (entry.Tablet?.Seen is { } seen && !Holds(store, seen))
        {
            return TypedResults.Problem("The log of this server does not hold what the tablet saw before: the server was replaced, or set back to an older copy. Nothing was sent.", statusCode: StatusCodes.Status409Conflict, title: "This is another log.");
        }

        var book = new LogBook(store, job.Register, clock);
        var told = entry.Payload ?? ImmutableDictionary<string, string>.Empty;
        var draft = new Draft(entry.Who, entry.Kind, entry.Subject, told.Where(p => p.Value.Length > 0).Aggregate(Payload.Empty, (p, f) => With(p, entry.Kind, f.Key, f.Value))) { Stamp = Stamp(entry.Tablet) };
        var outcome = book.Sent(draft) ?? Take(job, store, book, draft, entry, seals, clock);
        return outcome.Entry is { } added ? TypedResults.Ok(Line(added)) : TypedResults.Json(new Refused(outcome.Refused), statusCode: StatusCodes.Status422UnprocessableEntity);
    }

    private static Outcome Take(AssessedJob job, ILogStore store, LogBook book, Draft draft, NewEntry entry, Seals seals, TimeProvider clock)
    {
        if ((entry.Photograph is { } picture ? Photographs.Refusal(picture) : null) is { } unfit)
        {
            return new Outcome(null, [unfit]);
        }

        if (entry.Kind == "pin-set")
        {
            return new Outcome(null, ["That a PIN was set the log writes itself."]);
        }

        if (entry.Kind != "signed")
        {
            return book.Append(draft, entry.Photograph is { } bytes ? bytes : (ReadOnlyMemory<byte>?)null);
        }

        var (secret, refusal) = Secret(job, entry, seals);
        return secret is null ? new Outcome(null, [refusal]) : book.Sign(draft, new SignIns(store, job.Job.Order.People ?? Catalog<Person>.Empty, clock), secret);
    }

    private static (string? Secret, string Refusal) Secret(AssessedJob job, NewEntry entry, Seals seals) => entry.Tablet is not { Sealed.Length: > 0 } note ? (entry.Secret, "")
        : seals.Open(note, SealText.Digest(Path.GetFileName(job.Folder), entry.Who, entry.Kind, entry.Subject, entry.Payload ?? ImmutableDictionary<string, string>.Empty, note));

    private static TabletStamp? Stamp(TabletNote? note) =>
        note is null ? null : new TabletStamp(note.Id, note.Tablet, note.At, note.SentAt, note.Ahead is { } ahead ? TimeSpan.FromSeconds(ahead) : null);

    private static bool Holds(ILogStore store, LogMark seen) => seen.Sequence == 0 || (store.Lines(seen.Sequence - 1).FirstOrDefault() is { } line && Entry.Read(line).Hash == seen.Hash);

    private static Microsoft.AspNetCore.Http.HttpResults.Ok<LogMark> Head(string folder)
    {
        using var store = JobStore.OpenLog(folder);
        var last = store.Lines(0).LastOrDefault();
        return TypedResults.Ok(last is null ? new LogMark(0, Entry.Origin) : new LogMark(Entry.Read(last).Sequence, Entry.Read(last).Hash));
    }

    private static Payload With(Payload payload, string kind, string name, string words) =>
        Kinds.Find(kind)?.Fields.FirstOrDefault(f => f.Name == name)?.Form == FieldForm.Number && double.TryParse(words, System.Globalization.CultureInfo.InvariantCulture, out var number)
            ? payload.With(name, number) : payload.With(name, words);

    private static IResult Check(string folder)
    {
        using var store = JobStore.OpenLog(folder);
        var check = ChainCheck.Check(store.Lines(0));
        return TypedResults.Ok(new LogCheck(check.Head.ToString(), check.Entries.Count, check.Fault is { } f ? $"Entry {f.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)}: {f.What}" : ""));
    }

    private static IResult People(ReadJob job)
    {
        using var store = JobStore.OpenLog(job.Folder);
        return TypedResults.Ok((job.Job.Order.People ?? Catalog<Person>.Empty).Select(p => new PersonLine(
            p.Id, p.Name, store.FindSignIn(p.Id) is not null, [.. p.Authorisations.Select(a => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{a.Scope}, {a.Number}, until {a.Until:yyyy-MM-dd}"))])).ToArray());
    }

    private static IResult SetPin(ReadJob job, NewPin pin, TimeProvider clock)
    {
        using var store = JobStore.OpenLog(job.Folder);
        var signIns = new SignIns(store, job.Job.Order.People ?? Catalog<Person>.Empty, clock);
        if (signIns.Set(pin.Who, pin.Present, pin.Next, RandomNumberGenerator.GetBytes(Passwords.SaltBytes)) is { } refusal)
        {
            return TypedResults.Json(new Refused([refusal]), statusCode: StatusCodes.Status422UnprocessableEntity);
        }

        var written = new LogBook(store, job.Register, clock).Append(new Draft(pin.Who, "pin-set", "person/" + pin.Who));
        return written.Entry is null ? TypedResults.Json(new Refused(written.Refused), statusCode: StatusCodes.Status422UnprocessableEntity) : TypedResults.NoContent();
    }

    internal static LogLine Line(Entry e) => new(e.Sequence, e.At, e.Who, e.Kind, e.Subject, e.Payload.Names.ToDictionary(n => n, e.Payload.Text, StringComparer.Ordinal), e.Hash);
}
