using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>What trade practice holds back until something else is finished: each refusal, and the same entry taken once it is right.</summary>
public sealed class OrderTests : IDisposable
{
    private static readonly Required Job = new(
        Tasks:
        [
            new("SURVEY", "Look the aircraft over") { Photographs = true },
            new("APPROVAL", "Write the approval down"),
            new("DRILL", "Cut the skin", ["P1"]) { After = [new("task/APPROVAL", "the approval is in hand before metal is cut")], Stages = [new("before-covering", "edges treated")] },
            new("SEAL", "Seal the antenna", ["P1"]) { Sealant = true },
            new("PAINT", "Touch up the paint") { After = [new("task/SEAL", "the sealant is cured before it is painted")] },
            new("REMOVE", "Take the old box out") { After = [new("task/APPROVAL", "the approval is in hand before the aircraft is taken apart")], Moves = ["removed part/OLD"] },
            new("CONNECT", "Put the new box in") { After = [new("test/POWER", "power is proved at the plug before the box is connected")], Moves = ["fitted part/NEW", "plugged connector/NEW/P1"] },
            new("ZONE-CONTROLS", "Check the controls of the zone", Independent: true) { VoidAfter = ["panel/P2", "task/EXTRA"] },
            new("CLEAN", "After the check of controls") { After = [new("task/ZONE-CONTROLS", "controls are checked first")] },
            new("EXTRA", "Work in the zone"),
            new("VERIFY", "Verify that the aircraft is clear") { Clear = true },
        ],
        Tests:
        [
            new("CONT", "Continuity", [new("a", "a to b", "ohm", Most: 1), new("b", "c to d", "ohm", Most: 1)]),
            new("POWER", "Power at the plug", [new("1", "pin 1", "V", 22, 30)]) { After = [new("test/CONT", "wiring is proved before it is powered")] },
            new("SET", "Address", [new("address", "24-bit address", Expected: "F00A31", Verbatim: true)]) { Independent = true },
            new("RAMP", "Simulated traffic", [new("result", "display", Expected: "shown")]) { Radiates = true },
        ],
        Fitted: ["NEW"], Connectors: ["NEW/P1"])
    {
        Panels = [new("P1", [new("task/SURVEY", "the aircraft is seen as found")], [new("task/DRILL", "it is behind the panel"), new("task/SEAL", "it is behind the panel")])],
    };

    private static readonly (string, object)[] Photograph = [("sha256", new string('a', 64))];
    private readonly Hangar hangar = new(required: Job);

    public void Dispose() => hangar.Dispose();

    [Fact]
    public void Nothing_is_opened_before_the_aircraft_is_surveyed_with_photographs_and_signed()
    {
        hangar.Refused("panel/P1 waits for task/SURVEY", "AV1", "opened", "panel/P1");
        hangar.Do("AV1", "started", "task/SURVEY");
        hangar.Refused("is done with photographs", "AV1", "done", "task/SURVEY");
        hangar.Do("AV1", "photographed", "task/SURVEY", Photograph);
        hangar.Do("AV1", "done", "task/SURVEY");
        hangar.Refused("not finished and signed", "AV1", "opened", "panel/P1");
        hangar.Sign("AV1", "task/SURVEY");
        hangar.Do("AV1", "opened", "panel/P1");
    }

    [Fact]
    public void No_metal_is_cut_before_the_approval_is_recorded()
    {
        hangar.Refused("the approval is in hand before metal is cut", "AV1", "started", "task/DRILL");
        hangar.Work("APPROVAL");
        hangar.Do("AV1", "started", "task/DRILL");
    }

