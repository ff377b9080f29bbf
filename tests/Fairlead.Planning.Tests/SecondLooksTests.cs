using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Demand = Fairlead.Planning.Scheduling.Demand;
using Work = Fairlead.Planning.Scheduling.Work;

namespace Fairlead.Tests.Planning;

/// <summary>Second signatures take a second person's time: held against what the log asks for, a signature by somebody authorised who had no part in the work.</summary>
public sealed class SecondLooksTests
{
    private static readonly PlanOptions Quick = new(new DateOnly(2027, 3, 22), Effort: 0.1, Runs: 20, WhatIfs: false);
    private static readonly Lazy<Job> Job = new(() => TaskListTests.Demo("survey-twin"));
    private static readonly Lazy<Sequence<JobTask>> Tasks = new(() => TaskList.Of(new Assessor().Assess(Job.Value)));
    private static readonly Lazy<JobPlan> Plan = new(() => Planner.Run(Tasks.Value, Job.Value, Quick));

    [Fact]
    public void Every_stage_and_every_card_for_two_has_the_time_of_somebody_authorised_who_has_no_part_in_the_work()
    {
        var due = Plan.Value.Tasks.Where(t => t.Task.Stages.Count > 0 || (t.Task.Independent && t.Task.Kind is not (TaskKind.Controls or TaskKind.ZoneControls))).ToArray();
        Assert.Contains(due, t => t.Task.Kind == TaskKind.Rivet);
        Assert.Contains(due, t => t.Task.Kind == TaskKind.Seal);
        Assert.Contains(due, t => t.Task.Independent);
        Assert.All(due, t =>
        {
            Assert.NotEmpty(Job.Value.Order.People![t.Second!.Who].Authorisations);
            Assert.DoesNotContain(t.Second.Who, t.People);
            Assert.True(t.Task.Stages.Count > 0 ? t.Second.When.To <= t.Start : t.Second.When.From >= t.End, t.Task.Id);
        });
        Assert.All(Plan.Value.Tasks.Except(due), t => Assert.Null(t.Second));
    }

    [Fact]
    public void Who_looks_second_does_nothing_else_meanwhile_and_what_follows_waits()
    {
        foreach (var look in Plan.Value.Tasks.Where(t => t.Second is not null))
        {
            bool During(Stretch p) => p.From < look.Second!.When.To && look.Second.When.From < p.To;
            Assert.DoesNotContain(Plan.Value.Tasks, t => t.People.Contains(look.Second!.Who) && t.Pieces.Any(During));
            Assert.DoesNotContain(Plan.Value.Tasks, t => t != look && t.Second?.Who == look.Second!.Who && During(t.Second.When));
            Assert.All(Plan.Value.Tasks.Where(t => t.Task.After.Any(w => w.Task == look.Task.Id)), t => Assert.True(t.Start >= look.Second!.When.To, t.Task.Id));
        }
    }

    [Fact]
    public void Controls_are_checked_by_two_who_may_both_sign() => Assert.All(Plan.Value.Tasks.Where(t => t.Task.Kind is TaskKind.Controls or TaskKind.ZoneControls), t =>
        Assert.All(t.People, p => Assert.NotEmpty(Job.Value.Order.People![p].Authorisations)));

    // One who does settings and may sign for them, and one inspector who does them too: whichever does not, looks.
    [Fact]
    public void Where_all_who_may_sign_could_do_the_work_the_inspector_is_kept_from_it_to_look()
    {
        var plan = Of(("A", [Skills.Configuration, Skills.Avionics], [Skills.Avionics]), ("I", [Skills.Configuration, Skills.Inspection], [Skills.Avionics, Skills.Inspection, Skills.Release]));
        var settings = plan.Tasks.Where(t => t.Task is { Independent: true, Kind: TaskKind.Configure }).ToArray();
        Assert.NotEmpty(settings);
        Assert.All(settings, t => Assert.Equal(("A", "I"), (Assert.Single(t.People), t.Second!.Who)));
    }

    [Fact]
    public void Cards_that_nobody_is_left_to_sign_a_second_time_are_told_with_the_authorisation_that_is_missing()
    {
        // Two may sign, yet the settings are done by the one and, as avionics, signed by the other alone.
        var plan = Of(("A", [Skills.Configuration], [Skills.Structure]), ("I", [Skills.Inspection], [Skills.Avionics, Skills.Inspection, Skills.Release]));
        var card = Tasks.Value.First(t => t is { Independent: true, Kind: TaskKind.Configure });
        var finding = Assert.Single(plan.Findings, f => f.Rule == "second-person");
        Assert.Contains(card.Id, finding.Message, StringComparison.Ordinal);
        Assert.Contains("authorisation, such as that for avionics", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Plan.Value.Findings, f => f.Rule == "second-person");
        Assert.False(plan.Holds);
    }

    // A look at work on the aircraft takes one person's place there, whole tests all of it; the ramp has hours for the test and not for the signature.
    [Fact]
    public void Nobody_looks_second_while_something_radiates_and_a_signature_needs_no_hours_of_the_ramp()
    {
        Work Piece(string id, params Demand[] demands) => new(id, 4, Crew: [new("any", 1)], Demands: demands.ToSequence(), Windows: [new(0, 8)]);
        var card = Tasks.Value.First(t => t.Stages.Count > 0);
        var work = SecondLooks.Put([Piece(card.Id, new Demand(WholeAircraft.Name, 2), new Demand("Z130", 2)), Piece("BENCH")], [new(card, ["I"])], Job.Value);
        var look = Assert.Single(work, w => SecondLook.IsLook(w.Id));
        Assert.Equal([new Demand(WholeAircraft.Name, 1)], look.Demands);
        Assert.Empty(look.Windows);
    }

    private static JobPlan Of(params (string Id, Sequence<string> Skills, Sequence<string> Scopes)[] people)
    {
        var order = Job.Value.Order with { People = new(people.Select(p => new Person(p.Id, p.Id + " (invented)", p.Skills, p.Scopes.Select(s => new Authorisation(s, "INV-" + p.Id, new(2030, 1, 1))).ToSequence(), "day"))) };
        return Planner.Run(Tasks.Value, Job.Value with { Order = order }, Quick with { Effort = 0, Runs = 0 });
    }
}
