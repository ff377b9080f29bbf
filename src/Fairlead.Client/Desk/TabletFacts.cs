using System.Globalization;
using System.Text.Json;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <summary>What is known of this tablet: its name, how its clock stands, and how far it knew each log.</summary>
/// <param name="tablet">The storage.</param>
/// <param name="link">The way to the server.</param>
public sealed class TabletFacts(TabletStore tablet, Link link)
{
    private const string Named = "tablet", Clock = "ahead", Seen = "seen/";
    private const int NameLength = 8;
    private string name = "";
    private double? kept;

    /// <summary>The name of this tablet, made once.</summary>
    /// <exception cref="TabletStoreException">The storage fails.</exception>
    public async Task<string> Name()
    {
        if (name.Length == 0)
        {
            var found = await tablet.Get(TabletStore.Facts, Named);
            if (found is null)
            {
                found = "tablet-" + (await tablet.NewId())[..NameLength];
                await tablet.Change(new TabletChange(TabletStore.Facts, Named, found));
            }

            name = found;
        }

        return name;
    }

    /// <summary>Seconds the server's clock was ahead when both were compared last, in this page or an earlier one; null when they never were.</summary>
    public async Task<double?> Ahead() => link.Ahead?.TotalSeconds
        ?? (await tablet.Get(TabletStore.Facts, Clock) is { } found && double.TryParse(found, NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) ? seconds : null);

    /// <summary>Keeps how the clocks stand now, when that has changed.</summary>
    public async Task KeepClock()
    {
        if (link.Ahead?.TotalSeconds is { } now && (kept is null || Math.Abs(now - kept.Value) > 1))
        {
            kept = now;
            await tablet.Put(TabletStore.Facts, Clock, now.ToString(CultureInfo.InvariantCulture));
        }
    }

    /// <summary>How far this tablet knew the log of a job; null when it saw nothing of it.</summary>
    public async Task<LogMark?> Mark(string job) => await tablet.Get(TabletStore.Facts, Seen + job) is { } found ? JsonSerializer.Deserialize<LogMark>(found, Server.Json) : null;

    /// <summary>Keeps how far the log was seen; it never goes back by itself.</summary>
    public async Task Saw(string job, LogMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (await Mark(job) is not { } old || mark.Sequence > old.Sequence)
        {
            await tablet.Change(new TabletChange(TabletStore.Facts, Seen + job, JsonSerializer.Serialize(mark, Server.Json)));
        }
    }

    /// <summary>Forgets how far a log was seen: the person has said that another one is right.</summary>
    public Task Forget(string job) => tablet.Change(new TabletChange(TabletStore.Facts, Seen + job, null));
}
