using System.CommandLine;

namespace Fairlead.Cli.Commands;

/// <summary>The option for the form of the result.</summary>
internal static class Formats
{
    /// <summary><c>--format</c>, one of some words; the first is used when it is left out.</summary>
    public static Option<string> Option(params string[] words)
    {
        var option = new Option<string>("--format") { Description = $"Form of the result: {string.Join(", ", words)}.", DefaultValueFactory = _ => words[0] };
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
