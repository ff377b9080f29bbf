using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>What the log does not take, each for its own reason.</summary>
public sealed class RefusalTests : IDisposable
{
    private readonly Hangar hangar = new(required: Hangar.Job);

    public void Dispose() => hangar.Dispose();

    [Fact]
    public void What_the_job_requires_is_worked_out_only_for_an_entry_that_is_held_against_it()
    {
        var (job, worked) = (JobReader.Read(Starter.Files()).Job!, 0);
        var register = Register.Of(job, () =>
        {
            worked++;
            return Required.Of(job);
        });
        var book = new LogBook(new MemoryLogStore(), register, hangar.Clock);
        Assert.NotNull(book.Append(new Draft("P1", "carried-in", "tool/TR1")).Entry);
        Assert.Equal(0, worked);
        Assert.NotNull(book.Append(new Draft("P1", "opened", "panel/GLARE")).Entry);
        Assert.NotNull(book.Append(new Draft("P1", "closed", "panel/GLARE")).Entry);
        Assert.Equal(1, worked);
    }

    [Fact]
    public void A_second_signature_is_a_second_persons()
    {
        Worked("T1");
        hangar.Sign("AV1", "task/T1");
        Assert.Contains("AV1 signed task/T1 already", Assert.Single(hangar.TrySign("AV1", "task/T1")));
        Assert.Contains(hangar.TrySign("AV1", "task/T1", "inspection"), r => r.Contains("AV1 signed task/T1 already", StringComparison.Ordinal));
        hangar.Sign("AV2", "task/T1", "inspection");
    }

    [Fact]
    public void Who_worked_on_it_does_not_inspect_it_though_another_signed()
    {
        hangar.Do("AV2", "started", "task/T1");
        hangar.Do("AV2", "done", "task/T1");
        hangar.Sign("AV1", "task/T1");
        Assert.Contains("AV2 worked on task/T1", Assert.Single(hangar.TrySign("AV2", "task/T1", "inspection")));
    }

    [Fact]
    public void An_inspection_follows_the_signature_of_the_work()
    {
        Worked("T1");
        Assert.Contains("not signed yet", Assert.Single(hangar.TrySign("AV2", "task/T1", "inspection")));
    }

    [Fact]
    public void An_authorisation_counts_to_the_end_of_its_last_day()
    {
        Worked("T1");
        Assert.Contains("ended on 2027-04-11", Assert.Single(hangar.TrySign("OUT", "task/T1")));
        Assert.Contains(hangar.TrySign("EL1", "task/T1"), r => r.Contains("no authorisation for 'avionics'", StringComparison.Ordinal));
        Assert.Contains(hangar.TrySign("AV1", "task/T1", scope: "release to service"), r => r.Contains("signed under 'avionics'", StringComparison.Ordinal));
        using var earlier = new Hangar(required: Hangar.Job);
        earlier.Clock.Now = new DateTimeOffset(2027, 4, 11, 23, 50, 0, TimeSpan.Zero);
        earlier.Do("AV1", "started", "task/T1");
        earlier.Do("AV1", "done", "task/T1");
        earlier.Sign("OUT", "task/T1");
    }

    [Theory]
    [InlineData("panel/P2", "work")]
    [InlineData("controls/P2", "work")]
    [InlineData("controls/P2", "inspection")]
    [InlineData("stage/T1/drilled", "work")]
    [InlineData("stage/T1/drilled", "inspection")]
    [InlineData("task/T1", "inspection")]
    [InlineData("test/BOND", "work")]
    public void Whatever_is_signed_is_signed_under_the_authorisation_that_its_card_asks_for_and_under_any_where_it_asks_for_none(string subject, string role)
    {
        var (asked, free) = (new Hangar(required: Hangar.Job with { Asks = [new(subject, subject[0] == 's' ? "inspection" : role, "release to service")] }), new Hangar(required: Hangar.Job with { Asks = [] }));
        foreach (var log in new[] { asked, free })
        {
            log.Do("AV1", "opened", "panel/P2");
            log.Do("AV1", "closed", "panel/P2");
            log.Do("AV1", "measured", "test/BOND", ("value", 1.8), ("unit", "mohm"), ("instrument", "MM"));
            log.Do("AV1", "started", "task/T1");
            log.Do("AV1", "staged", "task/T1", ("stage", "drilled"));
            log.Do("AV1", "done", "task/T1");
            if (role == "inspection" && subject[0] != 's')
            {
                log.Sign("AV1", subject);
            }
        }

        Assert.Equal($"{subject} is signed under 'release to service', not 'avionics'.", Assert.Single(asked.TrySign("AV2", subject, role)));
        asked.Sign("AV2", subject, role, "release to service");
        free.Sign("AV2", subject, role);
        asked.Dispose();
        free.Dispose();
    }

