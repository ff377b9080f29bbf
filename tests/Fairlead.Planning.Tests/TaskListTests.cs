using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Planning;

/// <summary>The order of work is held against the order of the trade: access, removal, structure, wiring, harness checks (bonding, continuity, insulation),
/// power before boxes, boxes, settings, tests, closing, release. Common practice of small hangars; the order of harness checks is that of FAA training material.</summary>
public sealed class TaskListTests
{
    private static readonly Lazy<Assessment> Twin = new(() => new Assessor().Assess(Demo("survey-twin")));
    private static readonly Lazy<Sequence<JobTask>> Tasks = new(() => TaskList.Of(Twin.Value));

    // All that each task waits for, however far back.
    private static readonly Lazy<Dictionary<string, HashSet<string>>> Before = new(() => Tasks.Value.Aggregate(new Dictionary<string, HashSet<string>>(), (all, t) =>
    {
        all.Add(t.Id, [.. t.After.SelectMany(w => all[w.Task].Append(w.Task))]);
        return all;
    }));

    internal static Job Demo(string name) => JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", name)).Job!;

    [Fact]
    public void Every_opened_panel_is_closed_after_all_work_behind_it_and_in_the_reverse_order()
    {
        var opened = Tasks.Value.Where(t => t.Kind == TaskKind.Open).Select(t => t.Panels[0]).ToArray();
        Assert.InRange(opened.Length, 15, 40);
        Assert.Equal(opened.Order(StringComparer.Ordinal), Tasks.Value.Where(t => t.Kind == TaskKind.Close).Select(t => t.Panels[0]).Order(StringComparer.Ordinal));
        foreach (var panel in opened)
        {
            Assert.All(Tasks.Value.Where(t => t.Kind is not (TaskKind.Open or TaskKind.Close) && t.Panels.Contains(panel)), t =>
            {
                Assert.True(Waits(t.Id, "OPEN-" + panel), $"{t.Id} does not wait for {panel}");
                Assert.True(Waits("CLOSE-" + panel, t.Id), $"{panel} is closed before {t.Id}");
            });
            Assert.All(Twin.Value.Job.Aircraft.Panels![panel].After, before =>
            {
                Assert.True(Waits("OPEN-" + panel, "OPEN-" + before));
                Assert.True(Waits("CLOSE-" + before, "CLOSE-" + panel));
            });
        }
    }

    [Fact]
    public void Controls_are_checked_by_two_after_the_closing_of_each_panel_before_them() =>
        Assert.All(Tasks.Value.Where(t => t.Kind == TaskKind.Open && Twin.Value.Job.Aircraft.Panels![t.Panels[0]].Controls), t =>
        {
            var check = Find("CONTROLS-" + t.Panels[0]);
            Assert.True(check.Independent && check.People == 2);
            Assert.True(Waits(check.Id, "CLOSE-" + t.Panels[0]) && Waits("RELEASE", check.Id));
        });

    // Controls run through five zones of the demonstration, of which nothing is done in the nacelles.
    [Fact]
    public void Work_in_a_zone_of_controls_has_them_checked_by_two_once_when_all_of_it_is_done_and_closed()
    {
        var aircraft = Twin.Value.Job.Aircraft;
        Assert.Equal(["Z130", "Z210", "Z310"], Tasks.Value.Where(t => t.Kind == TaskKind.ZoneControls).Select(t => t.Zone).Order(StringComparer.Ordinal));
        TaskKind[] work = [TaskKind.Remove, TaskKind.Drill, TaskKind.Rivet, TaskKind.Mount, TaskKind.RunWire, TaskKind.Terminate, TaskKind.Connect];
        Assert.All(Tasks.Value.Where(t => t.Kind == TaskKind.ZoneControls), check =>
        {
            Assert.Equal("ZONE-CONTROLS-" + check.Zone, check.Id);
            Assert.True(check.Independent && check.People == 2 && Waits("VERIFY", check.Id));
            Assert.All(Tasks.Value.Where(t => t.Kind == TaskKind.Close && aircraft.Panels![t.Panels[0]].Zone == check.Zone), t => Assert.True(Waits(check.Id, t.Id), t.Id));
            Assert.All(Tasks.Value.Where(t => work.Contains(t.Kind) && (t.Zone == check.Zone || t.Panels.Any(p => aircraft.Panels![p].Zone == check.Zone))), t => Assert.True(Waits(check.Id, t.Id), t.Id));
        });
    }

