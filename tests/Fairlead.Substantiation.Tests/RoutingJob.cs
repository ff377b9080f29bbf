using System.Globalization;
using Fairlead.Bench;
using Fairlead.Model;

namespace Fairlead.Tests.Substantiation;

/// <summary>Small jobs for the choice of ways: a ground stud at every raceway point, circuits from stud to stud.</summary>
internal static class RoutingJob
{
    private static readonly Job Base = GeneratedJob.Of(40);

    /// <summary>Points on a line unless said otherwise, 10 in apart; segments as (from, to, inches, capacity in inches or 0).</summary>
    public static Job Of(int points, IEnumerable<(int From, int To, double Inches, double Capacity)> segments, params ReadOnlySpan<Circuit> circuits) => Base with
    {
        Aircraft = Base.Aircraft with
        {
            Nodes = new(Enumerable.Range(0, points).Select(n => new RacewayNode(Node(n), "cabin", new Place(Length.Of(10 * n, "in"), Length.Of(n % 3, "in"), Length.Of(50 - n, "in"))))),
            Segments = new(segments.Select((s, i) => new RacewaySegment($"S{Text(i)}", Node(s.From), Node(s.To), Length.Of(s.Inches, "in"), s.Capacity > 0 ? Length.Of(s.Capacity, "in") : null))),
            Grounds = new(Enumerable.Range(0, points).Select(n => new GroundStud($"GS{Text(n)}", Node(n)))),
            Breakers = null,
            Panels = null,
        },
        Change = Base.Change with { Fit = null, Power = null, Circuits = new(circuits.ToArray()) },
    };

    public static Circuit Wire(string id, int from, int to, string wire = "W20") => new(id, new Endpoint($"GS{Text(from)}"), new Endpoint($"GS{Text(to)}"), wire);

    public static string Node(int n) => $"N{Text(n)}";

    private static string Text(int n) => n.ToString(CultureInfo.InvariantCulture);
}
