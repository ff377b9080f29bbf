using System.Diagnostics;
using System.Globalization;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>Processes killed in the middle of appends, over and over on the same log: nothing that was acknowledged is lost, and the log stays whole.</summary>
public sealed class SuddenDeathTests(PostgresServer server) : IDisposable
{
    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("FAIRLEAD_KILLS") is { Length: > 0 } kills ? kills : "500", CultureInfo.InvariantCulture);
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-kill-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Killing_the_writer_of_a_file_loses_nothing_acknowledged() => Killed(Path.Combine(folder.FullName, "log.db"), Kills);

    [Fact]
    public void Killing_the_writer_of_a_database_loses_nothing_acknowledged() => Killed(server.Need(), Kills);

    [Fact]
    public void Stopping_the_database_dead_loses_nothing_acknowledged()
    {
        server.Need();
        using var own = new PostgresServer();
        var place = own.Need();
        var (read, acknowledged) = (0L, 0L);
        for (var i = 0; i < 5; i++)
        {
            using var writer = Writer(place);
            var seen = Read(writer, 20 + (17 * i));
            own.Crash();
            acknowledged = Math.Max(acknowledged, Drain(writer, seen));
            writer.WaitForExit();
            read = Whole(place, read, acknowledged);
        }
    }

    // Several writers in a row on one log; how many appends each lives through differs, the first ones next to none.
    private static void Killed(string place, int kills)
    {
        var (read, head, acknowledged) = (0L, Entry.Origin, 0L);
        for (var i = 0; i < kills; i++)
        {
            using var writer = Writer(place);
            var seen = Read(writer, i % 12);
            writer.Kill();
            acknowledged = Math.Max(acknowledged, Drain(writer, seen));
            writer.WaitForExit();
            using var store = Appender.Open(place);
            foreach (var line in store.Lines(read))
            {
                var entry = Entry.Read(line);
                Assert.Equal((read + 1, head, entry.Computed()), (entry.Sequence, entry.Previous, entry.Hash));
                (read, head) = (entry.Sequence, entry.Hash);
            }

            Assert.True(read >= acknowledged, $"kill {i}: {acknowledged} acknowledged, {read} kept");
        }

        Assert.True(acknowledged > kills);
        Whole(place, 0, acknowledged);
    }

    private static long Whole(string place, long atLeast, long acknowledged)
    {
        using var store = Appender.Open(place);
        var report = ChainCheck.Check(store.Lines(0));
        Assert.Null(report.Fault);
        Assert.True(report.Entries.Count >= Math.Max(atLeast, acknowledged), $"{acknowledged} acknowledged, {report.Entries.Count} kept");
        return report.Entries.Count;
    }

    private static Process Writer(string place)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Appender).Assembly.Location, "append", place]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_TieredPGO"] = "0";
        return Process.Start(start)!;
    }

    private static long Read(Process writer, int lines)
    {
        var seen = 0L;
        for (var i = 0; i <= lines && writer.StandardOutput.ReadLine() is { } line; i++)
        {
            seen = Number(line, seen);
        }

        return seen;
    }

    // A line without its end was not acknowledged whole.
    private static long Drain(Process writer, long seen)
    {
        var rest = writer.StandardOutput.ReadToEnd().Split('\n');
        return rest.SkipLast(1).Aggregate(seen, (last, line) => Number(line, last));
    }

    private static long Number(string line, long last) => long.TryParse(line.Split(' ')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : last;
}
