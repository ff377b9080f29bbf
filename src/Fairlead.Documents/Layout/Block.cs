namespace Fairlead.Documents;

/// <summary>One piece of a document: it lays itself out on the flow of pages.</summary>
public abstract record Block
{
    /// <summary>The height that the beginning of this block needs below a heading, mm.</summary>
    internal virtual double Beginning => 14;

    /// <summary>Sets this block on the pages.</summary>
    internal abstract void Lay(Flow flow);
}

/// <summary>Room between blocks; it vanishes at the top of a page.</summary>
/// <param name="Height">Height, mm.</param>
public sealed record Gap(double Height) : Block
{
    internal override void Lay(Flow flow) => flow.Skip(Height);
}

/// <summary>What follows begins on a new page, unless the page is still empty.</summary>
public sealed record PageBreak : Block
{
    internal override void Lay(Flow flow) => flow.BreakPage();
}
