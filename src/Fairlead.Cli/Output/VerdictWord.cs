using Fairlead.Calculations;

namespace Fairlead.Cli.Output;

/// <summary>Verdicts in words, as a person reads them.</summary>
internal static class VerdictWord
{
    /// <summary>The word of a verdict.</summary>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Holds => "HOLDS",
        Verdict.Caution => "CAUTION",
        Verdict.CannotTell => "CANNOT TELL",
        _ => "FAILS",
    };
}
