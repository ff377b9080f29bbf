using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A drawing on a page of its own, in its own size, with its own frame and title block.</summary>
/// <param name="Picture">The drawing.</param>
public sealed record DrawingSheet(Picture Picture) : Block
{
    private const int Level = 2;

    internal override double Beginning => 0;

    internal override void Lay(Flow flow) => flow.Sheet(Picture, Level);
}
