using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>Whether what the change wires together belongs together.</summary>
internal sealed class InterconnectWork
{
    public InterconnectWork(Job job, Memo memo, IReadOnlyList<CircuitResult> circuits)
    {
        Nets = Net.All(job, circuits);
        var (nets, cables) = (new NetRules(memo, Findings, Shown), new CableRules(job, Findings));
        foreach (var net in Nets)
        {
            nets.Check(net);
            cables.Check(net);
        }

        cables.CheckTogether(circuits);
        new ItemRules(job, Nets, circuits, Findings).Check();
    }

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    public ImmutableArray<Net> Nets { get; }
}
