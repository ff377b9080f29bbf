using System.Collections.Immutable;
using System.Reflection;

namespace Fairlead.Calculations;

/// <summary>The form of an input.</summary>
public enum InputForm
{
    /// <summary>A quantity or a pure number.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>Free words, such as a name.</summary>
    Words,

    /// <summary>A wire gauge.</summary>
    Gauge,

    /// <summary>Rows of columns.</summary>
    Table,
}

/// <summary>One input of a calculation, or one column of a table input.</summary>
/// <param name="Symbol">Symbol in formulas and on the command line.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Form">Its form.</param>
/// <param name="Unit">The unit it is printed in; null when it is not a number.</param>
/// <param name="Min">Least valid value, in <paramref name="Unit"/>.</param>
/// <param name="Max">Greatest valid value, in <paramref name="Unit"/>.</param>
/// <param name="Optional">Whether it may be left out.</param>
/// <param name="Default">What is used when it is left out, in words.</param>
/// <param name="Choices">The words of a choice.</param>
/// <param name="Columns">The columns of a table.</param>
public sealed record InputInfo(
    string Symbol, string Meaning, InputForm Form, Unit? Unit, double Min, double Max, bool Optional, string Default,
    ImmutableArray<string> Choices, ImmutableArray<InputInfo> Columns)
{
    internal ParameterInfo Parameter { get; init; } = null!;

    internal Func<object, object?> Read { get; init; } = null!;

    /// <summary>The range in words, for help and messages; empty when there is none.</summary>
    public string RangeText
    {
        get
        {
            var unit = Unit is null || Unit.Symbol.Length == 0 ? "" : " " + Unit.Symbol;
            return (double.IsFinite(Min), double.IsFinite(Max)) switch
            {
                (true, true) => $"{NumberFormat.Text(Min)} to {NumberFormat.Text(Max)}{unit}",
                (true, false) => $"at least {NumberFormat.Text(Min)}{unit}",
                (false, true) => $"at most {NumberFormat.Text(Max)}{unit}",
                _ => "",
            };
        }
    }

    /// <summary>Whether a value, in SI, lies in the range.</summary>
    internal bool Accepts(double si)
    {
        var value = Unit!.FromSi(si);
        return value >= Min - Slack(Min) && value <= Max + Slack(Max);
    }

    // A limit typed in the stated unit passes through SI and back; the last bit may not shut it out.
    private static double Slack(double limit) => double.IsFinite(limit) ? 1e-12 * Math.Abs(limit) : 0;

    internal static ImmutableArray<InputInfo> Of(Type record) =>
        [.. record.GetConstructors().OrderByDescending(c => c.GetParameters().Length).First().GetParameters().Select(p => Of(record, p))];

    private static InputInfo Of(Type record, ParameterInfo parameter)
    {
        var declared = parameter.GetCustomAttribute<InAttribute>()
            ?? throw new InvalidOperationException($"Parameter '{parameter.Name}' of {record.Name} has no [In] attribute.");
        var type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        var form = FormOf(type);
        return new InputInfo(
            declared.Symbol, declared.Meaning, form, UnitOf(type, form, declared.Unit), declared.Min, declared.Max, parameter.HasDefaultValue, declared.Default,
            form == InputForm.Choice ? [.. Enum.GetNames(type).Select(Words.Kebab)] : [],
            form == InputForm.Table ? Of(type.GetGenericArguments()[0]) : [])
        {
            Parameter = parameter,
            Read = Getter.For(record, parameter.Name!),
        };
    }

    private static InputForm FormOf(Type type) => type switch
    {
        _ when type == typeof(string) => InputForm.Words,
        _ when type == typeof(bool) => InputForm.YesNo,
        _ when type == typeof(Gauge) => InputForm.Gauge,
        _ when type == typeof(int) => InputForm.Count,
        _ when type == typeof(double) => InputForm.Number,
        { IsEnum: true } => InputForm.Choice,
        { IsGenericType: true } when type.GetGenericTypeDefinition() == typeof(Quantity<>) => InputForm.Number,
        { IsGenericType: true } when type.GetGenericTypeDefinition() == typeof(Sequence<>) => InputForm.Table,
        _ => throw new InvalidOperationException($"{type.Name} cannot be an input."),
    };

    private static Unit? UnitOf(Type type, InputForm form, string symbol) => form switch
    {
        InputForm.Count => Units.Default(Dimension.Number),
        InputForm.Number when type == typeof(double) => Units.Default(Dimension.Number),
        InputForm.Number => Units.Get(KindDimension(type.GetGenericArguments()[0]), symbol),
        _ => null,
    };

    internal static Dimension KindDimension(Type kind) => (Dimension)kind.GetProperty(nameof(IKind.Dimension), BindingFlags.Public | BindingFlags.Static)!.GetValue(null)!;
}
