using Fairlead.Calculations;

namespace Fairlead.Cli;

/// <summary>What a run says to the shell.</summary>
public static class ExitCode
{
    /// <summary>Everything holds; there may be cautions.</summary>
    public const int Holds = 0;

    /// <summary>Something fails or cannot be told.</summary>
    public const int Open = 1;

    /// <summary>The command, a file or a value is not right; nothing was concluded.</summary>
    public const int BadInput = 2;

    /// <summary>A defect of Fairlead.</summary>
    public const int Unexpected = 3;

    /// <summary>Stopped by the user.</summary>
    public const int Stopped = 130;

    /// <summary>The code of a verdict.</summary>
    public static int Of(Verdict verdict) => verdict is Verdict.Holds or Verdict.Caution ? Holds : Open;
}
