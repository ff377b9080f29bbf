namespace Fairlead.Calculations;

/// <summary>The one central shape: an input record in, a <see cref="Sheet"/> out. Pure.</summary>
/// <typeparam name="TInput">A record of quantities with value equality, so that a result can be cached by its input.</typeparam>
public interface ICalculation<TInput>
    where TInput : notnull
{
    /// <summary>Name, purpose, inputs with units and ranges, sources.</summary>
    static abstract CalculationInfo<TInput> Info { get; }

    /// <summary>Computes. Never throws on a value and never returns NaN: outside the valid range the sheet says <see cref="Verdict.CannotTell"/>.</summary>
    static abstract Sheet Run(TInput input);
}
