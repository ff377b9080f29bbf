namespace Fairlead.Drawings;

/// <summary>A box with a horizontal and a vertical axis on a picture.</summary>
internal sealed class PlotFrame(Point corner, double width, double height, Scale across, Scale up)
{
    public const double TickText = 2.8;
    public const double AxisText = 3.0;

    public double Left => corner.X;

    public double Right => corner.X + width;

    public double Top => corner.Y;

    public double Bottom => corner.Y + height;

    public double X(double value) => Left + ((value - across.Min) / (across.Max - across.Min) * width);

    public double Y(double value) => Bottom - ((value - up.Min) / (up.Max - up.Min) * height);

    public Point At(double x, double y) => new(X(x), Y(y));

    public IEnumerable<Shape> VerticalAxis(string caption)
    {
        foreach (var tick in up.Ticks)
        {
            yield return new Line(new(Left, Y(tick)), new(Right, Y(tick)), Style.Grid);
            yield return new Line(new(Left - 1, Y(tick)), new(Left, Y(tick)), Style.Thin);
            yield return new Text(new(Left - 1.8, Y(tick) + (TickText * TextMeasure.CapHeight / 2)), up.Label(tick), TickText, Ink.Quiet, Anchor.End);
        }

        yield return new Line(new(Left, Top), new(Left, Bottom), Style.Usual);
        yield return new Text(new(Left, Top - 3), caption, AxisText, Ink.Quiet);
    }

    public IEnumerable<Shape> HorizontalAxis(string caption)
    {
        foreach (var tick in across.Ticks)
        {
            yield return new Line(new(X(tick), Top), new(X(tick), Bottom), Style.Grid);
            yield return new Line(new(X(tick), Bottom), new(X(tick), Bottom + 1), Style.Thin);
            yield return new Text(new(X(tick), Bottom + 4.2), across.Label(tick), TickText, Ink.Quiet, Anchor.Middle);
        }

        yield return new Line(new(Left, Bottom), new(Right, Bottom), Style.Usual);
        yield return new Text(new(Right, Bottom + 8.8), caption, AxisText, Ink.Quiet, Anchor.End);
    }
}
