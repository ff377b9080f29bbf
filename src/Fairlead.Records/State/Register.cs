using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>Who and what the log may name: people with their authorisations, instruments and tools with their calibration, and what the job requires.</summary>
/// <param name="People">People with their authorisations.</param>
/// <param name="Instruments">Instruments with their calibration.</param>
/// <param name="Tools">Tools, some with a calibration.</param>
/// <param name="Later">What the job requires, worked out when it is asked for.</param>
/// <remarks>What the job requires is worked out when a rule first asks for it: a note or a defect does not wait for that.</remarks>
public sealed record Register(Catalog<Person> People, Catalog<Instrument> Instruments, Catalog<Tool> Tools, Lazy<Required> Later)
{
    /// <summary>A register whose requirements are known.</summary>
    public Register(Catalog<Person> people, Catalog<Instrument> instruments, Catalog<Tool> tools, Required required)
        : this(people, instruments, tools, new Lazy<Required>(required))
    {
        ArgumentNullException.ThrowIfNull(required);
        Job = required.Job;
    }

    /// <summary>The register of a job that cannot be read: nobody is known, so that the log is read and nothing is entered.</summary>
    public static Register Nobody { get; } = new(Catalog<Person>.Empty, Catalog<Instrument>.Empty, Catalog<Tool>.Empty, new Required());

    /// <summary>What the job requires.</summary>
    public Required Required => Later.Value;

    /// <summary>Number of the work order; empty when there is none to compare with.</summary>
    public string Job { get; init; } = "";

    /// <summary>Sealants, for their application life and cure by temperature.</summary>
    public Catalog<SealantPart> Sealants { get; init; } = Catalog<SealantPart>.Empty;

    /// <summary>The panels of the aircraft; empty when they are not known.</summary>
    public Sequence<string> Panels { get; init; }

    /// <summary>What may come out and go in: items of the equipment list and of the change, and parts of the catalogue; empty when they are not known.</summary>
    public Sequence<string> Items { get; init; }

    /// <summary>Tools that the parts ask for, beside those of the aircraft: crimp tools, positioners and dies, insertion tools.</summary>
    public Sequence<string> Gear { get; init; }

    /// <summary>The zone of the hangar's clock: a day ends there at its midnight.</summary>
    public TimeZoneInfo Zone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>The register of a job.</summary>
    public static Register Of(Job job) => Of(job, () => Required.Of(job));

    /// <summary>The register of a job, with requirements worked out elsewhere.</summary>
    public static Register Of(Job job, Required required) => Of(job, () => required);

    /// <summary>The register of a job, with requirements that are worked out when an entry is first held against them.</summary>
    public static Register Of(Job job, Func<Required> required)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new Register(job.Order.People ?? Catalog<Person>.Empty, job.Aircraft.Instruments ?? Catalog<Instrument>.Empty, job.Aircraft.Tools ?? Catalog<Tool>.Empty, new Lazy<Required>(required))
        {
            Job = job.Order.Number,
            Sealants = job.Parts.Sealants ?? Catalog<SealantPart>.Empty,
            Panels = Ids(job.Aircraft.Panels).ToSequence(),
            Items = ItemsOf(job).ToSequence(),
            Gear = (job.Parts.Contacts ?? Catalog<ContactPart>.Empty).SelectMany(c => new[] { c.Tool, c.Positioner, c.Insertion })
                .Concat((job.Parts.Consumables ?? Catalog<ConsumablePart>.Empty).SelectMany(c => new[] { c.Tool, c.Die })).Where(t => t.Length > 0 && t != "none").Distinct(StringComparer.Ordinal).ToSequence(),
        };
    }

    // Clamps, fasteners and the like are told by what they are in the catalogue: they have no place of their own.
    private static IEnumerable<string> ItemsOf(Job job) =>
    [
        .. Ids(job.Aircraft.Equipment), .. Ids(job.Aircraft.Antennas), .. Ids(job.Aircraft.Breakers), .. Ids(job.Change.Fit), .. Ids(job.Change.Antennas), .. Ids(job.Change.Breakers),
        .. Ids(job.Parts.Equipment), .. Ids(job.Parts.Wires), .. Ids(job.Parts.Cables), .. Ids(job.Parts.Coax), .. Ids(job.Parts.Contacts), .. Ids(job.Parts.Connectors), .. Ids(job.Parts.Breakers),
        .. Ids(job.Parts.Fasteners), .. Ids(job.Parts.Rivets), .. Ids(job.Parts.AnchorNuts), .. Ids(job.Parts.Clamps), .. Ids(job.Parts.Antennas), .. Ids(job.Parts.Sealants), .. Ids(job.Parts.Consumables),
    ];

    private static IEnumerable<string> Ids<T>(Catalog<T>? catalog)
        where T : class, IEntity => (catalog ?? Catalog<T>.Empty).Select(e => e.Id);
}
