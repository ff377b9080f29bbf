using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Client.Desk;
using Fairlead.Workbench.Maps;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace Fairlead.Client.Shell;

/// <summary>The map: what is seen of it, what is picked, and what is being dragged.</summary>
public partial class AircraftMap : IDisposable
{
    // Half of what a finger needs, in millimetres of the drawing.
    private const double Finger = 4;
    private const double Slip = 1;
    private static readonly (string Word, string Side)[] Sides = [("Side", "Side"), ("Plan", "Plan"), ("Front", "Front")];
    private static readonly (string Sign, string Word, int Across, int Down)[] Pans = [("←", "To the left", -1, 0), ("→", "To the right", 1, 0), ("↑", "Up", 0, -1), ("↓", "Down", 0, 1)];
    private MapView? map;
    private MapAbout? about;
    private MapLook look = new();
    private IJSObjectReference? browser;
    private ElementReference sheet;
    private MapMark? held;
    private (double X, double Y) start, moved;
    private double perPixel;
    private string aspect = "Side", picked = "", error = "";
    private bool zones;
    private long read = -1, shown = -1;

    /// <summary>Panels that stand open now: they are hatched.</summary>
    [Parameter] public ImmutableHashSet<string> Open { get; set; } = [];

    [Inject] private OpenJob Job { get; set; } = null!;

    [Inject] private IJSRuntime Script { get; set; } = null!;

    private MapMark? Chosen => map?.Marks.FirstOrDefault(m => m.Path == picked);

    /// <inheritdoc/>
    public void Dispose()
    {
        Job.Changed -= Refresh;
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        Job.Changed += Refresh;
        browser = await Script.InvokeAsync<IJSObjectReference>("import", "./js/map.js");
        await Read();
    }

    private void Refresh() => _ = InvokeAsync(async () =>
    {
        if (Job.View is { } view && view.Stamp != read)
        {
            await Read();
        }
    });

    private async Task Read()
    {
        read = Job.View?.Stamp ?? -1;
        try
        {
            var stamp = read;
            map = await Job.Map(aspect, look);
            shown = stamp;
            about = picked.Length > 0 ? await Job.About(picked) : null;
            error = "";
        }
        catch (ServerException e)
        {
            error = e.Message;
        }

        StateHasChanged();
    }

    private Task From(string side)
    {
        (aspect, look) = (side, new MapLook());
        return Read();
    }

    private Task Look(MapLook next)
    {
        look = next;
        return Read();
    }

    private async Task Pick(string path)
    {
        if (path != picked)
        {
            (picked, about) = (path, null);
            await Read();
        }
    }

    private async Task Take(MapMark mark, PointerEventArgs e)
    {
        if (mark.Movable && browser is not null && map is not null)
        {
            (held, start, moved) = (mark, (e.ClientX, e.ClientY), (0, 0));
            perPixel = map.Width / await browser.InvokeAsync<double>("width", sheet);
            await browser.InvokeVoidAsync("hold", sheet, e.PointerId);
        }
    }

    private void Drag(PointerEventArgs e)
    {
        if (held is not null)
        {
            moved = ((e.ClientX - start.X) * perPixel, (e.ClientY - start.Y) * perPixel);
        }
    }

    private async Task Drop(PointerEventArgs e)
    {
        if (held is not { } mark || map is null)
        {
            return;
        }

        var ((right, down), slip) = (moved, Math.Max(Math.Abs(moved.X), Math.Abs(moved.Y)) < Slip);
        Cancel();
        await Pick(mark.Path);
        if (!slip && MapMoves.Of(map, mark, right, down) is { IsEmpty: false } edits)
        {
            await Job.Edit([.. edits]);
        }
    }

    private void Cancel() => (held, moved) = (null, (0, 0));

    private async Task Key(MapMark mark, KeyboardEventArgs e)
    {
        var by = e.ShiftKey ? 10 : 1;
        var (right, down) = e.Key switch { "ArrowLeft" => (-by, 0), "ArrowRight" => (by, 0), "ArrowUp" => (0, -by), "ArrowDown" => (0, by), _ => (0, 0) };
        if (e.Key is "Enter" or " ")
        {
            await Pick(mark.Path);
        }
        // A step goes from where it stands: not while the last one is still being drawn.
        else if ((right, down) != (0, 0) && mark.Movable && mark.Path == picked && map is not null && !Job.Busy && shown == Job.View?.Stamp)
        {
            await Job.Edit([.. MapMoves.Steps(map, mark, right, down)]);
        }
    }

    private string At(MapMark m) => m.Path == held?.Path ? $"translate({N(m.X + moved.X)} {N(m.Y + moved.Y)})" : $"translate({N(m.X)} {N(m.Y)})";

    private string Look(MapMark m) => string.Join(' ', "mark", m.Kind.ToString().ToLowerInvariant(), m.Path == picked ? "picked" : "", m.Path == held?.Path ? "held" : "", m.Kind == MapKind.Panel && Open.Contains(m.Id) ? "open" : "");

    private string Words(MapMark m) => m.Findings == 0 ? $"{Sort(m)} {m.Id}, {m.Name}" : $"{Sort(m)} {m.Id}, {m.Name}: {m.Verdict}, {m.Findings.ToString(CultureInfo.InvariantCulture)} findings";

    private string Sort(MapMark m) => m.Kind switch { MapKind.Panel => Open.Contains(m.Id) ? "Open panel" : "Panel", MapKind.Antenna => "Antenna", MapKind.Before => "Fitted before", _ => "Box" };

    private static double Reach(double side) => Math.Max(side / 2, Finger / 2);

    private static string Pressed(bool pressed) => pressed ? "true" : "false";

    private static string N(double value) => Math.Round(value, 3).ToString(CultureInfo.InvariantCulture);
}
