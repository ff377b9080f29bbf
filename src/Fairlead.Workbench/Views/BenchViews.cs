using System.Collections.Immutable;

namespace Fairlead.Workbench.Views;

/// <summary>A calculation on the bench.</summary>
public sealed record BenchView(string Name, string Title, string Discipline, string Purpose, string Example, ImmutableArray<string> Sources, ImmutableArray<BenchInput> Inputs);

/// <summary>An input of a calculation.</summary>
public sealed record BenchInput(string Symbol, string Meaning, string Range, string Default, bool Optional, string Example);

/// <summary>What running a calculation gave: a sheet, or what is wrong with each input.</summary>
public sealed record BenchResult(SheetView? Sheet, ImmutableArray<BenchError> Errors);

/// <summary>What is wrong with an input.</summary>
public sealed record BenchError(string Symbol, string Message);
