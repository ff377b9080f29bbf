using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>What must be true of each item that is fitted: required contacts wired, straps as set, redundant items kept apart.</summary>
internal sealed class ItemRules(Job job, Netlist netlist, NetWork[] nets, IReadOnlyList<CircuitResult> circuits, List<Finding> findings)
{
    private static readonly Source Parts = new("Interconnect data of the parts", "", "contacts", Basis.Stated);
    private static readonly Source Settings = new("This job", "", "settings", Basis.Stated);
    private static readonly Source Redundancy = new("Redundant systems", "", "no common bus, breaker, connector or bundle", Basis.CommonPractice);

    public void Check()
    {
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            foreach (var contact in (job.Parts.Equipment?.Find(item.Part)?.Contacts).OrEmpty().Where(c => c.Required))
            {
                var end = Endpoint.OfPin(item.Id, contact.Id);
                if (netlist.CircuitAt(end) < 0)
                {
                    findings.Add(new("pin-open", Verdict.Fails, $"contact/{end}", $"{end} ({contact.Signal}) must be wired, but no circuit ends on it.", "", Parts, "Add the circuit.", $"change/fit/{item.Id}"));
                }
            }
        }

        foreach (var setting in job.Change.Settings.OrEmpty().Where(s => s.Pin.Length > 0))
        {
            Strap(setting, NetAt(Endpoint.OfPin(setting.Item, setting.Pin)));
        }

        foreach (var group in job.Change.Fit.OrEmpty().Where(f => f.Redundant.Length > 0).GroupBy(f => f.Redundant, StringComparer.Ordinal))
        {
            var items = group.ToArray();
            foreach (var (a, b) in items.SelectMany((a, i) => items.Skip(i + 1).Select(b => (a, b))))
            {
                Apart(a, b);
            }
        }
    }

    private Net? NetAt(Endpoint end) => netlist.CircuitAt(end) is >= 0 and var circuit
        ? Array.Find(nets, n => n.Net.Circuits[0].Circuit.Id == circuits[netlist.Root(circuit)].Circuit.Id)?.Net : null;

    // A strap is there when its line reaches ground or another contact of its own item, such as a strap common.
    private void Strap(Setting setting, Net? net)
    {
        var strapped = net is not null && (net.Grounded || net.Contacts.Length > 1);
        var expected = setting.Expected.Trim();
        bool Says(params ReadOnlySpan<string> words)
        {
            foreach (var word in words)
            {
                if (expected.StartsWith(word, StringComparison.OrdinalIgnoreCase))
                {
                    return true;
                }
            }

            return false;
        }

        bool? wanted = Says("ground", "strapped", "present", "closed") ? true : Says("open", "absent", "none") ? false : null;
        if (wanted is { } closed && closed != strapped)
        {
            findings.Add(new(
                closed ? "strap-missing" : "strap-forbidden", Verdict.Fails, $"setting/{setting.Id}",
                closed ? $"'{setting.Name}' needs {setting.Item} {setting.Pin} strapped, but nothing joins it to ground or a strap common." : $"'{setting.Name}' needs {setting.Item} {setting.Pin} open, but it is strapped.",
                "", Settings, closed ? "Add the strap." : "Remove the strap.", $"change/settings/{setting.Id}"));
        }
    }

    private void Apart(FittedItem a, FittedItem b)
    {
        var (feedsA, feedsB) = (Feeds(a), Feeds(b));
        if (feedsA.Select(f => f.Breaker).Intersect(feedsB.Select(f => f.Breaker), StringComparer.Ordinal).FirstOrDefault() is { } breaker)
        {
            Shared(a, b, "redundant-breaker", $"breaker {breaker}", "Feed them from breakers of their own.");
        }
        else if (feedsA.Select(f => f.Bus).Intersect(feedsB.Select(f => f.Bus), StringComparer.Ordinal).FirstOrDefault() is { } bus)
        {
            Shared(a, b, "redundant-bus", $"bus {bus}", "Feed them from different buses.");
        }

        // Circuits between the two serve both and cannot keep apart.
        var common = Bundles(a, b).Intersect(Bundles(b, a)).OrderBy(x => x).ToArray();
        if (common.Length > 0)
        {
            Shared(a, b, "redundant-bundle", $"bundle '{common[0].Bundle}' in {common[0].Segment}", "Give their circuits different bundles, and different ways where there are any.");
        }

        Connectors(a, b);
    }

    // A connector of a third box or a disconnect that lines of both go through. Lines that join the two serve both.
    private void Connectors(FittedItem a, FittedItem b)
    {
        HashSet<string> Through(FittedItem item, FittedItem other) =>
        [
            .. nets.Select(n => n.Net).Where(n => n.Contacts.Any(c => c.End.Item == item.Id) && n.Contacts.All(c => c.End.Item != other.Id))
                .SelectMany(n => n.Contacts.Where(c => c.End.Item != item.Id).Select(c => $"{c.End.Item} {c.End.Connector}").Concat(Disconnects(n))),
        ];

        if (Through(a, b).Intersect(Through(b, a), StringComparer.Ordinal).Min(StringComparer.Ordinal) is { } connector)
        {
            Shared(a, b, "redundant-connector", $"connector {connector}", "Take the lines of one of them through another connector.");
        }
    }

    private IEnumerable<string> Disconnects(Net net) => net.Circuits.SelectMany(c => new[] { c.Circuit.From, c.Circuit.To })
        .Where(e => e.IsPoint).Select(e => job.Change.Joints?.Find(e.Item)?.Connector).OfType<string>().Where(c => c.Length > 0);

    private void Shared(FittedItem a, FittedItem b, string rule, string what, string remedy) => findings.Add(new(
        rule, Verdict.Fails, $"redundant/{a.Redundant}", $"{a.Id} and {b.Id} back each other up, but share {what}: one fault takes both.", "", Redundancy, remedy + " Or accept it by a concession that says why.", $"change/fit/{b.Id}"));

    private (string Breaker, string Bus)[] Feeds(FittedItem item) => [.. job.Change.Power.OrEmpty().Where(f => f.Item == item.Id)
        .Select(f => (f.Breaker, job.BreakerOf(f.Breaker)?.Bus ?? ""))];

    private IEnumerable<(string Segment, string Bundle)> Bundles(FittedItem item, FittedItem other) => circuits
        .Where(c => Ends(c, item.Id) && !Ends(c, other.Id)).SelectMany(c => (c.Way?.Segments ?? []).Select(s => (s, c.Circuit.Bundle)));

    private static bool Ends(CircuitResult circuit, string item) => circuit.Circuit.From.Item == item || circuit.Circuit.To.Item == item;
}