    [Fact]
    public void The_battery_is_off_before_electrical_work_and_on_only_after_the_harness_checks()
    {
        TaskKind[] electrical = [TaskKind.Tag, TaskKind.Remove, TaskKind.RunWire, TaskKind.Terminate, TaskKind.HarnessCheck];
        Assert.All(Tasks.Value.Where(t => electrical.Contains(t.Kind)), t =>
        {
            Assert.True(Waits(t.Id, "BATTERY-OFF"), t.Id);
            Assert.True(t.Kind is TaskKind.Tag or TaskKind.Remove || Waits("BATTERY-ON-1", t.Id) || (Waits(t.Id, "BATTERY-OFF-2") && Waits("BATTERY-ON-2", t.Id)), t.Id);
        });
        Assert.All(Tasks.Value.Where(t => t.Kind == TaskKind.Connect), t => Assert.True(Waits(t.Id, "BATTERY-OFF-2") && Waits("BATTERY-ON-2", t.Id)));
        Assert.All(Tasks.Value.Where(t => t.Kind is TaskKind.PrePower), t => Assert.True(Waits(t.Id, "BATTERY-ON-1") && Waits("BATTERY-OFF-2", t.Id)));
    }

    [Theory]
    [InlineData("SURVEY", "OPEN-BELLY-1")]
    [InlineData("KIT", "OPEN-SEAT-1")]
    [InlineData("APPROVAL", "DRILL-E2")]
    [InlineData("APPROVAL", "EXTRA-K3")]
    [InlineData("BATTERY-OFF", "DRILL-E2")]
    [InlineData("BATTERY-OFF", "DRILL-TS1")]
    [InlineData("VIS-XPD1", "CONT-XPD1-P1")]
    [InlineData("CURRENT-TS1", "SET-TS1")]
    [InlineData("TEST-T1", "BATTERY-OFF")]
    [InlineData("TAG-OUT1", "REMOVE-OUT1")]
    [InlineData("DRILL-E2", "RIVET-E2")]
    [InlineData("PROTECT-E2", "RIVET-E2")]
    [InlineData("RIVET-E2", "RUN-R-Z130")]
    [InlineData("BOND-E2", "SEAL-E2")]
    [InlineData("SEAL-E2", "PAINT-E2")]
    [InlineData("SEAL-E2", "REBOND-E2")]
    [InlineData("REBOND-E2", "PAINT-E2")]
    [InlineData("BATTERY-OFF-2", "REBOND-E2")]
    [InlineData("REBOND-E2", "BATTERY-ON-2")]
    [InlineData("RUN-P-Z130", "TERM-CB43")]
    [InlineData("TERM-TS1-P1", "CONT-TS1-P1")]
    [InlineData("BOND-TS1", "CONT-XPD1-P1")]
    [InlineData("CONT-TS1-P1", "ISO-XPD1-P1")]
    [InlineData("ISO-TS1-P1", "POWER-TS1")]
    [InlineData("POWER-TS1", "CONNECT-TS1")]
    [InlineData("CONNECT-TS1", "CURRENT-TS1")]
    [InlineData("SET-TS1", "TEST-T4")]
    [InlineData("TEST-T4", "CLOSE-TAIL-ACC")]
    [InlineData("CLOSE-TAIL-ACC", "VERIFY")]
    [InlineData("VERIFY", "TEST-T8")]
    [InlineData("EXTRA-K5", "WEIGHT")]
    [InlineData("MOUNT-E2", "WEIGHT")]
    [InlineData("SEAL-E2", "WEIGHT")]
    [InlineData("DEADWIRE-OUT1", "WEIGHT")]
    [InlineData("CONNECT-TS1", "WEIGHT")]
    [InlineData("WEIGHT", "RELEASE")]
    public void The_order_is_that_of_the_trade(string before, string after) => Assert.True(Waits(after, before), $"{after} does not wait for {before}");

