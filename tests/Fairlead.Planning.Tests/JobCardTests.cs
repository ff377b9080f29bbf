using Fairlead.Calculations;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Tests.Planning;

/// <summary>Cards against the job they are made from: nothing on a card that the job does not say, nothing left out that is needed at the place.</summary>
public sealed class JobCardTests
{
    private static readonly Assessment Twin = new Assessor().Assess(TaskListTests.Demo("survey-twin"));
    private static readonly Sequence<JobTask> Tasks = TaskList.Of(Twin);
    private static readonly Sequence<JobCard> Cards = JobCards.Of(Twin, Tasks);

    [Fact]
    public void Tests_are_derived_once_and_planned_printed_and_measured_under_one_id()
    {
        var cards = TestPlan.Of(Twin).Cards;
        Assert.Equal(cards.Select(c => c.Id).Order(StringComparer.Ordinal), Tasks.Where(t => t.Card is not null).Select(t => t.Id).Order(StringComparer.Ordinal));
        Assert.All(Tasks.Where(t => t.Card is not null), t => Assert.Equal(t.Id, t.Card!.Id));
        Assert.All(Cards.Where(c => c.Task.Card is not null), c => Assert.Equal(c.Task.Card!.Lines.Count, c.Tables[^1].Rows.Count));
    }

    [Fact]
    public void Each_task_has_one_card_with_steps_and_every_row_has_a_cell_for_each_column()
    {
        Assert.Equal(Tasks.Select(t => t.Id), Cards.Select(c => c.Id));
        Assert.All(Cards, c => Assert.NotEmpty(c.Steps));
        Assert.All(Cards.SelectMany(c => c.Tables), t => Assert.All(t.Rows, r => Assert.Equal(t.Columns.Count, r.Count)));
    }

    [Fact]
    public void Each_panel_has_one_line_one_bag_and_one_signature()
    {
        var opened = TaskList.Opened(Twin);
        Assert.Equal(opened.Count, PanelRegister.Of(Twin).Rows.Count);
        Assert.All(opened, p =>
        {
            var close = Card("CLOSE-" + p.Id);
            Assert.Equal((Sequence<string>)[p.Id, NumberFormat.Text(p.Fasteners), p.Fastener], Assert.Single(close.Tables[0].Rows).Take(3).ToSequence());
            Assert.Equal("panel/" + p.Id, Assert.Single(close.Signatures).Subject);
        });
    }

    [Fact]
    public void The_contact_list_of_a_connector_has_every_wire_end_there_with_mark_contact_and_tool()
    {
        var ends = Twin.Circuits.SelectMany(c => new[] { (c, End: c.Circuit.From, Contact: c.FromContact), (c, End: c.Circuit.To, Contact: c.ToContact) }).Where(e => e.End.Item == "XPD1" && e.End.Connector == "P1").ToArray();
        var rows = Card("TERM-XPD1-P1").Tables.Single(t => t.Title == "Contacts").Rows;
        Assert.Equal(ends.Length, rows.Count);
        Assert.All(ends, e => Assert.Contains(rows, r => r[0] == e.End.Contact && r[1] == Twin.Marks.First(m => m.Id == e.c.Circuit.Id).Text && r[4] == e.Contact!.Id && r[5] == e.Contact.Tool));
    }

    [Fact]
    public void Every_wire_is_cut_once_and_not_shorter_than_its_cut_length()
    {
        var rows = Cards.Where(c => c.Task.Kind == TaskKind.Cut).SelectMany(c => c.Tables).SelectMany(t => t.Rows).ToArray();
        Assert.Equal(Twin.Circuits.Select(c => c.Circuit.Id).Order(StringComparer.Ordinal), rows.Select(r => r[1]).Order(StringComparer.Ordinal));
        Assert.All(rows, r => Assert.True(double.Parse(r[4], System.Globalization.CultureInfo.InvariantCulture) >= Twin.Circuits.First(c => c.Circuit.Id == r[1]).Cut!.Value.In("mm") - 1e-9));
    }

