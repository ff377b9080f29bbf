using Fairlead.Calculations;

namespace Fairlead.Planning.Scheduling;

/// <summary>A stretch of time, in ticks from the start of the plan: from <paramref name="From"/> up to but not including <paramref name="To"/>.</summary>
public readonly record struct Slot(int From, int To)
{
    /// <summary>How long.</summary>
    public int Length => To - From;

    /// <summary>Whether two stretches have time in common.</summary>
    public bool Overlaps(Slot other) => From < other.To && other.From < To;
}

/// <summary>Something of which only so much can be used at once: room in a zone, a tool, a test set.</summary>
/// <param name="Id">Name.</param>
/// <param name="Capacity">How much of it there is.</param>
public sealed record Resource(string Id, int Capacity);

/// <summary>A person.</summary>
/// <param name="Id">Name.</param>
/// <param name="Skills">What the person can do.</param>
/// <param name="Shifts">When the person works, in order and apart from each other.</param>
/// <param name="Overtime">When the person may work beyond that, in order and apart from each other and from the shifts.</param>
public sealed record Worker(string Id, Sequence<string> Skills, Sequence<Slot> Shifts, Sequence<Slot> Overtime = default);

/// <summary>So many people of one skill.</summary>
public sealed record CrewNeed(string Skill, int Count);

/// <summary>So much of one resource while work is done.</summary>
public sealed record Demand(string Resource, int Amount);

/// <summary>What must be finished before work can start.</summary>
/// <param name="Task">The earlier task.</param>
/// <param name="Lag">Wall time that must pass after its end, for example cure.</param>
public sealed record Predecessor(string Task, int Lag = 0);

/// <summary>A task of the plan. It may pause between its pieces and not within one; the same people do all of it.</summary>
/// <param name="Id">Name.</param>
/// <param name="Duration">Working time, in ticks; 0 for a milestone, for which nobody need be at work.</param>
/// <param name="After">What must be finished first.</param>
/// <param name="Crew">Who is needed; nobody for a wait.</param>
/// <param name="Demands">What else is needed while work is done.</param>
/// <param name="Piece">Longest stretch without a pause; 0 when the task may not pause at all.</param>
/// <param name="Windows">The only times at which work may be done; empty when any time serves.</param>
/// <param name="NotBefore">Earliest start.</param>
public sealed record Work(
    string Id, int Duration, Sequence<Predecessor> After = default, Sequence<CrewNeed> Crew = default, Sequence<Demand> Demands = default,
    int Piece = 0, Sequence<Slot> Windows = default, int NotBefore = 0)
{
    /// <summary>The lengths of the pieces, in order: as equal as whole ticks allow.</summary>
    public IEnumerable<int> Pieces() => Parts(Duration, Piece <= 0 || Duration <= Piece ? 1 : ((Duration - 1) / Piece) + 1);

    /// <summary>A duration in so many parts, as equal as whole ticks allow.</summary>
    internal static IEnumerable<int> Parts(int duration, int count) =>
        Enumerable.Range(0, count).Select(i => (int)(((long)duration * (i + 1) / count) - ((long)duration * i / count)));
}

/// <summary>What is to be planned. Times are whole ticks from the start; what a tick is, the caller decides.</summary>
public sealed record Problem
{
    private readonly Dictionary<string, int> index;

    /// <summary>Makes a problem, in which every name that is used is known and nothing waits for itself.</summary>
    /// <exception cref="ArgumentException">A name is used twice or is not known, a number is negative, or tasks wait for each other in a circle.</exception>
    public Problem(int horizon, Sequence<Work> tasks, Sequence<Worker> workers = default, Sequence<Resource> resources = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(horizon);
        (Horizon, Tasks, Workers, Resources) = (horizon, tasks, workers, resources);
        index = Index(tasks.Select(t => t.Id));
        var stock = Index(resources.Select(r => r.Id));
        Index(workers.Select(w => w.Id));
        foreach (var task in tasks)
        {
            Require(task.Duration >= 0 && task.NotBefore >= 0, $"task {task.Id} has a negative time");
            Require(task.Demands.All(d => stock.ContainsKey(d.Resource) && d.Amount >= 0), $"task {task.Id} uses a resource that is not there");
            Require(task.After.All(p => index.ContainsKey(p.Task)), $"task {task.Id} waits for a task that is not there");
            Require(task.After.All(p => p.Lag >= 0), $"task {task.Id} has a negative lag");
        }

        Order = Sorted();
    }

    /// <summary>End of the time looked at.</summary>
    public int Horizon { get; }

    /// <summary>The tasks.</summary>
    public Sequence<Work> Tasks { get; }

    /// <summary>The people.</summary>
    public Sequence<Worker> Workers { get; }

    /// <summary>What is shared.</summary>
    public Sequence<Resource> Resources { get; }

    /// <summary>Indices of the tasks, each after all that it waits for.</summary>
    public Sequence<int> Order { get; }

    /// <summary>Index of a task.</summary>
    public int IndexOf(string task) => index[task];

    /// <summary>The same problem with other tasks.</summary>
    public Problem With(Sequence<Work> tasks) => new(Horizon, tasks, Workers, Resources);

    /// <summary>Longest wait from the start of each task to the end of the plan along what waits for it, its own duration included.</summary>
    public int[] Tails()
    {
        var tails = Tasks.Select(t => t.Duration).ToArray();
        foreach (var at in Order.Reverse())
        {
            foreach (var before in Tasks[at].After)
            {
                var i = index[before.Task];
                tails[i] = Math.Max(tails[i], Tasks[i].Duration + before.Lag + tails[at]);
            }
        }

        return tails;
    }

    private static Dictionary<string, int> Index(IEnumerable<string> ids)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var id in ids)
        {
            Require(numbers.TryAdd(id, numbers.Count), $"{id} stands twice");
        }

        return numbers;
    }

    private static void Require(bool condition, string what)
    {
        if (!condition)
        {
            throw new ArgumentException($"Not a problem that can be planned: {what}.", paramName: null);
        }
    }

    private Sequence<int> Sorted()
    {
        var waiting = Tasks.Select(t => t.After.Select(p => p.Task).Distinct(StringComparer.Ordinal).Count()).ToArray();
        var next = Tasks.Select(_ => new List<int>()).ToArray();
        for (var i = 0; i < Tasks.Count; i++)
        {
            foreach (var before in Tasks[i].After.Select(p => index[p.Task]).Distinct())
            {
                next[before].Add(i);
            }
        }

        var (order, ready) = (new List<int>(), new PriorityQueue<int, int>(Enumerable.Range(0, Tasks.Count).Where(i => waiting[i] == 0).Select(i => (i, i))));
        while (ready.TryDequeue(out var at, out _))
        {
            order.Add(at);
            foreach (var after in next[at].Where(after => --waiting[after] == 0))
            {
                ready.Enqueue(after, after);
            }
        }

        Require(order.Count == Tasks.Count, $"tasks wait for each other in a circle: {string.Join(", ", Tasks.Where((_, i) => waiting[i] > 0).Select(t => t.Id).Take(8))}");
        return order.ToSequence();
    }
}
