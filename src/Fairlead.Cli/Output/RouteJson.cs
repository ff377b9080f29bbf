using Fairlead.Substantiation;

namespace Fairlead.Cli.Output;

/// <summary>Ways as JSON: lengths in metres, masses in kilogram.</summary>
internal static class RouteJson
{
    public static object Of(Assessment assessment)
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
        };
    }
}