    [Fact]
    public void Torques_drills_rivets_and_cures_are_those_of_the_parts()
    {
        // AN10 and RV4-4 of the demonstration: 30 lbf in; drill No. 30, 0.25 in long; FAY2 cures 60 h at 21 degC.
        Assert.Equal("30 lbf·in", Assert.Single(Card("MOUNT-XPD1").Tables[0].Rows)[7]);
        var rivets = Assert.Single(Card("RIVET-E4").Tables[0].Rows);
        Assert.Equal(("28", "0.25 in (6.35 mm)", "No. 30"), (rivets[2], rivets[3], rivets[4]));
        Assert.Equal(["CB43", "TRAFFIC SENSOR", "MAIN", "ZZ-CB5", "5 A", "", ""], Assert.Single(Card("BREAKER-CB43").Tables[0].Rows));
        Assert.Contains(Card("SEAL-E4").Tables[0].Rows, r => r[0].StartsWith("21 °C", StringComparison.Ordinal) && r[1] == "60 h");
    }

    [Fact]
    public void A_torque_or_a_length_that_is_not_stated_is_said_not_to_be()
    {
        // ZZ-TNC of the demonstration states 15 lbf in, ZZ-SMA nothing; FLOOR-3 states the lengths of its screws, FLOOR-4 does not.
        Assert.Equal(["15 lbf·in", "15 lbf·in"], new[] { Card("TERM-TS1-J2").Tables[0].Rows[0][6], Card("CONNECT-TS1").Tables[1].Rows.Single(r => r[0] == "TS1 J2")[3] });
        Assert.Equal("not stated: see the data", Card("CONNECT-TS1").Tables[1].Rows.Single(r => r[0] == "TS1 P1")[3]);
        Assert.All(new[] { "OPEN-FLOOR-3", "CLOSE-FLOOR-3" }, id => Assert.Contains("6 of 7/8 in along the aft edge", Card(id).Tables[0].Note));
        Assert.All(new[] { "OPEN-FLOOR-4", "CLOSE-FLOOR-4" }, id => Assert.Contains("not stated", Card(id).Tables[0].Note));
    }

    [Fact]
    public void The_card_of_a_ground_stud_has_its_hole_torque_finish_and_bond_limit()
    {
        // STUD of the demonstration: 10-32, drill No. 10, 20 lbf in; two circuits end on G11. 2.5 mΩ: AC 43.13-1B 11-188 f.
        var tables = Card("GROUND-G11").Tables;
        Assert.Equal(["G11", "STUD", "Ground stud with nuts and washers", "10-32", "No. 10", "2", "20 lbf·in", ""], Assert.Single(tables[0].Rows));
        Assert.Contains("Finish restored with", tables[1].Columns);
        Assert.Equal(["G11", "structure", "at most 2.5 mΩ", "BOND-G11"], Assert.Single(tables[2].Rows));
        Assert.Contains("AC 43.13-1B", tables[2].Note, StringComparison.Ordinal);
        Assert.Contains(Card("GROUND-G11").Task.Cautions, c => c.StartsWith("Look behind", StringComparison.Ordinal));

        var parts = Twin.Job.Parts with { Consumables = new(Twin.Job.Parts.Consumables!.Select(c => c.Id == "STUD" ? c with { Thread = "", Drill = "", Torque = null } : c)) };
        var bare = JobCards.Of(new Assessor().Assess(Twin.Job with { Parts = parts })).Single(c => c.Id == "GROUND-G11").Tables[0].Rows[0];
        Assert.All(new[] { bare[3], bare[4], bare[6] }, cell => Assert.Equal("not stated: see the data", cell));
    }

