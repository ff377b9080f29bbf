using System.Collections.Immutable;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench.Maps;

/// <summary>Panels that stand open.</summary>
public static class OpenPanels
{
    private static readonly string[] Finished = ["done", "signed"];

    /// <summary>Those whose opening is entered and whose closing is not.</summary>
    public static ImmutableHashSet<string> Of(IEnumerable<TaskView> tasks)
    {
        ArgumentNullException.ThrowIfNull(tasks);
        var panels = tasks.Where(t => t.Subject.StartsWith("panel/", StringComparison.Ordinal) && Finished.Contains(t.State)).ToLookup(t => t.Kind, t => t.Subject["panel/".Length..], StringComparer.Ordinal);
        return [.. panels["open"].Except(panels["close"], StringComparer.Ordinal)];
    }
}
