using System.Collections.Immutable;

namespace Fairlead.Calculations;

/// <summary>A calculation that can be run from text: what the command line, the API and the bench page use.</summary>
public abstract class CalculationEntry
{
    /// <summary>What it is.</summary>
    public abstract CalculationInfo Info { get; }

    /// <summary>Reads the inputs and runs, or lists what is wrong with them, all in one go.</summary>
    /// <param name="arguments">Input texts by symbol.</param>
    /// <param name="errors">What is wrong; empty when a sheet is returned.</param>
    public abstract Sheet? Run(IReadOnlyDictionary<string, string> arguments, out ImmutableArray<InputError> errors);
}

/// <summary>All calculations of this assembly, found by their shape.</summary>
public static class CalculationCatalog
{
    /// <summary>All calculations by discipline, then name.</summary>
    public static ImmutableArray<CalculationEntry> All { get; } =
    [
        .. typeof(CalculationCatalog).Assembly.GetExportedTypes()
            .SelectMany(t => t.GetInterfaces().Where(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ICalculation<>)).Select(i => (t, input: i.GetGenericArguments()[0])))
            .Where(x => !x.t.IsInterface)
            .Select(x => (CalculationEntry)Activator.CreateInstance(typeof(Entry<,>).MakeGenericType(x.t, x.input))!)
            .OrderBy(e => e.Info.Discipline).ThenBy(e => e.Info.Name, StringComparer.Ordinal)
    ];

    /// <summary>The calculation of a name, or null.</summary>
    public static CalculationEntry? Find(string name) => All.FirstOrDefault(e => e.Info.Name == name);

    private sealed class Entry<TCalculation, TInput> : CalculationEntry
        where TCalculation : ICalculation<TInput>
        where TInput : notnull
    {
        public override CalculationInfo Info => TCalculation.Info;

        public override Sheet? Run(IReadOnlyDictionary<string, string> arguments, out ImmutableArray<InputError> errors)
        {
            var input = InputReader.Read(typeof(TInput), TCalculation.Info.Inputs, arguments, out errors);
            return input is null ? null : TCalculation.Run((TInput)input);
        }
    }
}