    [Fact]
    public void A_clock_set_back_renews_no_authorisation_and_no_calibration()
    {
        Worked("T1");
        hangar.Clock.Now = new DateTimeOffset(2027, 4, 1, 0, 0, 0, TimeSpan.Zero);
        Assert.Contains("ended on 2027-04-11", Assert.Single(hangar.TrySign("OUT", "task/T1")));
        hangar.Refused("calibration of 'OLD-MM' ended", "AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "OLD-MM"));
        hangar.Do("AV1", "noted", "task/T1", ("text", "the work goes on by the wrong clock"));
        Assert.Equal([hangar.Book.State.Sequence], ChainCheck.Check(hangar.Store.Lines(0)).ClockWentBack);
    }

    [Fact]
    public void A_measurement_has_a_value_a_unit_and_an_instrument_in_calibration()
    {
        hangar.Refused("needs 'unit'", "AV1", "measured", "test/BOND", ("value", 1.0), ("instrument", "MM"));
        hangar.Refused("needs 'instrument'", "AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"));
        hangar.Refused("needs 'value'", "AV1", "measured", "test/BOND", ("unit", "mohm"), ("instrument", "MM"));
        hangar.Refused("expected a number", "AV1", "measured", "test/BOND", ("value", "good"), ("unit", "mohm"), ("instrument", "MM"));
        hangar.Refused("'X' is not an instrument", "AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "X"));
        hangar.Refused("has no calibration", "AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "LAMP"));
        hangar.Refused("ended on 2027-04-11", "AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "OLD-MM"));
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.8), ("unit", "mohm"), ("instrument", "MM"));
        Assert.Equal("2028-01-01", hangar.Book.State.Story("test/BOND")[0].Payload.Text("calibrated-until"));
    }

    [Fact]
    public void A_panel_stays_open_while_anything_behind_it_is()
    {
        hangar.Do("AV1", "opened", "panel/P1", ("fasteners", 12));
        hangar.Do("AV1", "carried-in", "tool/TW", ("behind", "P1"));
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "unplugged", "connector/A1/P1", ("behind", "P1"));
        hangar.Do("AV1", "loosened", "fastening/F1", ("behind", "P1"));
        hangar.Do("AV1", "carried-in", "tool/LAMP", ("behind", "P9"));
        Assert.Equal(4, hangar.Try("AV1", "closed", "panel/P1", ("fasteners", 12)).Count);
        hangar.Do("AV1", "done", "task/T1");
        hangar.Do("AV1", "plugged", "connector/A1/P1");
        hangar.Do("AV1", "torqued", "fastening/F1", ("value", 20.0), ("unit", "lbf in"), ("instrument", "TW"));
        hangar.Refused("Tool TW was carried in behind P1", "AV1", "closed", "panel/P1", ("fasteners", 12));
        hangar.Do("AV1", "carried-out", "tool/TW");
        hangar.Refused("12 fasteners came out of panel/P1 and 11 are told to be back", "AV1", "closed", "panel/P1", ("fasteners", 11));
        hangar.Refused("12 fasteners came out", "AV1", "closed", "panel/P1");
        hangar.Do("AV1", "closed", "panel/P1", ("fasteners", 12));
    }

