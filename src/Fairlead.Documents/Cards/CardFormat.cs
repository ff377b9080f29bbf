namespace Fairlead.Documents;

/// <summary>The size of a card and of what is printed on it; millimetres. Text is read at arm's length, on the pocket card in the hand.</summary>
public sealed record CardFormat
{
    private CardFormat(string name, double width, double height)
    {
        Name = name;
        Width = width;
        Height = height;
    }

    /// <summary>A4, for the bench and the binder.</summary>
    public static CardFormat A4 { get; } = new("a4", 210, 297) { Margin = 15, Left = 20, Right = 192, Number = 7.5, Title = 4.4, Body = 3.3, Small = 2.8, Square = 22, Signature = 11 };

    /// <summary>A6, for the pocket.</summary>
    public static CardFormat Pocket { get; } = new("pocket", 105, 148) { Margin = 7, Left = 7, Right = 98, Number = 5.2, Title = 3.6, Body = 2.8, Small = 2.45, Square = 17, Signature = 9 };

    /// <summary>A4 set closer, for the release pack: several cards on a page.</summary>
    internal static CardFormat Pack { get; } = new("pack", 210, 297) { Margin = 15, Left = 20, Right = 192, Number = 4.6, Title = 3.4, Body = 2.75, Small = 2.45, Square = 14, Signature = 7.5 };

    /// <summary>Both, by name.</summary>
    public static IReadOnlyList<CardFormat> All { get; } = [A4, Pocket];

    /// <summary>Name on the command line.</summary>
    public string Name { get; }

    /// <summary>Width of the page.</summary>
    public double Width { get; }

    /// <summary>Height of the page.</summary>
    public double Height { get; }

    /// <summary>White above and below.</summary>
    public double Margin { get; private init; }

    /// <summary>The left edge of what is printed: on A4 with room to punch.</summary>
    public double Left { get; private init; }

    /// <summary>The right edge of what is printed.</summary>
    public double Right { get; private init; }

    /// <summary>Size of the number of the card.</summary>
    public double Number { get; private init; }

    /// <summary>Size of its title.</summary>
    public double Title { get; private init; }

    /// <summary>Size of steps and cautions.</summary>
    public double Body { get; private init; }

    /// <summary>Size of tables, facts and notes.</summary>
    public double Small { get; private init; }

    /// <summary>Side of the square code.</summary>
    public double Square { get; private init; }

    /// <summary>Height of a line to sign.</summary>
    public double Signature { get; private init; }

    internal double Column => Right - Left;

    internal double Bottom => Height - Margin - 5;
}
