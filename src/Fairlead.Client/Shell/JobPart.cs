using Fairlead.Client.Desk;
using Microsoft.AspNetCore.Components;

namespace Fairlead.Client.Shell;

/// <summary>A part of the frame around the pages of a job: it is drawn again whenever the job has changed.</summary>
public abstract class JobPart : ComponentBase, IDisposable
{
    /// <summary>The job that is open.</summary>
    [Inject] protected OpenJob Job { get; set; } = null!;

    /// <inheritdoc/>
    public void Dispose()
    {
        Job.Changed -= Refresh;
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Job.Changed += Refresh;

    /// <summary>Ends what the part does by itself.</summary>
    protected virtual void Leave()
    {
    }

    private void Refresh() => _ = InvokeAsync(StateHasChanged);
}
