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

/// <summary>What follows begins on a new page, unless the page is still empty or has room enough.</summary>
/// <param name="Enough">The room that is enough to go on, mm; a new page in any case unless given.</param>
public sealed record PageBreak(double Enough = double.PositiveInfinity) : Block
{
    /// <summary>Half a page is room enough for a part that nobody takes out of the document.</summary>
    public static PageBreak Soft { get; } = new(120);

    internal override void Lay(Flow flow)
    {
        if (flow.Room < Enough)
        {
            flow.BreakPage();
        }
    }
}

/// <summary>What follows is set small in columns side by side, from here on until the next <see cref="FullWidth"/>: for working that is looked up and not read through.</summary>
public sealed record NarrowColumns : Block
{
    internal override double Beginning => 0;

    internal override void Lay(Flow flow) => flow.Narrow();
}

/// <summary>Ends <see cref="NarrowColumns"/>: what follows has the whole width again, on a new page.</summary>
public sealed record FullWidth : Block
{
    internal override double Beginning => 0;

    internal override void Lay(Flow flow) => flow.Widen();
}
