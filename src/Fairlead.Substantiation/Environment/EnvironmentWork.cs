using Fairlead.Calculations;
using Fairlead.Calculations.Environment;
using Fairlead.Model;

namespace Fairlead.Substantiation.Environment;

/// <summary>Whether the places suit what is fitted there: qualification, heat, distance from the compass, clearance of the wires.</summary>
internal sealed class EnvironmentWork
{
    private static readonly Source ThisJob = new("This job", "", "zones, parts and raceway segments", Basis.Stated);

    private readonly Job job;
    private readonly Memo memo;
    private readonly string[] segments;

    private EnvironmentWork(Job job, Memo memo, string[] segments)
    {
        (this.job, this.memo, this.segments) = (job, memo, segments);
        var items = job.Change.Fit.OrEmpty().Select(i => new PlacedItem(i, job.Parts.Equipment?.Find(i.Part), job.Aircraft.Zones.Find(i.Zone))).Where(i => i is { Part: not null, Zone: not null }).ToArray();
        var antennas = job.Change.Antennas.OrEmpty();
        if (items.Length + antennas.Count > 0 && job.Aircraft.Compass is null)
        {
            Missing("aircraft/compass", "The aircraft record does not say where the magnetic compass is.", "Add the compass position.", "aircraft/compass");
        }

        foreach (var item in items)
        {
            Item(item.Item, item.Part!, item.Zone!);
        }

        foreach (var antenna in antennas)
        {
            if (job.Parts.Antennas?.Find(antenna.Part) is { } part)
            {
                Antenna(antenna, part);
            }
        }

        foreach (var zone in items.GroupBy(i => i.Item.Zone, StringComparer.Ordinal))
        {
            Zone(zone.First().Zone!, [.. zone.Select(i => i.Part!)]);
        }

        new ClearanceWork(job, memo, Findings, Shown).Check(segments);
    }

    /// <summary>Judges the places; gives what is known already where no place and nothing fitted changed.</summary>
    /// <param name="job">The job.</param>
    /// <param name="memo">Outcomes known already.</param>
    /// <param name="segments">The raceway segments that new circuits use.</param>
    /// <param name="known">The work of an earlier job.</param>
    public static EnvironmentWork Of(Job job, Memo memo, string[] segments, EnvironmentWork? known) =>
        known is not null && ReferenceEquals(known.job.Aircraft, job.Aircraft) && ReferenceEquals(known.job.Parts, job.Parts) && ReferenceEquals(known.job.Change.Fit, job.Change.Fit) && ReferenceEquals(known.job.Change.Antennas, job.Change.Antennas)
        && known.segments.AsSpan().SequenceEqual(segments) ? known : new EnvironmentWork(job, memo, segments);

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    /// <summary>A finding about a datum that is not there.</summary>
    public static Finding MissingDatum(string subject, string message, string remedy, string path) =>
        new("environment-data", Verdict.CannotTell, subject, message, "", ThisJob, remedy, path);

    private void Item(FittedItem item, EquipmentPart part, Zone zone)
    {
        var stands = new Standing($"equipment/{item.Id}", $"change/fit/{item.Id}", $"parts/equipment/{part.Id}", part.Id, part.Qualification, part.CompassSafe, item.Place, HalfDiagonal(part.Size));
        Stand(stands, zone, part.Heat is null ? ["heat"] : []);
    }

    private void Antenna(FittedAntenna antenna, AntennaPart part)
    {
        var stands = new Standing($"antenna/{antenna.Id}", $"change/antennas/{antenna.Id}", $"parts/antennas/{part.Id}", part.Id, part.Qualification, part.CompassSafe, antenna.Place, part.Size is { } size ? new(size.Si / 2) : null);
        var zone = antenna.Zone is null ? null : job.Aircraft.Zones.Find(antenna.Zone);
        if (zone is null)
        {
            Missing(stands.Subject, $"Antenna {antenna.Id} does not say in which zone's environment it stands.", "Name the zone, as a rule one outside the skin.", stands.Path);
        }

        Stand(stands, zone, []);
    }