    // What holds is followed from hold to hold, as the log does: a card that begins after BATTERY-OFF begins after all that BATTERY-OFF begins after.
    [Theory]
    [InlineData("SURVEY")]
    [InlineData("TEST-T1")]
    [InlineData("KIT")]
    [InlineData("APPROVAL")]
    public void The_log_holds_all_of_the_strip_down_and_of_the_change_to_the_airframe_until_the_aircraft_is_seen_and_tested_as_found_its_kit_complete_and_its_approval_recorded(string first)
    {
        TaskKind[] work = [TaskKind.Open, TaskKind.Battery, TaskKind.Tag, TaskKind.Remove, TaskKind.Drill, TaskKind.Protect, TaskKind.Rivet, TaskKind.Mount, TaskKind.Seal, TaskKind.Paint, TaskKind.RunWire, TaskKind.Terminate, TaskKind.HarnessCheck, TaskKind.PrePower, TaskKind.Connect];
        var held = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        foreach (var task in Tasks.Value)
        {
            held.Add(task.Id, [.. task.After.Where(w => w.Hold).SelectMany(w => held[w.Task].Append(w.Task))]);
        }

        Assert.All(Tasks.Value.Where(t => work.Contains(t.Kind) || t.Id is "EXTRA-K1" or "EXTRA-K2" or "EXTRA-K3" or "EXTRA-K4"), t => Assert.Contains(first, held[t.Id]));
        Assert.All(Tasks.Value.Where(t => t.Kind is TaskKind.Drill or TaskKind.Rivet || t.Id is "EXTRA-K1" or "EXTRA-K3"), t => Assert.Contains(t.After, w => w is { Task: "APPROVAL", Hold: true }));
    }

    [Fact]
    public void Everything_that_comes_out_and_goes_in_and_every_wire_test_and_task_of_the_job_has_its_task_and_release_waits_for_all()
    {
        var change = Twin.Value.Job.Change;
        Assert.All(change.Remove!, r => Find("REMOVE-" + r.Id));
        Assert.All(change.Fit!, f => Find("MOUNT-" + f.Id));
        Assert.All(change.Antennas!, a => Find("SEAL-" + a.Id));
        Assert.All(change.Tests!, t => Find("TEST-" + t.Id));
        Assert.All(change.Tasks!, t => Find("EXTRA-" + t.Id));
        Assert.All(Tasks.Value.Where(t => t.Id != "RELEASE"), t => Assert.True(Waits("RELEASE", t.Id), t.Id));
        Assert.Equal(Tasks.Value.Count, Tasks.Value.Select(t => t.Id).Distinct().Count());
    }

    [Fact]
    public void The_log_holds_the_record_of_weight_until_all_that_comes_out_and_goes_in_has() =>
        Assert.All(Tasks.Value.Where(t => t.Kind is TaskKind.Remove or TaskKind.Mount or TaskKind.Seal or TaskKind.RunWire or TaskKind.Terminate or TaskKind.Connect || t.Id is "EXTRA-K1" or "EXTRA-K2" or "EXTRA-K3"), t => Assert.Contains(Find("WEIGHT").After, w => w.Hold && w.Task == t.Id));

    // K5, the weighing, comes after closing; so would a check flight, which must not hold the papers.
    [Fact]
    public void A_task_of_the_job_after_closing_is_held_until_the_aircraft_is_verified_and_does_not_hold_the_record_of_weight()
    {
        Assert.Contains(Find("EXTRA-K5").After, w => w is { Task: "VERIFY", Hold: true });
        Assert.DoesNotContain(Find("WEIGHT").After, w => w is { Task: "EXTRA-K5", Hold: true });
    }

