using Fairlead.Calculations;

namespace Fairlead.Substantiation.Radio;

/// <summary>Findings and sheets of the radio rules.</summary>
internal sealed class RadioFindings
{
    /// <summary>Limits that stand in the job.</summary>
    public static readonly Source Stated = new("This job", "", "parts and positions", Basis.Stated);

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    public void Add(Finding finding) => Findings.Add(finding);

    /// <summary>Shows the sheet of an outcome and reports it when it does not hold; says whether there was a finding.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <param name="sheet">Subject of the sheet.</param>
    /// <param name="subject">Subject of the finding.</param>
    /// <param name="path">Where that stands in the files.</param>
    /// <param name="remedy">What would mend it.</param>
    /// <param name="origins">Where the given values come from, by symbol.</param>
    public bool Add(Outcome outcome, string sheet, string subject, string path, string remedy, params (string Symbol, string Origin)[] origins)
    {
        Show(outcome, sheet, origins);
        if (outcome.Verdict == Verdict.Holds || Substantiation.Findings.Of(outcome, subject, path, remedy) is not { } finding)
        {
            return false;
        }

        Findings.Add(finding);
        return true;
    }

    /// <summary>Shows the sheet of an outcome.</summary>
    public void Show(Outcome outcome, string sheet, params (string Symbol, string Origin)[] origins) =>
        Shown.Add(new Shown(sheet, outcome, () => origins.ToDictionary(o => o.Symbol, o => o.Origin, StringComparer.Ordinal)));
}
