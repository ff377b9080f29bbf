using System.Globalization;
using Fairlead.Model;
using Fairlead.Substantiation;

namespace Fairlead.Drawings.Wiring;

/// <summary>A circuit as it leaves the middle of a cluster.</summary>
/// <param name="Result">The circuit.</param>
/// <param name="Near">Its end at the middle.</param>
/// <param name="Far">Its other end.</param>
internal sealed record Row(CircuitResult Result, Endpoint Near, Endpoint Far);

/// <summary>What stands at the far end of neighbouring rows: one item or point. Rows that come back to the middle are straps.</summary>
internal sealed record Group(string Item, IReadOnlyList<Row> Rows, bool Strap)
{
    // A strap takes a row for each of its ends.
    public int Lines => Strap ? 2 * Rows.Count : Rows.Count;
}

/// <summary>A middle with what it is joined to on either side. Every row is straight, so nothing crosses.</summary>
internal sealed record Cluster(string System, string Item, IReadOnlyList<Group> Left, IReadOnlyList<Group> Right);

/// <summary>Divides the circuits of a change into clusters: by system (function letters), and there around the item that most circuits meet.</summary>
internal static class WiringPlan
{
    public static IEnumerable<Cluster> Of(Assessment assessment)
    {
        var joints = assessment.Job.Change.Joints?.Select(j => j.Id).ToHashSet(StringComparer.Ordinal) ?? [];
        return assessment.Circuits.GroupBy(c => c.Circuit.Function, StringComparer.Ordinal).SelectMany(system => Clusters(system.Key, [.. system], joints));
    }

    private static IEnumerable<Cluster> Clusters(string system, List<CircuitResult> open, HashSet<string> joints)
    {
        while (open.Count > 0)
        {
            // Joints come first: what is spliced together is shown together. A single point is a middle only where no box is.
            var middle = open.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To }.DistinctBy(e => e.Item))
                .GroupBy(e => e.Item, StringComparer.Ordinal)
                .MaxBy(g => (joints.Contains(g.Key), !g.First().IsPoint, g.Count()))!.Key;
            var mine = open.Where(c => c.Circuit.From.Item == middle || c.Circuit.To.Item == middle).ToArray();
            open.RemoveAll(mine.Contains);
            yield return Arrange(system, middle, mine);
        }
    }

    private static Cluster Arrange(string system, string middle, IReadOnlyList<CircuitResult> circuits)
    {
        var rows = circuits.Select(c => c.Circuit.From.Item == middle ? new Row(c, c.Circuit.From, c.Circuit.To) : new Row(c, c.Circuit.To, c.Circuit.From)).ToArray();
        var groups = rows.GroupBy(r => r.Far.Item, StringComparer.Ordinal)
            .Select(g => new Group(g.Key, InOrder(g), g.Key == middle)).OrderBy(g => PinOrder(g.Rows[0].Near)).ToArray();
        var (left, right) = Halves(groups);
        return new Cluster(system, middle, left, right);
    }

    // Single points such as breakers and grounds stand at the left, boxes at the right, until one side is full.
    private static (List<Group> Left, List<Group> Right) Halves(Group[] groups)
    {
        var (left, right) = (new List<Group>(), new List<Group>());
        var half = (groups.Sum(Height) + 1) / 2;
        foreach (var group in groups.OrderBy(g => g.Rows[0].Far.IsPoint && g.Rows[0].Far.Contact.Length == 0 ? 0 : 1))
        {
            (left.Sum(Height) + (Height(group) / 2) <= half ? left : right).Add(group);
        }

        return (left, right);
    }

    /// <summary>The rows a group needs: two for its heading and one of air.</summary>
    public static int Height(Group group) => group.Lines + 3;

    // The wires of one cable stay side by side.
    private static Row[] InOrder(IEnumerable<Row> rows)
    {
        var sorted = rows.OrderBy(r => PinOrder(r.Near)).ToArray();
        return [.. sorted.GroupBy(r => Together(r.Result.Circuit), StringComparer.Ordinal).SelectMany(g => g)];
    }

    private static string Together(Circuit circuit) => circuit.Cable.Length > 0 ? "cable " + circuit.Cable : circuit.Twist.Length > 0 ? "twist " + circuit.Twist : circuit.Id;

    /// <summary>Contacts in the order of their connectors and numbers: 2 before 12.</summary>
    public static (string Connector, int Number, string Name) PinOrder(Endpoint end) =>
        (end.Connector, int.TryParse(end.Contact, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : int.MaxValue, end.Contact);
}
