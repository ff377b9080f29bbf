using System.Numerics;
using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>Something that work weighs on: a group of people together, or a shared thing. Over any stretch of time the work that must be done within it
/// cannot be more than the hours the carrier has there.</summary>
internal sealed class Carrier
{
    private const int MostGroups = 128;
    private const int MostWorkers = 64;

    private readonly int[] hours;

    private Carrier(int[] hours, int[] work) => (this.hours, Work) = (hours, work);

    /// <summary>What each task asks of it at the least.</summary>
    public int[] Work { get; }

    /// <summary>Its hours before a moment.</summary>
    public int Before(int at) => hours[Math.Clamp(at, 0, hours.Length - 1)];

    /// <summary>First moment before which it has so many hours; the end of the time looked at when it never has.</summary>
    public int When(int many)
    {
        var at = Array.BinarySearch(hours, many);
        while (at > 0 && hours[at - 1] == many)
        {
            at--;
        }

        return Math.Min(at < 0 ? ~at : at, hours.Length - 1);
    }

    /// <summary>All that the tasks of a problem weigh on: each shared thing, each group of people that some skills come down to, and all these
    /// within the windows that some tasks have.</summary>
    public static Carrier[] Of(Problem problem)
    {
        var carriers = problem.Resources.Select(r => new Carrier(
            Summed(problem.Horizon, [([new(0, problem.Horizon)], r.Capacity)]),
            [.. problem.Tasks.Select(t => t.Duration * t.Demands.Where(d => d.Resource == r.Id).Sum(d => d.Amount))]));
        var windows = problem.Tasks.Select(t => t.Windows).Where(w => w.Count > 0).Distinct().ToArray();
        carriers = carriers.Concat(problem.Resources.SelectMany(r => windows.Select(open => new Carrier(
            Summed(problem.Horizon, [(Hours.Joined(open), r.Capacity)]),
            [.. problem.Tasks.Select(t => t.Windows == open ? t.Duration * t.Demands.Where(d => d.Resource == r.Id).Sum(d => d.Amount) : 0)]))));
        foreach (var (group, heads) in Groups(problem))
        {
            int[] work = [.. problem.Tasks.Select((t, at) => t.Duration * heads[at])];
            Sequence<Slot>[] people = [.. group.Select(w => Hours.Joined(problem.Workers[w].Shifts.Concat(problem.Workers[w].Overtime)))];
            carriers = carriers.Append(new(Summed(problem.Horizon, people.Select(p => (p, 1))), work));
            carriers = carriers.Concat(windows.SelectMany(open => Within(problem, open, heads, people)));
        }

        return [.. carriers.Where(c => c.Work.Any(w => w > 0))];
    }

    /// <summary>The groups of people that some skills come down to, and how many of them each task needs at the least.</summary>
    public static IEnumerable<(int[] Workers, int[] Heads)> Groups(Problem problem)
    {
        var able = problem.Tasks.SelectMany(t => t.Crew).Select(c => c.Skill).Distinct(StringComparer.Ordinal).ToDictionary(s => s, s => Able(problem, s), StringComparer.Ordinal);
        return (problem.Workers.Count <= MostWorkers ? Joined([.. able.Values.Distinct().Order()]) : []).Select(group => (
            Enumerable.Range(0, problem.Workers.Count).Where(w => (group >> w & 1) == 1).ToArray(),
            problem.Tasks.Select(t => t.Crew.Sum(c => Math.Max(0, c.Count - BitOperations.PopCount(able[c.Skill] & ~group)))).ToArray()));
    }

    // Tasks that share windows: by the hour; and by the piece, since what is left of a stretch when no piece fits any more is lost. The pieces that fit
    // into a part of a stretch are never more than those up to its end less those up to its start. A milestone is no piece: nobody need be there for it.
    private static IEnumerable<Carrier> Within(Problem problem, Sequence<Slot> open, int[] heads, Sequence<Slot>[] people)
    {
        Sequence<Slot>[] common = [.. people.Select(p => Hours.Common(p, open))];
        int[] Weighed(Func<Work, int> weight) => [.. problem.Tasks.Select((t, at) => t.Windows == open ? heads[at] * weight(t) : 0)];
        yield return new(Summed(problem.Horizon, common.Select(h => (h, 1))), Weighed(t => t.Duration));
        var shortest = problem.Tasks.Where((t, at) => t.Windows == open && heads[at] > 0 && t.Duration > 0).SelectMany(t => t.Pieces()).DefaultIfEmpty(0).Min();
        if (shortest > 0)
        {
            var ends = common.SelectMany(h => h).SelectMany(s => Enumerable.Range(1, s.Length / shortest).Select(n => s.From + (n * shortest)));
            yield return new(Summed(problem.Horizon, ends.Select(e => ((Sequence<Slot>)[new(e - 1, e)], 1))), Weighed(t => t.Duration > 0 ? t.Pieces().Count() : 0));
        }
    }

    private static ulong Able(Problem problem, string skill) =>
        problem.Workers.Select((w, i) => i < MostWorkers && w.Skills.Contains(skill) ? 1UL << i : 0).Aggregate(0UL, (all, one) => all | one);

    // The groups of some skills, and those of several skills together.
    private static HashSet<ulong> Joined(ulong[] skills)
    {
        HashSet<ulong> groups = [.. skills];
        foreach (var skill in skills)
        {
            foreach (var group in groups.ToArray())
            {
                if (groups.Count < MostGroups)
                {
                    groups.Add(group | skill);
                }
            }
        }

        groups.Remove(0);
        return groups;
    }

    private static int[] Summed(int horizon, IEnumerable<(Sequence<Slot> Slots, int Many)> parts)
    {
        var rate = new int[horizon + 2];
        foreach (var (slots, many) in parts)
        {
            foreach (var slot in slots)
            {
                rate[Math.Min(slot.From, horizon + 1)] += many;
                rate[Math.Min(slot.To, horizon + 1)] -= many;
            }
        }

        var (hours, now) = (new int[horizon + 1], 0);
        for (var t = 0; t < horizon; t++)
        {
            hours[t + 1] = hours[t] + (now += rate[t]);
        }

        return hours;
    }
}
