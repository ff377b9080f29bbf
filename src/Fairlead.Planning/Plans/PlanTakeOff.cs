using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;
using Demand = Fairlead.Planning.Scheduling.Demand;
using Problem = Fairlead.Planning.Scheduling.Problem;
using ThreePoint = Fairlead.Planning.Scheduling.ThreePoint;

namespace Fairlead.Planning.Plans;

/// <summary>A variation of the people and hours of a job.</summary>
/// <param name="Skill">Skill of one more person on the first shift; null for none.</param>
/// <param name="Saturdays">Whether everybody works Saturdays too.</param>
internal readonly record struct Variation(string? Skill, bool Saturdays = false);

/// <summary>Makes the problem of a job: tasks become work, people workers, zones and tools what is shared.</summary>
/// <param name="tasks">The tasks.</param>
/// <param name="job">The job.</param>
/// <param name="options">How the plan is made.</param>
/// <param name="never">Tasks that are left out, since no plan can hold them.</param>
internal sealed class PlanTakeOff(Sequence<JobTask> tasks, Job job, PlanOptions options, IReadOnlyCollection<string>? never = null)
{
    // Four hours: nobody works longer at one thing without a pause.
    private const int LongestPiece = 4 * PlanCalendar.PerHour;

    // No task is at work for longer, so that more of the past need not be counted.
    private const int LongestPast = 60;

    // Common practice, where a job states no shift at all.
    private static readonly Shift Usual = new("", [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday], new(8, 0), new(16, 0));

    private readonly Dictionary<string, TaskProgress> progress = options.Progress.GroupBy(p => p.Task, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);

    // Panels behind which somebody looks before they are closed.
    private readonly HashSet<string> looked = [.. tasks.Where(t => t.LooksBehind).SelectMany(t => t.Panels)];

    private PlanBasis Basis => job.Order.Plan ?? new PlanBasis(options.Start);

    /// <summary>The days of the plan: so many from the present on. What was done long ago needs no days of its own.</summary>
    public PlanCalendar Calendar(int days)
    {
        var gone = options.Now is { } now ? Math.Max(0, DateOnly.FromDateTime(now).DayNumber - Basis.Start.DayNumber) : 0;
        var kept = Math.Min(gone, LongestPast);
        return new(Basis.Start.AddDays(gone - kept), kept + days, Basis.Closed);
    }

    /// <summary>Tick of the present.</summary>
    public int Now(PlanCalendar calendar) => options.Now is { } time ? calendar.Tick(time) : 0;

    /// <summary>Whether somebody looks at what a task leaves behind, so that another person should do it.</summary>
    public static bool LookedAt(JobTask task, IReadOnlyCollection<string> looked) =>
        task.Stages.Count > 0 || (task.Card is null && !task.Crew.Contains(Skills.Inspection) && task.Kind is TaskKind.Remove or TaskKind.Drill or TaskKind.Protect or TaskKind.Rivet or TaskKind.Mount or TaskKind.Seal or TaskKind.RunWire or TaskKind.Terminate or TaskKind.Connect or TaskKind.Extra && task.Panels.Any(looked.Contains));

    /// <summary>The tasks that are not done and not left out, in order.</summary>
    public Sequence<JobTask> Left { get; } = tasks.Where(t => options.Progress.LastOrDefault(p => p.Task == t.Id)?.Done is null && never?.Contains(t.Id) != true).ToSequence();

    /// <summary>The people of the job, by id.</summary>
    public HashSet<string> People { get; } = [.. (job.Order.People ?? Catalog<Person>.Empty).Select(p => p.Id)];

    /// <summary>Whether work on a task has begun.</summary>
    public bool Begun(JobTask task) => progress.ContainsKey(task.Id);

    /// <summary>The hours of the ramp, in words.</summary>
    public string RampHours => string.Join(", ", Basis.Ramp.Select(r => Between(r.Days, r.From, r.To)));

