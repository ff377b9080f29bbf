using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Planning;

/// <summary>The plan of the demonstration job. The optimiser itself looks over every plan with the checker before it gives it away; what is held here is what the plan adds to it.</summary>
public sealed class PlannerTests
{
    private static readonly PlanOptions Quick = new(new DateOnly(2027, 3, 22), Effort: 0.1, Runs: 40, WhatIfs: false);
    private static readonly Lazy<Job> Job = new(() => TaskListTests.Demo("survey-twin"));
    private static readonly Lazy<Sequence<JobTask>> Tasks = new(() => TaskList.Of(new Assessor().Assess(Job.Value)));
    private static readonly Lazy<JobPlan> Plan = new(() => Planner.Run(Tasks.Value, Job.Value, Quick));

    [Fact]
    public void The_demonstration_has_a_plan_that_keeps_the_promised_day()
    {
        var plan = Plan.Value;
        Assert.True(plan.Holds, plan.Why + string.Join("; ", plan.Findings.Select(f => f.Message)));
        Assert.True(plan.Bound <= plan.Finish);
        Assert.Equal(Tasks.Value.Count, plan.Tasks.Count);
        Assert.Equal("RELEASE", plan.Tasks[^1].Task.Id);
    }

    [Fact]
    public void Work_is_done_in_shifts_and_overtime_on_working_days_and_outside_tests_in_the_hours_of_the_ramp()
    {
        foreach (var task in Plan.Value.Tasks.Where(t => t.People.Count > 0))
        {
            Assert.All(task.Pieces, p =>
            {
                Assert.True(p.From.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday), task.Task.Id);
                Assert.NotEqual(new DateOnly(2027, 3, 29), DateOnly.FromDateTime(p.From));
                Assert.All(task.People, id => Assert.InRange(TimeOnly.FromDateTime(p.From), id == "AV2" ? new(13, 0) : new(7, 0), id == "AV2" ? new(23, 0) : new(17, 30)));
                Assert.True(!task.Task.Outside || (p.From.TimeOfDay >= TimeSpan.FromHours(8) && p.To.TimeOfDay <= TimeSpan.FromHours(17)), task.Task.Id);
            });
        }
    }

    [Fact]
    public void Everybody_has_the_skill_or_authorisation_of_what_they_do() => Assert.All(Plan.Value.Tasks, t =>
        Assert.All(t.Task.Crew, skill => Assert.Contains(t.People, p => Job.Value.Order.People![p].Skills.Contains(skill) || Job.Value.Order.People[p].Authorisations.Any(a => a.Scope == skill))));

    [Fact]
    public void The_chain_ends_with_the_release_and_the_chances_rise_to_one()
    {
        Assert.Contains("RELEASE", Plan.Value.Chain[^1], StringComparison.Ordinal);
        Assert.True(Plan.Value.Chances.Zip(Plan.Value.Chances.Skip(1)).All(x => x.First.Chance <= x.Second.Chance));
        Assert.Equal(1, Plan.Value.Chances[^1].Chance);
    }

    [Fact]
    public void The_same_seed_gives_the_same_plan() => Assert.Equal(Plan.Value, Planner.Run(Tasks.Value, Job.Value, Quick));

    [Fact]
    public void A_plan_made_anew_keeps_what_is_done_and_who_began_what()
    {
        var now = new DateTime(2027, 3, 24, 12, 0, 0);
        var before = Plan.Value.Tasks.Where(t => t.Start < now && t.People.Count > 0).ToArray();
        var progress = before.Select(t => new TaskProgress(t.Task.Id, t.Start, t.End <= now ? t.End : null, t.People)).ToSequence();
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Progress = progress, Now = now });
        Assert.Equal("", plan.Why);
        Assert.Equal(Tasks.Value.Count, plan.Tasks.Count);
        Assert.Equal(before.Count(t => t.End <= now), plan.Tasks.Count(t => t.Actual));
        Assert.All(plan.Tasks.Where(t => !t.Actual), t => Assert.True(t.Start >= now, t.Task.Id));
        Assert.All(before.Where(t => t.End > now), t => Assert.Equal(t.People.Order(StringComparer.Ordinal), plan.Tasks.Single(p => p.Task.Id == t.Task.Id).People.Order(StringComparer.Ordinal)));
    }

    [Fact]
    public void What_is_all_done_finished_when_the_last_of_it_did()
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0), end = new(2027, 4, 9, 15, 0, 0);
        var progress = Tasks.Value.Select(t => new TaskProgress(t.Id, start, end, ["AV1"])).ToSequence();
        Assert.Equal(end, Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = progress, Now = end.AddDays(9) }).Finish);
    }

    [Fact]
    public void Of_two_reports_of_one_task_the_later_counts()
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0);
        Sequence<TaskProgress> twice = [new("SURVEY", start, start.AddHours(2), ["AV1"]), new("SURVEY", start.AddHours(5), null, ["AV1"]), new("CUT-D", start, null, ["EL1"]), new("CUT-D", start, start.AddHours(1), ["EL1"])];
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = twice, Now = start.AddHours(6) });
        Assert.Equal(["CUT-D"], plan.Tasks.Where(t => t.Actual).Select(t => t.Task.Id));
    }

    [Theory]
    [InlineData(0.3, 2)]
    [InlineData(0.25, 1)]
    [InlineData(0.1 + 0.2 - 0.05, 1)]
    [InlineData(2, 8)]
    public void Hours_are_rounded_up_to_quarters(double hours, int ticks) => Assert.Equal(ticks, PlanCalendar.Ticks(hours));

    [Fact]
    public void A_shift_that_passes_midnight_ends_on_the_next_day()
    {
        var night = new PlanCalendar(new DateOnly(2027, 3, 22), 7).Hours([DayOfWeek.Monday], new(22, 0), new(6, 0));
        Assert.Equal([new(88, 120)], night);
    }

    [Theory]
    [InlineData("promised-date", "plan/promised")]
    [InlineData("skill-missing", "skill/sealing")]
    [InlineData("authorisation-on-day", "authorisation/structure")]
    [InlineData("calibration-on-day", "tool/BM-01")]
    [InlineData("cure-time", "task/SEAL-E1")]
    [InlineData("labour-unknown", "labour/no-such-work")]
    [InlineData("kit-day", "plan/kit")]
    public void What_stands_against_a_plan_is_found(string rule, string subject)
    {
        var plan = Planner.Run(Tasks.Value, Edited(rule), Quick with { Effort = 0.01 });
        var finding = Assert.Single(plan.Findings, f => f.Rule == rule && f.Subject == subject);
        Assert.NotNull(Rules.Find(rule));
        Assert.Equal(rule is "labour-unknown" or "kit-day", plan.Holds);
        Assert.NotEmpty(finding.Remedy);
    }

    [Fact]
    public void The_plan_of_the_job_with_faults_finds_exactly_those_of_its_table()
    {
        var job = TaskListTests.Demo("with-faults");
        var plan = Planner.Run(TaskList.Of(new Assessor().Assess(job)), job, Quick with { Effort = 0.01 });
        var rules = Rules.Plan().Select(r => r.Id).ToHashSet();
        var table = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "demo", "with-faults", "expected.md"))
            .Where(l => l.StartsWith("| F1", StringComparison.Ordinal)).Select(l => l.Split('|', StringSplitOptions.TrimEntries)).Where(c => rules.Contains(c[4])).Select(c => $"{c[4]} of {c[5]}");
        Assert.Equal(table.Order(StringComparer.Ordinal), plan.Findings.Select(f => $"{f.Rule} of {f.Subject}").Order(StringComparer.Ordinal));
        Assert.False(plan.Holds);
    }

    private static Job Edited(string rule)
    {
        var (job, order) = (Job.Value, Job.Value.Order);
        return rule switch
        {
            "promised-date" => job with { Order = order with { Promised = new(2027, 3, 31) } },
            "skill-missing" => job with { Order = order with { People = order.People!.With(order.People["ST1"] with { Skills = ["structure", "access"] }) } },
            "authorisation-on-day" => job with { Order = order with { People = order.People!.With(order.People["ST1"] with { Authorisations = [new("structure", "INV", new(2027, 3, 22))] }) } },
            "calibration-on-day" => job with { Aircraft = job.Aircraft with { Instruments = job.Aircraft.Instruments!.With(job.Aircraft.Instruments["BM-01"] with { CalibrationDue = new(2027, 3, 22) }) } },
            "cure-time" => job with { Order = order with { Plan = order.Plan! with { Cure = null } } },
            "kit-day" => job with { Stock = job.Stock! with { Use = new(2027, 3, 23) } },
            _ => job with { Order = order with { Labour = new(order.Labour!.Append(new LabourTime("no-such-work", order.Labour![0].Time))) } },
        };
    }
}
