using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Harness.Identification;

/// <summary>What carries a mark.</summary>
public enum MarkCarrier
{
    /// <summary>A wire, single-core cable or coaxial cable.</summary>
    Wire,

    /// <summary>A core of a cable, marked where it leaves the jacket at both ends.</summary>
    Core,

    /// <summary>The jacket of a cable with several cores.</summary>
    Jacket,
}

/// <summary>The identification of a wire, and where its sleeves stand.</summary>
/// <param name="Text">What is printed.</param>
/// <param name="Id">The circuit, or the cable for a jacket.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other end.</param>
/// <param name="Diameter">Diameter that the sleeve goes around; null when not known.</param>
/// <param name="Length">Cut length; null when not known, and then only the ends are marked.</param>
/// <param name="Places">Where the sleeves stand, from the 'from' end.</param>
public sealed record WireMark(string Text, string Id, MarkCarrier Carrier, Endpoint From, Endpoint To, Length? Diameter, Length? Length, Sequence<Length> Places);

/// <summary>A sleeve or label to print.</summary>
/// <param name="Text">What is printed.</param>
/// <param name="Copies">How many.</param>
/// <param name="Kind">Sleeve or label, and what for.</param>
/// <param name="For">What it marks.</param>
/// <param name="Diameter">Diameter that a sleeve goes around; null for a label.</param>
/// <param name="Places">Where the sleeves stand, from the 'from' end.</param>
public sealed record PrintLine(string Text, int Copies, string Kind, string For, Length? Diameter, Sequence<Length> Places);