    [Fact]
    public void The_card_of_a_task_that_the_job_names_has_what_it_takes_with_its_figures_and_the_data_it_is_done_by()
    {
        // K1 of the demonstration takes 24 RV4-4 (drill No. 30, 0.25 in long), 36 in2 of SH040 and a pack of FAY2, in the zone of the belly skin, 0.040 in.
        var tables = Card("EXTRA-K1").Tables;
        Assert.Equal([("RV4-4", "24 each"), ("SH040", "36 in2"), ("FAY2", "1 pack")], tables.Single(t => t.Title == "Takes").Rows.Select(r => (r[0], r[2])));
        var rivet = Assert.Single(tables.Single(t => t.Title == "Rivets").Rows);
        Assert.Equal(("RV4-4", "24", "0.25 in (6.35 mm)", "No. 30"), (rivet[0], rivet[2], rivet[3], rivet[4]));
        Assert.Contains(tables, t => t.Rows.Any(r => r[0].StartsWith("21 °C", StringComparison.Ordinal) && r[1] == "60 h"));
        Assert.Contains(tables.Single(t => t.Title == "Structure of zone Z130").Rows, r => r[0] == "BELLY-SK" && r[2] == "2024-T3" && r[3] == "0.04 in (1.02 mm)");
        Assert.All(Cards.Where(c => c.Task.Kind == TaskKind.Extra), c => Assert.Equal(Twin.Job.Order.Approval.Data.Select(d => d.Document), c.Tables[^1].Rows.Select(r => r[0])));
    }

    [Fact]
    public void The_card_of_a_coaxial_end_has_the_steps_of_a_coaxial_end()
    {
        Assert.DoesNotContain(Card("TERM-TS1-J2").Steps, s => s.Contains("cavit", StringComparison.Ordinal));
        Assert.Contains(Card("TERM-TS1-J2").Steps, s => s.Contains("centre to braid open", StringComparison.Ordinal));
        Assert.Contains(Card("TERM-TS1-P1").Steps, s => s.Contains("empty cavities", StringComparison.Ordinal));
    }

    [Fact]
    public void The_faces_of_a_doubler_are_inspected_before_they_are_closed()
    {
        var steps = Card("RIVET-E5").Steps.ToList();
        var (inspected, closed) = (steps.FindIndex(s => s.StartsWith("Stage inspection", StringComparison.Ordinal)), steps.FindIndex(s => s.StartsWith("Close the faces", StringComparison.Ordinal)));
        Assert.True(inspected >= 0 && inspected < closed);
        Assert.DoesNotContain(Card("RIVET-XPD1").Steps, s => s.StartsWith("Stage inspection", StringComparison.Ordinal));
    }

    [Fact]
    public void While_something_radiates_a_second_person_stands_outside_and_the_test_set_has_its_figures()
    {
        Assert.All(Cards.Where(c => c.Task.Card is { Radiates: true }), c =>
        {
            Assert.Equal(2, c.Task.People);
            Assert.Equal("Permit to radiate", c.Tables[0].Title);
        });
        // SC1 of the demonstration: T1 { range: 10 nmi, bearing: 0 deg, closing: 300 kt, end: 110 s }, T2 { 4 nmi, 120 deg, -60 kt, above: -2500 ft, start: 10 s }.
        Assert.Contains(Card("SCEN-SC1").Steps, s => s.Contains("T1 set: from 0 s to 110 s, 10 nmi, bearing 0°, 300 kt closing, at our altitude", StringComparison.Ordinal));
        Assert.Contains(Card("SCEN-SC1").Steps, s => s.Contains("T2 set: from 10 s to 110 s, 4 nmi, bearing 120°, 60 kt drawing away, 2500 ft below", StringComparison.Ordinal));
    }

