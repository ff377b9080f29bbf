namespace Fairlead.Documents;

/// <summary>A4 and what is printed where on it; millimetres.</summary>
internal static class PageFormat
{
    public const double Width = 210;
    public const double Height = 297;
    public const double Left = 20;
    public const double Right = 192;
    public const double Top = 24;
    public const double Bottom = 276;
    public const double ColumnWidth = Right - Left;
}

/// <summary>Font sizes, mm (1 mm is 2.83 points).</summary>
internal static class TypeSize
{
    public const double Title = 8.5;
    public const double Heading1 = 5.6;
    public const double Heading2 = 4.2;
    public const double Heading3 = 3.8;
    public const double Heading4 = 3.3;
    public const double Body = 3.2;
    public const double Small = 2.75;
    public const double Fine = 2.5;
}
