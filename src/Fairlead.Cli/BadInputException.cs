namespace Fairlead.Cli;

/// <summary>What the user gave cannot be used. All that is wrong is said in one go, a line each.</summary>
public sealed class BadInputException(params IReadOnlyList<string> lines) : Exception(string.Join('\n', lines))
{
    /// <summary>What is wrong.</summary>
    public IReadOnlyList<string> Lines { get; } = lines;
}
