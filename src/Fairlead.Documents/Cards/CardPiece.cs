using Fairlead.Drawings;

namespace Fairlead.Documents;

/// <summary>A strip of a card that is not broken over pages.</summary>
/// <param name="Height">Its height, mm.</param>
/// <param name="Draw">What is drawn when its top is at a height on the page.</param>
internal sealed record CardPiece(double Height, Func<double, IEnumerable<Shape>> Draw)
{
    /// <summary>What is repeated above it when it begins a page: the heading of its table.</summary>
    public CardPiece? Repeat { get; init; }

    /// <summary>Whether it stays with what follows.</summary>
    public bool Keep { get; init; }

    /// <summary>White.</summary>
    public static CardPiece Gap(double height) => new(height, _ => []) { Keep = true };
}
