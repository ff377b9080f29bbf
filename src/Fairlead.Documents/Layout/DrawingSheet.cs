using Fairlead.Calculations;
using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A heading on a sheet: for bookmarks and the table of contents.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Level">Its level.</param>
/// <param name="Y">Where it stands, mm from the top.</param>
/// <param name="Brief">Its words in the table of contents.</param>
public readonly record struct SheetHeading(string Text, int Level, double Y, string Brief);

/// <summary>A drawing or card on a page of its own, in its own size, with its own frame and title block.</summary>
/// <param name="Picture">What is on the page.</param>
/// <param name="Headings">The headings on it.</param>
/// <param name="Edge">How far above the foot of the page its place in the document is written, mm; null where it is not.</param>
public sealed record DrawingSheet(Picture Picture, Sequence<SheetHeading> Headings, double? Edge) : Block
{
    /// <summary>A drawing, noted under its title.</summary>
    public DrawingSheet(Picture picture)
        : this(picture, [new SheetHeading(picture?.Title ?? throw new ArgumentNullException(nameof(picture)), 2, 10, picture.Title)], Edge: 5)
    {
    }

    internal override double Beginning => 0;

    internal override void Lay(Flow flow) => flow.Sheet(this);
}
