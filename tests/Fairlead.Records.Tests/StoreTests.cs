using System.Data.Common;
using System.Globalization;
using Fairlead.Records;
using Npgsql;

namespace Fairlead.Tests.Records;

/// <summary>What every store does.</summary>
public abstract class StoreTests
{
    protected abstract ILogStore Open();

    /// <summary>A connection past the store, as somebody would have who tampers with it.</summary>
    protected abstract DbConnection Beside();

    [Fact]
    public void What_is_appended_is_there_when_the_store_is_opened_again()
    {
        Entry entry;
        using (var store = Open())
        {
            entry = Entry.After(0, Entry.Origin, Hangar.Morning, "AV1", "noted", "task/T1", Payload.Empty.With("text", "Größe □ \"quoted\" \\ \u0001"));
            Assert.True(store.TryAppend(entry, "text"u8.ToArray()));
            Assert.False(store.TryAppend(entry));
            store.PutSignIn("AV1", new SignIn("verifier", 2, Hangar.Morning));
        }

        using var again = Open();
        Assert.Equal([entry.Line()], again.Lines(0));
        Assert.Empty(again.Lines(1));
        var hash = Assert.Single(again.Contents());
        Assert.Equal("982d9e3eb996f559e633f4d194def3761d909f5a3b647d1a851fead67c32c9d1", hash);
        Assert.Equal("text"u8.ToArray(), again.Content(hash));
        Assert.Null(again.Content(Entry.Origin));
        Assert.Equal(new SignIn("verifier", 2, Hangar.Morning), again.FindSignIn("AV1"));
        Assert.Null(again.FindSignIn("AV2"));
    }

    [Fact]
    public void A_number_that_is_taken_keeps_neither_the_entry_nor_its_text()
    {
        using var store = Open();
        Assert.True(store.TryAppend(Entry.After(0, Entry.Origin, Hangar.Morning, "AV1", "noted", "task/T1", Payload.Empty)));
        Assert.False(store.TryAppend(Entry.After(0, Entry.Origin, Hangar.Morning, "AV2", "noted", "task/T2", Payload.Empty), "lost"u8.ToArray()));
        Assert.Empty(store.Contents());
        Assert.Single(store.Lines(0));
    }

    [Fact]
    public void A_log_is_filled_once_and_wholly_or_not_at_all()
    {
        var entries = Notes(2500);
        using var store = Open();
        store.Fill(entries, ["text"u8.ToArray()]);
        Assert.Equal(entries.Select(e => e.Line()), store.Lines(0));
        Assert.Throws<IOException>(() => store.Fill([entries[0]], []));
        Assert.Throws<IOException>(() => store.Fill([.. entries, .. entries], []));
        Assert.Equal(2500, store.Lines(0).Count());
    }

    [Fact]
    public async Task Two_writers_lose_nothing_and_judge_by_each_other()
    {
        const int Each = 150;
        var opened = 0;
        await Task.WhenAll(Enumerable.Range(1, 2).Select(n => Task.Run(() =>
        {
            using var store = Open();
            var hangar = new Hangar(store);
            for (var i = 0; i < Each; i++)
            {
                var subject = "panel/P" + i.ToString(CultureInfo.InvariantCulture);
                Interlocked.Add(ref opened, hangar.Try("AV" + n.ToString(CultureInfo.InvariantCulture), "opened", subject).Count == 0 ? 1 : 0);
                hangar.Do("AV" + n.ToString(CultureInfo.InvariantCulture), "noted", subject, ("text", "seen"));
            }
        })));
        using var after = Open();
        var report = ChainCheck.Check(after.Lines(0));
        Assert.Null(report.Fault);
        Assert.Equal(3 * Each, report.Entries.Count);
        Assert.Equal(Each, opened);
        Assert.Equal(Each, HangarState.Of(report.Entries).Open.Count);
    }

