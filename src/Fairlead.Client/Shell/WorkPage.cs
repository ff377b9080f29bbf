using Fairlead.Client.Desk;
using Microsoft.AspNetCore.Components;

namespace Fairlead.Client.Shell;

/// <summary>A page of the work on a job. It shows the job as it was kept last, with its log, and reads both again after every entry.</summary>
public abstract class WorkPage : JobPage
{
    /// <summary>The server.</summary>
    [Inject] protected Server Server { get; set; } = null!;

    /// <summary>Why the last entry was not taken; empty when it was.</summary>
    protected string Refused { get; private set; } = "";

    /// <summary>Where the job's work is asked.</summary>
    protected string Route => $"api/jobs/{Uri.EscapeDataString(Name)}";

    /// <summary>Adds an entry to the log and reads the page again.</summary>
    protected async Task<bool> Enter(object entry)
    {
        try
        {
            await Server.Post<object>($"{Route}/log", entry);
            Refused = "";
            await Read();
            return true;
        }
        catch (ServerException e)
        {
            Refused = e.Message;
            return false;
        }
        finally
        {
            StateHasChanged();
        }
    }
}
