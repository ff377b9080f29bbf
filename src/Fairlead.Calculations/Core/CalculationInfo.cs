using System.Collections.Immutable;

namespace Fairlead.Calculations;

/// <summary>The discipline a calculation belongs to.</summary>
public enum Discipline
{
    /// <summary>Wires, contacts, bundles, protection.</summary>
    Wiring,

    /// <summary>Sources, loads, batteries.</summary>
    Power,

    /// <summary>Mass, centre of gravity, loading.</summary>
    Balance,

    /// <summary>Currents and voltages all over the power system, shorts included.</summary>
    Network,

    /// <summary>Fixings, rivets, sheets, antennas in the airflow.</summary>
    Structure,

    /// <summary>Coax, antennas, interference, ramp tests.</summary>
    Radio,

    /// <summary>Traffic and surveillance: what the display and the bus must show.</summary>
    Traffic,

    /// <summary>Qualification, heat, compass.</summary>
    Environment,
}

/// <summary>What a calculation is: from this the command line, the API, the bench page and the documentation are generated.</summary>
/// <param name="Name">Its name on the command line: lower case words joined by hyphens.</param>
/// <param name="Title">Its title on a sheet.</param>
/// <param name="Discipline">Where it belongs.</param>
/// <param name="Purpose">One line: what question it answers.</param>
/// <param name="Example">Arguments of one worked example, as typed after the name on the command line.</param>
/// <param name="Sources">The documents behind it.</param>
/// <param name="Inputs">The inputs, in the order of the record.</param>
public abstract record CalculationInfo(
    string Name, string Title, Discipline Discipline, string Purpose, string Example, ImmutableArray<Source> Sources, ImmutableArray<InputInfo> Inputs);

/// <summary>The info of a calculation over a known input record.</summary>
/// <typeparam name="TInput">The input record; its inputs are read from its constructor's <see cref="InAttribute"/>s.</typeparam>
public sealed record CalculationInfo<TInput>(string Name, string Title, Discipline Discipline, string Purpose, string Example, params ImmutableArray<Source> Sources)
    : CalculationInfo(Name, Title, Discipline, Purpose, Example, Sources, InputInfo.Of(typeof(TInput)))
    where TInput : notnull;