    /// <summary>When somebody is at work, in words.</summary>
    public string HoursOf(string worker) => job.Order.People?.Find(worker) is not { } person ? worker
        : job.Order.Shifts?.Find(person.Shift ?? "") is { } shift ? $"{worker} {Between(shift.Days, shift.From, shift.To)}" : $"{worker}, who has no shift";

    /// <summary>The same without some tasks.</summary>
    public PlanTakeOff Without(IReadOnlyCollection<string> left) => new(tasks, job, options, left);

    /// <summary>When somebody who is called in for what nobody can do would be there, in words.</summary>
    public static string CalledHours(Job job) => job.Order.Shifts is [var first, ..] ? $"in the hours of the shift '{first.Id}'"
        : string.Create(CultureInfo.InvariantCulture, $"from {Usual.From:HH:mm} to {Usual.To:HH:mm} on weekdays, since no shift is stated");

    /// <summary>The problem.</summary>
    public Problem Problem(PlanCalendar calendar, Variation variation = default)
    {
        var people = Workers(calendar, variation).ToArray();
        Sequence<string>[] skills = [.. people.Select(w => w.Skills)];
        Sequence<string>[] crews = [.. Left.Select(t => Manned(t, Begun(t) ? Going(t, progress[t.Id]) : t.Crew, skills))];
        var looks = Looks(people, crews);
        var workers = people.Select(w => w with { Skills = [.. w.Skills, .. looks.SelectMany(l => l.By.Contains(w.Id) ? [l.Skill] : w.Skills.Select(s => SecondLooks.But(s, l))).Distinct(StringComparer.Ordinal)] })
            .Concat(CalledIn(crews, calendar)).ToSequence();
        var resources = job.Aircraft.Zones.Select(z => new Resource(z.Id, z.People))
            .Concat((job.Aircraft.Tools ?? Catalog<Tool>.Empty).Select(t => new Resource(t.Id, 1)))
            .Concat((job.Aircraft.Instruments ?? Catalog<Instrument>.Empty).Select(i => new Resource(i.Id, 1))).DistinctBy(r => r.Id).ToSequence();
        var ramp = Hours.Joined(Basis.Ramp.SelectMany(r => calendar.Hours(r.Days, r.From, r.To)));
        var rooms = resources.ToDictionary(r => r.Id, r => r.Capacity, StringComparer.Ordinal);
        var (aircraft, takes) = WholeAircraft.Of(Left, t => !Begun(t), workers.Count);
        var work = Left.Zip(crews, takes).Select(x => Work(x.First, x.Second, calendar, rooms, ramp) is var w ? w with { Demands = w.Demands.Concat(x.Third).ToSequence() } : w).ToSequence();
        return Stretches.Fitted(new(calendar.Horizon, SecondLooks.Put(work, looks, job), workers, resources.Append(aircraft).ToSequence()));
    }

    /// <summary>Three times of what is left of each task, in ticks.</summary>
    public Sequence<ThreePoint> Times(Problem problem) => Left.Zip(problem.Tasks).Select(x =>
    {
        var part = x.First.Time.Mean <= 0 ? 0 : Math.Min(1, x.Second.Duration / Math.Max(1, x.First.Time.Mean * PlanCalendar.PerHour));
        return Ticks(x.First.Time, part);
    }).Concat(problem.Tasks.Skip(Left.Count).Select(w => Ticks(SecondLooks.Time(Left.First(t => t.Id == SecondLook.TaskOf(w.Id)), job), 1))).ToSequence();

    private static ThreePoint Ticks(TaskTime time, double part) => new(time.Low * PlanCalendar.PerHour * part, time.Likely * PlanCalendar.PerHour * part, time.High * PlanCalendar.PerHour * part);

