using System.Globalization;
using System.Text;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>Adds entries to several logs at once, as fast as it can, and says each on its output when it is acknowledged, until somebody kills it.</summary>
internal static class Appender
{
    /// <summary>Writers in the process, each on a log of its own.</summary>
    public const int Writers = 10;

    /// <summary>The log of a writer: a file in a folder, or one of the logs of a database.</summary>
    public static ILogStore Open(string place, int writer)
    {
        var name = "killed-" + writer.ToString(CultureInfo.InvariantCulture);
        return place.Contains('=', StringComparison.Ordinal) ? PostgresLogStore.Open(place, name) : SqliteLogStore.Open(Path.Combine(place, name + ".db"));
    }

    public static int Run(string place)
    {
        using var output = Console.OpenStandardOutput();
        var writers = Enumerable.Range(0, Writers).Select(n => new Thread(() => Write(place, n, output))).ToArray();
        Array.ForEach(writers, w => w.Start());
        Array.ForEach(writers, w => w.Join());
        return 1;
    }

    private static void Write(string place, int writer, Stream output)
    {
        using var store = Open(place, writer);
        var (sequence, previous) = (0L, Entry.Origin);
        foreach (var last in store.Lines(0).Select(Entry.Read))
        {
            (sequence, previous) = (last.Sequence, last.Hash);
        }

        for (var taken = true; taken;)
        {
            var entry = Entry.After(sequence, previous, Hangar.Morning, "AV1", "noted", "task/T1", Payload.Empty.With("text", "one more"));
            taken = store.TryAppend(entry);
            lock (output)
            {
                output.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{writer} {(taken ? entry.Sequence : -1)}\n")));
            }

            (sequence, previous) = (entry.Sequence, entry.Hash);
        }
    }
}
