using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>What was found of one net.</summary>
internal sealed record NetWork(Net Net, ImmutableArray<Finding> Findings, ImmutableArray<Shown> Shown);

/// <summary>Whether what the change wires together belongs together. Kept between assessments: a net is judged again only when one of its
/// circuits changed in a way that bears on it.</summary>
internal sealed class InterconnectStage(Memo memo)
{
    private Dictionary<string, NetWork> known = [];
    private IReadOnlyList<CircuitResult> last = [];
    private Terminals? terminals;
    private Change? change;

    /// <summary>The findings, net by net, then those of wires together and of items.</summary>
    public ImmutableArray<Finding> Findings { get; private set; } = [];

    /// <summary>The sheets.</summary>
    public ImmutableArray<Shown> Shown { get; private set; } = [];

    /// <summary>The nets; the same array as long as nothing that bears on them changes.</summary>
    public ImmutableArray<Net> Nets { get; private set; } = [];

    /// <summary>Brings the work up to date.</summary>
    public void Update(Job job, IReadOnlyList<CircuitResult> circuits)
    {
        var sameTerminals = terminals?.Serves(job) == true;
        if (sameTerminals && ReferenceEquals(change?.Settings, job.Change.Settings) && ReferenceEquals(change?.Power, job.Change.Power)
            && ReferenceEquals(change?.Joints, job.Change.Joints) && change?.Wiring.Spares == job.Change.Wiring.Spares && AllAlike(circuits))
        {
            return;
        }

        terminals = sameTerminals ? terminals! : new Terminals(job);
        known = sameTerminals ? known : [];
        (change, last) = (job.Change, circuits);
        var netlist = new Netlist(circuits, terminals);
        var nets = Judge(job, circuits, netlist);
        var (findings, shown) = (new List<Finding>(), new List<Shown>());
        foreach (var net in nets)
        {
            findings.AddRange(net.Findings.AsSpan());
            shown.AddRange(net.Shown.AsSpan());
        }

        new CableRules(job, findings).CheckTogether(circuits);
        new ItemRules(job, netlist, nets, circuits, findings).Check();
        new ConnectorRules(job, memo, netlist, findings, shown).Check();
        Nets = [.. nets.Select(n => n.Net)];
        (Findings, Shown) = ([.. findings], [.. shown]);
    }

    private NetWork[] Judge(Job job, IReadOnlyList<CircuitResult> circuits, Netlist netlist)
    {
        var fresh = new Dictionary<string, NetWork>(netlist.Groups.Length, StringComparer.Ordinal);
        var nets = new NetWork[netlist.Groups.Length];
        for (var n = 0; n < nets.Length; n++)
        {
            var group = netlist.Groups[n];
            var name = circuits[group[0]].Circuit.Id;
            nets[n] = known.TryGetValue(name, out var work) && Alike(work.Net.Circuits, group, circuits) ? work : Judge(job, Net.Make([.. group.Select(i => circuits[i])], terminals!));
            fresh.Add(name, nets[n]);
        }

        known = fresh;
        return nets;
    }

    private NetWork Judge(Job job, Net net)
    {
        var (findings, shown) = (new List<Finding>(), new List<Shown>());
        new NetRules(memo, findings, shown).Check(net);
        new CableRules(job, findings).Check(net);
        return new NetWork(net, [.. findings], [.. shown]);
    }

    private bool AllAlike(IReadOnlyList<CircuitResult> circuits)
    {
        if (circuits.Count != last.Count)
        {
            return false;
        }

        for (var i = 0; i < circuits.Count; i++)
        {
            if (!Alike(last[i], circuits[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Alike(ImmutableArray<CircuitResult> old, int[] group, IReadOnlyList<CircuitResult> circuits)
    {
        if (old.Length != group.Length)
        {
            return false;
        }

        for (var i = 0; i < group.Length; i++)
        {
            if (!Alike(old[i], circuits[group[i]]))
            {
                return false;
            }
        }

        return true;
    }

    // What the rules look at: where the circuit ends, what it is made of, and with what and where it runs.
    private static bool Alike(CircuitResult a, CircuitResult b) => ReferenceEquals(a, b) || (ReferenceEquals(a.Way, b.Way) && a.Part == b.Part
        && (ReferenceEquals(a.Circuit, b.Circuit) || (a.Circuit.Id == b.Circuit.Id && a.Circuit.From == b.Circuit.From && a.Circuit.To == b.Circuit.To && a.Circuit.Wire == b.Circuit.Wire
            && a.Circuit.Twist == b.Circuit.Twist && a.Circuit.Shield == b.Circuit.Shield && a.Circuit.Cable == b.Circuit.Cable && a.Circuit.Bundle == b.Circuit.Bundle)));
}