    [Fact]
    public void The_card_of_simulated_traffic_says_what_the_display_shows_every_five_seconds_and_where_a_mark_changes()
    {
        // SC1: T1 ahead from 10 nmi at 300 kt: 5 nmi at 60 s, within 6 nmi from 48 s on, under a traffic advisory from 88.6 s on (so at 89 s), until 110 s.
        // T2 from 10 s on, 4 nmi on the right behind, 2,500 ft below and drawing away at 60 kt: 5 nmi at 70 s, no advisory.
        var table = Card("SCEN-SC1").Tables[1];
        var rows = table.Rows.ToLookup(r => r[1]);
        Assert.Equal(Enumerable.Range(0, 23).Select(i => 5 * i).Append(48).Append(89).Order().Select(s => NumberFormat.Text(s)), rows["T1"].Select(r => r[0]));
        Assert.Equal(["60", "T1", "5", "ahead", "+00", "proximate", "", ""], rows["T1"].Single(r => r[0] == "60"));
        Assert.Equal(["other", "proximate", "proximate", "traffic advisory, call heard", "traffic advisory"], new[] { "45", "48", "85", "89", "90" }.Select(s => rows["T1"].Single(r => r[0] == s)[5]));
        Assert.Equal(["70", "T2", "5", "120° right", "-25", "other", "", ""], rows["T2"].Single(r => r[0] == "70"));
        Assert.Equal("10", rows["T2"].First()[0]);
        Assert.DoesNotContain(rows["T2"], r => r[5].Contains("heard", StringComparison.Ordinal));

        // SC2: T1 climbs at -600 ft/min from 1,100 ft above on the left; T2 reports no altitude.
        var other = Card("SCEN-SC2").Tables[1].Rows;
        Assert.Equal(["0", "T1", "4", "45° left", "+11 down"], other[0].Take(5));
        Assert.All(other.Where(r => r[1] == "T2"), r => Assert.Equal(("90° right", "none"), (r[3], r[4])));
    }

    [Fact]
    public void The_display_of_a_long_scenario_keeps_to_what_a_card_has_room_for()
    {
        var scenario = Twin.Job.Change.Scenarios![0];
        var target = scenario.Targets[0] with { Range = Length.Of(20, "nmi"), Closing = Speed.Of(-60, "kt"), End = Duration.Of(600, "s"), Expect = null, At = null };
        var change = Twin.Job.Change with { Scenarios = new([scenario with { Targets = new([target]) }]) };
        var rows = JobCards.Of(new Assessor().Assess(Twin.Job with { Change = change })).Single(c => c.Id == "SCEN-SC1").Tables[1].Rows;
        Assert.Equal(Enumerable.Range(0, 21).Select(i => NumberFormat.Text(30 * i)), rows.Select(r => r[0]));
    }

    [Fact]
    public void At_a_stud_or_breaker_the_terminal_of_each_wire_is_told_with_tool_die_and_torque()
    {
        // C502 and C505 of the demonstration end on G11 with 22 gauge wire: ring terminal TRM22, tool CTT, die DT22; STUD has 20 lbf in. No torque of a breaker is stated.
        var stud = Card("TERM-G11");
        Assert.Equal(2, stud.Tables[0].Rows.Count);
        Assert.All(stud.Tables[0].Rows, r => Assert.Equal(["W22", "TRM22, Ring terminal 26 to 20", "CTT", "DT22", "20 lbf·in"], r.Where((_, i) => i is 1 or > 2 and < 7)));
        Assert.Equal(["W22", "TRM22", "CTT", "DT22", "", ""], Assert.Single(stud.Tables[1].Rows));
        Assert.All(Card("TERM-CB43").Tables[0].Rows, r => Assert.Equal("not stated: see the data", r[6]));
        Assert.All(new[] { "TERM-G11", "TERM-CB43", "TERM-TB1-1" }, id => Assert.DoesNotContain(Card(id).Steps, s => s.Contains("cavit", StringComparison.Ordinal)));
        Assert.DoesNotContain(Card("TERM-XPD1-P1").Tables, t => t.Title.StartsWith("Terminals", StringComparison.Ordinal));
        Assert.DoesNotContain(Card("BREAKER-CB43").Steps, s => s.Contains("Bonding faces", StringComparison.Ordinal));
    }

