using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation;

/// <summary>Something that needs a person: a check that fails, needs an eye, or cannot be concluded.</summary>
/// <param name="Rule">Id of the rule, lower case words joined by hyphens.</param>
/// <param name="Severity">How serious it is.</param>
/// <param name="Subject">What it is about, for example <c>circuit/C12</c>; a concession names it.</param>
/// <param name="Message">What is wrong, in a sentence.</param>
/// <param name="Figures">The numbers, for example "found 6.2 A, limit at most 5 A, margin -1.2 A"; empty when the rule has none.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Remedy">What would mend it.</param>
/// <param name="Path">Where in the job's files it stands, for example <c>change/circuits/C12</c>.</param>
/// <param name="Accepted">The concession that accepts it, if there is one: it then weighs no more than a caution.</param>
public sealed record Finding(
    string Rule, Verdict Severity, string Subject, string Message, string Figures, Source Source, string Remedy, string Path, Concession? Accepted = null);

/// <summary>A sheet and what it is about.</summary>
/// <param name="Subject">The subject, for example <c>circuit/C12/drop</c>.</param>
/// <param name="Sheet">The sheet.</param>
public sealed record SubjectSheet(string Subject, Sheet Sheet);
