using System.Collections.Immutable;

namespace Fairlead.Model.Reading;

/// <summary>A piece of a file with its place.</summary>
internal abstract record Node(Location At)
{
    /// <summary>What it is, for messages.</summary>
    public abstract string Form { get; }
}

internal sealed record ScalarNode(Location At, string Text) : Node(At)
{
    public override string Form => Text.Length == 0 ? "nothing" : $"'{Text}'";
}

/// <summary>A value that was refused and reported.</summary>
internal sealed record UnreadNode(Location At) : Node(At)
{
    public override string Form => "a value that is not read";
}

internal sealed record ListNode(Location At, ImmutableArray<Node> Items) : Node(At)
{
    public override string Form => "a list";
}

internal sealed record MapNode(Location At, ImmutableArray<Entry> Entries) : Node(At)
{
    public override string Form => "keys with values";
}

/// <summary>A key with its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="KeyAt">Where it stands.</param>
/// <param name="Value">The value.</param>
/// <param name="Down">How many lines further down all of it stands now than its places say.</param>
/// <param name="Piece">The piece of the file it was read from; null when the file was read whole.</param>
internal sealed record Entry(string Key, Location KeyAt, Node Value, int Down = 0, Piece? Piece = null);
