using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation;

/// <summary>What is kept of a calculation that was run: enough for findings and results. The sheet is worked again when it is shown,
/// so that thousands of sheets need not stay in memory.</summary>
internal abstract class Outcome(Sheet sheet, ImmutableArray<double?> values)
{
    /// <summary>Name of the calculation.</summary>
    public string Calculation { get; } = sheet.Calculation;

    /// <summary>What the sheet concludes.</summary>
    public Verdict Verdict { get; } = sheet.Verdict;

    /// <summary>The checks that do not hold.</summary>
    public ImmutableArray<Check> Broken { get; } = [.. sheet.Checks.Where(c => !c.Holds)];

    /// <summary>Why nothing can be concluded.</summary>
    public ImmutableArray<string> CannotTell { get; } = sheet.CannotTell;

    /// <summary>The cautions of a sheet that says caution; none otherwise.</summary>
    public ImmutableArray<string> Cautions { get; } = sheet.Verdict == Verdict.Caution ? sheet.Cautions : [];

    /// <summary>The first source named.</summary>
    public Source Source { get; } = sheet.Sources[0];

    /// <summary>A value that was asked to be kept, in SI; null when the sheet has none.</summary>
    public double? Value(int index) => values[index];

    /// <summary>Works the sheet again.</summary>
    public abstract Sheet Work();
}

/// <summary>The outcome of a known calculation.</summary>
internal sealed class Outcome<TCalculation, TInput>(TInput input, Sheet sheet, ImmutableArray<double?> values) : Outcome(sheet, values)
    where TCalculation : ICalculation<TInput>
    where TInput : notnull
{
    /// <inheritdoc/>
    public override Sheet Work() => TCalculation.Run(input);
}
