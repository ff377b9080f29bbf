using System.Collections;
using System.Reflection;
using System.Text.RegularExpressions;
using Fairlead.Calculations;

namespace Fairlead.Tests.Conventions;

/// <summary>What every calculation promises, whoever wrote it.</summary>
public sealed partial class CalculationConventionTests
{
    private static readonly double[] Extremes = [double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, -double.MaxValue, double.Epsilon, 0];
    private static readonly int[] ExtremeCounts = [int.MinValue, -1, 0, 1, int.MaxValue];

    public static TheoryData<string> Names => [.. CalculationCatalog.All.Select(e => e.Info.Name)];

    [Fact]
    public void Names_are_unique()
    {
        Assert.NotEmpty(CalculationCatalog.All);
        Assert.Equal(CalculationCatalog.All.Length, CalculationCatalog.All.Select(e => e.Info.Name).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Names_and_symbols_can_be_typed_and_everything_is_said(string name)
    {
        var info = CalculationCatalog.Find(name)!.Info;
        Assert.Matches("^[a-z][a-z0-9-]*$", info.Name);
        Assert.NotEmpty(info.Title);
        Assert.NotEmpty(info.Purpose);
        Assert.NotEmpty(info.Sources);
        Assert.All(info.Sources, s => Assert.NotEmpty(s.Document));
        Assert.All(info.Inputs.Concat(info.Inputs.SelectMany(i => i.Columns)), input =>
        {
            Assert.Matches("^[A-Za-z][A-Za-z0-9_]*$", input.Symbol);
            Assert.NotEmpty(input.Meaning);
            Assert.Equal(input.Optional, input.Default.Length > 0);
        });
        Assert.Equal(info.Inputs.Length, info.Inputs.Select(i => i.Symbol).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_number_states_its_range(string name) =>
        Assert.All(
            CalculationCatalog.Find(name)!.Info.Inputs.SelectMany(i => i.Columns.Prepend(i)).Where(i => i.Form is InputForm.Number or InputForm.Count),
            i => Assert.NotEmpty(i.RangeText));

    [Theory]
    [MemberData(nameof(Names))]
    public void The_example_runs_and_concludes(string name)
    {
        var sheet = Example(name);
        Assert.NotEqual(Verdict.CannotTell, sheet.Verdict);
        Assert.Empty(sheet.CannotTell);
        Assert.NotEmpty(sheet.Sources);
        Assert.All(sheet.Steps, step => Assert.True(double.IsFinite(step.Value.Si), step.Symbol));
        Assert.Equal(sheet.Steps.Length, sheet.Steps.Select(step => step.Symbol).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_typed_is_answered_with_the_inputs_that_are_missing(string name)
    {
        var entry = CalculationCatalog.Find(name)!;
        var sheet = entry.Run(new Dictionary<string, string>(), out var errors);
        Assert.Equal(entry.Info.Inputs.Where(i => !i.Optional).Select(i => i.Symbol), errors.Select(e => e.Symbol));

        // Where a value may be given in one of several ways none of them is required by itself; the sheet then says what to give.
        Assert.Equal(errors.IsEmpty, sheet is not null);
        Assert.True(sheet is null or { Verdict: Verdict.CannotTell });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_number_however_extreme_makes_it_throw_or_print_one_that_is_not_finite(string name)
    {
        var (calculation, input) = Calculation(name);
        var tried = 0;
        foreach (var bad in Variants(input))
        {
            var sheet = (Sheet)calculation.GetMethod("Run")!.Invoke(null, [bad])!;
            Assert.All(sheet.Steps, step => Assert.True(double.IsFinite(step.Value.Si), $"{step.Symbol} of {bad}"));
            Assert.All(sheet.Checks, check => Assert.True(double.IsFinite(check.Demand.Si) && double.IsFinite(check.Limit.Si), $"{check.Name} of {bad}"));
            tried++;
        }

        Assert.True(tried > 0 || CalculationCatalog.Find(name)!.Info.Inputs.All(i => i.Form is not (InputForm.Number or InputForm.Count or InputForm.Table)));
    }

    private static Sheet Example(string name)
    {
        var sheet = CalculationCatalog.Find(name)!.Run(Arguments(CalculationCatalog.Find(name)!.Info.Example), out var errors);
        Assert.Empty(errors);
        return sheet!;
    }

    private static Dictionary<string, string> Arguments(string example) =>
        Argument().Matches(example).ToDictionary(m => m.Groups["symbol"].Value, m => m.Groups["quoted"].Success ? m.Groups["quoted"].Value : m.Groups["plain"].Value);

    private static (Type Calculation, object Input) Calculation(string name)
    {
        var info = CalculationCatalog.Find(name)!.Info;
        var calculation = typeof(CalculationCatalog).Assembly.GetExportedTypes()
            .Single(t => !t.IsAbstract && !t.IsGenericType && t.GetProperty("Info", BindingFlags.Public | BindingFlags.Static)?.GetValue(null) is CalculationInfo found && found.Name == name);
        var record = calculation.GetMethod("Run")!.GetParameters()[0].ParameterType;
        return (calculation, InputReader.Read(record, info.Inputs, Arguments(info.Example), out _)!);
    }

    // The example's input with one number at a time, in the record or in the first row of a table, put to an extreme.
    private static IEnumerable<object> Variants(object record)
    {
        var constructor = record.GetType().GetConstructors().OrderByDescending(c => c.GetParameters().Length).First();
        var parameters = constructor.GetParameters();
        var values = parameters.Select(p => record.GetType().GetProperty(p.Name!)!.GetValue(record)).ToArray();
        for (var i = 0; i < values.Length; i++)
        {
            foreach (var value in Extreme(parameters[i].ParameterType, values[i]))
            {
                yield return constructor.Invoke([.. values[..i], value, .. values[(i + 1)..]]);
            }
        }
    }

    private static IEnumerable<object> Extreme(Type declared, object? value)
    {
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        if (type == typeof(double))
        {
            return Extremes.Cast<object>();
        }

        if (type == typeof(int))
        {
            return ExtremeCounts.Cast<object>();
        }

        if (!type.IsGenericType)
        {
            return [];
        }

        return type.GetGenericTypeDefinition() == typeof(Sequence<>) ? Rows(type, (IEnumerable)value!) : Extremes.Select(x => Activator.CreateInstance(type, x)!);
    }

    private static IEnumerable<object> Rows(Type sequence, IEnumerable rows)
    {
        var all = rows.Cast<object>().ToArray();
        var row = sequence.GetGenericArguments()[0];
        yield return Activator.CreateInstance(sequence)!;
        foreach (var first in all.Length == 0 ? [] : Variants(all[0]))
        {
            var changed = Array.CreateInstance(row, all.Length);
            for (var i = 0; i < all.Length; i++)
            {
                changed.SetValue(i == 0 ? first : all[i], i);
            }

            yield return typeof(Sequence).GetMethod(nameof(Sequence.ToSequence))!.MakeGenericMethod(row).Invoke(null, [changed])!;
        }
    }

    [GeneratedRegex("(?<symbol>[A-Za-z][A-Za-z0-9_]*)=(?:'(?<quoted>[^']*)'|(?<plain>\\S+))", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Argument();
}
