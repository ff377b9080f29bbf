using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>What an end of a circuit may stand on.</summary>
internal enum FixtureKind
{
    Box,
    Antenna,
    Breaker,
    Ground,
    Joint,
}

/// <summary>Something with a reference designator that circuits end on.</summary>
/// <param name="Id">Its reference designator.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Node">The raceway point where its wires leave the way; null when the job names none.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Part">The equipment part, for a box.</param>
internal sealed record Fixture(string Id, FixtureKind Kind, string? Node, Place? Place = null, EquipmentPart? Part = null)
{
    /// <summary>Every fixture of a job. What the change fits goes before what was there.</summary>
    public static Dictionary<string, Fixture> Of(Job job)
    {
        var (aircraft, change) = (job.Aircraft, job.Change);
        var found = new Dictionary<string, Fixture>(StringComparer.Ordinal);
        var all = change.Fit.OrEmpty().Select(f => new Fixture(f.Id, FixtureKind.Box, f.Node, f.Place, job.Parts.Equipment?.Find(f.Part)))
            .Concat(change.Antennas.OrEmpty().Select(a => new Fixture(a.Id, FixtureKind.Antenna, a.Node, a.Place)))
            .Concat(change.Breakers.OrEmpty().Select(b => new Fixture(b.Id, FixtureKind.Breaker, b.Node)))
            .Concat(change.Grounds.OrEmpty().Select(g => new Fixture(g.Id, FixtureKind.Ground, g.Node)))
            .Concat(change.Joints.OrEmpty().Select(j => new Fixture(j.Id, FixtureKind.Joint, j.Node)))
            .Concat(aircraft.Equipment.OrEmpty().Select(i => new Fixture(i.Id, FixtureKind.Box, i.Node, i.Place, job.Parts.Equipment?.Find(i.Part))))
            .Concat(aircraft.Antennas.OrEmpty().Select(a => new Fixture(a.Id, FixtureKind.Antenna, null, a.Place)))
            .Concat(aircraft.Breakers.OrEmpty().Select(b => new Fixture(b.Id, FixtureKind.Breaker, b.Node)))
            .Concat(aircraft.Grounds.OrEmpty().Select(g => new Fixture(g.Id, FixtureKind.Ground, g.Node)));
        foreach (var fixture in all)
        {
            found.TryAdd(fixture.Id, fixture);
        }

        return found;
    }
}
