using System.Collections.Immutable;
using Fairlead.Drawings;
using Fairlead.Drawings.Views;
using Fairlead.Model;
using Fairlead.Substantiation;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench.Maps;

/// <summary>Puts what has a place on a map of the aircraft.</summary>
public static class AircraftMap
{
    private const double LeastSide = 3;
    private const double PanelSide = 3.2;
    private static readonly string[] Graver = ["holds", "caution", "cannot-tell", "fails"];

    /// <summary>The map.</summary>
    /// <param name="assessment">The job with what follows from it.</param>
    /// <param name="aspect">The side it is seen from.</param>
    /// <param name="look">How much of it is seen.</param>
    /// <param name="unit">Unit of the stations.</param>
    public static MapView Of(Assessment assessment, Aspect aspect, MapLook look, string unit)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        ArgumentNullException.ThrowIfNull(look);
        var job = assessment.Job;
        var window = AircraftWindow.Of(job, aspect, look.Zoom, look.Across, look.Down);
        var picture = window.Draw(assessment, unit);
        var findings = assessment.Findings.Select(Standing.Of).ToArray();
        var marks = Panels(job).Concat(Before(job)).Concat(GoesIn(job))
            .Select(t => Mark(t, window, unit, [.. findings.Where(f => IsAbout(f, t.Path, t.Id))])).Where(m => window.Shows(new Point(m.X, m.Y)));
        return new MapView(picture.Title, aspect.ToString(), SvgWriter.Write(picture), AircraftWindow.Width, window.Height, window.Scale, unit, [.. marks], [.. Zones(job, window)]);
    }

    /// <summary>What is known of something on the map.</summary>
    /// <param name="assessment">The job with what follows from it.</param>
    /// <param name="path">Its model path.</param>
    public static MapAbout About(Assessment assessment, string path)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        ArgumentNullException.ThrowIfNull(path);
        var id = path.Split('/')[^1];
        return new MapAbout(
            [.. assessment.Findings.Select(Standing.Of).Where(f => IsAbout(f, path, id))],
            [.. assessment.Sheets.Where(s => s.Subject.Split('/').Contains(id)).Select(Disciplines.Line)]);
    }

    private static bool IsAbout(FindingView finding, string path, string id) =>
        finding.Path == path || finding.Path.StartsWith(path + "/", StringComparison.Ordinal) || finding.Subject.Split('/').Contains(id);

    private static IEnumerable<Thing> GoesIn(Job job) =>
        Of(job.Change.Fit).Select(i => new Thing($"change/fit/{i.Id}", i.Id, job.Parts.Equipment?.Find(i.Part)?.Name ?? i.Part, MapKind.Box, i.Place, job.Parts.Equipment?.Find(i.Part)?.Size))
            .Concat(Of(job.Change.Antennas).Select(a => new Thing($"change/antennas/{a.Id}", a.Id, job.Parts.Antennas?.Find(a.Part)?.Name ?? a.Part, MapKind.Antenna, a.Place, null)));

    private static IEnumerable<Thing> Before(Job job) =>
        Of(job.Aircraft.Equipment).Select(i => new Thing($"aircraft/equipment/{i.Id}", i.Id, i.Name, MapKind.Before, i.Place, null))
            .Concat(Of(job.Aircraft.Antennas).Select(a => new Thing($"aircraft/antennas/{a.Id}", a.Id, a.Name, MapKind.Before, a.Place, null)));

    private static IEnumerable<Thing> Panels(Job job) =>
        Of(job.Aircraft.Panels).Where(p => p.Place is not null).Select(p => new Thing($"aircraft/panels/{p.Id}", p.Id, p.Name, MapKind.Panel, p.Place!, null));

    private static MapMark Mark(Thing thing, AircraftWindow window, string unit, FindingView[] findings)
    {
        var at = window.At(thing.Place);
        var (width, height) = thing.Size is { } size ? window.Sides(size) : (PanelSide, PanelSide);
        return new MapMark(
            thing.Path, thing.Id, thing.Name, thing.Kind, at.X, at.Y, Math.Max(LeastSide, width), Math.Max(LeastSide, height),
            In(thing.Place.Fs, unit), In(thing.Place.Bl, unit), In(thing.Place.Wl, unit), findings.Select(f => f.Severity).MaxBy(s => Array.IndexOf(Graver, s)) ?? "", findings.Length);
    }

    // A zone has no shape of its own in the record: it is as large as what has a place in it.
    private static IEnumerable<MapZone> Zones(Job job, AircraftWindow window)
    {
        var places = Of(job.Aircraft.Nodes).Select(n => (n.Zone, n.Place)).Concat(Of(job.Change.Fit).Select(i => (i.Zone, i.Place)))
            .Concat(Of(job.Aircraft.Panels).Where(p => p.Place is not null).Select(p => (p.Zone, p.Place!))).ToLookup(p => p.Zone, p => window.At(p.Item2), StringComparer.Ordinal);
        foreach (var zone in job.Aircraft.Zones.Where(z => places[z.Id].Take(2).Count() == 2))
        {
            var (left, top) = (places[zone.Id].Min(p => p.X), places[zone.Id].Min(p => p.Y));
            yield return new MapZone(zone.Id, zone.Name, left, top, places[zone.Id].Max(p => p.X) - left, places[zone.Id].Max(p => p.Y) - top);
        }
    }

    private static double In(Length length, string unit) => Math.Round(length.In(unit), 4);

    private static IEnumerable<T> Of<T>(Catalog<T>? catalog)
        where T : class, IEntity => catalog ?? Enumerable.Empty<T>();

    private sealed record Thing(string Path, string Id, string Name, MapKind Kind, Place Place, Size? Size);
}

/// <summary>How much of the aircraft is seen.</summary>
/// <param name="Zoom">How much larger than the whole.</param>
/// <param name="Across">Middle of what is seen from the left of the whole, as a share of it.</param>
/// <param name="Down">Middle of what is seen from the top of the whole, as a share of it.</param>
public sealed record MapLook(double Zoom = 1, double Across = 0.5, double Down = 0.5)
{
    private const double Most = 16;

    /// <summary>Twice as near, or half.</summary>
    public MapLook Nearer(bool nearer) => Zoom <= 1 && !nearer ? this : Math.Clamp(nearer ? Zoom * 2 : Zoom / 2, 1, Most) is var zoom && zoom == 1 ? new MapLook() : this with { Zoom = zoom };

    /// <summary>Moved by steps of a third of what is seen.</summary>
    public MapLook Moved(int across, int down) =>
        this with { Across = Math.Clamp(Across + (across / (3 * Zoom)), 0, 1), Down = Math.Clamp(Down + (down / (3 * Zoom)), 0, 1) };
}
