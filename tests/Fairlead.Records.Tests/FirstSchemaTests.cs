using Fairlead.Model.Storage;
using Fairlead.Records;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Fairlead.Tests.Records;

/// <summary>A log that the first program wrote, when entries told less than they do now: tests/data/first-log.sql is its file as SQL. It opens with everything kept, and goes on.</summary>
public sealed class FirstSchemaTests(PostgresServer server) : IDisposable
{
    // Number of entries and root as the first program told them.
    private const string Head = "25:a1734962481f766cd483a69bf8355cce8e157c146bfad697fafbfc920b8f5e0b";

    private const string FirstTables = """
        CREATE TABLE entry (log text NOT NULL, sequence bigint NOT NULL, line text NOT NULL, PRIMARY KEY (log, sequence));
        CREATE TABLE content (log text NOT NULL, hash text NOT NULL, bytes bytea NOT NULL, PRIMARY KEY (log, hash));
        CREATE TABLE sign_in (log text NOT NULL, person text NOT NULL, verifier text NOT NULL, failures integer NOT NULL, last_failure text NOT NULL, PRIMARY KEY (log, person));
        CREATE FUNCTION entry_stays() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'entries are only ever added'; END $$;
        CREATE TRIGGER entry_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON entry FOR EACH STATEMENT EXECUTE FUNCTION entry_stays();
        """;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-first-");

    private string LogFileName => Path.Combine(folder.FullName, FolderFiles.Log);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_file_of_the_first_schema_opens_with_everything_kept_and_goes_on()
    {
        First().Dispose();
        using var store = SqliteLogStore.Open(LogFileName);
        AssertKept(store);
    }

    [Fact]
    public void A_database_of_the_first_schema_opens_with_everything_kept_and_goes_on()
    {
        var place = PostgresStoreTests.Created(server.Need());
        using (var from = First())
        using (var to = new NpgsqlConnection(place))
        {
            to.Open();
            Run(to, FirstTables);
            Array.ForEach(["entry", "content", "sign_in"], table => Copy(from, to, table));
        }

        using var store = PostgresLogStore.Open(place, "job");
        AssertKept(store);
    }

    private static void AssertKept(ILogStore store)
    {
        var report = ChainCheck.Check(store.Lines(0));
        Assert.Null(report.Fault);
        Assert.Equal(Head, report.Head.ToString());
        using var hangar = new Hangar(store);
        var state = hangar.Book.CatchUp();
        Assert.Empty(state.Open);
        Assert.Equal("INV-AV1", Assert.Single(state.Signatures("task/T1")).Payload.Text("authorisation"));
        Assert.Equal("Größe, \"quoted\"", state.Story("task/T1").Single(e => e.Kind == "photographed").Payload.Text("caption"));
        Assert.Equal("typed wrong", state.Struck[19].Payload.Text("reason"));
        Assert.Equal("title: first\n"u8.ToArray(), hangar.Book.Revision("change.yaml", 1)!.Value.Content);
        Assert.Equal(1, store.FindSignIn("AV1")!.Failures);
        Assert.Null(hangar.SignIns.Refusal("AV1", Hangar.Pin));

        hangar.Do("AV1", "opened", "panel/P1", ("fasteners", 12));
        var (_, log, contents) = JobArchive.Open(new MemoryFiles(Unzipped(JobArchive.Zip(Starter.Files(), store))));
        Assert.Equal(store.Lines(0), log!.Entries.Select(e => e.Line()));
        Assert.Equal("title: first\n"u8.ToArray(), Assert.Single(contents));
    }

    private static IEnumerable<KeyValuePair<string, byte[]>> Unzipped(byte[] zip)
    {
        using var stream = new MemoryStream(zip);
        var files = JobFolder.Read(stream, archive: true);
        return [.. files.All.Select(f => KeyValuePair.Create(f, files.Read(f)))];
    }

    private SqliteConnection First()
    {
        var connection = new SqliteConnection($"Data Source={LogFileName};Pooling=False");
        connection.Open();
        Run(connection, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "first-log.sql")));
        return connection;
    }

    private static void Copy(SqliteConnection from, NpgsqlConnection to, string table)
    {
        using var select = from.CreateCommand();
        select.CommandText = $"SELECT * FROM {table}";
        using var row = select.ExecuteReader();
        while (row.Read())
        {
            using var insert = to.CreateCommand();
            insert.CommandText = $"INSERT INTO {table} VALUES ({string.Join(", ", Enumerable.Range(1, row.FieldCount).Select(i => "$" + i.ToString(System.Globalization.CultureInfo.InvariantCulture)))})";
            for (var i = 0; i < row.FieldCount; i++)
            {
                insert.Parameters.Add(new NpgsqlParameter { Value = row.GetName(i) == "failures" ? row.GetInt32(i) : row.GetValue(i) });
            }

            insert.ExecuteNonQuery();
        }
    }

    private static void Run(System.Data.Common.DbConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
