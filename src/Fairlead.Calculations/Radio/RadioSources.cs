namespace Fairlead.Calculations.Radio;

/// <summary>The documents and formulas most radio rules come from.</summary>
internal static class RadioSources
{
    /// <summary>Loss of a line as skin effect and dielectric.</summary>
    public static readonly Source LineLoss = new("Transmission line theory", "", "α = k1·√f + k2·f", Basis.Memory);

    /// <summary>Definitions of reflection coefficient, return loss and mismatch loss.</summary>
    public static readonly Source Reflection = new("Electronic Warfare and Radar Systems Engineering Handbook", "", "voltage standing wave ratio");

    /// <summary>A reflected wave passes the loss of the line twice.</summary>
    public static readonly Source LossyLine = new("Transmission line theory", "", "reflection through a lossy line", Basis.Memory);

    /// <summary>Loss between isotropic antennas in free space.</summary>
    public static readonly Source FreeSpace = new("Free-space loss", "", "20·log10(4π·d/λ)", Basis.Derived);

    /// <summary>Lengths that follow from the wavelength.</summary>
    public static readonly Source AntennaTheory = new("Antenna theory", "", "field regions and quarter-wave monopole", Basis.Memory);

    /// <summary>The antenna maker's own limits, which govern.</summary>
    public static readonly Source Stated = new("Limit given", "", "from the equipment's own data", Basis.Stated);
}
