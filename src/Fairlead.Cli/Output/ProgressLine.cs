using System.Globalization;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Output;

/// <summary>One line that says what goes on, written over as the work goes on.</summary>
internal sealed class ProgressLine : IProgress<int>, IProgress<WorkDone>
{
    private readonly TextWriter to;
    private readonly string what;
    private string shown = "";
    private int width;

    public ProgressLine(TextWriter to, string what)
    {
        (this.to, this.what) = (to, what);
        Show("");
    }

    public void Report(int value) => Show(string.Create(CultureInfo.InvariantCulture, $" {value} %"));

    public void Report(WorkDone value) => Show(string.Create(CultureInfo.InvariantCulture, $" {value.What}, {value.Done} of {value.Of} {value.Each}"));

    public void Clear() => to.Write("\r" + new string(' ', width) + "\r");

    private void Show(string done)
    {
        var text = $"{what} …{done}";
        if (text != shown)
        {
            (shown, width) = (text, Math.Max(width, text.Length));
            to.Write("\r" + text.PadRight(width));
        }
    }
}
