namespace Fairlead.Drawings;

/// <summary>The colours of a drawing. There are no others: ink on paper, with one accent.</summary>
public enum Ink
{
    /// <summary>Nothing is drawn.</summary>
    None,

    /// <summary>Paper white.</summary>
    Paper,

    /// <summary>Ink blue: lines and text.</summary>
    Line,

    /// <summary>Softer ink: axes, captions, what was there before.</summary>
    Quiet,

    /// <summary>A light tint of the ink: grids, header rows, areas.</summary>
    Tint,

    /// <summary>The one accent: what the reader must look at.</summary>
    Accent,

    /// <summary>A light tint of the accent.</summary>
    AccentTint,
}

/// <summary>The dash of a line.</summary>
public enum Dash
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Long dashes: limits.</summary>
    Dashed,

    /// <summary>Dots: leaders and projections.</summary>
    Dotted,
}

/// <summary>How a shape is drawn.</summary>
/// <param name="Stroke">Colour of its line.</param>
/// <param name="Width">Width of its line, mm.</param>
/// <param name="Dash">Dash of its line.</param>
/// <param name="Fill">Colour of its inside.</param>
public sealed record Style(Ink Stroke = Ink.Line, double Width = 0.25, Dash Dash = Dash.Solid, Ink Fill = Ink.None)
{
    /// <summary>A thin line: dimensions, ticks, leaders.</summary>
    public static Style Thin { get; } = new(Width: 0.15);

    /// <summary>The usual line.</summary>
    public static Style Usual { get; } = new();

    /// <summary>A heavy line: the subject of the drawing.</summary>
    public static Style Heavy { get; } = new(Width: 0.5);

    /// <summary>A grid line.</summary>
    public static Style Grid { get; } = new(Ink.Tint, 0.15);

    /// <summary>A limit that may not be crossed.</summary>
    public static Style Limit { get; } = new(Ink.Accent, 0.4, Dash.Dashed);

    /// <summary>An area without an outline.</summary>
    public static Style Filled(Ink ink) => new(Ink.None, 0, Dash.Solid, ink);
}

/// <summary>Red, green and blue of a colour, sRGB.</summary>
public readonly record struct Rgb(byte R, byte G, byte B);

/// <summary>The palette: what each <see cref="Ink"/> is in sRGB.</summary>
public static class Palette
{
    /// <summary>The colour of an ink.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><see cref="Ink.None"/> has no colour.</exception>
    public static Rgb Of(Ink ink) => ink switch
    {
        Ink.Paper => new(255, 255, 255),
        Ink.Line => new(23, 50, 92),
        Ink.Quiet => new(84, 103, 132),
        Ink.Tint => new(225, 231, 240),
        Ink.Accent => new(178, 62, 10),
        Ink.AccentTint => new(250, 232, 222),
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "This ink has no colour."),
    };

    /// <summary>The lengths of dash and gap in millimetres for a line of a width; empty when unbroken.</summary>
    public static double[] Pattern(Dash dash, double width) => dash switch
    {
        Dash.Dashed => [Math.Max(1.6, 6 * width), Math.Max(0.8, 3 * width)],
        Dash.Dotted => [Math.Max(0.3, width), Math.Max(0.7, 3 * width)],
        _ => [],
    };
}
