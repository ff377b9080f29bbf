using System.Collections.Immutable;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Harness.Routing;

namespace Fairlead.Cli.Output;

/// <summary>Ways as JSON: lengths in metres, masses in kilogram.</summary>
internal static class RouteJson
{
    public static object Of(Assessment assessment, ImmutableArray<SharedTree> trees)
    {
        var routing = assessment.Routing;
        return new
        {
            Mass = routing.Mass.Si,
            Bound = routing.Bound.Si,
            routing.Proved,
            routing.Detours,
            routing.Steps,
            routing.Rounds,
            Circuits = assessment.Circuits.Select(c => new
            {
                c.Circuit.Id,
                Way = c.Way?.Length.Si,
                Shortest = c.Shortest?.Si,
                Length = c.Length?.Si,
                Cut = c.Cut?.Si,
                Points = c.Way?.Nodes ?? [],
                Segments = c.Way?.Segments ?? [],
            }),
            Segments = assessment.Segments.Select(s => new { s.Segment, Bundle = s.Diameter?.Si, Room = s.Capacity?.Si }),
            Nets = trees.Select(t => new { t.Circuits, t.Ends, Drawn = t.Drawn.Si, Tree = t.Tree.Si, Bound = t.Bound.Si, t.Proved, Saving = t.Saving.Si, t.Branches, Joints = t.Loose.Select(j => new { j.Joint, j.Point }), t.Segments }),
        };
    }
}