    [Fact]
    public void A_task_against_which_the_job_itself_speaks_is_not_done_and_keeps_the_gate_shut()
    {
        using var pending = new Hangar(required: new Required([new("APPROVAL", "Write it down") { Against = "the approval is still pending" }]));
        pending.Do("AV1", "started", "task/APPROVAL");
        pending.Refused("the approval is still pending", "AV1", "done", "task/APPROVAL");
        Assert.Contains(pending.Open(), o => o.Contains("still pending", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stage_is_signed_by_a_second_person_before_the_task_is_done()
    {
        hangar.Work("APPROVAL");
        hangar.Do("AV1", "started", "task/DRILL");
        hangar.Refused("Stage 'before-covering' of task/DRILL is held until a second person", "AV1", "done", "task/DRILL");
        hangar.Do("AV1", "staged", "task/DRILL", ("stage", "before-covering"));
        Assert.Contains(hangar.TrySign("AV1", "stage/DRILL/before-covering", "inspection"), r => r.Contains("AV1 worked on task/DRILL", StringComparison.Ordinal));
        hangar.Sign("AV2", "stage/DRILL/before-covering", "inspection");
        hangar.Do("AV1", "done", "task/DRILL");
    }

    [Fact]
    public void A_panel_is_not_closed_before_what_is_behind_it_was_even_begun()
    {
        Surveyed();
        hangar.Do("AV1", "opened", "panel/P1");
        hangar.Refused("panel/P1 waits for task/DRILL", "AV1", "closed", "panel/P1");
    }

    [Fact]
    public void Tests_are_made_in_the_safe_order()
    {
        hangar.Refused("wiring is proved before it is powered", "AV1", "measured", "test/POWER", ("value", 28.0), ("unit", "V"), ("instrument", "MM"));
        Ohm("a", 0.3);
        hangar.Refused("test/POWER waits for test/CONT", "AV1", "measured", "test/POWER", ("value", 28.0), ("unit", "V"), ("instrument", "MM"));
        Ohm("b", 0.4);
        hangar.Sign("AV1", "test/CONT");
        hangar.Do("AV1", "measured", "test/POWER", ("value", 28.0), ("unit", "V"), ("instrument", "MM"));
    }

    [Fact]
    public void A_box_comes_out_only_under_its_card_and_that_begins_when_the_approval_is_in_hand()
    {
        hangar.Refused("part/OLD waits for task/APPROVAL", "AV1", "removed", "part/OLD");
        hangar.Work("APPROVAL");
        Assert.Equal("part/OLD is removed as part of task/REMOVE, which has not begun: 'started task/REMOVE' comes first.", Assert.Single(hangar.Try("AV1", "removed", "part/OLD")));
        hangar.Do("AV1", "started", "task/REMOVE");
        hangar.Do("AV1", "removed", "part/OLD");
    }

    [Theory]
    [InlineData("fitted", "part/NEW")]
    [InlineData("plugged", "connector/NEW/P1")]
    public void A_box_is_neither_put_in_nor_plugged_before_the_power_at_its_unplugged_connector_is_signed_and_its_card_begun(string kind, string subject)
    {
        Ohm("a", 0.3);
        Ohm("b", 0.4);
        hangar.Sign("AV1", "test/CONT");
        Volt(28);
        hangar.Refused($"{subject} waits for test/POWER", "AV1", kind, subject);
        hangar.Sign("AV1", "test/POWER");
        hangar.Refused($"{subject} is {kind} as part of task/CONNECT, which has not begun", "AV1", kind, subject);
        hangar.Do("AV1", "started", "task/CONNECT");

        // Measured again and found wanting, it is open again.
        Volt(12);
        hangar.Refused($"{subject} waits for test/POWER", "AV1", kind, subject);
        Volt(28);
        hangar.Sign("AV1", "test/POWER");
        hangar.Do("AV1", kind, subject);
    }

    [Fact]
    public void Each_line_of_a_test_counts_with_its_last_result_in_any_spelling_of_its_unit()
    {
        Ohm("a", 0.3);
        Assert.Contains("Test CONT has no result for 1 of its 2 lines: b.", hangar.Open());
        Ohm("b", 4);
        Assert.Contains("Test CONT, line b, gave 4 ohm, which is above 1: c to d.", hangar.Open());
        hangar.Do("AV1", "observed", "test/CONT", ("line", "b"), ("found", "open"));
        Assert.Contains("Test CONT, line b, found 'open' where a number in ohm is due: c to d.", hangar.Open());
        hangar.Do("AV1", "measured", "test/CONT", ("line", "b"), ("value", 0.4), ("unit", "\u03A9"), ("instrument", "MM"));
        Assert.Contains("The result of test CONT is not signed.", hangar.Open());
        hangar.Do("AV1", "measured", "test/CONT", ("line", "b"), ("value", 200.0), ("unit", "ohm"), ("instrument", "MM"), ("beyond", "yes"));
        Assert.Contains(hangar.Open(), o => o.Contains("above 1", StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_aircraft_broadcasts_of_itself_is_compared_by_a_second_person_word_for_word()
    {
        hangar.Do("AV1", "observed", "test/SET", ("found", "as expected"));
        Assert.Contains(hangar.Open(), o => o.StartsWith("Test SET found 'as expected' where 'F00A31' is due", StringComparison.Ordinal));
        hangar.Do("AV1", "observed", "test/SET", ("found", "f00a31"));
        hangar.Sign("AV1", "test/SET");
        Assert.Contains("The result of test SET has to be compared by a second person.", hangar.Open());
        hangar.Sign("AV2", "test/SET", "inspection");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("SET", StringComparison.Ordinal));
    }

    [Fact]
    public void Who_measured_does_not_inspect_what_was_measured()
    {
        hangar.Do("AV2", "observed", "test/SET", ("found", "F00A31"));
        hangar.Sign("AV1", "test/SET");
        Assert.Contains("AV2 worked on test/SET", Assert.Single(hangar.TrySign("AV2", "test/SET", "inspection")));
    }

    [Fact]
    public void Nothing_radiates_without_a_permit_that_runs()
    {
        hangar.Refused("no permit to radiate stands", "AV1", "observed", "test/RAMP", ("found", "shown"));
        hangar.Refused("needs 'told'", "AV1", "permitted", "radiation/R1", ("until", Hangar.Morning.AddHours(1)));
        hangar.Do("AV1", "permitted", "radiation/R1", ("until", Hangar.Morning.AddHours(1)), ("told", "tower, 20 minutes, code 7776"), ("outside", "AV2"), ("covered", "top and bottom"));
        hangar.Do("AV1", "observed", "test/RAMP", ("found", "shown"));
        hangar.Clock.Now = Hangar.Morning.AddHours(2);
        hangar.Refused("no permit to radiate stands", "AV1", "observed", "test/RAMP", ("found", "shown"));
    }

    [Theory]
    [InlineData(25.0, 48)]
    [InlineData(24.9, 96)]
    public void A_sealant_timer_follows_its_data_at_the_nearest_temperature_that_is_no_warmer(double degrees, double hours)
    {
        hangar.Do("AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", degrees));
        var mix = hangar.Book.State.Last("sealant/M1", "mixed")!;
        Assert.Equal(mix.At.AddHours(hours), mix.Payload.Time("cured"));
        Assert.Equal(mix.At.AddHours(2), mix.Payload.Time("until"));
        hangar.Refused("is cured at", "AV1", "mixed", "sealant/M2", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", degrees), ("cured", Hangar.Morning.AddHours(hours - 1)));
    }

    [Fact]
    public void Sealant_that_is_too_cold_too_old_or_unknown_is_refused()
    {
        hangar.Refused("nobody can tell when", "AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", 9.0), ("cured", Hangar.Morning.AddHours(500)));
        hangar.Refused("shelf life of batch B7 ended", "AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", 25.0), ("expires", Hangar.Morning.AddDays(-1)));
        hangar.Refused("is no sealant of this job", "AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "GLUE"), ("temperature", 25.0));
    }

    [Fact]
    public void A_mix_is_taken_while_the_clock_runs_on_between_its_times_and_its_entry()
    {
        hangar.Clock.Step = TimeSpan.FromMilliseconds(1.7);
        hangar.Do("AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", 25.0));
        var mix = hangar.Book.State.Last("sealant/M1", "mixed")!;
        Assert.True(mix.Payload.Time("when") <= mix.At);
        Assert.Equal(mix.Payload.Time("when") + TimeSpan.FromHours(48), mix.Payload.Time("cured"));
    }

    [Fact]
    public void Sealant_is_not_painted_over_before_it_is_cured()
    {
        hangar.Do("AV1", "started", "task/SEAL");
        Sealed();
        hangar.Refused("the sealant is cured before it is painted", "AV1", "started", "task/PAINT");
        hangar.Clock.Now += TimeSpan.FromHours(48);
        hangar.Do("AV1", "started", "task/PAINT");
    }

    [Fact]
    public void A_panel_is_not_closed_over_sealant_that_is_not_cured()
    {
        Surveyed();
        hangar.Do("AV1", "opened", "panel/P1");
        hangar.Work("APPROVAL");
        hangar.Do("AV1", "started", "task/DRILL");
        hangar.Do("AV1", "staged", "task/DRILL", ("stage", "before-covering"));
        hangar.Sign("AV2", "stage/DRILL/before-covering", "inspection");
        hangar.Do("AV1", "done", "task/DRILL");
        hangar.Sign("AV1", "task/DRILL");
        hangar.Do("AV1", "started", "task/SEAL");
        hangar.Refused("is done with a sealant mix", "AV1", "done", "task/SEAL");
        Sealed();
        hangar.Refused("The sealant of SEAL behind P1, mix M1, is not cured", "AV1", "closed", "panel/P1");
        hangar.Clock.Now += TimeSpan.FromHours(48);
        hangar.Do("AV1", "closed", "panel/P1");
    }

    [Fact]
    public void The_general_verification_finds_nothing_open_and_is_void_when_something_is_opened_after_it()
    {
        hangar.Do("AV1", "carried-in", "tool/LAMP");
        hangar.Do("AV1", "opened", "panel/P2");
        hangar.Do("AV1", "started", "task/VERIFY");
        Assert.Equal(2, hangar.Try("AV1", "done", "task/VERIFY").Count(r => r.EndsWith("the aircraft is not clear.", StringComparison.Ordinal)));
        hangar.Do("AV1", "carried-out", "tool/LAMP");
        hangar.Do("AV1", "closed", "panel/P2");
        hangar.Do("AV1", "done", "task/VERIFY");
        hangar.Sign("AV1", "task/VERIFY");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("verify again", StringComparison.Ordinal));
        hangar.Do("AV1", "opened", "panel/P2");
        hangar.Do("AV1", "closed", "panel/P2");
        Assert.Contains(hangar.Open(), o => o.EndsWith("verify again.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("panel/P2")]
    [InlineData("task/EXTRA")]
    public void A_check_of_the_controls_of_a_zone_is_void_when_a_panel_of_it_is_opened_or_work_in_it_done_after_it(string later)
    {
        hangar.Work("ZONE-CONTROLS");
        hangar.Sign("AV2", "task/ZONE-CONTROLS", "inspection");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("ZONE-CONTROLS", StringComparison.Ordinal));
        hangar.Do("AV1", later[0] == 'p' ? "opened" : "started", later);
        hangar.Do("AV1", later[0] == 'p' ? "closed" : "done", later);
        Assert.EndsWith("check again.", Assert.Single(hangar.Open(), o => o.StartsWith("Task ZONE-CONTROLS was done before " + later, StringComparison.Ordinal)), StringComparison.Ordinal);
        hangar.Work("ZONE-CONTROLS");
        hangar.Sign("AV2", "task/ZONE-CONTROLS", "inspection");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("ZONE-CONTROLS", StringComparison.Ordinal));
    }

    [Fact]
    public void What_two_have_to_sign_is_finished_when_both_have()
    {
        hangar.Work("ZONE-CONTROLS");
        hangar.Refused("task/CLEAN waits for task/ZONE-CONTROLS", "AV1", "started", "task/CLEAN");
        hangar.Sign("AV2", "task/ZONE-CONTROLS", "inspection");
        hangar.Do("AV1", "started", "task/CLEAN");
    }

    [Fact]
    public void What_was_disturbed_beside_the_change_raises_its_own_test()
    {
        Ohm("a", 0.3);
        Ohm("b", 0.4);
        hangar.Sign("AV1", "test/CONT");
        Volt(28);
        hangar.Sign("AV1", "test/POWER");
        hangar.Do("AV1", "started", "task/CONNECT");
        hangar.Do("AV1", "parted", "line/STATIC-1");
        Assert.Contains(hangar.Open(), o => o.StartsWith("Line STATIC-1 is open", StringComparison.Ordinal));
        hangar.Do("AV1", "joined", "line/STATIC-1");
        Assert.Contains(hangar.Open(), o => o.Contains("has to pass its leak test", StringComparison.Ordinal));
        hangar.Do("AV1", "measured", "line/STATIC-1", ("value", 40.0), ("unit", "ft/min"), ("instrument", "MM"));
        hangar.Sign("AV1", "line/STATIC-1");
        foreach (var plug in new[] { "RADIO/P1", "NEW/P1" })
        {
            hangar.Do("AV1", "unplugged", "connector/" + plug);
            hangar.Do("AV1", "plugged", "connector/" + plug);
        }

        Assert.Contains("Connector RADIO/P1 is no part of the change", Assert.Single(hangar.Open(), o => o.Contains("Line", StringComparison.Ordinal) || o.Contains("onnector", StringComparison.Ordinal)));
        hangar.Do("AV1", "observed", "connector/RADIO/P1", ("found", "both sides talk and listen"));
        hangar.Sign("AV1", "connector/RADIO/P1");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("onnector", StringComparison.Ordinal));
    }

    private void Ohm(string line, double value) => hangar.Do("AV1", "measured", "test/CONT", ("line", line), ("value", value), ("unit", "ohm"), ("instrument", "MM"));

    private void Volt(double value) => hangar.Do("AV1", "measured", "test/POWER", ("value", value), ("unit", "V"), ("instrument", "MM"));

    // With a mix that is cured after two days.
    private void Sealed()
    {
        hangar.Do("AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", 25.0));
        hangar.Do("AV1", "done", "task/SEAL", ("sealant", "M1"));
        hangar.Sign("AV1", "task/SEAL");
    }

    private void Surveyed()
    {
        hangar.Do("AV1", "started", "task/SURVEY");
        hangar.Do("AV1", "photographed", "task/SURVEY", Photograph);
        hangar.Do("AV1", "done", "task/SURVEY");
        hangar.Sign("AV1", "task/SURVEY");
    }
}