    // What goes in was never parted: to mate it is the first that is told of it, and only once.
    [Fact]
    public void A_connector_of_what_goes_in_is_plugged_in_without_having_been_parted()
    {
        hangar.Do("AV1", "plugged", "connector/A1/P1");
        hangar.Refused("does not have it open", "AV1", "plugged", "connector/A1/P1");
        hangar.Do("AV1", "unplugged", "connector/A1/P1");
        hangar.Do("AV1", "plugged", "connector/A1/P1");
    }

    [Fact]
    public void A_tool_that_neither_aircraft_nor_parts_know_is_carried_in_with_what_it_is()
    {
        hangar.Refused("Did you mean 'tool/LAMP'?", "AV1", "carried-in", "tool/LAPM");
        hangar.Refused("carried in with what it is", "AV1", "carried-in", "tool/NOTOOL");
        hangar.Do("AV1", "noted", "tool/NOTOOL", ("text", "found under the seat"));
        hangar.Do("AV1", "carried-in", "tool/TORCH", ("what", "a torch of AV1's own"));
        Assert.All(["LAMP", "TW", "MM"], tool => hangar.Do("AV1", "carried-in", "tool/" + tool));
        var job = JobReader.Read(Starter.Files()).Job!;
        var crimper = job.Parts.Contacts!.Select(c => c.Tool).First(t => t.Length > 0 && t != "none");
        var book = new LogBook(new MemoryLogStore(), Register.Of(job), hangar.Clock);
        Assert.NotNull(book.Append(new Draft("P1", "carried-in", "tool/" + crimper)).Entry);
        Assert.Null(book.Append(new Draft("P1", "carried-in", "tool/" + crimper + "X")).Entry);
    }

    [Fact]
    public void A_permit_to_radiate_that_has_ended_or_runs_beyond_the_shift_is_refused()
    {
        Permit("12 h", "AV1", hangar.Clock.Now.AddHours(14));
        Permit("would have ended already", "AV1", hangar.Clock.Now);
        Permit("would have ended already", "AV1", hangar.Clock.Now.AddDays(-1));
        Assert.Empty(Permitted("AV1", hangar.Clock.Now.AddHours(12)));
    }

    [Fact]
    public void A_permit_to_radiate_is_given_by_whoever_may_sign_for_what_radiates()
    {
        using var outside = new Hangar(required: new Required(Tests: [new("RAMP", "Simulated traffic", [new("result", "display", Expected: "shown")]) { Radiates = true }]) { Asks = [new("test/RAMP", "work", "avionics")] });
        (string, object)[] fields = [("until", Hangar.Morning.AddHours(2)), ("told", "tower"), ("outside", "AV2"), ("covered", "all")];
        outside.Refused("EL1 has no authorisation for 'avionics' that runs", "EL1", "permitted", "radiation/R1", fields);
        outside.Refused("OUT has no authorisation for 'avionics' that runs", "OUT", "permitted", "radiation/R1", fields);
        outside.Do("AV1", "permitted", "radiation/R1", fields);
    }

    [Theory]
    [InlineData("", "", "its serial number and its weight")]
    [InlineData("0012", "", "with its weight, as")]
    [InlineData("", "1.35 kg", "with its serial number, as")]
    [InlineData("0012", "light", "'weight' is 'light', expected a mass")]
    [InlineData("0012", "0 kg", "expected a mass")]
    [InlineData("none", "12 in", "expected a mass")]
    public void What_the_job_takes_out_is_entered_with_its_serial_number_and_its_weight(string serial, string weight, string words)
    {
        (string, object)[] fields = [.. new[] { ("serial", (object)serial), ("weight", weight) }.Where(f => f.Item2 is not "")];
        hangar.Refused(words, "AV1", "removed", "part/OLD", fields);
        hangar.Do("AV1", "removed", "part/OLD", ("serial", "none"), ("weight", "2 lb 3 oz"));
        hangar.Do("AV1", "removed", "part/OLD", ("serial", "none"), ("weight", "none"));
        hangar.Do("AV1", "removed", "part/OTHER");
    }

