using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A heading as it came to stand on a page: for bookmarks and the table of contents.</summary>
internal sealed record PlacedHeading(string Text, int Level, int Page, double Y, string Brief);

/// <summary>The pages under way: a cursor that runs down the column and starts a page when the room is used up.</summary>
internal sealed class Flow
{
    private const int NarrowCount = 2;
    private const double Gutter = 6;

    // Body text of 9 points becomes 7.5, the finest print 5.9.
    private const double Reduction = 0.83;

    private readonly List<List<Shape>> pages = [[]];

    private int column;

    private double columnTop = PageFormat.Top;

    private readonly List<DrawingSheet?> sheets = [null];

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
    public IReadOnlyList<DrawingSheet?> Sheets => sheets;

    /// <summary>The cursor: the top of what comes next.</summary>
    public double Y { get; private set; } = PageFormat.Top;

    /// <summary>Whether the text is set small in columns side by side. Blocks need not know: they are laid at their usual size in a column that is then reduced.</summary>
    public bool Dense { get; private set; }

    /// <summary>The width of the column, before it is reduced.</summary>
    public double Width => Dense ? (PageFormat.ColumnWidth - ((NarrowCount - 1) * Gutter)) / NarrowCount / Reduction : PageFormat.ColumnWidth;

    /// <summary>The right edge of the column.</summary>
    public double Right => PageFormat.Left + Width;

    /// <summary>The height of a whole column.</summary>
    public double Height => (PageFormat.Bottom - PageFormat.Top) / (Dense ? Reduction : 1);

    /// <summary>The room left in this column.</summary>
    public double Room => PageFormat.Top + ((PageFormat.Bottom - columnTop) / (Dense ? Reduction : 1)) - Y;

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

    /// <summary>Starts a column unless so much room is left; one that is still empty is kept whatever is asked.</summary>
    public void Need(double height)
    {
        if (Room < height && !AtTop)
        {
            StartColumn();
        }
    }

    /// <summary>Starts the next column, or a page after the last, unless this one is still empty.</summary>
    public void Break()
    {
        if (!AtTop || pages[^1].Count > 0)
        {
            StartColumn();
        }
    }

    /// <summary>From here on two columns, reduced.</summary>
    public void Narrow() => (Dense, column, columnTop, Y) = (true, 0, Y, PageFormat.Top);

    /// <summary>One column again, on a new page.</summary>
    public void Widen()
    {
        Dense = false;
        StartPage();
    }

    /// <summary>Starts a page unless this one is still empty.</summary>
    public void BreakPage()
    {
        if (!AtTop || pages[^1].Count > 0)
        {
            StartPage();
        }
    }

    /// <summary>Gives a sheet a page of its own.</summary>
    public void Sheet(DrawingSheet sheet)
    {
        BreakPage();
        foreach (var (text, level, y, brief) in sheet.Headings)
        {
            Headings.Add(new PlacedHeading(text, level, pages.Count - 1, y, brief));
        }

        pages[^1].AddRange(sheet.Picture.Shapes);
        sheets[^1] = sheet;
        StartPage();
    }

    /// <summary>Drops the page that was started after the last sheet when nothing came to stand on it.</summary>
    public void End()
    {
        if (pages.Count > 1 && pages[^1].Count == 0)
        {
            pages.RemoveAt(pages.Count - 1);
            sheets.RemoveAt(sheets.Count - 1);
        }
    }

    /// <summary>Leaves room, except at the top of a page.</summary>
    public void Skip(double height)
    {
        if (!AtTop)
        {
            Y += Dense ? height / 2 : height;
        }
    }

    /// <summary>Moves the cursor down by what was drawn.</summary>
    public void Advance(double height) => Y += height;

    /// <summary>Draws on the current page.</summary>
    public void Add(Shape shape) => pages[^1].Add(Dense ? Placement.Of(shape, ColumnLeft - (PageFormat.Left * Reduction), columnTop - (PageFormat.Top * Reduction), Reduction) : shape);

    /// <summary>Draws text whose line box begins a distance below the cursor.</summary>
    public void Write(double x, double below, string words, double size, Ink ink = Ink.Line, bool bold = false, Anchor anchor = Anchor.Start) =>
        Add(new Text(new(x, Y + below + Baseline(size)), words, size, ink, anchor, bold));

    /// <summary>Notes a heading at the cursor.</summary>
    public void Mark(string text, int level, string brief) => Headings.Add(new PlacedHeading(text, level, pages.Count - 1, Dense ? columnTop + ((Y - PageFormat.Top) * Reduction) : Y, brief));

    /// <summary>The distance from the top of a line to its base line.</summary>
    public static double Baseline(double size) => size * (((Typesetting.Leading - 1) / 2) + 0.79);

    private double ColumnLeft => PageFormat.Left + (column * ((PageFormat.ColumnWidth + Gutter) / NarrowCount));

    private void StartColumn()
    {
        if (!Dense || column == NarrowCount - 1)
        {
            StartPage();
            return;
        }

        column++;
        Y = PageFormat.Top;
    }

    private void StartPage()
    {
        (column, columnTop) = (0, PageFormat.Top);
        pages.Add([]);
        sheets.Add(null);
        Y = PageFormat.Top;
    }
}
