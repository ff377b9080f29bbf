using System.Collections.Immutable;

namespace Fairlead.Substantiation.Tests;

/// <summary>Which terminals read through to each other, with one fault in the wiring.</summary>
internal sealed class Connectivity
{
    private readonly ImmutableArray<string> terminals;
    private readonly Dictionary<string, int> index;
    private readonly HarnessUnderTest harness;

    public Connectivity(HarnessUnderTest harness)
    {
        this.harness = harness;
        terminals = harness.Terminals();
        index = terminals.Select((t, i) => (t, i)).ToDictionary(t => t.t, t => t.i, StringComparer.Ordinal);
        Probed = [.. terminals.Except(harness.Hidden, StringComparer.Ordinal)];
    }

    /// <summary>The terminals that a probe reaches.</summary>
    public ImmutableArray<string> Probed { get; }

    /// <summary>The place of a terminal; -1 when the harness has none of that name.</summary>
    public int IndexOf(string terminal) => index.GetValueOrDefault(terminal, -1);

    /// <summary>For each terminal the least terminal it reads through to.</summary>
    public int[] Nets(SingleFault fault, bool shieldsLifted)
    {
        var parent = Enumerable.Range(0, terminals.Length).ToArray();
        foreach (var wire in harness.Wires.Where(w => fault.Kind is not (FaultKind.Open or FaultKind.MissingGround) || w.Id != fault.A))
        {
            Join(parent, Landing(wire.From, fault), Landing(wire.To, fault));
        }

        foreach (var shield in shieldsLifted ? [] : harness.GroundedShields)
        {
            Join(parent, shield, HarnessUnderTest.Airframe);
        }

        switch (fault.Kind)
        {
            case FaultKind.Short:
                Join(parent, fault.A, fault.B);
                break;
            case FaultKind.ShortToGround:
                Join(parent, fault.A, HarnessUnderTest.Airframe);
                break;
            case FaultKind.ShieldToSignal:
                Join(parent, harness.Wires.First(w => w.Id == fault.A).From, fault.B);
                break;
        }

        for (var i = 0; i < parent.Length; i++)
        {
            parent[i] = Root(parent, i);
        }

        return parent;
    }

    private static string Landing(string terminal, SingleFault fault) => fault.Kind is not (FaultKind.Swap or FaultKind.ReversedPair) ? terminal
        : terminal == fault.A ? fault.B : terminal == fault.B ? fault.A : terminal;

    private void Join(int[] parent, string a, string b)
    {
        var (one, other) = (Root(parent, index[a]), Root(parent, index[b]));
        parent[Math.Max(one, other)] = Math.Min(one, other);
    }

    private static int Root(int[] parent, int i)
    {
        while (parent[i] != i)
        {
            i = parent[i] = parent[parent[i]];
        }

        return i;
    }
}