    // Where somebody has to be kept from the work to look at it, the crew is that of the others. Of work that has begun the stages are behind it.
    private List<SecondLook> Looks(Worker[] people, Sequence<string>[] crews)
    {
        (string Id, Sequence<string> Skills)[] able = [.. people.Select(w => (w.Id, w.Skills))];
        var looks = new List<SecondLook>();
        foreach (var (at, task) in Left.Index().Where(x => SecondLooks.Due(x.Item) && !(Begun(x.Item) && x.Item.Stages.Count > 0)))
        {
            var work = crews[at].Where(s => able.Any(p => p.Skills.Contains(s))).ToSequence();
            if (SecondLooks.Of(task, work, able, job) is { By.Count: > 0 } look)
            {
                looks.Add(look);
                crews[at] = able.Any(p => look.By.Contains(p.Id) && p.Skills.Any(work.Contains)) ? crews[at].Select(s => work.Contains(s) ? SecondLooks.But(s, look) : s).ToSequence() : crews[at];
            }
        }

        return looks;
    }

    private Work Work(JobTask task, Sequence<string> crew, PlanCalendar calendar, Dictionary<string, int> rooms, Sequence<Slot> ramp)
    {
        var now = Now(calendar);
        var started = progress.GetValueOrDefault(task.Id);
        var done = started is null ? task.After.Where(w => progress.GetValueOrDefault(w.Task)?.Done is not null) : [];
        var from = done.Select(w => calendar.Tick(Ready(progress[w.Task], w.Lag))).Append(now).Max();
        var duration = PlanCalendar.Ticks(task.Time.Mean) is var whole && started is not null ? Math.Max(1, whole - Worked(started, calendar, now)) : whole;
        var demands = task.Tools.Where(rooms.ContainsKey).Distinct(StringComparer.Ordinal).Select(t => new Demand(t, 1))
            .Concat(rooms.TryGetValue(task.Zone, out var room) ? [new Demand(task.Zone, Math.Min(room, task.People))] : []);
        return new(
            task.Id, duration,
            started is null ? task.After.Where(w => progress.GetValueOrDefault(w.Task)?.Done is null).Select(w => new Predecessor(w.Task, PlanCalendar.Ticks(w.Lag))).ToSequence() : [],
            crew.GroupBy(s => s, StringComparer.Ordinal).Select(g => new CrewNeed(g.Key, g.Count())).ToSequence(),
            demands.ToSequence(), task.Unbroken ? 0 : LongestPiece, task.Outside ? ramp : [], from);
    }

    // A cure that has begun is that of the mix the log tells, by the temperature at which it was mixed; the planned one where it tells none.
    private static DateTime Ready(TaskProgress done, double lag) => lag > 0 && done.Cured is { } cured ? (cured > done.Done!.Value ? cured : done.Done.Value) : done.Done!.Value.AddHours(lag);

    // What somebody looks at before it is covered goes to those who do not inspect alone, if they can do it; what nobody can do, to whoever is called in for it.
    private Sequence<string> Manned(JobTask task, Sequence<string> crew, Sequence<string>[] skills)
    {
        var all = Manning.Filled(crew, skills);
        var apart = LookedAt(task, looked) ? Manning.Filled(crew.Select(Manning.Apart).ToSequence(), skills) : [];
        var others = apart.Count > 0 && apart.Count == all.Count;
        List<string> there = [.. others ? apart : all];
        var missing = crew.Where(s => !there.Remove(others ? Manning.Apart(s) : s)).Select(Manning.Called).ToArray();
        return [.. others ? apart : all, .. missing];
    }

    private static string Between(Sequence<DayOfWeek> days, TimeOnly from, TimeOnly to) => string.Create(CultureInfo.InvariantCulture, $"{from:HH:mm} to {to:HH:mm} {string.Join(' ', days.Select(d => CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedDayName(d)))}");

