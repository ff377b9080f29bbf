using System.Globalization;
using System.Text.RegularExpressions;
using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>The rule of inertia factors that follows from the certification basis, or why none does.</summary>
/// <param name="Rule">The rule; null when the basis does not tell it.</param>
/// <param name="Category">The category, where the manoeuvring factor of part 23 follows from it.</param>
/// <param name="WhyNot">Why there is no rule.</param>
internal sealed partial record InertiaBasis(InertiaRule? Rule, AeroplaneCategory? Category = null, string WhyNot = "")
{
    // 14 CFR 23.561 took its present factors with amendment 23-36, and lost them with 23-64.
    private const int FirstOfPresent = 36;
    private const int LastOfPresent = 63;
    private const int LastOfCs23 = 4;

    // The present factors of 25.561, 27.561 and 29.561 came with these amendments.
    private const int FirstOfPart25 = 64;
    private const int FirstOfPart27 = 25;
    private const int FirstOfPart29 = 29;
    private const RegexOptions Options = RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking;

    /// <summary>The basis of an aircraft. Factors stated by the approved data for all four directions need no rule.</summary>
    public static InertiaBasis Of(Certification certification, LoadFactors? stated)
    {
        var basis = Named(certification);
        return basis.Rule is null && stated is { Up: not null, Forward: not null, Side: not null, Down: not null } ? new(InertiaRule.Stated) : basis;
    }

    private static InertiaBasis Named(Certification certification)
    {
        var rule = certification.Rule;
        return Cfr().Match(rule) is { Success: true } cfr
            ? cfr.Groups["part"].ValueSpan switch
            {
                "23" => Part23(certification),
                "25" => Since(certification, "25", FirstOfPart25, InertiaRule.Part25),
                "27" => Since(certification, "27", FirstOfPart27, InertiaRule.Part27Inside),
                _ => Since(certification, "29", FirstOfPart29, InertiaRule.Part29Inside),
            }
            : Car3().IsMatch(rule) ? new(Acrobatic(certification) ? InertiaRule.Car3Acrobatic : InertiaRule.Car3)
            : CsVla().IsMatch(rule) ? new(InertiaRule.CsVla)
            : Cs23().IsMatch(rule) ? ByCs23(certification)
            : new(null, WhyNot: $"No inertia factors are known for '{rule}': they must be stated as load-factors of the aircraft.");
    }

    private static InertiaBasis Part23(Certification certification)
    {
        AeroplaneCategory? category = Acrobatic(certification) ? AeroplaneCategory.Acrobatic
            : Is(certification, "utility") ? AeroplaneCategory.Utility
            : Is(certification, "normal") || Is(certification, "commuter") ? AeroplaneCategory.Normal
            : null;
        return Amended(certification) switch
        {
            null => new(null, WhyNot: $"The edition '{certification.Edition}' does not tell the amendment of 14 CFR 23, and the factors differ between amendments."),
            < FirstOfPresent => new(category == AeroplaneCategory.Acrobatic ? InertiaRule.Car3Acrobatic : InertiaRule.Car3),
            <= LastOfPresent => new(InertiaRule.Part23Item, category),
            _ => new(null, WhyNot: "14 CFR 23 gives no inertia factors from amendment 23-64: the means of compliance does."),
        };
    }

    private static InertiaBasis Since(Certification certification, string part, int first, InertiaRule rule) => Amended(certification) switch
    {
        null => new(null, WhyNot: $"The edition '{certification.Edition}' does not tell the amendment of 14 CFR {part}, and the factors differ between amendments."),
        { } number when number < first => new(null, WhyNot: $"{part}.561 took the factors known here with amendment {part}-{NumberFormat.Text(first)}; those of amendment {part}-{NumberFormat.Text(number)} must be stated."),
        _ => new(rule),
    };

    /// <summary>The rule for an item in a zone: parts 27 and 29 ask less of items above or behind the cabin, (c), than of those in it, (b)(3).</summary>
    public InertiaRule? For(CabinSide side) => (Rule, side) switch
    {
        (InertiaRule.Part27Inside, CabinSide.AboveOrBehind) => InertiaRule.Part27AboveOrBehind,
        (InertiaRule.Part29Inside, CabinSide.AboveOrBehind) => InertiaRule.Part29AboveOrBehind,
        _ => Rule,
    };

    private static InertiaBasis ByCs23(Certification certification) => Amended(certification) switch
    {
        null => new(null, WhyNot: $"The edition '{certification.Edition}' does not tell the amendment of CS-23, and the factors differ between amendments."),
        <= LastOfCs23 => new(InertiaRule.Cs23Item),
        _ => new(null, WhyNot: "CS-23 gives no inertia factors from amendment 5: the means of compliance does."),
    };

    private static bool Acrobatic(Certification certification) => Is(certification, "acrobatic") || Is(certification, "aerobatic");

    private static bool Is(Certification certification, string category) => certification.Category.Contains(category, StringComparison.OrdinalIgnoreCase);

    private static int? Amended(Certification certification) =>
        Amendment().Match(certification.Edition) is { Success: true } found && int.TryParse(found.Groups["number"].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    [GeneratedRegex(@"\b(14 ?CFR|FAR)( part)? ?(?<part>23|25|27|29)\b", Options)]
    private static partial Regex Cfr();

    [GeneratedRegex(@"\bCAR( part)? ?3\b", Options)]
    private static partial Regex Car3();

    [GeneratedRegex(@"\bCS-?VLA\b", Options)]
    private static partial Regex CsVla();

    [GeneratedRegex(@"\bCS[- ]?23\b", Options)]
    private static partial Regex Cs23();

    // 'amendment 23-62', 'amendment 62' or '23-62'.
    [GeneratedRegex(@"\b((amendment )?(23|25|27|29)-|amendment )(?<number>\d{1,3})\b", Options)]
    private static partial Regex Amendment();
}
