namespace Fairlead.Planning.Scheduling;

/// <summary>The ways to man each task: every group of people once for each need they could fill, those first who are least sought after elsewhere.</summary>
internal sealed class CrewChoices(Problem problem)
{
    private const int Most = 64;

    // Work that would come to each person if all who can do it shared it equally.
    private readonly double[] sought = Sought(problem);

    /// <summary>The choices, by task.</summary>
    public int[][][] Of() => [.. problem.Tasks.Select(t => Choices(t).Take(Most).Select(c => c.ToArray()).ToArray())];

    private IEnumerable<IEnumerable<int>> Choices(Work task)
    {
        IEnumerable<int[]> chosen = [[]];
        foreach (var need in task.Crew)
        {
            int[] able = [.. Able(problem, need.Skill).OrderBy(w => sought[w])];
            chosen = chosen.SelectMany(c => Groups([.. able.Except(c)], need.Count).Select(g => c.Concat(g).ToArray()));
        }

        return chosen;
    }

    private static double[] Sought(Problem problem)
    {
        var load = new double[problem.Workers.Count];
        foreach (var skill in problem.Tasks.SelectMany(t => t.Crew.Select(c => (c.Skill, Work: (double)t.Duration * c.Count))).GroupBy(x => x.Skill, StringComparer.Ordinal))
        {
            int[] able = [.. Able(problem, skill.Key)];
            Array.ForEach(able, w => load[w] += skill.Sum(x => x.Work) / able.Length);
        }

        return load;
    }

    private static IEnumerable<int> Able(Problem problem, string skill) => Enumerable.Range(0, problem.Workers.Count).Where(w => problem.Workers[w].Skills.Contains(skill));

    private static IEnumerable<int[]> Groups(int[] from, int count) => count == 0 ? [[]] :
        Enumerable.Range(0, Math.Max(0, from.Length - count + 1)).SelectMany(i => Groups(from[(i + 1)..], count - 1).Select(rest => (int[])[from[i], .. rest]));
}
