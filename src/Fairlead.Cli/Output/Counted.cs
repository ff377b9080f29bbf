using System.Globalization;

namespace Fairlead.Cli.Output;

/// <summary>Numbers of things, in words.</summary>
internal static class Counted
{
    /// <summary>"1 problem", "3 problems".</summary>
    public static string Of(int count, string thing) => $"{count.ToString(CultureInfo.InvariantCulture)} {thing}{(count == 1 ? "" : "s")}";
}
