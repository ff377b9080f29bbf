using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Workbench.Views;

/// <summary>The kit: everything that must be at hand before the aircraft is opened.</summary>
/// <param name="Verdict">In words.</param>
/// <param name="Complete">Whether everything is at hand.</param>
/// <param name="Missing">Why the aircraft is not to be opened yet.</param>
/// <param name="Lines">The lines.</param>
public sealed record KitView(string Verdict, bool Complete, ImmutableArray<string> Missing, ImmutableArray<KitLineView> Lines);

/// <summary>A line of the kit.</summary>
public sealed record KitLineView(string Kind, string Part, string Name, string Need, string OnHand, string Short, string State, string OrderBy, string For, string Remark);

/// <summary>A task with how it stands.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Kind">What kind of work.</param>
/// <param name="Title">What is done.</param>
/// <param name="Zone">Where.</param>
/// <param name="State">waiting, ready, begun, done or signed.</param>
/// <param name="Subject">What the log calls it.</param>
/// <param name="Waits">What it waits for, in words.</param>
/// <param name="Panels">Panels that stay open until it is done.</param>
/// <param name="Tools">Tools and instruments.</param>
/// <param name="Parts">Parts and materials.</param>
/// <param name="Cautions">What can hurt someone.</param>
/// <param name="Authorisation">Authorisation its signature needs.</param>
/// <param name="Independent">Whether a second person inspects it.</param>
/// <param name="Stages">Stages a second person looks at, with how they stand.</param>
/// <param name="IsTest">Whether it is a test, whose results are entered on its card.</param>
/// <param name="Source">Where in the job it comes from.</param>
public sealed record TaskView(
    string Id, string Kind, string Title, string Zone, string State, string Subject, ImmutableArray<string> Waits, ImmutableArray<string> Panels, ImmutableArray<string> Tools, ImmutableArray<string> Parts,
    ImmutableArray<string> Cautions, string Authorisation, bool Independent, ImmutableArray<StageView> Stages, bool IsTest, string Source)
{
    /// <summary>The steps, as the trade goes about it.</summary>
    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>What it asks to be entered, in order.</summary>
    public ImmutableArray<CardEntryView> Entries { get; init; } = [];

    /// <summary>The signatures that are due, in order.</summary>
    public ImmutableArray<SignatureView> Signatures { get; init; } = [];
}

/// <summary>A stage a second person looks at.</summary>
public sealed record StageView(string Id, string Text, bool Signed);

/// <summary>An entry that a card asks for.</summary>
/// <param name="Kind">What happens.</param>
/// <param name="Subject">To what.</param>
/// <param name="Words">It, as the person presses it.</param>
/// <param name="Payload">What it tells that the job knows.</param>
/// <param name="Asks">What the person has to tell.</param>
/// <param name="By">Who entered it; empty while nobody has.</param>
/// <param name="At">When.</param>
public sealed record CardEntryView(string Kind, string Subject, string Words, ImmutableDictionary<string, string> Payload, ImmutableArray<AskView> Asks, string By, DateTimeOffset? At);

/// <summary>Something that an entry asks of the person.</summary>
/// <param name="Name">The field of the entry.</param>
/// <param name="Words">It, in words.</param>
/// <param name="Value">What is likely.</param>
/// <param name="Needed">Whether it may not be left out.</param>
/// <param name="Form">text, number or time.</param>
/// <param name="Choices">What to choose from; none where it is written.</param>
public sealed record AskView(string Name, string Words, string Value, bool Needed, string Form, ImmutableArray<string> Choices);

/// <summary>A signature that is due.</summary>
/// <param name="Subject">What the log calls it.</param>
/// <param name="Words">What is signed for.</param>
/// <param name="Role">work or inspection.</param>
/// <param name="Scope">Authorisation it needs; empty for any.</param>
/// <param name="By">Who signed; empty while nobody has.</param>
/// <param name="At">When.</param>
public sealed record SignatureView(string Subject, string Words, string Role, string Scope, string By, DateTimeOffset? At);

/// <summary>A test card with the results it has.</summary>
public sealed record TestView(
    string Id, string Kind, string Title, string System, string Instrument, string State, bool Radiates, bool SecondPerson, ImmutableArray<string> Preconditions, ImmutableArray<string> Cautions, ImmutableArray<TestLineView> Lines)
{
    /// <summary>Instruments of the job that are in calibration, those for this test first.</summary>
    public ImmutableArray<InstrumentView> Instruments { get; init; } = [];

    /// <summary>What it asks to be entered beside results: the permit to radiate, and its end.</summary>
    public ImmutableArray<CardEntryView> Entries { get; init; } = [];

    /// <summary>The signatures that are due, in order.</summary>
    public ImmutableArray<SignatureView> Signatures { get; init; } = [];
}

/// <summary>An instrument.</summary>
public sealed record InstrumentView(string Id, string Name, bool Named);

