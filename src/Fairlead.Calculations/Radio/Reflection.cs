namespace Fairlead.Calculations.Radio;

/// <summary>Reflection at a mismatch, in its four usual words. ρ is the magnitude of the reflection coefficient, from 0 (matched) to 1 (open or short).</summary>
/// <remarks>Check value: VSWR 1.5 is ρ = 0.2, return loss 13.979 dB, mismatch loss 0.1773 dB, 4 % reflected.</remarks>
public static class Reflection
{
    /// <summary>ρ = (S − 1)/(S + 1).</summary>
    public static double OfVswr(double vswr) => (vswr - 1) / (vswr + 1);

    /// <summary>ρ = 10^(−RL/20).</summary>
    public static double OfReturnLoss(double returnLoss) => Math.Pow(10, -returnLoss / 20);

    /// <summary>S = (1 + ρ)/(1 − ρ).</summary>
    public static double Vswr(double rho) => (1 + rho) / (1 - rho);

    /// <summary>Return loss, dB: −20·log10 ρ.</summary>
    public static double ReturnLoss(double rho) => -20 * Math.Log10(rho);

    /// <summary>Mismatch loss, dB: −10·log10(1 − ρ²).</summary>
    public static double MismatchLoss(double rho) => -10 * Math.Log10(1 - (rho * rho));

    /// <summary>Loss of a line of a matched loss in dB with a mismatch ρ at its end: 10·log10[(a² − ρ²)/(a·(1 − ρ²))], a = 10^(A/10).</summary>
    public static double LineLoss(double matchedLoss, double rho)
    {
        var a = Math.Pow(10, matchedLoss / 10);
        return 10 * Math.Log10(((a * a) - (rho * rho)) / (a * (1 - (rho * rho))));
    }
}
