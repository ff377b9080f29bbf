namespace Fairlead.Model;

/// <summary>Isolation measured between two antennas as they stand after the change, the same either way.</summary>
public sealed record MeasuredIsolation(
    [Key] string Id,
    [Doc("one antenna")][Ref(typeof(FittedAntenna), typeof(InstalledAntenna))] string One,
    [Doc("the other antenna")][Ref(typeof(FittedAntenna), typeof(InstalledAntenna))] string Other,
    [Doc("band it was measured in")] Band Band,
    [Doc("least isolation measured in that band in dB", Min = "0", Max = "200")] double Isolation,
    [Doc("report that says so")] string Report) : IEntity
{
    /// <summary>Whether it was measured between two antennas at a frequency.</summary>
    public bool Holds(string a, string b, Frequency frequency) =>
        ((One == a && Other == b) || (One == b && Other == a)) && frequency >= Band.From && frequency <= Band.To;
}
