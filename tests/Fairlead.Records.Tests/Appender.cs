using System.Globalization;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>Adds entries as fast as it can and says each on its output when it is acknowledged, until somebody kills it.</summary>
internal static class Appender
{
    public static ILogStore Open(string place) => place.Contains('=', StringComparison.Ordinal) ? PostgresLogStore.Open(place, "killed") : SqliteLogStore.Open(place);

    public static int Run(string place)
    {
        using var output = Console.OpenStandardOutput();
        using var store = Open(place);
        var (sequence, previous) = (0L, Entry.Origin);
        foreach (var line in store.Lines(0))
        {
            var last = Entry.Read(line);
            (sequence, previous) = (last.Sequence, last.Hash);
        }

        while (true)
        {
            var entry = Entry.After(sequence, previous, Hangar.Morning, "AV1", "noted", "task/T1", Payload.Empty.With("text", "one more"));
            if (!store.TryAppend(entry))
            {
                return 1;
            }

            output.Write(System.Text.Encoding.ASCII.GetBytes(entry.Sequence.ToString(CultureInfo.InvariantCulture) + " " + entry.Hash + "\n"));
            (sequence, previous) = (entry.Sequence, entry.Hash);
        }
    }
}
