using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>Something that is finished and signed before a thing may begin.</summary>
/// <param name="Subject">What comes first, as the log names it: <c>task/ID</c>, <c>test/ID</c> or <c>panel/ID</c>.</param>
/// <param name="Why">Why, in words.</param>
public sealed record Hold(string Subject, string Why);

/// <summary>A stage of a task that is looked at by a second person before the work goes on.</summary>
/// <param name="Id">Its name within the task: signed as <c>stage/TASK/ID</c>.</param>
/// <param name="Name">What is looked at.</param>
public sealed record RequiredStage(string Id, string Name);

/// <summary>A task the job requires.</summary>
/// <param name="Id">Its id: the log knows it as <c>task/ID</c>.</param>
/// <param name="Name">What is done.</param>
/// <param name="Panels">Panels that stay open until it is done.</param>
/// <param name="Independent">Whether a second person inspects it.</param>
public sealed record RequiredTask(string Id, string Name, Sequence<string> Panels = default, bool Independent = false)
{
    /// <summary>What comes first.</summary>
    public Sequence<Hold> After { get; init; }

    /// <summary>What comes out, goes in and is plugged while it is worked on, as the log has it: <c>fitted part/ID</c>.</summary>
    public Sequence<string> Moves { get; init; }

    /// <summary>Stages at which it is held until a second person has signed.</summary>
    public Sequence<RequiredStage> Stages { get; init; }

    /// <summary>Whether it is done only with a photograph in the log.</summary>
    public bool Photographs { get; init; }

    /// <summary>Whether nothing may stand open when it is done, and nothing be opened after it: the general verification.</summary>
    public bool Clear { get; init; }

    /// <summary>What makes it void when it happens after it: it is done again then.</summary>
    public Sequence<string> VoidAfter { get; init; }

    /// <summary>The task that undoes it, as switching on does to switching off; empty when none does.</summary>
    public string UndoneBy { get; init; } = "";

    /// <summary>Whether it is done with a sealant mix that the log knows.</summary>
    public bool Sealant { get; init; }

    /// <summary>What the job itself says against finishing it; empty when nothing.</summary>
    public string Against { get; init; } = "";
}

/// <summary>A line of a test the job requires.</summary>
/// <param name="Id">Its id within the test.</param>
/// <param name="Name">What is measured or looked at.</param>
/// <param name="Unit">Unit of the limits; empty where a text is due.</param>
/// <param name="Least">Least value, if there is one.</param>
/// <param name="Most">Greatest value, if there is one.</param>
/// <param name="Expected">What is expected, where a text is due.</param>
/// <param name="Verbatim">Whether the text has to be written out: 'as expected' proves nothing.</param>
public sealed record RequiredLine(string Id, string Name, string Unit = "", double? Least = null, double? Most = null, string Expected = "", bool Verbatim = false);

/// <summary>A test the job requires: every line of it has a result that holds.</summary>
/// <param name="Id">Its id: the log knows it as <c>test/ID</c>.</param>
/// <param name="Name">What is tested.</param>
/// <param name="Lines">Its lines.</param>
public sealed record RequiredTest(string Id, string Name, Sequence<RequiredLine> Lines)
{
    /// <summary>What comes first.</summary>
    public Sequence<Hold> After { get; init; }

    /// <summary>Whether a second person compares what was found.</summary>
    public bool Independent { get; init; }

    /// <summary>Whether it radiates: a permit stands before it begins.</summary>
    public bool Radiates { get; init; }

    /// <summary>Whether it shows the aircraft as found: what it finds may be a fault, and the work goes on once that is written down and signed.</summary>
    public bool AsFound { get; init; }
}

/// <summary>The authorisation that a card asks of a signature.</summary>
/// <param name="Subject">What is signed.</param>
/// <param name="Role">In which role.</param>
/// <param name="Scope">Under which authorisation.</param>
public sealed record RequiredSignature(string Subject, string Role, string Scope);

/// <summary>A box, sensor, display or antenna the job fits: its part number and serial number belong to the papers.</summary>
/// <param name="Id">Its id: the log knows it as <c>part/ID</c>.</param>
/// <param name="Part">What it is in the parts catalogue.</param>
public sealed record RequiredPart(string Id, string Part);

