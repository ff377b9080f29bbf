using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>A band of frequencies.</summary>
public sealed record Band(
    [Doc("lowest frequency", Min = "0.01 MHz", Max = "40000 MHz")] Frequency From,
    [Doc("highest frequency", Min = "0.01 MHz", Max = "40000 MHz")] Frequency To)
{
    /// <summary>Whether the two share a frequency.</summary>
    public bool Touches(Band other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return From <= other.To && other.From <= To;
    }
}

/// <summary>A transmitter, a receiver or both in a box, with the limits its maker sets for cables and antennas. Levels are at the antenna, or at
/// the input of the antenna's amplifier where it has one, and hold for signals in the antenna's band.</summary>
public sealed record RadioPort(
    [Key] string Id,
    [Doc("contacts of its coaxial cables, for example J1-C")] Sequence<string> Contacts = default,
    [Doc("band it transmits in")] Band? Transmit = null,
    [Doc("band it receives in")] Band? Receive = null,
    [Doc("transmitter power at the contact, the peak where it is pulsed", Min = "0.001 W", Max = "10000 W")] Wattage? Power = null,
    [Doc("least power at the antenna end of the cable", Min = "0.001 W", Max = "10000 W")] Wattage? MinPower = null,
    [Doc("greatest power at the antenna end of the cable", Min = "0.001 W", Max = "10000 W")] Wattage? MaxPower = null,
    [Doc("level in dBm that damages the receiver", Min = "-150", Max = "100")] double? Damage = null,
    [Doc("level in dBm that makes the receiver less sensitive", Min = "-150", Max = "100")] double? Desense = null,
    [Doc("least isolation in dB from antennas of other boxes that transmit in the antenna's band", Min = "0", Max = "200")] double? Isolation = null,
    [Doc("least loss of a cable with its connectors in dB", Min = "0", Max = "100")] double? MinLoss = null,
    [Doc("greatest loss of a cable with its connectors in dB", Min = "0", Max = "100")] double? MaxLoss = null,
    [Doc("least delay of a cable", Min = "0 ns", Max = "100000 ns")] Duration? MinDelay = null,
    [Doc("greatest delay of a cable", Min = "0 ns", Max = "100000 ns")] Duration? MaxDelay = null,
    [Doc("greatest difference of delay among its cables", Min = "0 ns", Max = "10000 ns")] Duration? Match = null,
    [Doc("weakest level in dBm at the contact that the receiver still works with", Min = "-120", Max = "0")] double? Threshold = null,
    [Doc("range at which an interrogator must see a transponder", Min = "0.01 nmi", Max = "1000 nmi")] Length? Range = null) : IEntity;
