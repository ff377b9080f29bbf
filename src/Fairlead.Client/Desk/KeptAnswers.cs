using System.Globalization;
using Fairlead.Drawings.Views;

namespace Fairlead.Client.Desk;

/// <summary>The last good answer of the server to each question that the work in the hangar asks, on this tablet.</summary>
/// <param name="tablet">The storage of the tablet.</param>
/// <param name="clock">The clock of the tablet.</param>
public sealed class KeptAnswers(TabletStore tablet, TimeProvider clock)
{
    // Of the desk only what the pages of the work show; proofs and drawings are asked of the server.
    private static readonly string[] Never = ["/log/check", "/revisions/", "/desk/"];
    private static readonly string[] Desk = ["/desk/view", "/desk/scenarios", .. Enum.GetNames<Aspect>().Select(a => "/desk/" + Map(a))];

    /// <summary>Why the last answer was not kept; empty when it was.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>The question for the whole aircraft from one side.</summary>
    public static string Map(string aspect) => $"map/{aspect}?zoom=1&across=0.5&down=0.5";

    /// <summary>Whether an answer to a question is kept.</summary>
    public static bool Keeps(string question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return question is "api/me" or "api/jobs" or "api/seal-key"
            || (question.StartsWith("api/jobs/", StringComparison.Ordinal) && (!Never.Any(n => question.Contains(n, StringComparison.Ordinal)) || Desk.Any(d => question.EndsWith(d, StringComparison.Ordinal))));
    }

    /// <summary>Keeps an answer. That it could not be kept disturbs nobody who has it.</summary>
    public async Task Keep(string question, string answer)
    {
        try
        {
            await tablet.Put(TabletStore.Kept, question, clock.GetUtcNow().ToString("O", CultureInfo.InvariantCulture) + "\n" + answer);
            Trouble = "";
        }
        catch (TabletStoreException e)
        {
            Trouble = e.Message;
        }
    }

    /// <summary>The answer kept last, and when; null when none is.</summary>
    public async Task<(DateTimeOffset At, string Answer)?> Find(string question)
    {
        try
        {
            return await tablet.Get(TabletStore.Kept, question) is { } kept && kept.IndexOf('\n', StringComparison.Ordinal) is > 0 and var end
                ? (DateTimeOffset.ParseExact(kept[..end], "O", CultureInfo.InvariantCulture), kept[(end + 1)..]) : null;
        }
        catch (TabletStoreException)
        {
            return null;
        }
    }

    /// <summary>Deletes all answers, as at signing out, and that a job was taken along. Entries that wait to be sent stay.</summary>
    /// <exception cref="TabletStoreException">They are not deleted.</exception>
    public async Task Clear() => await tablet.Change([.. await Gone(TabletStore.Kept), .. await Gone(TabletStore.Texts), .. await Gone(TabletStore.Facts, TakeAlong.Fact)]);

    private async Task<IEnumerable<TabletChange>> Gone(string store, string begin = "") =>
        (await tablet.Keys(store)).Where(k => k.StartsWith(begin, StringComparison.Ordinal)).Select(k => new TabletChange(store, k, null));
}
