using System.Diagnostics;
using System.Globalization;
using Fairlead.Records;
using Microsoft.Data.Sqlite;

namespace Fairlead.Bench;

/// <summary>The log against the least a durable store can do: plain inserts of the same lines into SQLite with the same synchronisation. And what a
/// long log costs to check, to fold and to ask for what stands open.</summary>
internal static class LogRatios
{
    private const int Appends = 1000;
    private const int Long = 100_000;
    private static readonly DateTimeOffset Start = new(2027, 4, 12, 7, 0, 0, TimeSpan.Zero);

    public static void Print(TextWriter writer)
    {
        var entries = Entries(Long);
        var lines = entries.Select(e => e.Line()).ToArray();
        var folder = Directory.CreateTempSubdirectory("fairlead-bench-");
        try
        {
            // By turns, and the best of each: what else the machine does only ever adds.
            var (plain, store, book) = (double.MaxValue, double.MaxValue, double.MaxValue);
            for (var i = 0; i < 3; i++)
            {
                var name = Path.Combine(folder.FullName, i.ToString(CultureInfo.InvariantCulture));
                plain = Math.Min(plain, Seconds(() => Plain(name + "-plain.db", lines)));
                store = Math.Min(store, Seconds(() => Store(name + "-store.db", entries)));
                book = Math.Min(book, Seconds(() => Book(name + "-book.db")));
            }

            writer.WriteLine("durable appends | per second | time against plain inserts");
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"plain SQLite inserts | {Appends / plain:0} | 1.00"));
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"store | {Appends / store:0} | {store / plain:0.00}"));
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"log book, judged and hashed | {Appends / book:0} | {book / plain:0.00}"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        var state = HangarState.Empty;
        var check = Seconds(() => ChainCheck.Check(lines));
        var fold = Seconds(() => state = HangarState.Of(entries));
        var gate = Enumerable.Range(0, 5).Min(_ => Seconds(() => Gate.WhatStandsOpen(state, new Required(), Start)));
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{Long} entries | recomputed {check * 1e3:0} ms | folded {fold * 1e3:0} ms | gate {gate * 1e3:0.0} ms, {Gate.WhatStandsOpen(state, new Required(), Start).Count} open"));
    }

    // The least: one statement prepared once, one insert a transaction.
    private static void Plain(string file, string[] lines)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE line (sequence INTEGER PRIMARY KEY, line TEXT NOT NULL)";
        command.ExecuteNonQuery();
        command.CommandText = "INSERT INTO line (line) VALUES (@line)";
        var line = command.Parameters.Add("@line", SqliteType.Text);
        for (var i = 0; i < Appends; i++)
        {
            line.Value = lines[i];
            command.ExecuteNonQuery();
        }
    }

    private static void Store(string file, Entry[] entries)
    {
        using var store = SqliteLogStore.Open(file);
        foreach (var entry in entries.Take(Appends))
        {
            store.TryAppend(entry);
        }
    }

    private static void Book(string file)
    {
        using var store = SqliteLogStore.Open(file);
        var register = new Register(new([new Model.Person("AV1", "Engineer One (invented)")]), Model.Catalog<Model.Instrument>.Empty, Model.Catalog<Model.Tool>.Empty, new Required());
        var book = new LogBook(store, register, TimeProvider.System);
        for (var i = 0; i < Appends; i++)
        {
            book.Append(Draft(i));
        }
    }

    private static Draft Draft(int i)
    {
        var subject = "panel/P" + (i / 3 % 5000).ToString(CultureInfo.InvariantCulture);
        return (i % 3) switch
        {
            0 => new Draft("AV1", "opened", subject, Payload.Empty.With("fasteners", 12)),
            1 => new Draft("AV1", "noted", subject, Payload.Empty.With("text", "a clip is missing and was ordered")),
            _ => new Draft("AV1", "closed", subject, Payload.Empty.With("fasteners", 12)),
        };
    }

    private static Entry[] Entries(int count)
    {
        var entries = new Entry[count];
        for (var i = 0; i < count; i++)
        {
            var draft = Draft(i);
            entries[i] = Entry.After(i, i == 0 ? Entry.Origin : entries[i - 1].Hash, Start.AddSeconds(i), draft.Who, draft.Kind, draft.Subject, draft.Payload);
        }

        return entries;
    }

    private static double Seconds(Action work)
    {
        var clock = Stopwatch.StartNew();
        work();
        return clock.Elapsed.TotalSeconds;
    }
}
