namespace Fairlead.Workbench;

/// <summary>How two texts differ, line by line.</summary>
public static class Changes
{
    // Lines past this many on either side are compared in their order only: the table below grows with the product.
    private const int MostLines = 4000;

    /// <summary>The lines that differ: taken out after "- ", put in after "+ ", each run under the number of its first line.</summary>
    public static string Lines(string from, string to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var (a, b) = (from.Split('\n'), to.Split('\n'));
        var head = a.Zip(b).TakeWhile(p => p.First == p.Second).Count();
        var tail = a.Skip(head).Reverse().Zip(b.Skip(head).Reverse()).TakeWhile(p => p.First == p.Second).Count();
        return string.Join('\n', Run(a[head..(a.Length - tail)], b[head..(b.Length - tail)], head + 1));
    }

    private static IEnumerable<string> Run(string[] a, string[] b, int line)
    {
        if (a.Length == 0 && b.Length == 0)
        {
            return ["no difference"];
        }

        var header = $"line {Calculations.NumberFormat.Text(line)}";
        return a.Length > MostLines || b.Length > MostLines ? [header, .. a.Select(l => "- " + l), .. b.Select(l => "+ " + l)] : [header, .. Compared(a, b)];
    }

    // Longest common subsequence, by the table of its lengths from the end.
    private static IEnumerable<string> Compared(string[] a, string[] b)
    {
        var common = new int[a.Length + 1, b.Length + 1];
        for (var i = a.Length - 1; i >= 0; i--)
        {
            for (var j = b.Length - 1; j >= 0; j--)
            {
                common[i, j] = a[i] == b[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        var (x, y) = (0, 0);
        while (x < a.Length || y < b.Length)
        {
            if (x < a.Length && y < b.Length && a[x] == b[y])
            {
                (x, y) = (x + 1, y + 1);
            }
            else if (y == b.Length || (x < a.Length && common[x + 1, y] >= common[x, y + 1]))
            {
                yield return "- " + a[x++];
            }
            else
            {
                yield return "+ " + b[y++];
            }
        }
    }
}
