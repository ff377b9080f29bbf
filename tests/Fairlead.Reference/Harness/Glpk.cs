using System.Globalization;
using System.Text;

namespace Fairlead.Tests.Reference.Harness;

/// <summary>A mixed integer program in LP format, solved by GLPK.</summary>
internal sealed class Glpk
{
    private readonly StringBuilder rows = new();
    private readonly StringBuilder binaries = new();
    private readonly StringBuilder objective = new();

    /// <summary>Adds a variable that is 0 or 1.</summary>
    public void Binary(string name, double cost)
    {
        binaries.AppendLine(" " + name);
        objective.AppendLine(string.Create(CultureInfo.InvariantCulture, $" + {cost} {name}"));
    }

    /// <summary>Adds a row.</summary>
    public void Row(IEnumerable<(double Factor, string Name)> terms, string relation, double value)
    {
        var sum = string.Join("\n  ", terms.Select(term => string.Create(CultureInfo.InvariantCulture, $"{(term.Factor < 0 ? "-" : "+")} {Math.Abs(term.Factor)} {term.Name}")));
        rows.AppendLine(string.Create(CultureInfo.InvariantCulture, $" {sum} {relation} {value}"));
    }

    /// <summary>The least sum of costs, or null where no choice is feasible.</summary>
    public double? Least()
    {
        var text = $"minimize\n obj: 0 nothing\n{objective}subject to\n{rows}bounds\n 0 <= nothing <= 0\nbinary\n{binaries}end\n";
        var result = Tools.Run("glpsol", "lp", text, file => ["--lp", file, "--cuts", "--write", file + ".out"], file => File.ReadAllText(file + ".out"));
        var summary = result.Split('\n').Single(line => line.StartsWith("s mip ", StringComparison.Ordinal)).Split(' ');
        return summary[4] == "o" ? double.Parse(summary[5], CultureInfo.InvariantCulture) : null;
    }
}
