using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Routing;

/// <summary>Chooses ways group by group, where groups have nothing to do with each other, and keeps what each group came to.</summary>
/// <remarks>
/// Every unit begins as a group of its own on its shortest way. Where units of several groups break a rule together, their groups become
/// one, which is solved as if no other were there; this goes on until groups break rules only within themselves (the independence detection
/// of Standley 2010). A group solved alone is under fewer rules than among the others, so the sum of the groups' bounds is a bound of all;
/// and where the groups' ways keep every rule together, least groups make a least whole. A group depends on its own units alone, so what
/// it came to serves until one of them changes. A panel is paid for once whoever opens it, so with panels to pay all that has a choice is
/// one group.
/// </remarks>
internal sealed class RoutingGroups
{
    private RoutingProblem? frame;
    private Dictionary<Sequence<RoutedUnit>, RoutingSolution> before = [];
    private Dictionary<Sequence<RoutedUnit>, RoutingSolution> now = [];

    /// <summary>Groups searched so far; what was known already does not count.</summary>
    public int Searches { get; private set; }

    /// <summary>Forgets what neither this edit nor the one before it asked for.</summary>
    public void NextEdit() => (before, now) = (now, []);

    /// <summary>The ways.</summary>
    public RoutingSolution Solve(RoutingProblem problem, Watch watch = default)
    {
        if (frame?.Frames(problem) != true)
        {
            (before, now) = ([], []);
        }

        frame = problem;
        var split = new Split(problem);
        while (split.Merge())
        {
            foreach (var group in split.Open())
            {
                split.Settle(group, Find(problem, group, watch.Stop));
                watch.Tell("choosing ways", split.Done, problem.Units.Length, "ways");
            }
        }

        return split.Whole();
    }

    private RoutingSolution Find(RoutingProblem problem, int[] group, CancellationToken stop)
    {
        var units = group.Select(u => problem.Units[u]).ToSequence();
        if (!now.TryGetValue(units, out var found))
        {
            if (!before.TryGetValue(units, out found))
            {
                Searches++;
                found = RoutingSearch.Solve(problem with { Units = [.. units] }, stop);
            }

            now.Add(units, found);
        }

        return found;
    }

    /// <summary>Which units are one group, and the way of each.</summary>
    private sealed class Split
    {
        private readonly RoutingField whole;
        private readonly int[] leader;
        private readonly Dictionary<int, List<int>> members = [];
        private readonly Dictionary<int, RoutingSolution> solved = [];
        private readonly Dictionary<int, Way> moved = [];
        private readonly Dictionary<int, HashSet<int>> users = [];
        private readonly HashSet<int> open = [];
        private HashSet<int> suspects;

        public Split(RoutingProblem problem)
        {
            whole = new RoutingField(problem);
            leader = [.. Enumerable.Range(0, problem.Units.Length)];
            suspects = [.. whole.Used];
            if (problem.PanelCost.Count > 0)
            {
                Tie(suspects.Where(e => !problem.Panels[e].IsEmpty).SelectMany(whole.UsersAt));
            }
        }

        /// <summary>How many units have their way.</summary>
        public int Done => leader.Length - open.Sum(g => Members(g).Count);

        private RoutingProblem Problem => whole.Problem;

        /// <summary>Makes one group of those that break a rule together. Returns whether any is to be solved.</summary>
        public bool Merge()
        {
            foreach (var edge in suspects.Order())
            {
                foreach (var tied in whole.Ties(edge, UsersOf(edge)))
                {
                    Tie(tied);
                }
            }

            suspects = [];
            if (Problem.PanelCost.Count > 0 && open.Count > 0)
            {
                Tie([.. open.Union(solved.Keys)]);
            }

            return open.Count > 0;
        }

        /// <summary>The groups to be solved, in the order of their first units.</summary>
        public IEnumerable<int[]> Open() => [.. open.Order().Select(g => Members(g).Order().ToArray())];

        /// <summary>Takes over the ways of a group.</summary>
        public void Settle(int[] group, RoutingSolution solution)
        {
            open.Remove(leader[group[0]]);
            solved[leader[group[0]]] = solution;
            foreach (var unit in group)
            {
                foreach (var edge in Numbers(unit))
                {
                    At(edge).Remove(unit);
                }

                moved[unit] = solution.Detours.GetValueOrDefault(Problem.Units[unit].Circuits[0]) ?? Problem.Units[unit].Free;
                foreach (var edge in Numbers(unit))
                {
                    At(edge).Add(unit);
                    suspects.Add(edge);
                }
            }
        }

        /// <summary>All groups together; who has no rule in its way takes its shortest way.</summary>
        public RoutingSolution Whole()
        {
            var groups = solved.OrderBy(g => g.Key).Select(g => g.Value).ToArray();
            var rest = Enumerable.Range(0, leader.Length).Where(u => !solved.ContainsKey(leader[u])).Sum(u => Problem.Units[u].Density * Problem.Units[u].Free.Length.Si);
            return new(
                groups.SelectMany(g => g.Detours).ToDictionary(d => d.Key, d => d.Value, StringComparer.Ordinal),
                new Mass(rest + groups.Sum(g => g.Mass.Si)), new Mass(rest + groups.Sum(g => g.Bound.Si)),
                Array.TrueForAll(groups, g => g.Proved), [.. groups.SelectMany(g => g.Clashes)], groups.Sum(g => g.Steps));
        }

        private ImmutableArray<int> Numbers(int unit) => Problem.Raceways.Numbers(moved.GetValueOrDefault(unit) ?? Problem.Units[unit].Free);

        private HashSet<int> At(int edge)
        {
            if (!users.TryGetValue(edge, out var found))
            {
                users.Add(edge, found = [.. whole.UsersAt(edge)]);
            }

            return found;
        }

        private int[] UsersOf(int edge) => users.TryGetValue(edge, out var found) ? [.. found.Order()] : [.. whole.UsersAt(edge)];

        private List<int> Members(int group) => members.GetValueOrDefault(group) ?? [group];

        // A rule that a group breaks within itself was weighed when the group was solved.
        private void Tie(IEnumerable<int> units)
        {
            var groups = units.Select(u => leader[u]).Distinct().Order().ToArray();
            if (groups.Length == 0 || (groups.Length == 1 && solved.ContainsKey(groups[0])))
            {
                return;
            }

            var all = groups.SelectMany(Members).ToList();
            foreach (var group in groups)
            {
                solved.Remove(group);
                open.Remove(group);
                members.Remove(group);
            }

            members[groups[0]] = all;
            open.Add(groups[0]);
            foreach (var unit in all)
            {
                leader[unit] = groups[0];
            }
        }
    }
}