    // As many for each skill that is lacking as one task lacks at once: work that nobody can do takes its hours too.
    private IEnumerable<Worker> CalledIn(Sequence<string>[] crews, PlanCalendar calendar)
    {
        var shift = job.Order.Shifts is [var first, ..] ? first : Usual;
        var hours = Hours.Joined(calendar.Hours(shift.Days, shift.From, shift.To).Where(s => s.To <= calendar.Horizon));
        return Left.Zip(crews).SelectMany(x => x.First.Crew.Select(Manning.Called).Distinct(StringComparer.Ordinal).Select(skill => (skill, Count: x.Second.Count(s => s == skill))))
            .GroupBy(x => x.skill, x => x.Count, StringComparer.Ordinal).SelectMany(g => Enumerable.Range(1, g.Max()).Select(n => new Worker($"whoever is {g.Key}{(n > 1 ? $" ({NumberFormat.Text(n)})" : "")}", [g.Key], hours)));
    }

    // Who began it goes on, as far as they still belong to the job; what they cannot do of it others do with them.
    private Sequence<string> Going(JobTask task, TaskProgress started)
    {
        var there = started.People.Select(id => job.Order.People?.Find(id)).OfType<Person>().ToArray();
        var rest = task.Crew.ToList();
        foreach (var skill in Manning.Filled(task.Crew, [.. there.Select(Manning.Skills)]))
        {
            rest.Remove(skill);
        }

        return there.Select(p => Manning.Self(p.Id)).Concat(rest).Take(Math.Max(1, task.People)).ToSequence();
    }

    // Time at work since it was begun, pauses left out: that of the first of its people.
    private int Worked(TaskProgress started, PlanCalendar calendar, int now)
    {
        Sequence<Slot> on = started.On.Count == 0 ? [new(calendar.Tick(started.Started), now)] : started.On.Select(s => new Slot(calendar.Tick(s.From), Math.Min(now, s.To < calendar.At(now) ? calendar.Tick(s.To) : now))).ToSequence();
        var person = started.People.Count > 0 ? job.Order.People?.Find(started.People[0]) : null;
        return (person is null ? [] : Shifts(person, calendar, default)).Sum(s => on.Sum(o => Math.Max(0, Math.Min(o.To, s.To) - Math.Max(o.From, s.From))));
    }

    private IEnumerable<Worker> Workers(PlanCalendar calendar, Variation variation)
    {
        var inspectors = (job.Order.People ?? Catalog<Person>.Empty).Count(p => Manning.Skills(p).Contains(Skills.Inspection)) + (variation.Skill == Skills.Inspection ? 1 : 0);
        foreach (var person in job.Order.People ?? Catalog<Person>.Empty)
        {
            var shifts = Shifts(person, calendar, variation);
            var over = PlanCalendar.Ticks(Basis.Overtime.In("h"));
            var overtime = over > 0 ? shifts.Select(s => new Slot(s.To, Math.Min(calendar.Horizon, s.To + over))) : [];
            var able = Manning.Skills(person);
            yield return new(person.Id, able.Contains(Skills.Inspection) && inspectors < 2 ? able : able.Concat(able.Select(Manning.Apart)).ToSequence(), shifts, Hours.Joined(overtime.Where(o => !shifts.Any(o.Overlaps))));
        }

        if (variation.Skill is { } skill && job.Order.Shifts is [var first, ..])
        {
            yield return new("one more", skill == Skills.Inspection ? [skill] : [skill, Manning.Apart(skill)], calendar.Hours(first.Days, first.From, first.To));
        }
    }

    private Sequence<Slot> Shifts(Person person, PlanCalendar calendar, Variation variation)
    {
        var shift = person.Shift is { } id ? job.Order.Shifts?.Find(id) : null;
        return shift is null ? [] : Hours.Joined(calendar.Hours(variation.Saturdays ? shift.Days.Append(DayOfWeek.Saturday).Distinct().ToSequence() : shift.Days, shift.From, shift.To).Where(s => s.To <= calendar.Horizon));
    }
}
