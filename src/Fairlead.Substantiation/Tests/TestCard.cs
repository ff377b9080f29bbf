using Fairlead.Calculations;
using Fairlead.Calculations.Traffic;
using Fairlead.Model;

namespace Fairlead.Substantiation.Tests;

/// <summary>The kinds of test, in the safe order: nothing is powered before its wiring is proved, nothing is plugged in before its power is proved.</summary>
public enum TestKind
{
    /// <summary>Looked at: security, contacts counted.</summary>
    Visual,

    /// <summary>Bonding resistance.</summary>
    Bonding,

    /// <summary>Continuity from contact to contact and to ground.</summary>
    Continuity,

    /// <summary>Isolation from the airframe, neighbours and shields.</summary>
    Isolation,

    /// <summary>Coaxial lines.</summary>
    Coax,

    /// <summary>Power at the unplugged connector.</summary>
    Power,

    /// <summary>Boxes in, current watched.</summary>
    Connect,

    /// <summary>Settings, straps and software.</summary>
    Settings,

    /// <summary>Each system.</summary>
    System,

    /// <summary>On the ramp, radiating.</summary>
    Ramp,
}

/// <summary>One line of a test card: what is measured, and between what limits it must lie.</summary>
/// <param name="Id">Id within its card, the same as long as what is measured is the same.</param>
/// <param name="From">One place, or what is observed.</param>
/// <param name="To">The other place; empty when there is none.</param>
/// <param name="Expected">What is expected, in words.</param>
/// <param name="Source">Where the limits come from.</param>
/// <param name="Proves">What it proves.</param>
/// <param name="Unit">Unit of the limits; empty when text and no number is due.</param>
/// <param name="Least">Least value in that unit.</param>
/// <param name="Most">Greatest value in that unit.</param>
public sealed record TestLine(
    string Id, string From, string To, string Expected, Source Source, string Proves, string Unit = "", double? Least = null, double? Most = null)
{
    /// <summary>Whether a number is due.</summary>
    public bool IsNumber => Unit.Length > 0;

    /// <summary>The limits in words; the expected text where no number is due.</summary>
    public string Limits => (IsNumber, Least, Most) switch
    {
        (false, _, _) => Expected,
        (_, { } least, { } most) when least == most => $"{NumberFormat.Text(least)} {Unit}",
        (_, 0, { } most) when Unit.EndsWith('Ω') => $"at most {NumberFormat.Text(most)} {Unit}",
        (_, { } least, { } most) => $"{NumberFormat.Text(least)} to {NumberFormat.Text(most)} {Unit}",
        (_, { } least, null) => $"at least {NumberFormat.Text(least)} {Unit}",
        (_, null, { } most) => $"at most {NumberFormat.Text(most)} {Unit}",
        _ => $"in {Unit}, to be recorded",
    };
}

/// <summary>What a display must show of a simulated target, moment by moment.</summary>
/// <param name="Target">Its id.</param>
/// <param name="Moments">The moments, one at least, on the clock of the scenario.</param>
public sealed record ExpectedTrack(string Target, Sequence<DisplayMoment> Moments);

/// <summary>A test card: everything one person needs for one test.</summary>
/// <param name="Id">Id, the same as long as its subject is.</param>
/// <param name="Kind">Kind, which gives its place in the order.</param>
/// <param name="Title">Title.</param>
/// <param name="System">The box or system tested.</param>
/// <param name="Subject">The connector, circuit or item tested.</param>
/// <param name="Instrument">Kind of instrument.</param>
/// <param name="Preconditions">What must be so before it begins.</param>
/// <param name="Cautions">What can hurt people or equipment.</param>
/// <param name="Lines">The lines, in order.</param>
public sealed record TestCard(
    string Id, TestKind Kind, string Title, string System, string Subject, string Instrument,
    Sequence<string> Preconditions, Sequence<string> Cautions, Sequence<TestLine> Lines)
{
    /// <summary>Whether something radiates: a permit comes first.</summary>
    public bool Radiates { get; init; }

    /// <summary>Whether a second person compares what was found: what an aircraft broadcasts of itself, for one.</summary>
    public bool SecondPerson { get; init; }

    /// <summary>Whether it measures again what another card has measured, after something was done to it.</summary>
    public bool Again { get; init; }

    /// <summary>What a display must show of each simulated target, moment by moment; empty where none is simulated.</summary>
    public Sequence<ExpectedTrack> Tracks { get; init; }

    /// <summary>When in the course of the work it is done.</summary>
    public WorkStage Stage { get; init; } = WorkStage.Tests;
}
