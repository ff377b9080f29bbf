using System.Collections.Frozen;
using System.Text.Json;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Planning.Tasks;

/// <summary>A time for one of something, in hours: least, likely, most.</summary>
/// <param name="Low">Least, h.</param>
/// <param name="Likely">Likely, h.</param>
/// <param name="High">Most, h.</param>
/// <param name="Basis">How it came to us.</param>
public sealed record TaskTime(double Low, double Likely, double High, Basis Basis)
{
    /// <summary>Mean of the triangular distribution: (a + m + b)/3, h. Check value: 3, 6 and 12 h give 7 h.</summary>
    public double Mean => (Low + Likely + High) / 3;

    /// <summary>No time at all.</summary>
    public static TaskTime None { get; } = new(0, 0, 0, Basis.Derived);

    /// <summary>The time that the job states.</summary>
    public static TaskTime Of(ThreePoint time)
    {
        ArgumentNullException.ThrowIfNull(time);
        return new(time.Low.In("h"), time.Likely.In("h"), time.High.In("h"), Basis.Stated);
    }

    /// <summary>The time for so many.</summary>
    public static TaskTime operator *(TaskTime time, double count)
    {
        ArgumentNullException.ThrowIfNull(time);
        return new(time.Low * count, time.Likely * count, time.High * count, time.Basis);
    }

    /// <summary>One after the other; the basis is the weaker of both.</summary>
    public static TaskTime operator +(TaskTime a, TaskTime b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High, a == None ? b.Basis : b == None || a.Basis == b.Basis ? a.Basis : Basis.CommonPractice);
    }
}

/// <summary>A row of the labour table.</summary>
/// <param name="Activity">Its name; a job states another time under this name.</param>
/// <param name="Time">The time.</param>
/// <param name="Per">What it is the time of.</param>
public sealed record LabourRow(string Activity, TaskTime Time, string Per);

/// <summary>How long work takes: common practice, and in its place what the job states, by activity or for a single task.</summary>
public sealed class LabourTable
{
    private readonly Catalog<LabourTime> stated;

    private LabourTable(Catalog<LabourTime> stated) => this.stated = stated;

    /// <summary>The rows of common practice.</summary>
    public static Sequence<LabourRow> Rows { get; } = Load();

    private static FrozenDictionary<string, LabourRow> ByActivity { get; } = Rows.ToFrozenDictionary(r => r.Activity, StringComparer.Ordinal);

    /// <summary>The times of a job.</summary>
    public static LabourTable Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new(job.Order.Labour ?? Catalog<LabourTime>.Empty);
    }

    /// <summary>The time for one.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such activity.</exception>
    public TaskTime For(string activity) => stated.Find(activity) is { } own ? TaskTime.Of(own.Time) : ByActivity[activity].Time;

    /// <summary>The time the job states for a task as a whole; null when it states none.</summary>
    public TaskTime? ForTask(string task) => stated.Find(task) is { } own ? TaskTime.Of(own.Time) : null;

    private static Sequence<LabourRow> Load()
    {
        using var stream = typeof(LabourTable).Assembly.GetManifestResourceStream("Fairlead.Planning.Tables.labour.json")
            ?? throw new InvalidOperationException("There is no table 'labour'.");
        using var json = JsonDocument.Parse(stream);
        var basis = Enum.Parse<Basis>(json.RootElement.GetProperty("basis").GetString()!);
        return json.RootElement.GetProperty("rows").EnumerateArray().Select(r => Row(r, basis)).ToSequence();
    }

    private static LabourRow Row(JsonElement row, Basis basis)
    {
        var hours = row[4].GetString() == "min" ? 1.0 / 60 : 1;
        return new(row[0].GetString()!, new TaskTime(row[1].GetDouble(), row[2].GetDouble(), row[3].GetDouble(), basis) * hours, row[5].GetString()!);
    }
}
