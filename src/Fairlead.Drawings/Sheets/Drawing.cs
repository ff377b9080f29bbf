using Fairlead.Substantiation;

namespace Fairlead.Drawings;

/// <summary>What a drawing shows.</summary>
public enum DrawingKind
{
    /// <summary>The aircraft from the side, from above and from the front.</summary>
    Aircraft,

    /// <summary>Wiring, system by system.</summary>
    Wiring,

    /// <summary>Connectors from the wire side.</summary>
    Connectors,

    /// <summary>Harnesses laid flat: the whole at a scale, and at true size on tiles.</summary>
    FormBoard,

    /// <summary>Holes of racks, shelves and skins.</summary>
    Holes,
}

/// <summary>A finished drawing sheet.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="Name">Its name, good for a file: letters, digits and hyphens.</param>
/// <param name="Picture">The sheet with its frame.</param>
/// <param name="Tile">Whether it is one tile of a drawing at true size, to be printed and joined with others.</param>
public sealed record Drawing(DrawingKind Kind, string Name, Picture Picture, bool Tile = false);

/// <summary>What every drawing carries.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="Order">Work order number.</param>
/// <param name="Revision">Revision of the job.</param>
/// <param name="Hash">Hash of the job's description, SHA-256 in hexadecimal.</param>
internal sealed record DrawingMarks(string Registration, string Order, string Revision, string Hash)
{
    public static DrawingMarks Of(Assessment assessment, string hash) =>
        new(assessment.Job.Aircraft.Registration, assessment.Job.Order.Number, assessment.Job.Order.Revision, hash);
}

/// <summary>A sheet before it is framed and numbered.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">Its title.</param>
/// <param name="Description">What it shows, in words.</param>
/// <param name="Scale">Its scale, for example "1:20"; empty when it has none.</param>
/// <param name="Content">What is drawn.</param>
internal sealed record Draft(string Name, string Title, string Description, string Scale, Canvas Content);
