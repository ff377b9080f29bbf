namespace Fairlead.Planning.Scheduling;

/// <summary>Times before which no plan can finish, found without search.</summary>
internal static class Bounds
{
    /// <summary>Finish of every task as early as it could be if it had all people and things to itself.</summary>
    public static int Chain(Problem problem) => new Heads(problem, [], backward: false).End.DefaultIfEmpty(0).Max();

    /// <summary>The earliest finish that is not refuted: a finish is refuted when a task would have to end before it can, or when between two moments more
    /// work must be done than the people or shared things concerned can carry (energetic reasoning).</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="known">Finish of a plan that is known, or the end of the time looked at.</param>
    public static int Finish(Problem problem, int known)
    {
        var carriers = Carrier.Of(problem);
        var heads = new Heads(problem, carriers, backward: false);
        var (low, high) = (Math.Min(known, heads.End.DefaultIfEmpty(0).Max()), known);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = Refuted(problem, carriers, heads, middle) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The latest end of each task in any plan with a finish.</summary>
    public static int[] Latest(Problem problem, int finish)
    {
        var mirror = Mirror.Of(problem, finish);
        return [.. new Heads(mirror, Carrier.Of(mirror), backward: true).Start.Select(t => finish - t)];
    }

    private static bool Refuted(Problem problem, Carrier[] carriers, Heads heads, int finish)
    {
        var latest = Latest(problem, finish);
        return heads.End.Zip(latest).Any(x => x.First > x.Second) || carriers.Any(c => Overloaded(c, heads.Start, latest));
    }

    // Whether, from some moment to another, the work of the tasks that lie wholly between is more than is there to carry it.
    private static bool Overloaded(Carrier carrier, int[] earliest, int[] latest)
    {
        int[] tasks = [.. Enumerable.Range(0, earliest.Length).Where(i => carrier.Work[i] > 0).OrderBy(i => latest[i])];
        foreach (var from in tasks.Select(i => earliest[i]).Distinct())
        {
            var (there, work) = (carrier.Before(from), 0);
            foreach (var i in tasks)
            {
                work += earliest[i] >= from ? carrier.Work[i] : 0;
                if (earliest[i] >= from && work > carrier.Before(latest[i]) - there)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
