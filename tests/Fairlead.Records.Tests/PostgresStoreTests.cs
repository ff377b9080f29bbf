using System.Data.Common;
using System.Globalization;
using Fairlead.Records;
using Npgsql;

namespace Fairlead.Tests.Records;

/// <summary>What the store in a database does besides.</summary>
public sealed class PostgresStoreTests(PostgresServer server) : StoreTests
{
    private static int made;

    // Each test has a database of its own: what tampers with one must not meet another.
    private readonly Lazy<string> place = new(() => Created(server.Need()));

    [Fact]
    public void Several_logs_share_a_database_and_do_not_meet()
    {
        using var one = Open();
        using var two = PostgresLogStore.Open(place.Value, "WO-2");
        Assert.True(one.TryAppend(Notes(1)[0]));
        Assert.Empty(two.Lines(0));
        Assert.True(two.TryAppend(Notes(1)[0]));
    }

    [Fact]
    public void Commits_reach_the_disk_before_they_are_acknowledged()
    {
        using var beside = Beside();
        beside.Open();
        Assert.Equal("on", Execute(beside, "SHOW fsync"));
        Assert.Equal("on", Execute(beside, "SHOW synchronous_commit"));
    }

    [Fact]
    public void A_full_disk_refuses_the_entry_and_keeps_what_was_acknowledged()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess && OperatingSystem.IsLinux(), "A small file system can only be mounted by root.");
        using var disk = new SmallDisk(megabytes: 14);

        // Of its own: a server that has lost a disk makes no more databases for other tests.
        using var own = new PostgresServer();
        var small = Created(own.Need(), disk.Folder);
        var (taken, notes) = (0, Notes(60_000));
        using (var store = PostgresLogStore.Open(small, "WO-1"))
        {
            var error = Assert.Throws<IOException>(() =>
            {
                foreach (var entry in notes)
                {
                    Assert.True(store.TryAppend(entry, Text(entry)));
                    taken++;
                }
            });
            Assert.Contains("disk of the database is full", error.Message);
            Assert.Equal(taken, ChainCheck.Check(store.Lines(0)).Entries.Count);
        }

        disk.Grow(megabytes: 30);
        using var roomy = PostgresLogStore.Open(small, "WO-1");
        Assert.Equal(taken, ChainCheck.Check(roomy.Lines(0)).Entries.Count);
        Assert.Equal(taken, roomy.Contents().Count);
        Assert.True(roomy.TryAppend(notes[taken], Text(notes[taken])));
        Assert.True(taken > 20);
    }

    [Fact]
    public void A_store_goes_on_when_its_server_is_back()
    {
        server.Need();
        using var own = new PostgresServer();
        using var store = PostgresLogStore.Open(own.Need(), "WO-1");
        var notes = Notes(2);
        Assert.True(store.TryAppend(notes[0]));
        own.Crash();
        Assert.Throws<IOException>(() => store.TryAppend(notes[1]));
        Assert.Equal([notes[0].Line()], store.Lines(0));
        Assert.True(store.TryAppend(notes[1]));
    }

    [Fact]
    public void No_server_is_told_in_words() => Assert.Contains("cannot be opened", Assert.Throws<IOException>(() => PostgresLogStore.Open("Host=127.0.0.1;Port=1;Timeout=2", "WO")).Message);

    protected override ILogStore Open() => PostgresLogStore.Open(place.Value, "WO-1");

    protected override DbConnection Beside() => new NpgsqlConnection(place.Value);

    // Random, since a text that repeats itself is packed and fills no disk.
    private static byte[] Text(Entry entry)
    {
        var text = new byte[50_000];
        new Random((int)entry.Sequence).NextBytes(text);
        return text;
    }

    internal static string Created(string server, string? folder = null)
    {
        var name = "t" + Interlocked.Increment(ref made).ToString(CultureInfo.InvariantCulture);
        using var connection = new NpgsqlConnection(server);
        connection.Open();
        if (folder is not null)
        {
            Execute(connection, $"CREATE TABLESPACE {name}_space LOCATION '{folder}'");
        }

        Execute(connection, $"CREATE DATABASE {name}{(folder is null ? "" : $" TABLESPACE {name}_space")}");
        return server.Replace("Database=postgres", "Database=" + name, StringComparison.Ordinal);
    }
}
