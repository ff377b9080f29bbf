using System.Globalization;
using Fairlead.Drawings.Views;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;
using Microsoft.JSInterop;

namespace Fairlead.Client.Desk;

/// <summary>How far a job is taken along.</summary>
/// <param name="Done">Answers kept.</param>
/// <param name="Of">Answers asked for.</param>
public sealed record Taking(int Done, int Of);

/// <summary>Takes a job along: asks everything that the pages of the work show, so that all of it is kept on this tablet.</summary>
public sealed class TakeAlong(Server server, Link link, OpenJob job, KeptAnswers kept, TabletStore tablet, TabletFacts facts, TimeProvider clock, IJSRuntime script)
{
    /// <summary>What begins the name of the fact that a job was taken along.</summary>
    internal const string Fact = "taken/";

    private static readonly string[] Routes = ["tasks", "tests", "handover", "diagnosis", "kit", "cutting", "marks", "plan", "release", "log", "log/kinds", "photographs", "people"];

    /// <summary>When a job was taken along last; null when it was not.</summary>
    public async Task<DateTimeOffset?> Taken(string name)
    {
        try
        {
            return await tablet.Get(TabletStore.Facts, Fact + name) is { } at ? DateTimeOffset.ParseExact(at, "O", CultureInfo.InvariantCulture) : null;
        }
        catch (TabletStoreException)
        {
            return null;
        }
    }

    /// <summary>Takes the open job along and says what is wanting; nothing when all is kept.</summary>
    /// <exception cref="ServerException">The server does not answer.</exception>
    /// <exception cref="TabletStoreException">The tablet does not keep it.</exception>
    public async Task<IReadOnlyList<string>> Take(Action<Taking> told)
    {
        ArgumentNullException.ThrowIfNull(told);
        var route = $"api/jobs/{Uri.EscapeDataString(job.Name)}";
        Func<Task>[] asks =
        [
            () => server.Fresh("api/me"), () => server.Fresh("api/jobs"), () => server.Fresh("api/seal-key"),
            .. Routes.Select(r => (Func<Task>)(() => server.Fresh($"{route}/{r}"))),
            () => job.Ask<ScenarioView[]>("scenarios"),
            .. Enum.GetNames<Aspect>().Select(a => (Func<Task>)(() => job.Map(a, new MapLook()))),
        ];
        for (var i = 0; i < asks.Length; i++)
        {
            told(new Taking(i, asks.Length));
            await asks[i]();
            if (link.Away)
            {
                throw new ServerException(System.Net.HttpStatusCode.ServiceUnavailable, "The server stopped answering; what was kept before stays.") { Away = true };
            }

            if (kept.Trouble.Length > 0)
            {
                throw new TabletStoreException(kept.Trouble, full: false);
            }
        }

        await facts.Saw(job.Name, await server.Get<LogMark>($"{route}/log/head"));
        await facts.KeepClock();
        var stays = await tablet.Persist();
        var program = await script.InvokeAsync<bool>("fairleadKept");
        await tablet.Change(new TabletChange(TabletStore.Facts, Fact + job.Name, clock.GetUtcNow().ToString("O", CultureInfo.InvariantCulture)));
        told(new Taking(asks.Length, asks.Length));
        return
        [
            .. stays ? [] : new[] { "The browser has not promised to keep this storage: it may clear it when the tablet runs short. Send what waits soon." },
            .. program ? [] : new[] { "These pages themselves are not kept: this browser keeps them only where it trusts the server's certificate. Leave this page open." },
        ];
    }
}
