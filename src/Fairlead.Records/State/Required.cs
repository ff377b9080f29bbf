using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>A task the job requires.</summary>
/// <param name="Id">Its id: the log knows it as <c>task/ID</c>.</param>
/// <param name="Name">What is done.</param>
/// <param name="Panels">Panels that stay open until it is done.</param>
/// <param name="Scope">Authorisation its signature needs; empty for any.</param>
/// <param name="Independent">Whether a second person inspects it.</param>
public sealed record RequiredTask(string Id, string Name, Sequence<string> Panels = default, string Scope = "", bool Independent = false);

/// <summary>A test the job requires: a value is measured and lies within limits.</summary>
/// <param name="Id">Its id: the log knows it as <c>test/ID</c>.</param>
/// <param name="Name">What is tested, with the expected result.</param>
/// <param name="Unit">Unit of the limits; empty where any will do.</param>
/// <param name="Least">Least value, if there is one.</param>
/// <param name="Most">Greatest value, if there is one.</param>
/// <param name="Source">Where the limits come from.</param>
public sealed record RequiredTest(string Id, string Name, string Unit = "", double? Least = null, double? Most = null, string Source = "");

/// <summary>What a job requires before it can be released, whoever worked it out.</summary>
/// <param name="Tasks">Tasks to be done and signed.</param>
/// <param name="Tests">Tests to be passed.</param>
/// <param name="Connectors">Connectors that have to be mated, as <c>ITEM/HALF</c>.</param>
/// <param name="Removed">Parts that have to come out.</param>
/// <param name="Fitted">Parts that have to go in.</param>
/// <param name="Controls">Panels with flight controls behind: once opened, the controls are checked by two persons after closing.</param>
public sealed record Required(
    Sequence<RequiredTask> Tasks = default,
    Sequence<RequiredTest> Tests = default,
    Sequence<string> Connectors = default,
    Sequence<string> Removed = default,
    Sequence<string> Fitted = default,
    Sequence<string> Controls = default)
{
    /// <summary>What the description of a job says by itself: its own tasks and tests, what comes out and goes in, and each connector of what goes in.</summary>
    public static Required Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var change = job.Change;
        var fitted = (change.Fit ?? Catalog<FittedItem>.Empty).Select(f => f.Id).Concat((change.Antennas ?? Catalog<FittedAntenna>.Empty).Select(a => a.Id)).ToSequence();
        return new Required(
            (change.Tasks ?? Catalog<ExtraTask>.Empty).Select(t => new RequiredTask(t.Id, t.Name, t.Panels)).ToSequence(),
            (change.Tests ?? Catalog<ExtraTest>.Empty).Select(t => new RequiredTest(t.Id, $"{t.Name}; expected: {t.Expected}", Source: t.Source)).ToSequence(),
            (change.Circuits ?? Catalog<Circuit>.Empty).SelectMany(c => new[] { c.From, c.To }).Where(e => !e.IsPoint && fitted.Contains(e.Item)).Select(e => $"{e.Item}/{e.Connector}").Distinct().Order(StringComparer.Ordinal).ToSequence(),
            (change.Remove ?? Catalog<Removal>.Empty).Select(r => r.Item).ToSequence(),
            fitted,
            (job.Aircraft.Panels ?? Catalog<Panel>.Empty).Where(p => p.Controls).Select(p => p.Id).ToSequence());
    }
}

/// <summary>Who and what the log may name: people with their authorisations, instruments and tools with their calibration, and what the job requires.</summary>
public sealed record Register(Catalog<Person> People, Catalog<Instrument> Instruments, Catalog<Tool> Tools, Required Required)
{
    /// <summary>The register of a job.</summary>
    public static Register Of(Job job) => Of(job, Required.Of(job));

    /// <summary>The register of a job, with requirements worked out elsewhere.</summary>
    public static Register Of(Job job, Required required)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new Register(job.Order.People ?? Catalog<Person>.Empty, job.Aircraft.Instruments ?? Catalog<Instrument>.Empty, job.Aircraft.Tools ?? Catalog<Tool>.Empty, required);
    }
}
