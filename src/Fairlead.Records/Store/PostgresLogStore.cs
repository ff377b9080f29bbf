using System.Data.Common;
using System.Net.Sockets;
using Npgsql;

namespace Fairlead.Records;

/// <summary>A log in a PostgreSQL database, which may hold those of many jobs.</summary>
public sealed class PostgresLogStore : SqlLogStore
{
    // Two that make the tables at once would trip over each other, so they take turns (the number only has to be our own).
    private const string Schema = """
        BEGIN;
        SELECT pg_advisory_xact_lock(7102207);
        CREATE TABLE IF NOT EXISTS entry (log text NOT NULL, sequence bigint NOT NULL, line text NOT NULL, PRIMARY KEY (log, sequence));
        CREATE TABLE IF NOT EXISTS content (log text NOT NULL, hash text NOT NULL, bytes bytea NOT NULL, PRIMARY KEY (log, hash));
        CREATE TABLE IF NOT EXISTS sign_in (log text NOT NULL, person text NOT NULL, verifier text NOT NULL, failures integer NOT NULL, last_failure text NOT NULL, PRIMARY KEY (log, person));
        CREATE OR REPLACE FUNCTION entry_stays() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'entries are only ever added'; END $$;
        CREATE OR REPLACE TRIGGER entry_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON entry FOR EACH STATEMENT EXECUTE FUNCTION entry_stays();
        COMMIT;
        """;

    // Of the tables' own making, the trigger comes last; a database of an earlier program may have it and lack a table.
    private const string Made = """
        SELECT to_regclass('content') IS NOT NULL AND to_regclass('sign_in') IS NOT NULL
           AND EXISTS (SELECT 1 FROM pg_trigger WHERE tgname = 'entry_stays' AND tgrelid = to_regclass('entry'))
        """;

    private PostgresLogStore(NpgsqlConnection connection, string log)
        : base(connection, log)
    {
    }

    /// <summary>Opens the log of a name.</summary>
    /// <param name="connectionString">Where the database is.</param>
    /// <param name="log">The name, usually the number of the work order.</param>
    /// <exception cref="IOException">The server cannot be reached or refuses.</exception>
    public static PostgresLogStore Open(string connectionString, string log)
    {
        NpgsqlConnection? connection = null;
        try
        {
            // Said to the server at each connection, also one that is opened anew.
            var place = new NpgsqlConnectionStringBuilder(connectionString);
            place.Options = (place.Options + " -c synchronous_commit=on").TrimStart();
            connection = new NpgsqlConnection(place.ToString());
            connection.Open();
            // To make what is there already would have everybody who opens the log wait for all who do.
            if (!SqlStatements.Holds(connection, Made))
            {
                SqlStatements.Prepare(connection, Schema);
            }

            return new PostgresLogStore(connection, log);
        }
        catch (Exception e) when (e is NpgsqlException or ArgumentException or SocketException)
        {
            connection?.Dispose();
            throw new IOException("The database of the log cannot be opened: " + e.Message, e);
        }
    }

    // SQLSTATE: https://www.postgresql.org/docs/15/errcodes-appendix.html
    /// <inheritdoc/>
    protected override Exception? Meaning(DbException error) => error switch
    {
        PostgresException { SqlState: "53100" } => new IOException("The disk of the database is full, and the entry was not taken. Everything acknowledged before is kept.", error),
        PostgresException { SqlState: "XX001" or "XX002" } => new InvalidDataException("The database of the log is damaged: " + error.Message, error),
        PostgresException { SqlState: "57P01" or "57P02" or "57P03" } => new IOException("The database of the log went away. What was not acknowledged may or may not be in the log: read it again.", error),
        PostgresException => null,
        NpgsqlException => new IOException("The database of the log went away. What was not acknowledged may or may not be in the log: read it again.", error),
        _ => null,
    };
}