    [Fact]
    public void A_cure_is_never_taken_shorter_than_the_data_of_the_sealant_say()
    {
        // FAY2 of the demonstration: 60 h at 21 degC and 30 h at 32 degC. The structure is kept at 25 degC, so 60 h count.
        Assert.Equal(60, Find("PAINT-E4").After.Single(w => w.Task == "SEAL-E4").Lag);
        Assert.Equal(30, Find("PAINT-E1").After.Single(w => w.Task == "SEAL-E1").Lag);
        Assert.Equal(60, Find("REBOND-E4").After.Single(w => w.Task == "SEAL-E4").Lag);
    }

    // The first reading proves the bond for what follows; a harness does not wait for sealant to cure.
    [Fact]
    public void Continuity_waits_for_no_cure() => Assert.All(Tasks.Value.Where(t => t.Id.StartsWith("CONT-", StringComparison.Ordinal)), t => Assert.DoesNotContain(Before.Value[t.Id], b => b.StartsWith("REBOND-", StringComparison.Ordinal)));

    [Fact]
    public void Metal_at_the_skin_and_that_of_the_job_is_cut_before_wires_go_into_the_zone_above_and_before_its_panels_are_looked_behind()
    {
        var aircraft = Twin.Value.Job.Aircraft;
        var cut = Tasks.Value.Where(t => t.Kind is TaskKind.Drill or TaskKind.Rivet || t.Id is "EXTRA-K1" or "EXTRA-K3").SelectMany(t => t.Panels.Select(p => aircraft.Panels![p].Zone).Append(t.Zone).Distinct().Select(z => (Zone: z, t.Id))).ToLookup(x => x.Zone, x => x.Id);
        Assert.All(new[] { "DRILL-E2", "RIVET-E2", "EXTRA-K1" }, id => Assert.Contains(id, cut["Z130"]));
        Assert.All(Tasks.Value.Where(t => t.Kind == TaskKind.RunWire), t => Assert.All(t.Passes.Append(t.Zone).SelectMany(z => cut[z]), m => Assert.True(Waits(t.Id, m), $"{t.Id} does not wait for {m}")));
        Assert.All(Tasks.Value.Where(t => t.LooksBehind), t => Assert.All(cut[t.Zone], m => Assert.True(Waits(t.Id, m), $"{t.Id} does not wait for {m}")));
    }

    // G13 stands in the tail cone, Z310, through which four bundles run.
    [Fact]
    public void A_ground_stud_is_metal_it_is_drilled_with_the_approval_in_hand_and_before_wires_go_into_its_zone()
    {
        var stud = Find("GROUND-G13");
        Assert.Contains(stud.After, w => w is { Task: "APPROVAL", Hold: true });
        Assert.Equal(Find("DRILL-TS1").Tools, stud.Tools);
        Assert.NotEmpty(stud.Tools);
        var runs = Tasks.Value.Where(t => t.Kind == TaskKind.RunWire && t.Passes.Append(t.Zone).Contains("Z310")).ToArray();
        Assert.NotEmpty(runs);
        Assert.All(runs, t => Assert.True(Waits(t.Id, stud.Id), t.Id));
    }

    [Fact]
    public void A_run_opens_all_panels_on_its_way_and_warns_of_the_controls_of_every_zone_it_passes()
    {
        var aircraft = Twin.Value.Job.Aircraft;
        var passed = Twin.Value.Circuits.SelectMany(c => (c.Way?.Segments ?? []).Select(s => (c.Circuit.Bundle, Segment: aircraft.Segments![s]))).Distinct().ToArray();
        Assert.Contains(passed, x => aircraft.Nodes![x.Segment.From].Zone != aircraft.Nodes![x.Segment.To].Zone);
        Assert.All(passed, x =>
        {
            string[] zones = [aircraft.Nodes![x.Segment.From].Zone, aircraft.Nodes![x.Segment.To].Zone];
            var runs = Tasks.Value.Where(t => t.Kind == TaskKind.RunWire && t.Id.StartsWith($"RUN-{x.Bundle}-", StringComparison.Ordinal) && zones.Contains(t.Zone) && zones.All(z => z == t.Zone || t.Passes.Contains(z)) && x.Segment.Panels.All(t.Panels.Contains)).ToArray();
            Assert.NotEmpty(runs);
            Assert.All(zones.Where(z => aircraft.Zones[z].Controls), z => Assert.All(runs, r => Assert.Contains(z, Assert.Single(r.Cautions), StringComparison.Ordinal)));
        });
    }

