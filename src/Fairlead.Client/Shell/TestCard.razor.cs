using System.Globalization;
using Fairlead.Client.Desk;
using Fairlead.Substantiation.Tests;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace Fairlead.Client.Shell;

/// <summary>A test card: which line is being taken, and what was keyed in of it. What is entered stands in the log for good, so that nothing is entered but by a key.</summary>
public partial class TestCard : IDisposable
{
    // What counts as a pass where nothing is measured; anything else is written as it was seen.
    private const string AsExpected = "as expected";
    private readonly Dictionary<string, string> seen = new(StringComparer.Ordinal);
    private TestLineView? taking;
    private KeyedReading keyed = KeyedReading.In("");
    private string words = "", instrument = "", outside = "", wrong = "", shown = "", next = "";

    /// <summary>The card.</summary>
    [Parameter, EditorRequired] public TestView Card { get; set; } = null!;

    /// <summary>Makes an entry: kind, subject, what it tells.</summary>
    [Parameter, EditorRequired] public Func<string, string, IReadOnlyDictionary<string, string>, Task<bool>> Enter { get; set; } = null!;

    /// <summary>Signs: the signature, the authorisation, the PIN.</summary>
    [Parameter, EditorRequired] public Func<SignatureView, string, string, Task> Sign { get; set; } = null!;

    /// <summary>Why the last entry was not taken; empty when it was.</summary>
    [Parameter] public string Refused { get; set; } = "";

    [Inject] private IJSRuntime Script { get; set; } = null!;

    [Inject] private OpenJob Job { get; set; } = null!;

    [Inject] private Outbox Outbox { get; set; } = null!;

    private string Subject => "test/" + Card.Id;

    private string Trouble => wrong.Length > 0 ? wrong : Refused;

    /// <inheritdoc/>
    public void Dispose()
    {
        Job.Changed -= Refresh;
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Job.Changed += Refresh;

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (shown != Card.Id)
        {
            (shown, taking, wrong) = (Card.Id, null, "");
            seen.Clear();
            instrument = Card.Instruments.Where(i => i.Named).Select(i => i.Id).ToArray() is [var only] ? only : "";
        }

        taking = taking is null ? null : Card.Lines.FirstOrDefault(l => l.Id == taking.Id);
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (next.Length > 0)
        {
            var id = next;
            next = "";
            await using var focus = await Script.InvokeAsync<IJSObjectReference>("import", "./js/focus.js");
            await focus.InvokeVoidAsync("to", id);
        }
    }

    private static bool Measured(TestLineView line) => line.Unit.Length > 0 && line.Unit != ToldResult.Counted;

    private void Refresh() => _ = InvokeAsync(StateHasChanged);

    // What this tablet has entered and the log does not have yet.
    private PendingEntry? Mine(TestLineView line) => Outbox.Of(Job.Name, Subject).LastOrDefault(e => e.Payload.GetValueOrDefault("line") == line.Id);

    private string Found(TestLineView line) => Mine(line) is { } mine ? ToldResult.Value(field => mine.Payload.GetValueOrDefault(field, "")) : Bare(line);

    // The unit stands beside it.
    private static string Bare(TestLineView line) => line.Unit.Length > 0 && line.Result.EndsWith(" " + line.Unit, StringComparison.Ordinal) ? line.Result[..^(line.Unit.Length + 1)] : line.Result;

    private void Take(TestLineView line)
    {
        if (taking?.Id != line.Id)
        {
            (taking, keyed, words, wrong) = (line, KeyedReading.In(line.Unit), "", "");
        }
    }

    // After an entry the field keeps the focus: who types on has taken it again.
    private void Type(TestLineView line, string typed)
    {
        Take(line);
        words = typed;
        keyed = KeyedReading.Typed(typed, keyed.Unit) ?? KeyedReading.In(keyed.Unit);
    }

    private void Keyed(KeyedReading reading) => (keyed, words, wrong) = (reading, reading.Text, "");

    private Task Key(KeyboardEventArgs e)
    {
        if (e.Key == "Escape")
        {
            taking = null;
        }

        return e.Key == "Enter" ? Measure() : Task.CompletedTask;
    }

    // What the log would refuse later is said while the person is still at the aircraft.
    private async Task Measure()
    {
        if (taking is not { } line || words.Trim().Length == 0)
        {
            return;
        }

        var entered = words;
        var reading = KeyedReading.Typed(entered, keyed.Unit);
        wrong = reading is null ? $"'{words}' is no reading in {line.Unit}."
            : reading.Open && line.Due?.Most is null ? "Open beyond what range? Key in the end of the range, and the key for more than."
            : Measured(line) && !reading.Open && instrument.Length == 0 ? "Say first which instrument it was measured with." : Outside;
        if (wrong.Length == 0 && await Enter(reading!.Open || line.Unit == ToldResult.Counted ? "observed" : "measured", Subject, Told(line, reading)) && taking?.Id == line.Id && words == entered)
        {
            // Whoever keyed on while the entry was on its way goes on where they are: a key that is lost makes another reading.
            GoOn(line);
        }
    }

    private Dictionary<string, string> Told(TestLineView line, KeyedReading reading)
    {
        var told = new Dictionary<string, string>(StringComparer.Ordinal) { ["line"] = line.Id, ["outside"] = outside };
        var number = reading.As(line.Unit)?.ToString("0.############", CultureInfo.InvariantCulture) ?? "";
        if (reading.Open || line.Unit == ToldResult.Counted)
        {
            told["found"] = reading.Open ? reading.Text : number;
            return told;
        }

        (told["value"], told["unit"], told["instrument"]) = (number, line.Unit, instrument);
        if (reading.Beyond)
        {
            told["beyond"] = "yes";
        }

        return told;
    }

    private Task See(TestLineView line) => Observe(line, seen.GetValueOrDefault(line.Id, "").Trim());

    private async Task Observe(TestLineView line, string found)
    {
        wrong = Outside;
        if (found.Length > 0 && wrong.Length == 0 && await Enter("observed", Subject, new Dictionary<string, string> { ["line"] = line.Id, ["found"] = found, ["outside"] = outside }))
        {
            seen.Remove(line.Id);
        }
    }

    private string Outside => Card.Kind == "ramp" && outside.Length == 0 ? "Say first who watches outside." : "";

    // The next line that has no result yet; the last one leaves the keys.
    private void GoOn(TestLineView line)
    {
        var at = Card.Lines.ToList().FindIndex(l => l.Id == line.Id);
        var left = Enumerable.Range(at + 1, Card.Lines.Length - at - 1).Where(i => Card.Lines[i].Unit.Length > 0 && Card.Lines[i].Result.Length == 0 && Mine(Card.Lines[i]) is null).ToArray();
        taking = null;
        if (left is [var first, ..])
        {
            Take(Card.Lines[first]);
            next = $"found-{first.ToString(CultureInfo.InvariantCulture)}";
        }

        StateHasChanged();
    }
}