    private void Stand(Standing stands, Zone? zone, List<string> missing)
    {
        if (stands.Qualification.Count == 0)
        {
            missing.Add("qualification categories");
        }
        else if (zone is { Environment.Count: > 0 })
        {
            var input = new QualificationMatchInput(Rows(zone.Environment), Rows(stands.Qualification), zone.Pressurised ? null : job.Aircraft.Ceiling, zone.Hottest, zone.Coldest);
            Run<QualificationMatch, QualificationMatchInput>(
                input, $"{stands.Subject}/qualification", stands.Path, "Fit equipment qualified for the zone, place it in a milder one, or have the difference assessed.",
                ("needs", $"zone {zone.Id}"), ("has", $"part {stands.Part}"), ("alt", "ceiling of the aircraft"), ("Tmax", $"zone {zone.Id}"), ("Tmin", $"zone {zone.Id}"));
        }

        if (stands.CompassSafe is not { } safe)
        {
            missing.Add("compass-safe distance");
        }
        else if (job.Aircraft.Compass is { } compass)
        {
            // The safe distance counts from the nearest point: no nearer than the centre less half the greatest extent, however it stands.
            var distance = new Length(Math.Max(0, (stands.Place.To(compass) - (stands.Reach ?? default)).Si));
            Run<CompassDistance, CompassDistanceInput>(
                new(distance, safe), $"{stands.Subject}/compass", stands.Path, "Move the item away from the compass, or the compass away from it.",
                ("d", stands.Reach is null ? "its centre to the compass, as its size is not known" : "its centre to the compass, less half its diagonal"), ("CSD", $"part {stands.Part}"));
        }

        if (missing.Count > 0)
        {
            Missing(stands.Subject, $"Part {stands.Part} states no {string.Join(", no ", missing)}.", "Add it from the installation manual.", stands.PartPath);
        }
    }

    // The hottest temperature of a zone is that of service before the change: what is added to it is the heat of what goes in.
    private void Zone(Zone zone, EquipmentPart[] parts)
    {
        var subject = $"zone/{zone.Id}";
        var heat = new Wattage(parts.Sum(p => p.Heat?.Si ?? 0));
        var missing = new List<string>();
        if (zone.Environment.Count == 0)
        {
            missing.Add("environment by qualification section");
        }

        if (heat.Si > 0 && zone.Surface is null)
        {
            missing.Add("surface through which heat leaves");
        }

        if (missing.Count > 0)
        {
            Missing(subject, $"Zone {zone.Id} states no {string.Join(", no ", missing)}.", "Add it to the aircraft record.", $"aircraft/zones/{zone.Id}");
        }

        if (zone.Surface is { } surface && heat.Si > 0 && parts.All(p => p.Heat is not null))
        {
            Run<BayHeat, BayHeatInput>(
                new(heat, surface, zone.Hottest, Limit: Limit(parts)), $"{subject}/heat", $"aircraft/zones/{zone.Id}",
                "Move equipment to another zone, let air through the bay, or fit equipment for higher temperatures.",
                ("P", "sum over what the change fits there"), ("A", $"zone {zone.Id}"), ("Ta", $"zone {zone.Id}, before the change"), ("Tlim", "the least operating high temperature of what is fitted there"));
        }
    }

    private static Temperature? Limit(EquipmentPart[] parts) => parts
        .Select(p => p.Qualification.FirstOrDefault(c => string.Equals(c.Section.Trim(), TemperatureAltitude.Section, StringComparison.OrdinalIgnoreCase)))
        .Select(c => c is null ? null : TemperatureAltitude.Find(c.Code)?.OperatingHigh).Min();

    private static Length? HalfDiagonal(Size? size) => size is null ? null
        : new(Math.Sqrt((size.Length.Si * size.Length.Si) + (size.Width.Si * size.Width.Si) + (size.Height.Si * size.Height.Si)) / 2);

    private static Sequence<CategoryRow> Rows(Sequence<Category> categories) => categories.Select(c => new CategoryRow(c.Section, c.Code)).ToSequence();

    private void Run<TCalculation, TInput>(TInput input, string subject, string path, string remedy, params (string Symbol, string Origin)[] origins)
        where TCalculation : ICalculation<TInput>
        where TInput : notnull
    {
        var outcome = memo.Run<TCalculation, TInput>(input);
        Shown.Add(new Shown(subject, outcome, () => origins.ToDictionary(o => o.Symbol, o => o.Origin, StringComparer.Ordinal)));
        if (Substantiation.Findings.Of(outcome, subject, path, remedy) is { } finding)
        {
            Findings.Add(finding);
        }
    }

    private void Missing(string subject, string message, string remedy, string path) => Findings.Add(MissingDatum(subject, message, remedy, path));

    private sealed record Standing(string Subject, string Path, string PartPath, string Part, Sequence<Category> Qualification, Length? CompassSafe, Place Place, Length? Reach);

    private sealed record PlacedItem(FittedItem Item, EquipmentPart? Part, Zone? Zone);
}
