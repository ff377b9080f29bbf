using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>What an edit touches, growing from step to step: nothing outside these sets is worked again.</summary>
internal sealed class Edit
{
    /// <summary>Points at which a circuit came or went.</summary>
    public HashSet<Endpoint> Points { get; } = [];

    /// <summary>Circuits whose current must be summed again.</summary>
    public HashSet<CircuitState> Currents { get; } = [];

    /// <summary>Circuits whose start of sizing may differ.</summary>
    public HashSet<CircuitState> Starts { get; } = [];

    /// <summary>Circuits whose choice of wire may differ.</summary>
    public HashSet<CircuitState> Choices { get; } = [];

    /// <summary>Circuits whose checks may differ.</summary>
    public HashSet<CircuitState> Checks { get; } = [];

    /// <summary>Bundles whose wires or currents differ.</summary>
    public HashSet<BundleState> Bundles { get; } = [];

    /// <summary>Feeds to be checked again.</summary>
    public HashSet<FeedState> Feeds { get; } = [];

    /// <summary>Takes over what another edit leaves to be checked.</summary>
    public void Absorb(Edit other)
    {
        Checks.UnionWith(other.Checks);
        Bundles.UnionWith(other.Bundles);
        Feeds.UnionWith(other.Feeds);
    }
}