/// <summary>A line of a test card.</summary>
/// <param name="Id">Its id.</param>
/// <param name="From">From where, or what is observed.</param>
/// <param name="To">To where.</param>
/// <param name="Limits">Between what limits.</param>
/// <param name="Unit">Unit of the limits; empty when words are due.</param>
/// <param name="Source">Where the limits come from.</param>
/// <param name="Result">What was measured or seen; empty when nothing was.</param>
/// <param name="Verdict">The verdict of that; empty when there is none.</param>
public sealed record TestLineView(string Id, string From, string To, string Limits, string Unit, string Source, string Result, string Verdict)
{
    /// <summary>What is due, to judge by; null where it is not known, as in an answer that an earlier version gave.</summary>
    public TestDue? Due { get; init; }

    /// <summary>The verdict of what an entry tells that is not in the log yet, by the rule that the server judges by; empty where it cannot be judged here.</summary>
    /// <param name="kind">The kind of the card.</param>
    /// <param name="told">What the entry tells.</param>
    /// <param name="who">Who made it.</param>
    public string Judged(string kind, IReadOnlyDictionary<string, string> told, string who)
    {
        ArgumentNullException.ThrowIfNull(told);
        if (Due is null)
        {
            return "";
        }

        var line = new TestLine(Id, From, To, Due.Expected, new Source(Source, "", ""), "", Unit, Due.Least, Due.Most);
        var result = ToldResult.Read(1, "", line, who, field => told.GetValueOrDefault(field, ""));
        return VerdictWords.Of(Judging.Judge(Enum.GetValues<TestKind>().First(k => Words.Kebab(k.ToString()) == kind), line, result).Verdict);
    }
}

/// <summary>What is due in a line of a test card.</summary>
/// <param name="Least">Least value; null when there is none.</param>
/// <param name="Most">Greatest value; null when there is none.</param>
/// <param name="Expected">What is expected, in words.</param>
public sealed record TestDue(double? Least, double? Most, string Expected);

/// <summary>What the results of all tests say.</summary>
/// <param name="Connectors">Connectors whose readings are not those of sound wiring, with the faults left and the reading to make next.</param>
/// <param name="Signatures">What single readings say.</param>
public sealed record DiagnosisView(ImmutableArray<ConnectorView> Connectors, ImmutableArray<string> Signatures);

/// <summary>A connector under suspicion.</summary>
public sealed record ConnectorView(string Connector, ImmutableArray<string> Faults, string Next);

/// <summary>The release gate.</summary>
/// <param name="Open">Whether it is open.</param>
/// <param name="Items">What keeps it shut.</param>
/// <param name="Head">Number of entries and root of the log.</param>
/// <param name="Fault">What is wrong with the log; empty when nothing is.</param>
public sealed record ReleaseView(bool Open, ImmutableArray<OpenItemView> Items, string Head, string Fault)
{
    /// <summary>The signature of the release.</summary>
    public ImmutableArray<SignatureView> Signatures { get; init; } = [];
}

/// <summary>Something that keeps the gate shut.</summary>
public sealed record OpenItemView(string Subject, string Text);

/// <summary>The handover sheet.</summary>
/// <param name="Parts">Its parts.</param>
public sealed record HandoverView(ImmutableArray<HandoverPartView> Parts)
{
    /// <summary>What is not in it, and why; empty where everything is.</summary>
    public string LeftOut { get; init; } = "";
}

/// <summary>A part of it.</summary>
public sealed record HandoverPartView(string Title, ImmutableArray<string> Lines);

/// <summary>The plan.</summary>
/// <param name="Working">Whether a better one is still searched for.</param>
/// <param name="Searched">Whether a better plan was searched for until the search, or whoever waited, had enough.</param>
/// <param name="Why">Why there is no plan; empty when there is one.</param>
/// <param name="Finish">When the last task ends.</param>
/// <param name="Bound">No plan finishes before this.</param>
/// <param name="Proved">Whether none finishes sooner.</param>
/// <param name="Promised">The day promised; empty when none was.</param>
/// <param name="Holds">Whether it is kept.</param>
/// <param name="Chance">Chance of keeping it.</param>
/// <param name="Summary">The plan in sentences.</param>
/// <param name="Chain">What holds the finish.</param>
/// <param name="WhatIfs">What one thing more would buy.</param>
/// <param name="Chances">The chance by day.</param>
/// <param name="Title">Title of the change.</param>
/// <param name="Rows">The plan in time.</param>
/// <param name="Findings">What needs a person.</param>
public sealed record PlanSummaryView(
    bool Working, bool Searched, string Why, string Finish, string Bound, bool Proved, string Promised, bool Holds, string Chance, ImmutableArray<string> Summary, ImmutableArray<string> Chain,
    ImmutableArray<string> WhatIfs, ImmutableArray<string> Chances, string Title, ImmutableArray<PlanRowView> Rows, ImmutableArray<FindingView> Findings);

/// <summary>A task in time.</summary>
/// <param name="Task">Its id.</param>
/// <param name="People">Who does it.</param>
/// <param name="Times">When, each from and to, by the hangar's wall clock.</param>
/// <param name="Holding">Whether it is on the chain that holds the finish.</param>
/// <param name="Actual">Whether it is done.</param>
public sealed record PlanRowView(string Task, ImmutableArray<string> People, ImmutableArray<DateTime> Times, bool Holding, bool Actual);
