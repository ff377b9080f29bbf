using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Identification;

/// <summary>Where printed sleeves stand along a wire: within 3 in of both ends and no more than 6 ft apart; once in the middle of a wire of 3 to 7 in; none on a shorter one.</summary>
/// <remarks>Range: any length. Check values by hand: 2 in none; 6 in one at 3 in; 78 in two, at 3 in and 75 in; 79 in three.</remarks>
public static class MarkPlaces
{
    private static readonly Length End = Length.Of(3, "in");
    private static readonly Length Short = Length.Of(7, "in");
    private static readonly Length Apart = Length.Of(6, "ft");

    /// <summary>Where the rule comes from.</summary>
    public static Source Rule { get; } = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "chapter 11, section 16", Basis.Memory);

    /// <summary>The places, from one end.</summary>
    public static Sequence<Length> Of(Length length)
    {
        if (length < End)
        {
            return [];
        }

        if (length <= Short)
        {
            return [length / 2];
        }

        var between = length - (End * 2);
        var gaps = (int)Math.Ceiling((between / Apart) - 1e-9);
        return Enumerable.Range(0, gaps + 1).Select(i => End + (between * ((double)i / gaps))).ToSequence();
    }

    /// <summary>The places at the ends alone.</summary>
    public static Sequence<Length> Ends(Length length) => length <= Short ? Of(length) : [End, length - End];
}
