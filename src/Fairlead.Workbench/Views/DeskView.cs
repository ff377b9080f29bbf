using System.Collections.Immutable;

namespace Fairlead.Workbench.Views;

/// <summary>How a job stands as it is being edited: what is always in sight.</summary>
/// <param name="Number">Number of the work order.</param>
/// <param name="Title">What changes, in one line.</param>
/// <param name="Aircraft">Registration and type.</param>
/// <param name="Revision">Revision of the description.</param>
/// <param name="Verdict">The verdict as a word; <c>unreadable</c> while the text has problems.</param>
/// <param name="Hash">SHA-256 of the description.</param>
/// <param name="Findings">What needs a person, most serious first.</param>
/// <param name="Problems">What is wrong with the text.</param>
/// <param name="Figures">The figures of the whole change.</param>
/// <param name="Change">What the last edit did; null before any.</param>
/// <param name="CanUndo">Whether an edit can be taken back.</param>
/// <param name="CanRedo">Whether one that was taken back can be made again.</param>
/// <param name="Edited">Files that differ from those that were opened or last kept.</param>
/// <param name="Stamp">Rises with every edit, so that views can tell whether they are still right.</param>
public sealed record DeskView(
    string Number, string Title, string Aircraft, string Revision, string Verdict, string Hash, ImmutableArray<FindingView> Findings, ImmutableArray<ProblemView> Problems,
    ImmutableArray<FigureView> Figures, ChangeView? Change, bool CanUndo, bool CanRedo, ImmutableArray<string> Edited, long Stamp);

/// <summary>A finding.</summary>
/// <param name="Rule">Its rule.</param>
/// <param name="Severity">The verdict as a word.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Figures">The numbers.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Remedy">What would mend it.</param>
/// <param name="Path">The model path that drives it.</param>
/// <param name="Accepted">The concession that accepts it; empty when none does.</param>
public sealed record FindingView(string Rule, string Severity, string Subject, string Message, string Figures, string Source, string Remedy, string Path, string Accepted);

/// <summary>A problem in the text.</summary>
/// <param name="Path">The model path it stands at; empty when it stands at none.</param>
/// <param name="At">File, line and column.</param>
/// <param name="Message">What is wrong, what was found, what was expected, what would mend it.</param>
public sealed record ProblemView(string Path, string At, string Message);

/// <summary>A figure of the whole change.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Before">Before the change to the aircraft; empty when it has no such.</param>
/// <param name="After">After it.</param>
/// <param name="Limit">What it is held against; empty when against nothing.</param>
/// <param name="Subject">Where its sheet is found; empty when it has none.</param>
public sealed record FigureView(string Name, string Before, string After, string Limit, string Subject);

/// <summary>What an edit did.</summary>
/// <param name="Figures">Figures that are others now: the one before the edit and the one after it.</param>
/// <param name="Gained">Findings that came.</param>
/// <param name="Cured">Findings that went.</param>
/// <param name="Calculations">How many calculations were run for it.</param>
public sealed record ChangeView(ImmutableArray<FigureChange> Figures, ImmutableArray<FindingView> Gained, ImmutableArray<FindingView> Cured, long Calculations);

/// <summary>A figure before and after an edit.</summary>
public sealed record FigureChange(string Name, string Was, string Is);
