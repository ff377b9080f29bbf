using Fairlead.Calculations;
using System.Collections.Immutable;

namespace Fairlead.Documents;

/// <summary>A document as data: what it says, and the files it carries.</summary>
/// <param name="Info">Title, date and identity.</param>
/// <param name="Blocks">What it says, in order.</param>
/// <param name="Attachments">Files carried inside.</param>
public sealed record Document(DocumentInfo Info, Sequence<Block> Blocks, Sequence<Attachment> Attachments = default);

/// <summary>What identifies a document. Nothing here is made up by the writer: the same document with the same info gives the same bytes.</summary>
/// <param name="Title">Title: on every page, and in the metadata.</param>
/// <param name="Subject">One line on what it is about.</param>
/// <param name="Author">Who issues it.</param>
/// <param name="Date">Its date.</param>
/// <param name="JobHash">The hash of the job it was made from: on every page, and the source of the file's identifier.</param>
public sealed record DocumentInfo(string Title, string Subject, string Author, DateTimeOffset Date, string JobHash);

/// <summary>What an attached file is to the document.</summary>
public enum Relationship
{
    /// <summary>The document was made from it.</summary>
    Source,

    /// <summary>Data shown in the document.</summary>
    Data,
}

/// <summary>A file carried inside a document.</summary>
/// <param name="Name">File name.</param>
/// <param name="MediaType">Its media type, for example <c>application/zip</c>.</param>
/// <param name="Description">What it is.</param>
/// <param name="Relationship">What it is to the document.</param>
/// <param name="Content">Its bytes.</param>
public sealed record Attachment(string Name, string MediaType, string Description, Relationship Relationship, ImmutableArray<byte> Content);