    [Fact]
    public async Task What_a_tablet_sends_twice_is_one_entry_though_both_arrive_at_once()
    {
        const int Each = 40;
        await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => Task.Run(() =>
        {
            using var store = Open();
            var hangar = new Hangar(store);
            for (var i = 0; i < Each; i++)
            {
                var stamp = new TabletStamp(new Guid(i, 0, 0, new byte[8]).ToString("D"), "tablet-one", Hangar.Morning, Hangar.Morning, null);
                Assert.Empty(hangar.Book.Append(new Draft("AV1", "noted", "task/T1", Hangar.Fields(("text", "seen"))) { Stamp = stamp }).Refused);
            }
        })));
        using var after = Open();
        var state = HangarState.Of(ChainCheck.Check(after.Lines(0)).Entries);
        Assert.Equal(Each, state.Sequence);
        Assert.Equal(1, state.SentAs(new Guid(0, 0, 0, new byte[8]).ToString("D"))!.Sequence);
    }

    [Fact]
    public void Entries_cannot_be_changed_or_taken_out_by_a_plain_statement()
    {
        using var store = Open();
        store.Fill(Notes(3), []);
        using var beside = Beside();
        beside.Open();
        Assert.ThrowsAny<DbException>(() => Execute(beside, "UPDATE entry SET line = 'x'"));
        Assert.ThrowsAny<DbException>(() => Execute(beside, "DELETE FROM entry WHERE sequence = 2"));
        Assert.Null(ChainCheck.Check(store.Lines(0)).Fault);
    }

    [Fact]
    public void What_is_changed_past_the_guards_is_found_and_named()
    {
        using var store = Open();
        store.Fill(Notes(5), []);
        using (var beside = Beside())
        {
            beside.Open();
            Execute(beside, beside is NpgsqlConnection ? "ALTER TABLE entry DISABLE TRIGGER entry_stays" : "DROP TRIGGER entry_stays");
            Execute(beside, "UPDATE entry SET line = replace(line, 'note 3', 'note 8') WHERE line LIKE '%note 3%'");
            Execute(beside, beside is NpgsqlConnection ? "ALTER TABLE entry ENABLE TRIGGER entry_stays" : "SELECT 1");
        }

        Assert.Equal(3, ChainCheck.Check(store.Lines(0)).Fault!.Sequence);
        Assert.Contains("Entry 3", Assert.Throws<InvalidDataException>(() => new Hangar(store).Book.CatchUp()).Message);
    }

    [Fact]
    public void A_signature_asks_for_the_pin_each_time_and_no_secret_is_in_the_log()
    {
        using var store = Open();
        var hangar = new Hangar(store);
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "done", "task/T1");
        var draft = new Draft("AV1", "signed", "task/T1", Hangar.Fields(("role", "work"), ("scope", "avionics")));
        Assert.Contains("no PIN or password yet", Assert.Single(hangar.Book.Sign(draft, hangar.SignIns, "")!.Refused));
        Assert.Contains("at least 6", hangar.SignIns.Set("AV1", "", "1234", new byte[16]));
        Assert.Contains("not a person", hangar.SignIns.Set("ZZ", "", Hangar.Pin, new byte[16]));
        Assert.Null(hangar.SignIns.Set("AV1", "", Hangar.Pin, new byte[16]));
        Assert.Contains("not the PIN", hangar.SignIns.Set("AV1", "", "999999", new byte[16]));
        Assert.Contains("not the PIN", Assert.Single(hangar.Book.Sign(draft, hangar.SignIns, "314159").Refused));
        Assert.Empty(hangar.Book.Sign(draft, hangar.SignIns, Hangar.Pin).Refused);
        var entry = Assert.Single(hangar.Book.State.Signatures("task/T1"));
        Assert.Equal("INV-AV1", entry.Payload.Text("authorisation"));
        Assert.Equal("2028-01-01", entry.Payload.Text("valid-until"));
        Assert.DoesNotContain(store.Lines(0), l => l.Contains(Hangar.Pin, StringComparison.Ordinal) || l.Contains("argon2", StringComparison.Ordinal));
    }

    // Whoever tries at once may have read the clock in another order than the one in which the tries are counted.
    [Fact]
    public async Task Of_many_pins_guessed_at_once_five_are_looked_at_and_no_more()
    {
        using var store = Open();
        var hangar = new Hangar(store);
        Assert.Null(hangar.SignIns.Set("AV1", "", Hangar.Pin, new byte[16]));
        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(i => Task.Run(() =>
        {
            using var own = Open();
            return new SignIns(own, hangar.Register.People, new HandClock(Hangar.Morning.AddMilliseconds(-i))).Refusal("AV1", "guess-" + i.ToString(CultureInfo.InvariantCulture));
        })));
        Assert.Equal(5, answers.Count(a => a!.Contains("not the PIN", StringComparison.Ordinal)));
        Assert.Equal(45, answers.Count(a => a!.Contains("5 wrong entries in a row", StringComparison.Ordinal)));
        hangar.Clock.Now = Hangar.Morning.AddMinutes(14);
        Assert.Contains("wait until", hangar.SignIns.Refusal("AV1", Hangar.Pin));
        hangar.Clock.Now = Hangar.Morning.AddMinutes(15).AddSeconds(1);
        Assert.Null(hangar.SignIns.Refusal("AV1", Hangar.Pin));
        Assert.Equal(0, store.FindSignIn("AV1")!.Failures);
        Assert.Null(hangar.SignIns.Refusal("AV1", Hangar.Pin));
    }

    protected static IReadOnlyList<Entry> Notes(int count)
    {
        var notes = new List<Entry>();
        for (var i = 1; i <= count; i++)
        {
            notes.Add(Entry.After(i - 1, i == 1 ? Entry.Origin : notes[^1].Hash, Hangar.Morning.AddSeconds(i), "AV1", "noted", "task/T1", Payload.Empty.With("text", "note " + i.ToString(CultureInfo.InvariantCulture))));
        }

        return notes;
    }

    protected static object? Execute(DbConnection connection, string statement)
    {
        using var command = connection.CreateCommand();
        command.CommandText = statement;
        return command.ExecuteScalar();
    }
}
