using Fairlead.Client.Desk;
using Microsoft.AspNetCore.Components;

namespace Fairlead.Client.Shell;

/// <summary>A page of a job: it opens the job it names, and reads its own data again whenever the job has changed.</summary>
[Layout(typeof(JobLayout))]
public abstract class JobPage : ComponentBase, IDisposable
{
    private long read = -1;

    /// <summary>The job that is open.</summary>
    [Inject] protected OpenJob Job { get; set; } = null!;

    /// <summary>The name of the job.</summary>
    [Parameter] public string Name { get; set; } = "";

    /// <summary>Why the page's data could not be read; empty when they could.</summary>
    protected string Error { get; private set; } = "";

    /// <inheritdoc/>
    public void Dispose()
    {
        Job.Changed -= Refresh;
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Job.Changed += Refresh;

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        read = -1;
        await Job.Open(Name);
        await ReadAgain();
    }

    /// <summary>Ends what the page does by itself.</summary>
    protected virtual void Leave()
    {
    }

    /// <summary>Reads the page's data.</summary>
    protected virtual Task Read() => Task.CompletedTask;

    private void Refresh() => _ = InvokeAsync(ReadAgain);

    private async Task ReadAgain()
    {
        if (Job.View is { } view && view.Stamp != read)
        {
            read = view.Stamp;
            try
            {
                await Read();
                Error = "";
            }
            catch (ServerException e)
            {
                Error = e.Message;
            }
        }

        StateHasChanged();
    }
}
