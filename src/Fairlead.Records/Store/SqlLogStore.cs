using System.Data;
using System.Data.Common;
using System.Security.Cryptography;

namespace Fairlead.Records;

/// <summary>A log in a database. The statements are the same whichever it is: an entry is one row of one line, and its primary key lets only one
/// writer take a number. So an append is one statement, and it is there wholly or not at all.</summary>
public abstract class SqlLogStore : ILogStore
{
    private readonly DbConnection connection;
    private readonly string log;
    private readonly Lock turn = new();

    /// <summary>Takes an open connection whose tables exist.</summary>
    /// <param name="connection">The connection, which the store closes.</param>
    /// <param name="log">Name of the log: a database may hold several.</param>
    protected SqlLogStore(DbConnection connection, string log)
    {
        this.connection = connection;
        this.log = log;
    }

    /// <inheritdoc/>
    public IEnumerable<string> Lines(long after)
    {
        // In pages, so that the store is free while the lines are looked at.
        const int Page = 1000;
        for (var read = Page; read == Page;)
        {
            var lines = Guarded(() => Rows("SELECT sequence, line FROM entry WHERE log = @log AND sequence > @after ORDER BY sequence LIMIT 1000",
                row => (Sequence: row.GetInt64(0), Line: row.GetString(1)), ("@log", log), ("@after", after)));
            foreach (var (sequence, line) in lines)
            {
                after = sequence;
                yield return line;
            }

            read = lines.Count;
        }
    }

    /// <inheritdoc/>
    public bool TryAppend(Entry entry, ReadOnlyMemory<byte>? content = null)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Guarded(() =>
        {
            using var transaction = content is null ? null : connection.BeginTransaction();
            if (content is { } bytes)
            {
                Keep(transaction, bytes.ToArray());
            }

            var added = Add(transaction, entry);
            if (added)
            {
                transaction?.Commit();
            }

            return added;
        });
    }

    /// <inheritdoc/>
    public void Fill(IReadOnlyList<Entry> entries, IEnumerable<byte[]> contents)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(contents);
        Guarded(() =>
        {
            using var transaction = connection.BeginTransaction();
            foreach (var bytes in contents)
            {
                Keep(transaction, bytes);
            }

            if (!entries.All(entry => Add(transaction, entry)) || Rows("SELECT COUNT(*) FROM entry WHERE log = @log", r => r.GetInt64(0), ("@log", log))[0] != entries.Count)
            {
                throw new IOException("There is a log already; nothing was changed.");
            }

            transaction.Commit();
            return 0;
        });
    }

    /// <inheritdoc/>
    public byte[]? Content(string hash) => Guarded(() =>
        Rows("SELECT bytes FROM content WHERE log = @log AND hash = @hash", row => (byte[])row.GetValue(0), ("@log", log), ("@hash", hash)).FirstOrDefault());

    /// <inheritdoc/>
    public IReadOnlyList<string> Contents() => Guarded(() => Rows("SELECT hash FROM content WHERE log = @log ORDER BY hash", row => row.GetString(0), ("@log", log)));

    /// <inheritdoc/>
    public SignIn? FindSignIn(string person) => Guarded(() => Rows(
        "SELECT verifier, failures, last_failure FROM sign_in WHERE log = @log AND person = @person",
        row => new SignIn(row.GetString(0), row.GetInt32(1), Instant.TryRead(row.GetString(2), out var at) ? at : null),
        ("@log", log), ("@person", person)).FirstOrDefault());

    /// <inheritdoc/>
    public void PutSignIn(string person, SignIn signIn)
    {
        ArgumentNullException.ThrowIfNull(signIn);
        Guarded(() => Execute(
            "INSERT INTO sign_in (log, person, verifier, failures, last_failure) VALUES (@log, @person, @verifier, @failures, @last) " +
            "ON CONFLICT (log, person) DO UPDATE SET verifier = excluded.verifier, failures = excluded.failures, last_failure = excluded.last_failure", transaction: null,
            ("@log", log), ("@person", person), ("@verifier", signIn.Verifier), ("@failures", signIn.Failures), ("@last", signIn.LastFailure is { } at ? Instant.Text(at) : "")));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes the connection.</summary>
    protected virtual void Dispose(bool disposing)
    {
        if (disposing)
        {
            connection.Dispose();
        }
    }

    /// <summary>What a database's own error means to a person; null where it is a defect of ours.</summary>
    protected abstract Exception? Meaning(DbException error);

    /// <summary>Runs statements that make the tables.</summary>
    protected static void Prepare(DbConnection connection, params IEnumerable<string> statements)
    {
        ArgumentNullException.ThrowIfNull(connection);
        ArgumentNullException.ThrowIfNull(statements);
        foreach (var statement in statements)
        {
            using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The statements are constants of the derived stores.
            command.CommandText = statement;
#pragma warning restore CA2100
            command.ExecuteNonQuery();
        }
    }

    private T Guarded<T>(Func<T> work)
    {
        lock (turn)
        {
            try
            {
                return work();
            }
            catch (DbException e) when (Meaning(e) is not null)
            {
                throw Meaning(e)!;
            }
            catch (Exception e) when (e is InvalidCastException or FormatException)
            {
                throw new InvalidDataException("The store of the log is damaged: " + e.Message, e);
            }
        }
    }

    private void Keep(DbTransaction? transaction, byte[] bytes) => Execute(
        "INSERT INTO content (log, hash, bytes) VALUES (@log, @hash, @bytes) ON CONFLICT DO NOTHING", transaction,
        ("@log", log), ("@hash", Convert.ToHexStringLower(SHA256.HashData(bytes))), ("@bytes", bytes));

    private bool Add(DbTransaction? transaction, Entry entry) => Execute(
        "INSERT INTO entry (log, sequence, line) VALUES (@log, @sequence, @line) ON CONFLICT DO NOTHING", transaction,
        ("@log", log), ("@sequence", entry.Sequence), ("@line", entry.Line())) == 1;

    private int Execute(string statement, DbTransaction? transaction, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(statement, values);
        command.Transaction = transaction;
        return command.ExecuteNonQuery();
    }

    private List<T> Rows<T>(string statement, Func<IDataRecord, T> read, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(statement, values);
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
        {
            rows.Add(read(reader));
        }

        return rows;
    }

    private DbCommand Command(string statement, ReadOnlySpan<(string Name, object Value)> values)
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // Every statement is a constant of this file; what varies is a parameter.
        command.CommandText = statement;
#pragma warning restore CA2100
        foreach (var (name, value) in values)
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = (name, value);
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
