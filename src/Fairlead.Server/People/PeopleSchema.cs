using System.Globalization;
using Fairlead.Server.Hosting;
using Microsoft.Data.Sqlite;

namespace Fairlead.Server.People;

/// <summary>The tables of people.db, in numbered steps: a file of any earlier step is brought to the last one, with what it holds.</summary>
internal static class PeopleSchema
{
    /// <summary>The last step.</summary>
    public const int Last = 2;

    /// <summary>How the file is opened.</summary>
    public static string Connection(string file) => new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, DefaultTimeout = 30 }.ToString();

    /// <summary>Brings the file to a step.</summary>
    /// <exception cref="InvalidDataException">It was written by a later program.</exception>
    public static void Upgrade(string file, int to = Last)
    {
        PrivateFiles.Touch(file);
        using var connection = new SqliteConnection(Connection(file));
        connection.Open();
        Run(connection, "PRAGMA journal_mode = WAL");
        var stands = Convert.ToInt32(Run(connection, "PRAGMA user_version"), CultureInfo.InvariantCulture);
        if (stands > Last)
        {
            throw new InvalidDataException(string.Create(CultureInfo.InvariantCulture, $"{file} has schema {stands}; this program knows {Last}. A later program wrote it: use that one."));
        }

        for (var step = stands + 1; step <= to; step++)
        {
            using var transaction = connection.BeginTransaction();
            Run(connection, Script(step));
            Run(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {step}"));
            transaction.Commit();
        }
    }

    private static string Script(int step)
    {
        using var stream = typeof(PeopleSchema).Assembly.GetManifestResourceStream(string.Create(CultureInfo.InvariantCulture, $"people/{step}.sql"))!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    // The text comes from this assembly alone.
    private static object? Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
