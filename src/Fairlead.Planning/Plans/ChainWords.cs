using System.Globalization;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Plans;

/// <summary>The chain that holds the finish, said in words.</summary>
internal static class ChainWords
{
    public static string Of(ChainLink link, JobTask task, PlanCalendar calendar)
    {
        var wait = task.After.FirstOrDefault(w => w.Task == link.By);
        var why = link.Hold switch
        {
            Hold.Task when wait is { Lag: > 0 } => string.Create(CultureInfo.InvariantCulture, $"{wait.Lag:0.#} h after {link.By}: {wait.Why}"),
            Hold.Task => $"after {link.By}: {wait?.Why ?? "it comes first"}",
            Hold.Person => $"{link.Through} is busy with {link.By} until then",
            Hold.Resource => $"{link.Through} is taken by {link.By} until then",
            Hold.Hours when link.By.Length > 0 => $"{link.By} ends before, but nobody who can do it is at work, or it may not be done, until then",
            Hold.Hours => "nobody who can do it is at work until then",
            _ => "it starts when it may",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{calendar.At(link.Start):ddd yyyy-MM-dd HH:mm} {link.Task}, {task.Title}; {why}.");
    }
}
