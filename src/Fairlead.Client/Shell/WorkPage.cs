using Fairlead.Client.Desk;
using Fairlead.Workbench.Views;
using Microsoft.AspNetCore.Components;

namespace Fairlead.Client.Shell;

/// <summary>A page of the work on a job. It shows the job as it was kept last, with its log, and reads both again after every entry.</summary>
public abstract class WorkPage : JobPage
{
    private static readonly TabletNote Blank = new("", "", default, default);
    private long taken;

    /// <summary>The server.</summary>
    [Inject] protected Server Server { get; set; } = null!;

    /// <summary>Why the last entry was not taken; empty when it was.</summary>
    protected string Refused { get; private set; } = "";

    /// <summary>Where the job's work is asked.</summary>
    protected string Route => $"api/jobs/{Uri.EscapeDataString(Name)}";

    /// <summary>The entries on their way to the log.</summary>
    [Inject] protected Outbox Outbox { get; set; } = null!;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        taken = Outbox.Taken;
        Outbox.Changed += Follow;
    }

    /// <inheritdoc/>
    protected override void Leave() => Outbox.Changed -= Follow;

    /// <summary>Makes an entry in the name of who works at the page, and reads the page again. It is kept on the tablet before this returns; true unless it was refused.</summary>
    /// <param name="kind">What happened.</param>
    /// <param name="subject">To what.</param>
    /// <param name="payload">What else it tells.</param>
    /// <param name="secret">PIN or password of a signature.</param>
    protected async Task<bool> Enter(string kind, string subject, IReadOnlyDictionary<string, string> payload, string secret = "")
    {
        var fate = await Outbox.Enter(new PendingEntry("", Name, Job.Who, kind, subject, payload, Blank), secret);
        Refused = fate.Why;
        await Renew();
        return fate.Kind != FateKind.Refused;
    }

    /// <summary>Says why something cannot be entered.</summary>
    protected Task Refuse(string why)
    {
        Refused = why;
        return Task.CompletedTask;
    }

    private void Follow() => _ = InvokeAsync(async () =>
    {
        if (Outbox.Taken != taken)
        {
            await Renew();
        }

        StateHasChanged();
    });

    private async Task Renew()
    {
        taken = Outbox.Taken;
        try
        {
            await Read();
        }
        catch (ServerException e)
        {
            Refused = Refused.Length > 0 ? Refused : e.Message;
        }

        StateHasChanged();
    }
}
