using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A heading as it came to stand on a page: for bookmarks and the table of contents.</summary>
internal sealed record PlacedHeading(string Text, int Level, int Page, double Y, string Brief);

/// <summary>The pages under way: a cursor that runs down the column and starts a page when the room is used up.</summary>
internal sealed class Flow
{
    private readonly List<List<Shape>> pages = [[]];

    private readonly List<Picture?> sheets = [null];

    private readonly Dictionary<Block, object> measures;

    /// <summary>A flow of blocks that are laid for the first time.</summary>
    public Flow()
    {
        Contents = [];
        measures = new Dictionary<Block, object>(ReferenceEqualityComparer.Instance);
    }

    /// <summary>A flow that knows where headings stood when the same blocks were laid before, and how large they are.</summary>
    public Flow(Flow before) => (Contents, measures) = (before.Headings, before.measures);

    /// <summary>Where headings stood in the earlier pass; empty in the first.</summary>
    public IReadOnlyList<PlacedHeading> Contents { get; }

    /// <summary>Where headings stand in this pass.</summary>
    public List<PlacedHeading> Headings { get; } = [];

    /// <summary>The shapes of each page so far.</summary>
    public IReadOnlyList<IReadOnlyList<Shape>> Pages => pages;

    /// <summary>For each page the drawing that fills it, in its own size; null for a page of text.</summary>
    public IReadOnlyList<Picture?> Sheets => sheets;

    /// <summary>The cursor: the top of what comes next.</summary>
    public double Y { get; private set; } = PageFormat.Top;

    /// <summary>The room left on this page.</summary>
    public double Room => PageFormat.Bottom - Y;

    /// <summary>The height that the beginning of the next block needs: a heading stays with it.</summary>
    public double Company { get; set; }

    private bool AtTop => Y <= PageFormat.Top;

    /// <summary>What a block measures: worked out once, however often the blocks are laid.</summary>
    public T Measure<T>(Block block, Func<T> measure)
        where T : class
    {
        if (!measures.TryGetValue(block, out var known))
        {
            measures.Add(block, known = measure());
        }

        return (T)known;
    }

    /// <summary>Starts a page unless so much room is left; a page that is still empty is kept whatever is asked.</summary>
    public void Need(double height)
    {
        if (Room < height && !AtTop)
        {
            StartPage();
        }
    }

    /// <summary>Starts a page unless this one is still empty.</summary>
    public void BreakPage()
    {
        if (!AtTop || pages[^1].Count > 0)
        {
            StartPage();
        }
    }

    /// <summary>Gives a drawing a page of its own, noted under its title.</summary>
    public void Sheet(Picture drawing, int level)
    {
        BreakPage();
        Headings.Add(new PlacedHeading(drawing.Title, level, pages.Count - 1, 10, drawing.Title));
        pages[^1].AddRange(drawing.Shapes);
        sheets[^1] = drawing;
        StartPage();
    }

    /// <summary>Leaves room, except at the top of a page.</summary>
    public void Skip(double height)
    {
        if (!AtTop)
        {
            Y += height;
        }
    }

    /// <summary>Moves the cursor down by what was drawn.</summary>
    public void Advance(double height) => Y += height;

    /// <summary>Draws on the current page.</summary>
    public void Add(Shape shape) => pages[^1].Add(shape);

    /// <summary>Draws text whose line box begins a distance below the cursor.</summary>
    public void Write(double x, double below, string words, double size, Ink ink = Ink.Line, bool bold = false, Anchor anchor = Anchor.Start) =>
        Add(new Text(new(x, Y + below + Baseline(size)), words, size, ink, anchor, bold));

    /// <summary>Notes a heading at the cursor.</summary>
    public void Mark(string text, int level, string brief) => Headings.Add(new PlacedHeading(text, level, pages.Count - 1, Y, brief));

    /// <summary>The distance from the top of a line to its base line.</summary>
    public static double Baseline(double size) => size * (((Typesetting.Leading - 1) / 2) + 0.79);

    private void StartPage()
    {
        pages.Add([]);
        sheets.Add(null);
        Y = PageFormat.Top;
    }
}
