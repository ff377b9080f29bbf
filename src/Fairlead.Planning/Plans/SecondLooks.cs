using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;

namespace Fairlead.Planning.Plans;

/// <summary>The second pair of eyes on a task: before the work where a stage is looked at before it is covered, after it where the whole is inspected independently.</summary>
/// <param name="Task">The task.</param>
/// <param name="By">Who may be it; empty where nobody can.</param>
internal sealed record SecondLook(JobTask Task, Sequence<string> By)
{
    private const string Mark = "/second";

    /// <summary>Whether it comes before the work.</summary>
    public bool First => Task.Stages.Count > 0;

    /// <summary>Its name in the problem.</summary>
    public string Id => Task.Id + Mark;

    /// <summary>The skill of being one of those who may be it.</summary>
    public string Skill => $"second signature of {string.Join(" or ", By)}";

    /// <summary>The task to which a name in the problem belongs.</summary>
    public static string TaskOf(string id) => IsLook(id) ? id[..^Mark.Length] : id;

    /// <summary>Whether a name in the problem is that of a second look.</summary>
    public static bool IsLook(string id) => id.EndsWith(Mark, StringComparison.Ordinal);
}

/// <summary>Who looks second, at what and when. Who does the work cannot; so where somebody has to be kept from the work to be able to look, that person is.</summary>
internal static class SecondLooks
{
    private const string Activity = "second-look";

    /// <summary>Whether somebody has to come for it who is not in its crew: the two who check controls are both in theirs.</summary>
    public static bool Due(JobTask task) => task.Stages.Count > 0 || (task.Independent && !task.Crew.Contains(Skills.Second));

    /// <summary>Who may look second at a task: of those who may sign, whoever has no part in the work; where all could have one, one without whom it can be done, an inspector first.</summary>
    /// <param name="task">The task.</param>
    /// <param name="crew">The skills that its work takes.</param>
    /// <param name="people">The people: who, and what each can do.</param>
    /// <param name="job">The job: who alone may sign for the work does not sign for it twice.</param>
    public static SecondLook Of(JobTask task, Sequence<string> crew, IReadOnlyList<(string Id, Sequence<string> Skills)> people, Job job)
    {
        string[] holders = [.. (job.Order.People ?? Catalog<Person>.Empty).Where(p => p.Authorisations.Any(a => a.Scope == task.Authorisation)).Select(p => p.Id)];
        bool Signed(string second) => !task.Independent || holders is not [var only] || only != second;
        bool Without(string second) => Manning.Filled(crew, [.. people.Where(p => p.Id != second).Select(p => p.Skills)]).Count == crew.Count;
        var signers = people.Where(p => p.Skills.Contains(Skills.Second) && Signed(p.Id)).ToArray();
        var others = signers.Where(p => !p.Skills.Any(crew.Contains)).Select(p => p.Id).ToArray();
        return new(task, others.Length > 0 ? others.ToSequence() : signers.Where(p => Without(p.Id)).OrderByDescending(p => p.Skills.Contains(Skills.Inspection)).Select(p => p.Id).Take(1).ToSequence());
    }

    /// <summary>A skill as those have it who do not look second.</summary>
    public static string But(string skill, SecondLook look) => $"{skill} (not {string.Join(" or ", look.By)})";

    /// <summary>How long all the looks at a task take.</summary>
    public static TaskTime Time(JobTask task, Job job) => LabourTable.Of(job).For(Activity) * Math.Max(1, task.Stages.Count);

    /// <summary>The work of some tasks with the second looks put in: each a piece of its own, by one of those who may.</summary>
    public static Sequence<Work> Put(Sequence<Work> work, IReadOnlyList<SecondLook> looks, Job job)
    {
        var byTask = looks.ToDictionary(l => l.Task.Id, StringComparer.Ordinal);
        Sequence<Predecessor> After(Sequence<Predecessor> after) => after.Select(p => byTask.TryGetValue(p.Task, out var look) && !look.First ? p with { Task = look.Id } : p).ToSequence();
        var waiting = work.Select(w => w with { After = After(w.After) }).ToSequence();

        // Whoever looks is at the aircraft like whoever works there: kept clear while something radiates, but in no need of the ramp or of room in the zone.
        Work Look(Work of, SecondLook look) => of with
        {
            Id = look.Id, Duration = PlanCalendar.Ticks(Time(look.Task, job).Mean), After = look.First ? of.After : [new(of.Id)], Crew = [new(look.Skill, 1)],
            Demands = of.Demands.Where(d => d.Resource == WholeAircraft.Name).Select(d => d with { Amount = 1 }).ToSequence(), Piece = 0, Windows = [],
        };
        return waiting.Select(w => byTask.TryGetValue(w.Id, out var look) && look.First ? w with { After = [new(look.Id)] } : w)
            .Concat(waiting.Where(w => byTask.ContainsKey(w.Id)).Select(w => Look(w, byTask[w.Id]))).ToSequence();
    }

    /// <summary>What is due to be signed by a second person where nobody is who could, with the authorisations that are missing.</summary>
    public static IEnumerable<JobTask> Unseen(Sequence<JobTask> tasks, Job job)
    {
        (string Id, Sequence<string> Skills)[] people = [.. (job.Order.People ?? Catalog<Person>.Empty).Select(p => (p.Id, Manning.Skills(p)))];
        Sequence<string>[] skills = [.. people.Select(p => p.Skills)];
        foreach (var task in tasks.Where(t => t.Independent || t.Stages.Count > 0))
        {
            var work = task.Crew.Where(s => s != Skills.Second).ToSequence();
            var crew = Manning.Filled(work, skills);
            if (Due(task) ? Of(task, crew, people, job).By.Count == 0 : Manning.Filled(crew.Append(Skills.Second).ToSequence(), skills).Count == crew.Count)
            {
                yield return task;
            }
        }
    }
}
