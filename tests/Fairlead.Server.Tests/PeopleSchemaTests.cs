using Fairlead.Records;
using Fairlead.Server.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Fairlead.Tests.Server;

public sealed class PeopleSchemaTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("fairlead-people").FullName;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void Tables_made_in_steps_are_those_of_the_model()
    {
        var (steps, model) = (Path.Combine(folder, "steps.db"), Path.Combine(folder, "model.db"));
        PeopleSchema.Upgrade(steps);
        using (var context = Context(model))
        {
            context.Database.EnsureCreated();
        }

        Assert.Equal(Shape(model), Shape(steps));
    }

    // Files stand in hangars that were made by these very steps; what changes is another step.
    [Theory]
    [InlineData(1, "3efc00765f73c94319767982fed2bb129a33d544b865958256038d0db570b2f1")]
    [InlineData(2, "558a852c945033cd23a09f8e9de942fedd6555619b98f4687e0432f89cde4cd3")]
    public void A_step_that_went_out_is_never_changed(int step, string hash)
    {
        using var script = typeof(PeopleSchema).Assembly.GetManifestResourceStream($"people/{step}.sql")!;
        Assert.Equal(hash, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(script)));
    }

    [Fact]
    public async Task A_file_of_the_first_schema_is_brought_to_the_last_with_the_people_in_it()
    {
        var data = Path.Combine(folder, "data");
        Directory.CreateDirectory(data);
        var file = Path.Combine(data, "people.db");
        PeopleSchema.Upgrade(file, to: 1);
        Run(file, $"""
            insert into AspNetUsers (Id, Person, Roles, UserName, NormalizedUserName, PasswordHash, SecurityStamp, EmailConfirmed, PhoneNumberConfirmed, TwoFactorEnabled, LockoutEnabled, AccessFailedCount)
            values ('1', '', 'keeper', 'keeper.one', 'KEEPER.ONE', '{Passwords.Verifier(RunningServer.Password, new byte[Passwords.SaltBytes])}', 'a', 0, 0, 0, 1, 0)
            """);
        Assert.Throws<SqliteException>(() => Run(file, "select 1 from Sessions"));

        await using var server = await RunningServer.Start(data: data);
        Assert.Equal("", server.FirstKey);
        using var keeper = await server.Keeper();
        Assert.Equal(System.Net.HttpStatusCode.OK, (await keeper.GetAsync("/api/sign-ins")).StatusCode);
    }

    [Fact]
    public void A_file_of_a_later_program_is_not_touched()
    {
        var file = Path.Combine(folder, "later.db");
        PeopleSchema.Upgrade(file);
        Run(file, "PRAGMA user_version = 99");
        Assert.Contains("99", Assert.Throws<InvalidDataException>(() => PeopleSchema.Upgrade(file)).Message, StringComparison.Ordinal);
    }

    private static void Run(string file, string sql)
    {
        using var connection = new SqliteConnection(PeopleSchema.Connection(file));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static PeopleContext Context(string file)
    {
        var services = new ServiceCollection();
        services.AddDbContext<PeopleContext>(o => o.UseSqlite(PeopleSchema.Connection(file)));
        services.Configure<IdentityOptions>(o => o.Stores.SchemaVersion = IdentitySchemaVersions.Version3);
        return services.BuildServiceProvider().GetRequiredService<PeopleContext>();
    }

    // Every column with its type, and every index with its columns.
    private static string[] Shape(string file)
    {
        using var connection = new SqliteConnection(PeopleSchema.Connection(file));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = """
            select t.name || '.' || c.name || ' ' || c.type || ' ' || c."notnull" || ' ' || c.pk from sqlite_schema t join pragma_table_info(t.name) c where t.type = 'table' and t.name not like 'sqlite_%'
            union all select i.tbl_name || ': ' || i.name || ' ' || x.name from sqlite_schema i join pragma_index_info(i.name) x where i.type = 'index' and i.name not like 'sqlite_%'
            union all select t.name || ' -> ' || f."table" || ' ' || f.on_delete from sqlite_schema t join pragma_foreign_key_list(t.name) f where t.type = 'table'
            order by 1
            """;
        using var reader = command.ExecuteReader();
        var shape = new List<string>();
        while (reader.Read())
        {
            shape.Add(reader.GetString(0));
        }

        return [.. shape];
    }
}