/// <summary>A panel the job opens.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Opening">What comes before it is opened.</param>
/// <param name="Closing">What comes before it is closed.</param>
public sealed record RequiredPanel(string Id, Sequence<Hold> Opening, Sequence<Hold> Closing);

/// <summary>What a job requires before it can be released, whoever worked it out.</summary>
/// <param name="Tasks">Tasks to be done and signed.</param>
/// <param name="Tests">Tests to be passed.</param>
/// <param name="Connectors">Connectors that have to be mated, as <c>ITEM/HALF</c>.</param>
/// <param name="Removed">Parts that have to come out.</param>
/// <param name="Fitted">Parts that have to go in.</param>
/// <param name="Controls">Panels with flight controls behind, or in a zone of controls that no task checks: once opened, the controls are checked by two persons after closing.</param>
public sealed record Required(
    Sequence<RequiredTask> Tasks = default,
    Sequence<RequiredTest> Tests = default,
    Sequence<string> Connectors = default,
    Sequence<string> Removed = default,
    Sequence<string> Fitted = default,
    Sequence<string> Controls = default)
{
    /// <summary>Panels with what comes before they are opened and closed.</summary>
    public Sequence<RequiredPanel> Panels { get; init; }

    /// <summary>What is to be told of the parts that go in.</summary>
    public Sequence<RequiredPart> Parts { get; init; }

    /// <summary>The authorisations that the cards ask of those who sign; of what is not among them any will do.</summary>
    public Sequence<RequiredSignature> Asks { get; init; }

    /// <summary>Number of the work order; empty when there is none to compare with.</summary>
    public string Job { get; init; } = "";

    /// <summary>The people the job names; empty when it names none.</summary>
    public Sequence<string> People { get; init; }

    /// <summary>Authorisation under which a release and a concession are signed; empty for any.</summary>
    public string Certifying { get; init; } = "";

    /// <summary>The connectors of an item that goes in.</summary>
    public IEnumerable<string> ConnectorsOf(string item) => Connectors.Where(c => c.StartsWith(item + "/", StringComparison.Ordinal));

    /// <summary>What the description of a job says by itself: its own tasks and tests, what comes out and goes in, and each connector of what goes in.</summary>
    public static Required Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var change = job.Change;
        var fitted = (change.Fit ?? Catalog<FittedItem>.Empty).Select(f => f.Id).Concat((change.Antennas ?? Catalog<FittedAntenna>.Empty).Select(a => a.Id)).ToSequence();
        return new Required(
            (change.Tasks ?? Catalog<ExtraTask>.Empty).Select(t => new RequiredTask("EXTRA-" + t.Id, t.Name, t.Panels)).ToSequence(),
            (change.Tests ?? Catalog<ExtraTest>.Empty).Select(t => new RequiredTest("TEST-" + t.Id, t.Name, [new RequiredLine("result", t.Name, Expected: t.Expected)])).ToSequence(),
            (change.Circuits ?? Catalog<Circuit>.Empty).SelectMany(c => new[] { c.From, c.To }).Where(e => !e.IsPoint && fitted.Contains(e.Item)).Select(e => $"{e.Item}/{e.Connector}").Distinct().Order(StringComparer.Ordinal).ToSequence(),
            (change.Remove ?? Catalog<Removal>.Empty).Select(r => r.Item).ToSequence(),
            fitted,
            (job.Aircraft.Panels ?? Catalog<Panel>.Empty).Where(p => p.Controls || job.Aircraft.Zones.Find(p.Zone)?.Controls == true).Select(p => p.Id).ToSequence())
        {
            Job = job.Order.Number,
            Parts = (change.Fit ?? Catalog<FittedItem>.Empty).Select(f => new RequiredPart(f.Id, f.Part)).Concat((change.Antennas ?? Catalog<FittedAntenna>.Empty).Select(a => new RequiredPart(a.Id, a.Part))).ToSequence(),
            People = (job.Order.People ?? Catalog<Person>.Empty).Select(p => p.Id).ToSequence(),
        };
    }
}
