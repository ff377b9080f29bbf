using System.Data.Common;
using Fairlead.Records;
using Microsoft.Data.Sqlite;

namespace Fairlead.Tests.Records;

/// <summary>What the store in one file does besides.</summary>
public sealed class SqliteStoreTests : StoreTests, IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-log-");

    private string LogFileName => Path.Combine(folder.FullName, "log.db");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Appends_are_written_ahead_and_leave_one_file()
    {
        using (var store = SqliteLogStore.Open(LogFileName))
        {
            store.Fill(Notes(1), []);
            using var beside = Beside();
            beside.Open();
            Assert.Equal("wal", Execute(beside, "PRAGMA journal_mode"));
        }

        Assert.Equal("log.db", Assert.Single(folder.GetFiles()).Name);
    }

    [Fact]
    public void A_full_disk_refuses_the_entry_and_keeps_what_was_acknowledged()
    {
        var taken = 0;
        using (var store = SqliteLogStore.Open(LogFileName, mostPages: 30))
        {
            var error = Assert.Throws<IOException>(() =>
            {
                foreach (var entry in Notes(2000))
                {
                    Assert.True(store.TryAppend(entry));
                    taken++;
                }
            });
            Assert.Contains("disk is full", error.Message);
            Assert.Equal(taken, store.Lines(0).Count());
        }

        using var roomy = SqliteLogStore.Open(LogFileName);
        Assert.Equal(taken, ChainCheck.Check(roomy.Lines(0)).Entries.Count);
        Assert.True(roomy.TryAppend(Notes(taken + 1)[^1]));
        Assert.InRange(taken, 50, 1999);
    }

    [Fact]
    public void A_file_cut_off_anywhere_shows_and_never_passes_for_a_shorter_log()
    {
        Written(400, out var lines, out var whole);
        var witness = ChainCheck.Check(lines).Head;
        for (var length = 0; length < whole.Length; length += (whole.Length / 40) + 7)
        {
            File.WriteAllBytes(LogFileName, whole[..length]);
            Assert.False(Sound(lines, witness), $"cut at {length}");
        }
    }

    [Fact]
    public void A_byte_flipped_anywhere_in_the_file_is_found_or_changes_no_entry()
    {
        Written(60, out var lines, out var whole);
        CsCheck.Check.Sample(CsCheck.Gen.Select(CsCheck.Gen.Int[0, whole.Length - 1], CsCheck.Gen.Byte[1, 255]), flip =>
        {
            var bytes = (byte[])whole.Clone();
            bytes[flip.Item1] ^= flip.Item2;
            File.WriteAllBytes(LogFileName, bytes);
            Sound(lines, witness: null);
        }, iter: 300, threads: 1);
    }

    [Fact]
    public void A_line_that_is_gone_from_the_store_is_told_as_damage()
    {
        using (var bare = Beside())
        {
            bare.Open();
            using var command = bare.CreateCommand();
            command.CommandText = "CREATE TABLE entry (log, sequence, line); INSERT INTO entry VALUES ('job', 1, NULL)";
            command.ExecuteNonQuery();
        }

        using var store = Open();
        Assert.Throws<InvalidDataException>(() => store.Lines(0).Count());
    }

    [Fact]
    public void What_is_no_log_is_told_to_be_none()
    {
        File.WriteAllText(LogFileName, new string('x', 5000));
        Assert.Throws<InvalidDataException>(Open);
    }

    protected override ILogStore Open() => SqliteLogStore.Open(LogFileName);

    protected override DbConnection Beside() => new SqliteConnection($"Data Source={LogFileName};Pooling=False");

    private void Written(int count, out string[] lines, out byte[] whole)
    {
        using (var store = Open())
        {
            store.Fill(Notes(count), []);
            lines = [.. store.Lines(0)];
        }

        whole = File.ReadAllBytes(LogFileName);
    }

    // True when the log reads as it was written; false when it is told to be damaged; anything else fails.
    private bool Sound(string[] lines, Witness? witness)
    {
        try
        {
            using var store = Open();
            var report = ChainCheck.Check(store.Lines(0), witness);
            Assert.True(report.Fault is not null || report.Entries.Select(e => e.Line()).SequenceEqual(lines) || (witness is null && report.Entries.Count < lines.Length), "an altered log passed");
            return report.Fault is null;
        }
        catch (Exception e) when (e is InvalidDataException or IOException)
        {
            return false;
        }
        finally
        {
            File.Delete(LogFileName + "-wal");
            File.Delete(LogFileName + "-shm");
        }
    }
}
