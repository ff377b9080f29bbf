using Fairlead.Calculations;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Cards;

/// <summary>A fact at the head of a card.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">Its value.</param>
public readonly record struct CardFact(string Name, string Value);

/// <summary>A table of figures needed at the place. An empty cell is filled in by hand.</summary>
/// <param name="Title">Title.</param>
/// <param name="Columns">Headings of the columns.</param>
/// <param name="Rows">The rows, each with a cell for each column.</param>
public sealed record CardTable(string Title, Sequence<string> Columns, Sequence<Sequence<string>> Rows)
{
    /// <summary>Words below the table; empty for none.</summary>
    public string Note { get; init; } = "";
}

/// <summary>A line to sign: one thing, one line, one signature.</summary>
/// <param name="What">What is signed for.</param>
/// <param name="Role">By whom: who did it, a second person at a stage, an independent inspection.</param>
/// <param name="Scope">Authorisation needed; empty for any.</param>
/// <param name="Subject">What the log calls it, for example <c>stage/SEAL-E1/before-sealing</c>.</param>
public sealed record CardSignature(string What, string Role, string Scope, string Subject)
{
    /// <summary>The role as the log has it.</summary>
    public string Entered => Role.StartsWith("work", StringComparison.Ordinal) ? "work" : "inspection";
}

/// <summary>A job card: everything one person needs for one task, at the place. The card of a test task is its test card.</summary>
/// <param name="Task">The task.</param>
/// <param name="Subject">What the log calls it.</param>
/// <param name="Facts">Facts at its head.</param>
/// <param name="Steps">Steps in order.</param>
/// <param name="Tables">Figures.</param>
/// <param name="Signatures">Lines to sign, in the order in which they are signed.</param>
public sealed record JobCard(JobTask Task, string Subject, Sequence<CardFact> Facts, Sequence<string> Steps, Sequence<CardTable> Tables, Sequence<CardSignature> Signatures)
{
    /// <summary>What every card defers to.</summary>
    public const string Advice = "The approved data, the aircraft's own manuals, the local authority and licensed staff decide. Where this card and they differ, stop and ask.";

    /// <summary>Its id: that of its task.</summary>
    public string Id => Task.Id;
}
