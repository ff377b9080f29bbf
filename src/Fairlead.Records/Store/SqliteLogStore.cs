using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace Fairlead.Records;

/// <summary>A log in one SQLite file. Every append is written ahead and flushed to the disk before it is acknowledged (WAL, full synchronisation).
/// When the last store on a file is closed, only the file itself is left.</summary>
public sealed class SqliteLogStore : SqlLogStore
{
    private const string Schema = """
        CREATE TABLE IF NOT EXISTS entry (log TEXT NOT NULL, sequence INTEGER NOT NULL, line TEXT NOT NULL, PRIMARY KEY (log, sequence)) WITHOUT ROWID;
        CREATE TABLE IF NOT EXISTS content (log TEXT NOT NULL, hash TEXT NOT NULL, bytes BLOB NOT NULL, PRIMARY KEY (log, hash));
        CREATE TABLE IF NOT EXISTS sign_in (log TEXT NOT NULL, person TEXT NOT NULL, verifier TEXT NOT NULL, failures INTEGER NOT NULL, last_failure TEXT NOT NULL, PRIMARY KEY (log, person));
        CREATE TRIGGER IF NOT EXISTS entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'entries are only ever added'); END;
        CREATE TRIGGER IF NOT EXISTS entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'entries are only ever added'); END;
        """;

    private SqliteLogStore(SqliteConnection connection)
        : base(connection, "job")
    {
    }

    /// <summary>Opens the log of a file, which is made when there is none.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mostPages">Pages the file may grow to, 4 KiB each; 0 for no limit but the disk's.</param>
    /// <exception cref="InvalidDataException">The file is damaged or no log.</exception>
    /// <exception cref="IOException">It cannot be opened.</exception>
    public static SqliteLogStore Open(string file, int mostPages = 0)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false, DefaultTimeout = 60 }.ToString());
        try
        {
            connection.Open();
            SqlStatements.Prepare(connection, "PRAGMA journal_mode = WAL", "PRAGMA synchronous = FULL", Schema);
            if (mostPages > 0)
            {
                SqlStatements.Prepare(connection, "PRAGMA max_page_count = " + mostPages.ToString(System.Globalization.CultureInfo.InvariantCulture));
            }

            return new SqliteLogStore(connection);
        }
        catch (SqliteException e)
        {
            connection.Dispose();
            throw Told(e) ?? new IOException($"The log '{file}' cannot be opened: {e.Message}", e);
        }
    }

    /// <inheritdoc/>
    protected override Exception? Meaning(DbException error) => error is SqliteException e ? Told(e) : null;

    // Result codes of SQLite: https://sqlite.org/rescode.html
    private static Exception? Told(SqliteException e) => e.SqliteErrorCode switch
    {
        5 or 6 => new IOException("Somebody else holds the log; try again.", e),
        8 => new IOException("The log cannot be written to: the file or its folder is read-only. The entry was not taken.", e),
        10 => new IOException("The disk does not take the log: " + e.Message, e),
        // Our statements are right, so what they do not find (1) has gone from the file.
        1 or 11 or 26 => new InvalidDataException("The file of the log is damaged or is no log: " + e.Message, e),
        13 => new IOException("The disk is full, and the entry was not taken. Everything acknowledged before is kept.", e),
        14 => new IOException("The file of the log cannot be opened or made: " + e.Message, e),
        _ => null,
    };
}
