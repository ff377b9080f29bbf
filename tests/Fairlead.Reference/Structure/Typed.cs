using Fairlead.Calculations;
using Fairlead.Calculations.Structure;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Short forms for numbers typed from the documents.</summary>
internal static class Typed
{
    public static Mass Lb(double value) => Mass.Of(value, "lb");

    public static Length In(double value) => Length.Of(value, "in");

    public static Length Mm(double value) => Length.Of(value, "mm");

    public static Force Lbf(double value) => Force.Of(value, "lbf");

    public static Force Newton(double value) => new(value);

    public static Pressure Psi(double value) => Pressure.Of(value, "psi");

    public static Sequence<FastenerRow> At(string unit, params (double X, double Y)[] places) =>
        places.Select((p, i) => new FastenerRow($"f{i + 1}", Length.Of(p.X, unit), Length.Of(p.Y, unit))).ToSequence();
}