    [Fact]
    public void A_held_stage_is_signed_before_anything_follows()
    {
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "staged", "task/T1", ("stage", "drilled"), ("hold", "yes"));
        hangar.Refused("Stage 'drilled'", "AV1", "done", "task/T1");
        hangar.Refused("Stage 'drilled'", "AV1", "staged", "task/T1", ("stage", "riveted"));
        hangar.Sign("AV2", "stage/T1/drilled");
        hangar.Do("AV1", "done", "task/T1");
    }

    [Fact]
    public void Nothing_is_opened_twice_or_shut_unopened()
    {
        hangar.Refused("does not have it open", "AV1", "plugged", "connector/C1");
        hangar.Do("AV1", "pulled", "breaker/CB1", ("why", "battery feed"));
        hangar.Refused("was pulled already", "AV2", "pulled", "breaker/CB1");
        hangar.Refused("has to be started", "AV1", "done", "task/T1");
        hangar.Refused("was not started", "AV1", "stopped", "task/T1", ("where", "tray"), ("next", "rivets"));
    }

    [Fact]
    public void Sealant_past_its_application_life_is_not_used()
    {
        hangar.Do("AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", 25.0));
        hangar.Refused("no sealant mix 'M2'", "AV1", "fitted", "part/NEW", ("sealant", "M2"));
        hangar.Clock.Now = Hangar.Morning.AddHours(2.1);
        hangar.Refused("application life of sealant mix 'M1' ended", "AV1", "fitted", "part/NEW", ("sealant", "M1"));
    }

    [Fact]
    public void Only_what_leaves_the_aircraft_as_it_is_can_be_struck_out()
    {
        hangar.Do("AV1", "opened", "panel/P1");
        hangar.Do("AV1", "measured", "test/BOND", ("value", 9.0), ("unit", "mohm"), ("instrument", "MM"));
        hangar.Refused("cannot be struck out", "AV1", "struck", "entry/1", ("reason", "it was never open"));
        hangar.Refused("needs 'reason'", "AV1", "struck", "entry/2");
        hangar.Refused("no entry '9'", "AV1", "struck", "entry/9", ("reason", "typed wrong"));
        hangar.Do("AV1", "struck", "entry/2", ("reason", "typed wrong"));
        Assert.Empty(hangar.Book.State.Story("test/BOND"));
        Assert.Equal("typed wrong", hangar.Book.State.Struck[2].Payload.Text("reason"));
        hangar.Refused("cannot be struck out", "AV1", "struck", "entry/2", ("reason", "again"));
        Assert.Equal(3, hangar.Store.Lines(0).Count());
    }

    [Fact]
    public void Strangers_unknown_kinds_wrong_subjects_and_fields_are_told_all_at_once()
    {
        Assert.Equal(3, hangar.Try("ZZ", "opened", "tool/P1", ("colour", "red")).Count);
        hangar.Refused("no kind of entry 'opend'", "AV1", "opend", "panel/P1");
        hangar.Refused("has no field 'authorisation-x'", "AV1", "noted", "panel/P1", ("text", "x"), ("authorisation-x", "INV"));
        Assert.Contains("PIN or password", Assert.Single(hangar.Try("AV1", "signed", "panel/P1", ("role", "work"), ("scope", "avionics"))));
    }

    [Fact]
    public void A_document_is_revised_from_its_present_revision_and_both_are_shown()
    {
        Assert.Empty(hangar.Book.Revise("AV1", "routing note", 0, "one"u8.ToArray(), "first issue").Refused);
        Assert.Empty(hangar.Book.Revise("AV1", "routing note", 1, "two"u8.ToArray(), "clamp moved").Refused);
        var refused = Assert.Single(hangar.Book.Revise("AV2", "routing note", 1, "mine"u8.ToArray(), "other clamp").Refused);
        Assert.Contains("stands at revision 2, made by AV1", refused);
        Assert.Contains("clamp moved", refused);
        Assert.Equal("two"u8.ToArray(), hangar.Book.Revision("routing note", 2)!.Value.Content);
        Assert.Equal("one"u8.ToArray(), hangar.Book.Revision("routing note", 1)!.Value.Content);
        Assert.Null(hangar.Book.Revision("routing note", 3));
        Assert.Empty(hangar.Book.Revise("AV2", "routing note", 2, "both"u8.ToArray(), "both clamps").Refused);
    }

    [Fact]
    public void A_name_the_job_does_not_know_is_refused_with_the_nearest_it_knows()
    {
        using var job = new Hangar(required: Hangar.Job, panels: ["P1", "P2", "FLOOR-1"], items: ["OLD", "NEW"]);
        job.Refused("no task 'T3'. Did you mean 'task/T1'?", "AV1", "started", "task/T3");
        job.Refused("no task 'TYPO'", "AV1", "noted", "task/TYPO", ("text", "seen"));
        job.Refused("Did you mean 'panel/FLOOR-1'?", "AV1", "opened", "panel/FLOR-1");
        job.Refused("flight controls are behind it", "AV1", "opened", "panel/TAIL-9");
        job.Refused("Did you mean 'panel/P1'?", "AV1", "carried-in", "tool/TW", ("behind", "P11"));
        job.Refused("Did you mean 'part/NEW'?", "AV1", "removed", "part/NEWW");
        job.Refused("Did you mean 'test/BOND'?", "AV1", "measured", "test/BNOD", ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        job.Refused("no line 'bnod'. Did you mean 'bond'?", "AV1", "measured", "test/BOND", ("line", "bnod"), ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        job.Do("AV1", "measured", "test/BOND", ("line", "A+B>C"), ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        job.Do("AV1", "raised", "defect/D-ANY", ("text", "a scratch"));
        Assert.Equal(2, job.Store.Lines(0).Count());
    }

    [Fact]
    public void What_an_imported_log_names_or_the_job_no_longer_has_can_still_be_ended()
    {
        var store = new MemoryLogStore();
        using var before = new Hangar(store);
        before.Do("AV1", "started", "task/GONE");
        before.Do("AV1", "opened", "panel/GONE", ("fasteners", 4));
        using var now = new Hangar(store, Hangar.Job, panels: ["P1"]);
        now.Do("AV1", "closed", "panel/GONE", ("fasteners", 4));
        now.Do("AV1", "done", "task/GONE");
    }

    [Fact]
    public void A_part_the_job_fits_is_entered_with_its_part_number_and_serial_number()
    {
        using var job = new Hangar(required: Hangar.Job with { Parts = [new("NEW", "TR-9")] });
        job.Refused("part/NEW (TR-9) is fitted with its part number and its serial number", "AV1", "fitted", "part/NEW");
        job.Refused("is fitted with its serial number", "AV1", "fitted", "part/NEW", ("part", "TR-9"), ("serial", " "));
        job.Refused("is fitted with its part number,", "AV1", "fitted", "part/NEW", ("serial", "0101"));
        job.Do("AV1", "fitted", "part/NEW", ("part", "TR-9"), ("serial", "0101"));
        job.Do("AV1", "fitted", "part/CLAMP", ("batch", "B7"));
    }

    [Fact]
    public void A_revision_is_not_entered_without_its_text()
    {
        hangar.Refused("kept together with its text", "AV1", "revised", "document/change.yaml", ("base", 0), ("sha256", new string('a', 64)));
        Assert.Empty(hangar.Store.Lines(0));
    }

    private void Worked(string task)
    {
        hangar.Do("AV1", "started", "task/" + task);
        hangar.Do("AV1", "done", "task/" + task);
    }

    private void Permit(string words, string who, DateTimeOffset until) => Assert.Contains(Permitted(who, until), r => r.Contains(words, StringComparison.Ordinal));

    private IReadOnlyList<string> Permitted(string who, DateTimeOffset until) => hangar.Try(who, "permitted", "radiation/R1", ("until", until), ("told", "tower"), ("outside", "AV2"), ("covered", "all"));
}
