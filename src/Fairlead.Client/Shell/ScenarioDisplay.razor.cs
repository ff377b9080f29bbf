using System.Globalization;
using Fairlead.Client.Desk;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace Fairlead.Client.Shell;

/// <summary>Plays a scenario.</summary>
public partial class ScenarioDisplay : IDisposable
{
    private const int Rings = 4;
    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);
    private ScenarioPlayer player = null!;
    private PeriodicTimer? timer;

    /// <summary>The scenario.</summary>
    [Parameter, EditorRequired] public ScenarioView Scenario { get; set; } = null!;

    [Inject] private OpenJob Job { get; set; } = null!;

    private string Said => player.Blips.Any() ? string.Join("; ", player.Blips.Select(b => b.Words)) : "No traffic is shown.";

    /// <inheritdoc/>
    public void Dispose()
    {
        timer?.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (player is null || player.Scenario != Scenario)
        {
            player = ScenarioPlayer.Of(Scenario);
        }
    }

    private async Task Toggle()
    {
        player = player.Toggled();
        timer?.Dispose();
        timer = null;
        if (player.Playing)
        {
            using var mine = timer = new PeriodicTimer(Second);
            while (player.Playing && await mine.WaitForNextTickAsync())
            {
                player = player.Ticked();
                StateHasChanged();
            }
        }
    }

    private void To(int second) => player = player.To(second);

    private void Reach(double reach) => player = player with { Reach = reach };

    // The space bar presses the key that has the focus by itself.
    private void Key(KeyboardEventArgs e)
    {
        if (e.Key is "," or ".")
        {
            To(player.Second + (e.Key == "." ? 1 : -1));
        }
    }

    private string Sheet(string track) => player.Scenario.Tracks.First(t => t.Id == track).Subject;

    private string RingText(int ring) => N(player.Reach * ring / Rings);

    private static string N(double value) => Math.Round(value, 2).ToString(Invariant);
}
