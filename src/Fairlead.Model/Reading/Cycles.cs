namespace Fairlead.Model.Reading;

/// <summary>Circles in what should be an order.</summary>
internal static class Cycles
{
    /// <summary>One circle for each knot of ids that reach themselves: the ids along it, the first again at the end.</summary>
    public static IEnumerable<IReadOnlyList<string>> Of(IEnumerable<string> ids, Func<string, IEnumerable<string>> next)
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var id in ids)
        {
            if (From(id, next, done) is { } cycle)
            {
                yield return cycle;
            }
        }
    }

    // Depth-first without recursion: a chain as long as the file must not exhaust the stack.
    private static List<string>? From(string start, Func<string, IEnumerable<string>> next, HashSet<string> done)
    {
        var path = new List<string>();
        var onPath = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<Queue<string>>([new Queue<string>([start])]);
        while (open.TryPeek(out var siblings))
        {
            if (!siblings.TryDequeue(out var id))
            {
                open.Pop();
                if (path.Count > 0)
                {
                    done.Add(path[^1]);
                    onPath.Remove(path[^1]);
                    path.RemoveAt(path.Count - 1);
                }
            }
            else if (onPath.Contains(id))
            {
                done.UnionWith(onPath);
                return [.. path.SkipWhile(p => p != id), id];
            }
            else if (!done.Contains(id))
            {
                path.Add(id);
                onPath.Add(id);
                open.Push(new Queue<string>(next(id)));
            }
        }

        return null;
    }
}
