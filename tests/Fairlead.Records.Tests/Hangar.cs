using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>A clock that stands where a test puts it, unless it is to run.</summary>
internal sealed class HandClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    public override TimeZoneInfo LocalTimeZone => Zone;

    /// <summary>How far the clock goes on each time it is read.</summary>
    public TimeSpan Step { get; set; }

    public override DateTimeOffset GetUtcNow() => Now += Step;
}

/// <summary>A log held in memory, for what does not depend on a store.</summary>
internal sealed class MemoryLogStore : ILogStore
{
    private readonly List<string> lines = [];
    private readonly Dictionary<string, byte[]> contents = [];
    private readonly Dictionary<string, SignIn> signIns = [];

    public IEnumerable<string> Lines(long after) => lines.Skip((int)after).ToArray();

    public bool TryAppend(Entry entry, ReadOnlyMemory<byte>? content = null)
    {
        if (entry.Sequence != lines.Count + 1)
        {
            return false;
        }

        lines.Add(entry.Line());
        if (content is { } bytes)
        {
            contents[entry.Payload.Text("sha256")] = bytes.ToArray();
        }

        return true;
    }

    public void Fill(IReadOnlyList<Entry> entries, IEnumerable<byte[]> contents) => lines.AddRange(entries.Select(e => e.Line()));

    public byte[]? Content(string hash) => contents.GetValueOrDefault(hash);

    public IReadOnlyList<string> Contents() => [.. contents.Keys.Order(StringComparer.Ordinal)];

    public SignIn? FindSignIn(string person) => signIns.GetValueOrDefault(person);

    public void PutSignIn(string person, SignIn signIn) => signIns[person] = signIn;

    // What is asked of a memory comes one after the other.
    public bool CountTry(string person, int most, DateTimeOffset now, TimeSpan pause)
    {
        var one = signIns[person];
        if (one.Failures >= most && one.LastFailure is { } last && last > now - pause && last <= now + pause)
        {
            return false;
        }

        signIns[person] = one with { Failures = one.Failures + 1, LastFailure = now };
        return true;
    }

    public void ForgetTries(string person) => signIns[person] = signIns[person] with { Failures = 0, LastFailure = null };

    public void Dispose()
    {
    }
}

/// <summary>A small hangar: two people who may certify, one whose authorisation has run out, a meter, one out of calibration, a wrench.</summary>
internal sealed class Hangar : IDisposable
{
    public const string Pin = "271828";

    public static readonly DateTimeOffset Morning = new(2027, 4, 12, 7, 30, 0, TimeSpan.Zero);

    public static readonly Required Job = new(
        Tasks: [new("T1", "Fit the tray", ["P1"]), new("T2", "Route the bundle", ["P2"], Independent: true)],
        Tests: [new("BOND", "Bond of the tray", [new("bond", "tray to structure", "mohm", Most: 2.5)])],
        Connectors: ["A1/P1"], Removed: ["OLD"], Fitted: ["NEW"], Controls: ["P2"])
    {
        Asks = [new("task/T1", "work", "avionics")],
    };

    private static readonly DateOnly Later = new(2028, 1, 1);

    private readonly bool owned;

    public Hangar(ILogStore? store = null, Required? required = null, Sequence<string> panels = default, Sequence<string> items = default, params Person[] more)
    {
        owned = store is null;
        Store = store ?? new MemoryLogStore();
        Register = new Register(
            new Catalog<Person>([Person("AV1", Later), Person("AV2", Later), Person("OUT", new DateOnly(2027, 4, 11)), new Person("EL1", "Electrical mechanic One (invented)"), .. more]),
            new Catalog<Instrument>([new Instrument("MM", "Meter", ["resistance"], Later), new Instrument("OLD-MM", "Meter", ["resistance"], new DateOnly(2027, 4, 11))]),
            new Catalog<Tool>([new Tool("TW", "Torque wrench", Later), new Tool("LAMP", "Lamp")]),
            required ?? new Required())
        {
            Panels = panels,
            Items = items,
            Sealants = new([new SealantPart("SEAL-B2", "Sealant B-2 (invented)", Duration.Of(2, "h"), [new(Temperature.Of(10, "degC"), Duration.Of(96, "h")), new(Temperature.Of(25, "degC"), Duration.Of(48, "h"))], Duration.Of(270, "day"))]),
        };
        Book = new LogBook(Store, Register, Clock);
        SignIns = new SignIns(Store, Register.People, Clock);
    }

    public ILogStore Store { get; }

    public Register Register { get; }

    public HandClock Clock { get; } = new(Morning);

    public LogBook Book { get; }

    public SignIns SignIns { get; }

    public static Payload Fields(params (string Name, object Value)[] fields) => fields.Aggregate(Payload.Empty, (p, f) => f.Value switch
    {
        int number => p.With(f.Name, number),
        double number => p.With(f.Name, number),
        DateTimeOffset time => p.With(f.Name, time),
        _ => p.With(f.Name, (string)f.Value),
    });

    public IReadOnlyList<string> Try(string who, string kind, string subject, params (string Name, object Value)[] fields)
    {
        Clock.Now += TimeSpan.FromMinutes(1);
        return Book.Append(new Draft(who, kind, subject, Fields(fields))).Refused;
    }

    /// <summary>Adds an entry that has to be taken.</summary>
    public void Do(string who, string kind, string subject, params (string Name, object Value)[] fields) => Assert.Empty(Try(who, kind, subject, fields));

    /// <summary>Has a task begun, done and signed by one person.</summary>
    public void Work(string task)
    {
        Do("AV1", "started", "task/" + task);
        Do("AV1", "done", "task/" + task);
        Sign("AV1", "task/" + task);
    }

    /// <summary>Adds an entry that has to be refused for a reason that holds some words.</summary>
    public void Refused(string words, string who, string kind, string subject, params (string Name, object Value)[] fields) =>
        Assert.Contains(Try(who, kind, subject, fields), reason => reason.Contains(words, StringComparison.Ordinal));

    public IReadOnlyList<string> TrySign(string who, string subject, string role = "work", string scope = "avionics")
    {
        // The slow verifier is tried in its own tests; here the entry is judged as the book judges it.
        Clock.Now += TimeSpan.FromMinutes(1);
        Book.CatchUp();
        var draft = new Draft(who, "signed", subject, Fields(("role", role), ("scope", scope)));
        var entry = Entry.After(Book.State.Sequence, Book.State.Head, Clock.Now, who, "signed", subject, draft.Payload);
        var reasons = Refusals.Of(Book.State, Register with { Zone = Clock.Zone }, entry);
        if (reasons.Count == 0)
        {
            Assert.True(Store.TryAppend(entry));
            Book.CatchUp();
        }

        return reasons;
    }

    public void Sign(string who, string subject, string role = "work", string scope = "avionics") => Assert.Empty(TrySign(who, subject, role, scope));

    public IReadOnlyList<string> Open() => [.. Gate.WhatStandsOpen(Book.CatchUp(), Register.Required, Clock.Now).Select(o => o.Text)];

    public void Dispose()
    {
        if (owned)
        {
            Store.Dispose();
        }
    }

    private static Person Person(string id, DateOnly until) => new(id, id + " (invented)", Authorisations: [new Authorisation("avionics", "INV-" + id, until), new Authorisation("release to service", "INV-R-" + id, until)]);
}
