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
        Assert.All(t.Task.Crew, skill => Assert.Contains(t.People, p => Job.Value.Order.People![p].Skills.Contains(skill) || Job.Value.Order.People[p].Authorisations.Any(a => a.Scope == skill || skill == Skills.Second))));

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

    // Nobody looks at his own work before it is covered: where one person alone inspects, others do what is looked at.
    [Fact]
    public void Who_alone_inspects_does_none_of_the_work_that_is_looked_at()
    {
        Assert.Single(Job.Value.Order.People!, p => Manning.Skills(p).Contains(Skills.Inspection));
        var looked = Tasks.Value.Where(t => t.LooksBehind).SelectMany(t => t.Panels).ToHashSet();
        var work = Plan.Value.Tasks.Where(t => PlanTakeOff.LookedAt(t.Task, looked)).ToArray();
        Assert.Contains(work, t => t.Task.Kind == TaskKind.Rivet);
        Assert.All(work, t => Assert.DoesNotContain("IN1", t.People));
        Assert.DoesNotContain(Plan.Value.Findings, f => f.Rule == "own-inspection");
    }

    [Theory]
    [InlineData(5000)]
    [InlineData(61)]
    public void Work_that_stood_still_for_years_is_planned_from_now_on(int days)
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0), now = start.AddDays(days);
        Sequence<TaskProgress> progress = [new("SURVEY", start, start.AddHours(5), ["AV1"]), new("CUT-D", start, null, ["EL1"])];
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = progress, Now = now });
        Assert.Equal("", plan.Why);
        Assert.All(plan.Tasks.Where(t => !t.Actual), t => Assert.True(t.Start >= now, t.Task.Id));
        Assert.InRange(plan.Finish, now.AddDays(5), now.AddDays(60));
        Assert.Contains(plan.Findings, f => f.Rule == "promised-date" && f.Severity == Verdict.Fails);
    }

    [Fact]
    public void A_cure_that_began_is_waited_for_from_the_end_of_its_task_and_not_from_now()
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0), closed = start.AddDays(2), now = closed.AddHours(20);
        var before = Plan.Value.Tasks.Where(t => t.Task.Kind is TaskKind.Record or TaskKind.Survey or TaskKind.Open or TaskKind.Battery or TaskKind.Drill or TaskKind.Protect or TaskKind.Rivet or TaskKind.Mount || t.Task.Id.StartsWith("BOND-", StringComparison.Ordinal) || t.Task.Id == "TEST-T1").Where(t => t.Task.Id is not ("WEIGHT" or "LOADS" or "BATTERY-ON-2"));
        var progress = before.Select(t => new TaskProgress(t.Task.Id, start, start.AddHours(9), ["ST1"])).Append(new("SEAL-E1", closed, closed, ["ST1"])).ToSequence();
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = progress, Now = now });
        var cure = Tasks.Value.Single(t => t.Id == "PAINT-E1").After.Single(w => w.Task == "SEAL-E1").Lag;
        Assert.InRange(cure, 21, 200);
        Assert.True(plan.Tasks.Single(t => t.Task.Id == "PAINT-E1").Start >= closed.AddHours(cure));
        Assert.True(plan.Tasks.Single(t => t.Task.Id == "PAINT-E1").Start < closed.AddHours(cure + 72));
    }

    // The log knows the mix: its cure counts, longer or shorter than the one that was planned.
    [Theory]
    [InlineData(120)]
    [InlineData(6)]
    public void A_cure_that_began_is_that_of_the_mix_in_the_log(int hours)
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0), closed = start.AddDays(2), now = closed.AddHours(1);
        var before = Plan.Value.Tasks.Where(t => t.Task.Kind is TaskKind.Record or TaskKind.Survey or TaskKind.Open or TaskKind.Battery or TaskKind.Drill or TaskKind.Protect or TaskKind.Rivet or TaskKind.Mount or TaskKind.HarnessCheck || t.Task.Id == "TEST-T1").Where(t => t.Task.Id is not ("WEIGHT" or "LOADS" or "BATTERY-ON-2" or "REBOND-E1"));
        var progress = before.Select(t => new TaskProgress(t.Task.Id, start, start.AddHours(9), ["ST1"])).Append(new("SEAL-E1", closed, closed, ["ST1"]) { Cured = closed.AddHours(hours) }).ToSequence();
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = progress, Now = now });
        var again = plan.Tasks.Single(t => t.Task.Id == "REBOND-E1");
        Assert.InRange(again.Start, closed.AddHours(hours), closed.AddHours(hours + 48));
        var planned = Tasks.Value.Single(t => t.Id == "REBOND-E1").After.Single(w => w.Task == "SEAL-E1").Lag;
        Assert.True(hours > planned ? hours > planned + 48 : again.Start < closed.AddHours(planned), $"{again.Start} after a cure of {hours} h, planned {planned} h");
    }

    // EL1 works from 07:00 to 15:30. CUT-D takes 26 wires of 2.5 minutes or more; begun at 07:00, stopped at 07:15, it is not nearly done two days later.
    [Fact]
    public void The_time_in_which_a_task_was_left_half_done_is_not_counted_as_work()
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0), now = start.AddDays(2);
        TimeSpan Left(params Stretch[] on)
        {
            Sequence<TaskProgress> progress = [new("CUT-D", start, null, ["EL1"]) { On = on.ToSequence() }];
            return Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = progress, Now = now }).Tasks.Single(t => t.Task.Id == "CUT-D").Pieces.Aggregate(TimeSpan.Zero, (sum, p) => sum + (p.To - p.From));
        }

        var whole = TimeSpan.FromHours(PlanCalendar.Ticks(Tasks.Value.Single(t => t.Id == "CUT-D").Time.Mean) / (double)PlanCalendar.PerHour);
        Assert.Equal(TimeSpan.FromMinutes(15), Left());
        Assert.Equal(whole - TimeSpan.FromMinutes(15), Left(new Stretch(start, start.AddMinutes(15))));
        Assert.Equal(whole - TimeSpan.FromMinutes(30), Left(new Stretch(start, start.AddMinutes(15)), new Stretch(start.AddHours(24), start.AddHours(24.25))));
        Assert.Equal(whole, Left(new Stretch(start.AddHours(-3), start)));
    }

    [Fact]
    public void A_task_begun_by_somebody_who_left_is_finished_by_others()
    {
        DateTime start = new(2027, 3, 22, 7, 0, 0);
        Sequence<TaskProgress> progress = [new("CUT-D", start, null, ["GONE"]), new("SURVEY", start, null, ["AV1"])];
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0, Progress = progress, Now = start.AddHours(1) });
        var person = Assert.Single(plan.Tasks.Single(t => t.Task.Id == "CUT-D").People);
        Assert.Contains(Skills.Electrical, Job.Value.Order.People![person].Skills);
        Assert.Equal(["AV1"], plan.Tasks.Single(t => t.Task.Id == "SURVEY").People);
    }

    // An independent look at what was promised: the same work planned anew for a job that has that person.
    [Fact]
    public void What_one_more_person_would_buy_is_borne_out_by_planning_with_that_person()
    {
        var plan = Planner.Run(Tasks.Value, Job.Value, Quick with { Effort = 0.3, WhatIfs = true, Runs = 0 });
        var first = Job.Value.Order.Shifts![0].Id;
        foreach (var (whatIf, skill) in plan.WhatIfs.Select(w => (w, Skill: w.What.Split('\'') is [_, var s, ..] ? s : "")).Where(x => x.Skill.Length > 0))
        {
            var person = new Person("ZZ", "One more (invented)", [skill], default, first);
            var job = Job.Value with { Order = Job.Value.Order with { People = new(Job.Value.Order.People!.Append(person)) } };
            var again = Planner.Run(Tasks.Value, job, Quick with { Effort = 0.3, Runs = 0 });
            Assert.True(again.Bound <= whatIf.Finish, $"{skill}: {whatIf.Finish} is promised, and nothing is possible before {again.Bound}");
            Assert.True(!whatIf.Excluded || again.Finish >= plan.Finish, $"{skill}: excluded, yet {again.Finish} was found");
            Assert.True(whatIf.Finish <= plan.Finish && whatIf.Hours == (plan.Finish - whatIf.Finish).TotalHours);
        }
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
    [InlineData("sealant-life", "sealant/FIL05")]
    [InlineData("second-person", "plan/second-person")]
    [InlineData("own-inspection", "person/IN1")]
    [InlineData("labour-unknown", "labour/no-such-work")]
    [InlineData("kit-day", "plan/kit")]
    [InlineData("ramp-hours", "plan/ramp")]
    public void What_stands_against_a_plan_is_found(string rule, string subject)
    {
        var plan = Planner.Run(Tasks.Value, Edited(rule), Quick with { Effort = 0.01 });
        var finding = Assert.Single(plan.Findings, f => f.Rule == rule && f.Subject == subject);
        Assert.NotNull(Rules.Find(rule));
        Assert.Equal(rule is "labour-unknown" or "kit-day" or "own-inspection" or "sealant-life", plan.Holds);
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

    // Ten, twenty and thirty minutes have a mean of twenty: a mix that may be used for so long is enough, and one of nineteen is not.
    [Theory]
    [InlineData(20, false)]
    [InlineData(19, true)]
    public void Sealing_without_a_pause_for_longer_than_a_mix_lasts_is_told_with_the_sealant_and_its_life(int minutes, bool found)
    {
        var job = Job.Value with { Parts = Job.Value.Parts with { Sealants = Job.Value.Parts.Sealants!.With(Job.Value.Parts.Sealants["FAY2"] with { ApplicationLife = Duration.Of(minutes, "min") }) } };
        var tasks = Tasks.Value.Select(t => t.Kind == TaskKind.Seal ? t with { Time = new(10.0 / 60, 20.0 / 60, 30.0 / 60, Basis.Stated) } : t).ToSequence();
        var finding = PlanFindings.OfTasks(tasks, job).SingleOrDefault(f => f.Rule == "sealant-life");
        Assert.Equal(found, finding is not null);
        Assert.True(!found || (finding!.Message.Contains("SEAL-E4, SEAL-E5", StringComparison.Ordinal) && finding.Message.Contains("FAY2", StringComparison.Ordinal) && finding.Figures.Contains("0.33 h", StringComparison.Ordinal)));
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
            "sealant-life" => job with { Parts = job.Parts with { Sealants = job.Parts.Sealants!.With(job.Parts.Sealants["FIL05"] with { ApplicationLife = Duration.Of(20, "min") }) } },
            "cure-time" => job with { Order = order with { Plan = order.Plan! with { Cure = null } } },
            "second-person" => job with { Order = order with { People = new(order.People!.Select(p => p.Id == "IN1" ? p : p with { Authorisations = [] })) } },
            "own-inspection" => job with { Order = order with { People = order.People!.With(order.People["ST1"] with { Skills = ["sealing", "access"], Authorisations = [] })
                .With(order.People["IN1"] with { Authorisations = order.People["IN1"].Authorisations.Append(new Authorisation("structure", "INV", new(2028, 1, 1))).ToSequence() }) } },
            "ramp-hours" => job with { Order = order with { Plan = order.Plan! with { Ramp = [order.Plan.Ramp[0] with { From = new(9, 5), To = new(9, 25) }] } } },
            "kit-day" => job with { Stock = job.Stock! with { Use = new(2027, 3, 23) } },
            _ => job with { Order = order with { Labour = new(order.Labour!.Append(new LabourTime("no-such-work", order.Labour![0].Time))) } },
        };
    }
}
