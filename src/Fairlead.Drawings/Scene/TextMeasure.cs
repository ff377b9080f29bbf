namespace Fairlead.Drawings;

/// <summary>How wide a text will be, so that labels can be kept apart without loading a font.</summary>
public static class TextMeasure
{
    /// <summary>Height of a capital letter as a share of the font size.</summary>
    public const double CapHeight = 0.698;

    // Advance widths of IBM Plex Sans Regular for the characters from space to tilde, thousandths of the font size.
    private static readonly short[] Widths =
    [
        236, 284, 419, 713, 598, 927, 694, 242, 335, 335, 450, 600, 272, 399, 272, 383, 600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 292, 292, 600, 600, 600, 477,
        891, 641, 653, 621, 671, 583, 559, 695, 707, 400, 510, 634, 501, 812, 707, 708, 606, 708, 640, 581, 572, 678, 609, 891, 613, 593, 580, 317, 383, 317, 600, 565,
        600, 534, 580, 503, 580, 549, 324, 528, 568, 250, 250, 527, 272, 873, 568, 560, 580, 580, 367, 487, 351, 568, 492, 768, 507, 499, 464, 343, 314, 343, 600,
    ];

    // The same of IBM Plex Sans SemiBold.
    private static readonly short[] BoldWidths =
    [
        236, 309, 471, 656, 600, 960, 713, 260, 337, 337, 556, 600, 299, 402, 299, 437, 600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 319, 319, 600, 600, 600, 493,
        899, 672, 663, 642, 689, 600, 577, 712, 719, 423, 545, 678, 521, 817, 719, 712, 641, 712, 664, 611, 580, 689, 638, 949, 655, 632, 599, 329, 437, 329, 600, 559,
        600, 559, 600, 513, 600, 558, 350, 545, 588, 275, 275, 562, 294, 888, 588, 563, 600, 600, 393, 499, 374, 588, 524, 819, 544, 524, 502, 363, 376, 363, 600,
    ];

    private const double Other = 0.65;

    /// <summary>The width of a text in millimetres; within about a twentieth for other typefaces and for characters beyond ASCII.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">Font size, mm.</param>
    /// <param name="bold">Semibold.</param>
    public static double Width(string text, double size, bool bold = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        var widths = bold ? BoldWidths : Widths;
        return text.EnumerateRunes().Sum(r => r.Value is >= ' ' and <= '~' ? widths[r.Value - ' '] / 1000.0 : Other) * size;
    }

    /// <summary>The text cut to a width, its loss shown by an ellipsis.</summary>
    public static string Fitted(string text, double size, double width)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (Width(text, size) <= width)
        {
            return text;
        }

        var kept = text.Length;
        while (kept > 0 && Width(text[..kept] + "…", size) > width)
        {
            kept--;
        }

        return text[..kept].TrimEnd() + "…";
    }
}
