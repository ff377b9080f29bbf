using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Substantiation;

namespace Fairlead.Cli;

/// <summary>Where a run writes, and what it may assume of the place.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">What is wrong, and progress.</param>
public sealed record Terminal(TextWriter Out, TextWriter Error)
{
    private const int LeastWidth = 40;
    private const int UsualWidth = 100;

    /// <summary>Columns of text.</summary>
    public int Width { get; init; } = UsualWidth;

    /// <summary>How a user starts this program, for the commands that are proposed.</summary>
    public string Command { get; init; } = "fairlead";

    /// <summary>Whether results may be coloured.</summary>
    public bool Colour { get; init; }

    /// <summary>Whether a person watches <see cref="Error"/>.</summary>
    public bool Interactive { get; init; }

    /// <summary>Whether a person watches <see cref="Out"/> too, and not a file or another program.</summary>
    public bool Watched { get; init; }

    /// <summary>Whether an unexpected error shows its trace.</summary>
    public bool Trace { get; init; }

    /// <summary>What a person or another program sends.</summary>
    public TextReader In { get; init; } = TextReader.Null;

    /// <summary>Where logs are kept when not in the job's folder: a connection string.</summary>
    public string? LogDatabase { get; init; }

    /// <summary>Asks for something nobody else may see.</summary>
    public Func<string, string> Secret { get; init; } = _ => "";

    /// <summary>The clock.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Asks for an early end.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>The terminal this process was started from.</summary>
    public static Terminal Console(CancellationToken stop) => new(System.Console.Out, System.Console.Error)
    {
        Width = System.Console.IsOutputRedirected ? UsualWidth : Math.Clamp(System.Console.WindowWidth - 1, LeastWidth, UsualWidth),
        Command = Environment.GetEnvironmentVariable("FAIRLEAD_COMMAND") is { Length: > 0 } command ? command : "fairlead",
        Colour = !System.Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
        Interactive = !System.Console.IsErrorRedirected,
        Watched = !System.Console.IsErrorRedirected && !System.Console.IsOutputRedirected,
        Trace = Environment.GetEnvironmentVariable("FAIRLEAD_DEBUG") == "1",
        In = System.Console.In,
        LogDatabase = Environment.GetEnvironmentVariable("FAIRLEAD_LOG"),
        Secret = SecretInput.Ask,
        Stop = stop,
    };

    /// <summary>A path as a shell takes it: in quotation marks when it holds more than letters, digits and the usual signs.</summary>
    public static string Quoted(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.Length > 0 && path.All(c => char.IsLetterOrDigit(c) || "/\\:._-+~".Contains(c, StringComparison.Ordinal)) ? path : $"\"{path}\"";
    }

    /// <summary>Does a piece of work that may take a while, and says so to a person who watches.</summary>
    public T Work<T>(string what, Func<T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Work(what, _ => work());
    }

    /// <summary>Does a piece of work that tells how much of it is done, in per cent.</summary>
    public T Work<T>(string what, Func<IProgress<int>, T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Follow(what, line => work(line));
    }

    /// <summary>Does a piece of work that tells how many of what are done.</summary>
    public T Watch<T>(string what, Func<IProgress<WorkDone>, T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Follow(what, line => work(line));
    }

    private T Follow<T>(string what, Func<ProgressLine, T> work)
    {
        Stop.ThrowIfCancellationRequested();
        var line = new ProgressLine(Interactive ? Error : TextWriter.Null, what);
        try
        {
            return work(line);
        }
        finally
        {
            line.Clear();
            Stop.ThrowIfCancellationRequested();
        }
    }

    /// <summary>Prints text that may be long, wrapped and indented.</summary>
    internal void Print(string text, int indent = 0) => Wrapping.Write(Out, text, Width, indent);

    /// <summary>A verdict in words, coloured where that is wanted: the words alone say it all.</summary>
    public string Word(Verdict verdict)
    {
        var word = VerdictWord.Of(verdict);
        return Colour ? $"\e[{Code(verdict)}m{word}\e[0m" : word;
    }

    private static string Code(Verdict verdict) => verdict switch
    {
        Verdict.Holds => "32",
        Verdict.Caution => "33",
        Verdict.CannotTell => "35",
        _ => "1;31",
    };
}
