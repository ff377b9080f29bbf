using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Drawings;

/// <summary>A drawing as data: the same on screen (<see cref="SvgWriter"/>) and on paper (PDF). Millimetres; x to the right, y downwards, from the top left corner.</summary>
/// <param name="Width">Width, above 0 mm.</param>
/// <param name="Height">Height, above 0 mm.</param>
/// <param name="Title">What it shows: read out by screen readers.</param>
/// <param name="Description">What it says, in words, for a reader who cannot see it.</param>
/// <param name="Shapes">What is drawn, in this order: later covers earlier.</param>
public sealed record Picture(double Width, double Height, string Title, string Description, Sequence<Shape> Shapes);

/// <summary>A place on a picture, in millimetres.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Downwards.</param>
public readonly record struct Point(double X, double Y)
{
    /// <summary>This point moved.</summary>
    public Point Moved(double dx, double dy) => new(X + dx, Y + dy);
}

/// <summary>One thing drawn on a picture.</summary>
public abstract record Shape;

/// <summary>A photograph: a JPEG or PNG file as it is.</summary>
/// <param name="Corner">Its upper left corner.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
/// <param name="File">The file.</param>
public sealed record Photograph(Point Corner, double Width, double Height, ImmutableArray<byte> File) : Shape;

/// <summary>A straight line.</summary>
public sealed record Line(Point From, Point To, Style Style) : Shape;

/// <summary>An open line through points.</summary>
public sealed record Polyline(Sequence<Point> Points, Style Style) : Shape;

/// <summary>A closed line through points.</summary>
public sealed record Polygon(Sequence<Point> Points, Style Style) : Shape;

/// <summary>An upright rectangle.</summary>
/// <param name="Corner">Its top left corner.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
/// <param name="Style">How it is drawn.</param>
public sealed record Rect(Point Corner, double Width, double Height, Style Style) : Shape;

/// <summary>A circle.</summary>
public sealed record Circle(Point Centre, double Radius, Style Style) : Shape;

/// <summary>Which part of a text lies on its point.</summary>
public enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}

/// <summary>One line of text.</summary>
/// <param name="At">The anchor point, on the base line.</param>
/// <param name="Words">The text.</param>
/// <param name="Size">Font size, mm.</param>
/// <param name="Ink">Its colour.</param>
/// <param name="Anchor">Which part lies on the point.</param>
/// <param name="Bold">Semibold rather than regular.</param>
/// <param name="Angle">Turned clockwise about the point, degrees.</param>
public sealed record Text(Point At, string Words, double Size, Ink Ink = Ink.Line, Anchor Anchor = Anchor.Start, bool Bold = false, double Angle = 0) : Shape;
