using System.Data;
using System.Data.Common;

namespace Fairlead.Records;

/// <summary>Runs statements on an open connection, which it closes. What varies in them is a parameter.</summary>
internal sealed class SqlStatements(DbConnection connection) : IDisposable
{
    /// <summary>Runs statements that make the tables.</summary>
    public static void Prepare(DbConnection connection, params IEnumerable<string> statements)
    {
        foreach (var statement in statements)
        {
            using var command = Command(connection, statement);
            command.ExecuteNonQuery();
        }
    }

    /// <summary>Whether what a statement asks holds.</summary>
    public static bool Holds(DbConnection connection, string statement)
    {
        using var command = Command(connection, statement);
        return command.ExecuteScalar() is true;
    }

    /// <summary>Begins what is done wholly or not at all.</summary>
    public DbTransaction Begin() => Open().BeginTransaction();

    /// <inheritdoc/>
    public void Dispose() => connection.Dispose();

    /// <summary>Runs a statement and says how many rows it touched.</summary>
    public int Execute(string statement, DbTransaction? transaction, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(statement, values);
        command.Transaction = transaction;
        return command.ExecuteNonQuery();
    }

    /// <summary>The rows that a statement gives.</summary>
    public List<T> Rows<T>(string statement, Func<IDataRecord, T> read, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(statement, values);
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
        {
            rows.Add(Row(reader, read));
        }

        return rows;
    }

    private static T Row<T>(DbDataReader reader, Func<IDataRecord, T> read)
    {
        try
        {
            return read(reader);
        }
        catch (Exception e) when (e is InvalidCastException or FormatException or InvalidOperationException)
        {
            // A value that is none of its column's, or is not there at all.
            throw new InvalidDataException("The store of the log is damaged: " + e.Message, e);
        }
    }

    // A connection that broke, as when the server went away or its disk was full, is opened anew: every statement stands for itself.
    private DbConnection Open()
    {
        if (connection.State != ConnectionState.Open)
        {
            connection.Close();
            connection.Open();
        }

        return connection;
    }

    private static DbCommand Command(DbConnection connection, string statement)
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // Every statement is a constant of the stores; what varies is a parameter.
        command.CommandText = statement;
#pragma warning restore CA2100
        return command;
    }

    private DbCommand Command(string statement, ReadOnlySpan<(string Name, object Value)> values)
    {
        var command = Command(Open(), statement);
        foreach (var (name, value) in values)
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = (name, value);
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