    [Fact]
    public void The_breakers_to_pull_and_the_batches_of_coatings_stand_on_their_cards()
    {
        // Circuits of the demonstration end on CB12 of the aircraft and on CB41 to CB45, which go in: those are not there yet when the battery goes off first.
        Assert.Equal(["CB12"], Card("BATTERY-OFF").Tables[0].Rows.Select(r => r[0]));
        Assert.Equal(["CB12", "CB41", "CB42", "CB43", "CB44", "CB45"], Card("BATTERY-ON-2").Tables[0].Rows.Select(r => r[0]).Order(StringComparer.Ordinal));
        Assert.Equal(["conversion coating", "primer"], Card("PROTECT-E1").Tables[0].Rows.Select(r => r[0]));
        Assert.Equal(["primer", "top coat"], Card("PAINT-E1").Tables[0].Rows.Select(r => r[0]));
    }

    [Fact]
    public void What_is_covered_is_held_for_a_second_person_and_what_is_critical_is_inspected_independently()
    {
        Assert.Equal("stage/SEAL-E1/before-sealing", Card("SEAL-E1").Signatures[0].Subject);
        Assert.Equal("stage/RIVET-E1/before-covering", Card("RIVET-E1").Signatures[0].Subject);
        Assert.Equal(["work", "inspection, second person"], Card("CONTROLS-FLOOR-1").Signatures.Select(s => s.Role));

        // Address, category and identification go over the air: compared by two. The radio altimeter tells nobody who it is.
        Assert.Equal(2, Card("SET-XPD1").Signatures.Count);
        Assert.Single(Card("SET-RA1").Signatures);
    }

    [Fact]
    public void Controls_are_checked_in_the_sense_that_is_printed_before_it_is_seen() =>
        Assert.Contains(Card("CONTROLS-FLOOR-1").Tables[0].Rows, r => r[0] == "Wheel or stick back" && r[1] == "elevator trailing edge up" && r.Skip(2).All(c => c.Length == 0));

    [Fact]
    public void Side_tests_are_raised_by_what_the_change_disturbs_unless_a_test_of_the_change_covers_them()
    {
        Assert.Null(TestPlan.Of(Twin).Find("COMPASS"));
        var job = Twin.Job with { Change = Twin.Job.Change with { Tests = Model.Catalog<Model.ExtraTest>.Empty } };
        var plan = TestPlan.Of(new Assessor().Assess(job));
        Assert.Equal(13, plan.Find("COMPASS")!.Lines.Count);
        Assert.All(plan.Find("ALT-XPD1")!.Lines, l => Assert.Equal((-125.0, 125.0, "ft"), (l.Least, l.Most, l.Unit)));
        Assert.False(plan.Find("COMPASS")!.Radiates);
        Assert.True(plan.Find("ALT-XPD1")!.Radiates);
    }

    [Fact]
    public void A_compass_swing_needs_no_permit_to_radiate_and_a_ramp_test_does()
    {
        var plan = TestPlan.Of(Twin);
        Assert.False(plan.Find("TEST-T8")!.Radiates);
        Assert.Empty(plan.Find("TEST-T8")!.Cautions);
        Assert.All(new[] { "TEST-T5", "TEST-T9", "XPDR-XPD1", "RAMP-RT1", "SCEN-SC1" }, id => Assert.True(plan.Find(id)!.Radiates, id));
    }

    [Fact]
    public void A_pending_approval_and_a_short_kit_speak_against_their_tasks()
    {
        var order = Twin.Job.Order with { Approval = Twin.Job.Order.Approval with { Reference = "pending" } };
        var tasks = TaskList.Of(new Assessor().Assess(Twin.Job with { Order = order }));
        Assert.Contains("pending", tasks.Single(t => t.Id == "APPROVAL").Against, StringComparison.Ordinal);
        Assert.Empty(Tasks.Single(t => t.Id == "APPROVAL").Against);
        Assert.Empty(Tasks.Single(t => t.Id == "KIT").Against);
        var faulty = TaskList.Of(new Assessor().Assess(TaskListTests.Demo("with-faults")));
        Assert.Contains("the stores do not have", faulty.Single(t => t.Id == "KIT").Against, StringComparison.Ordinal);
    }

    private static JobCard Card(string id) => Assert.Single(Cards, c => c.Id == id);
}