    // The way of the starter begins in the cockpit, and the one panel on it opens into the tail, where controls run.
    [Fact]
    public void A_run_takes_room_in_the_zone_into_which_its_panels_open()
    {
        var run = Assert.Single(TaskList.Of(new Assessor().Assess(JobReader.Read(Starter.Files()).Job!)), t => t.Kind == TaskKind.RunWire);
        Assert.Equal("TAIL", run.Zone);
        Assert.Equal(["COCKPIT"], run.Passes);
        Assert.Contains("Flight controls run in TAIL", Assert.Single(run.Cautions), StringComparison.Ordinal);
    }

    // By the ways of the aircraft: S11, S13 meet at N10, behind SIDE-R whichever is followed; S05, S07, S10 at N05; S32, S34 at N27; S07, S08, S09 at N06.
    [Theory]
    [InlineData("BREAKER-CB43", "SIDE-R")]
    [InlineData("BREAKER-CB41", "SIDE-L")]
    [InlineData("GROUND-G12", "INST-L")]
    [InlineData("GROUND-G13", "TAIL-ACC")]
    [InlineData("TERM-AUD1-P2", "INST-C")]
    public void A_point_of_the_raceway_is_reached_through_the_panels_in_front_of_it(string task, string panel) => Assert.Equal([panel], Find(task).Panels);

    [Theory]
    [InlineData("XPDR-XPD1", "RT-01")]
    [InlineData("RAMP-RT1", "RT-01")]
    [InlineData("SCEN-SC1", "RT-01")]
    [InlineData("CURRENT-XPD1", "MM-01")]
    public void A_test_that_follows_from_the_change_books_the_instrument_that_measures_it(string task, string instrument) => Assert.Contains(instrument, Tasks.Value.Single(t => t.Id == task).Tools);

    [Fact]
    public void Whoever_crimps_has_the_tool_of_each_size_of_contact() =>
        Assert.Equal(["CT16", "CT22"], Tasks.Value.Single(t => t.Id == "TERM-TS1-P1").Tools.Where(t => t.StartsWith("CT", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    [Fact]
    public void The_same_job_gives_the_same_tasks() => Assert.Equal(Tasks.Value, TaskList.Of(new Assessor().Assess(Demo("survey-twin"))));

    [Fact]
    public void Only_the_named_activities_of_the_labour_table_are_replaced_by_what_the_shop_states()
    {
        var survey = Find("SURVEY").Time;
        Assert.Equal((3, 5, 9, Basis.Stated), (survey.Low, survey.Likely, survey.High, survey.Basis));
        Assert.Equal(Basis.CommonPractice, Find("CONNECT-TS1").Time.Basis);
        Assert.All(LabourTable.Rows, r => Assert.True(r.Time.Low > 0 && r.Time.Low <= r.Time.Likely && r.Time.Likely <= r.Time.High && r.Time.Basis == Basis.CommonPractice));

        // Shares of "new antenna incl. doubler, bond, seal": 6, 10 and 16 h.
        var whole = LabourTable.Rows.Where(r => r.Activity is "antenna-drill" or "antenna-protect" or "antenna-rivet" or "antenna-mount" or "antenna-seal" or "antenna-paint").Select(r => r.Time).Aggregate((a, b) => a + b);
        Assert.Equal((6, 10, 16), (whole.Low, whole.Likely, whole.High));
    }

    [Theory]
    [InlineData("starter")]
    [InlineData("with-faults")]
    public void Any_job_that_can_be_read_has_tasks(string name)
    {
        var job = name == "starter" ? JobReader.Read(Starter.Files()).Job! : Demo(name);
        Assert.Equal("RELEASE", TaskList.Of(new Assessor().Assess(job))[^1].Id);
    }

    private static JobTask Find(string id) => Assert.Single(Tasks.Value, t => t.Id == id);

    private static bool Waits(string task, string before)
    {
        Assert.Contains(before, Before.Value.Keys);
        return Before.Value[task].Contains(before);
    }
}
