using System.Data.Common;
using System.Security.Cryptography;

namespace Fairlead.Records;

/// <summary>A log in a database. The statements are the same whichever it is: an entry is one row of one line, and its primary key lets only one
/// writer take a number. So an append is one statement, and it is there wholly or not at all.</summary>
public abstract class SqlLogStore : ILogStore
{
    private readonly SqlStatements statements;
    private readonly string log;
    private readonly Lock turn = new();

    /// <summary>Takes an open connection whose tables exist.</summary>
    /// <param name="connection">The connection, which the store closes.</param>
    /// <param name="log">Name of the log: a database may hold several.</param>
    protected SqlLogStore(DbConnection connection, string log)
    {
        statements = new(connection);
        this.log = log;
    }

    /// <inheritdoc/>
    public IEnumerable<string> Lines(long after)
    {
        // In pages, so that the store is free while the lines are looked at.
        const int Page = 1000;
        for (var read = Page; read == Page;)
        {
            var lines = Guarded(() => statements.Rows("SELECT sequence, line FROM entry WHERE log = @log AND sequence > @after ORDER BY sequence LIMIT 1000",
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
            using var transaction = content is null ? null : statements.Begin();
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
            using var transaction = statements.Begin();
            foreach (var bytes in contents)
            {
                Keep(transaction, bytes);
            }

            if (!entries.All(entry => Add(transaction, entry)) || statements.Rows("SELECT COUNT(*) FROM entry WHERE log = @log", r => r.GetInt64(0), ("@log", log))[0] != entries.Count)
            {
                throw new IOException("There is a log already; nothing was changed.");
            }

            transaction.Commit();
            return 0;
        });
    }

    /// <inheritdoc/>
    public byte[]? Content(string hash) => Guarded(() =>
        statements.Rows("SELECT bytes FROM content WHERE log = @log AND hash = @hash", row => (byte[])row.GetValue(0), ("@log", log), ("@hash", hash)).FirstOrDefault());

    /// <inheritdoc/>
    public IReadOnlyList<string> Contents() => Guarded(() => statements.Rows("SELECT hash FROM content WHERE log = @log ORDER BY hash", row => row.GetString(0), ("@log", log)));

    /// <inheritdoc/>
    public SignIn? FindSignIn(string person) => Guarded(() => statements.Rows(
        "SELECT verifier, failures, last_failure FROM sign_in WHERE log = @log AND person = @person",
        row => new SignIn(row.GetString(0), row.GetInt32(1), Instant.TryRead(row.GetString(2), out var at) ? at : null),
        ("@log", log), ("@person", person)).FirstOrDefault());

    /// <inheritdoc/>
    public void PutSignIn(string person, SignIn signIn)
    {
        ArgumentNullException.ThrowIfNull(signIn);
        Guarded(() => statements.Execute(
            "INSERT INTO sign_in (log, person, verifier, failures, last_failure) VALUES (@log, @person, @verifier, @failures, @last) " +
            "ON CONFLICT (log, person) DO UPDATE SET verifier = excluded.verifier, failures = excluded.failures, last_failure = excluded.last_failure", transaction: null,
            ("@log", log), ("@person", person), ("@verifier", signIn.Verifier), ("@failures", signIn.Failures), ("@last", signIn.LastFailure is { } at ? Instant.Text(at) : "")));
    }

    // Times in the log's form are in order as text. Whoever tries at once may have read the clock before the other who was counted first, so a time that is a little ahead
    // shuts the way too; one that is further ahead is of a clock that was wrong.
    /// <inheritdoc/>
    public bool CountTry(string person, int most, DateTimeOffset now, TimeSpan pause) => Guarded(() => statements.Execute(
        "UPDATE sign_in SET failures = failures + 1, last_failure = @now WHERE log = @log AND person = @person AND NOT (failures >= @most AND last_failure > @since AND last_failure <= @until)", transaction: null,
        ("@log", log), ("@person", person), ("@most", most), ("@now", Instant.Text(now)), ("@since", Instant.Text(now - pause)), ("@until", Instant.Text(now + pause)))) == 1;

    /// <inheritdoc/>
    public void ForgetTries(string person) => Guarded(() => statements.Execute(
        "UPDATE sign_in SET failures = 0, last_failure = '' WHERE log = @log AND person = @person", transaction: null, ("@log", log), ("@person", person)));

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
            statements.Dispose();
        }
    }

    /// <summary>What a database's own error means to a person; null where it is a defect of ours.</summary>
    protected abstract Exception? Meaning(DbException error);

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
        }
    }

    private void Keep(DbTransaction? transaction, byte[] bytes) => statements.Execute(
        "INSERT INTO content (log, hash, bytes) VALUES (@log, @hash, @bytes) ON CONFLICT DO NOTHING", transaction,
        ("@log", log), ("@hash", Convert.ToHexStringLower(SHA256.HashData(bytes))), ("@bytes", bytes));

    private bool Add(DbTransaction? transaction, Entry entry) => statements.Execute(
        "INSERT INTO entry (log, sequence, line) VALUES (@log, @sequence, @line) ON CONFLICT DO NOTHING", transaction,
        ("@log", log), ("@sequence", entry.Sequence), ("@line", entry.Line())) == 1;
}
