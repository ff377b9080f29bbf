using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Plans;

/// <summary>The chain that holds the finish, said in words.</summary>
internal static class ChainWords
{
    private const int Named = 3;

    /// <summary>The chain in one sentence: how often somebody was busy, and who most; how often something had to come first; how often it was night. Empty for a chain of one.</summary>
    public static string Short(Sequence<ChainLink> chain)
    {
        string Most(Hold hold) => string.Join(", ", chain.Where(l => l.Hold == hold).GroupBy(l => l.Through, StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Take(Named).Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Key} {g.Count()}")));
        (string Why, Hold Hold)[] ways = [("somebody was busy", Hold.Person), ("something had to come first", Hold.Task), ("it was night, or the ramp was closed", Hold.Hours), ("a zone or tool was taken", Hold.Resource)];
        var parts = ways.Select(w => (w.Why, w.Hold, Count: chain.Count(l => l.Hold == w.Hold))).Where(w => w.Count > 0).OrderByDescending(w => w.Count)
            .Select(w => string.Create(CultureInfo.InvariantCulture, $"{w.Count} times {w.Why}{(w.Hold is Hold.Person or Hold.Resource ? $" ({Most(w.Hold)})" : "")}"));
        return chain.Count < 2 ? "" : string.Create(CultureInfo.InvariantCulture, $"The finish is held by {chain.Count} tasks one after the other: {string.Join("; ", parts)}.");
    }

    private static string Called(string id) => SecondLook.IsLook(id) ? $"the second look at {SecondLook.TaskOf(id)}" : id;

    public static string Of(ChainLink link, JobTask task, PlanCalendar calendar)
    {
        var by = Called(link.By);
        var wait = task.After.FirstOrDefault(w => w.Task == SecondLook.TaskOf(link.By));
        var why = link.Hold switch
        {
            Hold.Task when wait is { Lag: > 0 } => string.Create(CultureInfo.InvariantCulture, $"{wait.Lag:0.#} h after {by}: {wait.Why}"),
            Hold.Task => $"after {by}: {wait?.Why ?? "it comes first"}",
            Hold.Person => $"{link.Through} is busy with {by} until then",
            Hold.Resource => $"{link.Through} is taken by {by} until then",
            Hold.Hours when link.By.Length > 0 => $"{by} ends before, but nobody who can do it is at work, or it may not be done, until then",
            Hold.Hours => "nobody who can do it is at work until then",
            _ => "it starts when it may",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{calendar.At(link.Start):ddd yyyy-MM-dd HH:mm} {Called(link.Task)}, {task.Title}; {why}.");
    }
}
