using System.Globalization;

namespace Fairlead.Cli.Output;

/// <summary>One line that says what goes on, written over as the work goes on.</summary>
internal sealed class ProgressLine : IProgress<int>
{
    private readonly TextWriter to;
    private readonly string what;
    private int shown = -1;

    public ProgressLine(TextWriter to, string what)
    {
        (this.to, this.what) = (to, what);
        to.Write($"\r{what} …");
    }

    public void Report(int value)
    {
        if (value != shown)
        {
            shown = value;
            to.Write($"\r{what} … {value.ToString(CultureInfo.InvariantCulture)} %");
        }
    }

    public void Clear() => to.Write("\r" + new string(' ', what.Length + 8) + "\r");
}
