using Fairlead.Model;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>Who signs, for which job, on which day, and by which clock.</summary>
public sealed class PeopleAndPlaceTests : IDisposable
{
    private static readonly Required Job = Hangar.Job with { Job = "WO-1", Certifying = "release to service", People = ["AV1", "AV2", "OUT", "EL1", "AV9"] };

    private readonly Hangar hangar = new(required: Job, more: [
        new Person("AV9", "av1 (INVENTED) ", Authorisations: [new Authorisation("avionics", "INV-9", new DateOnly(2028, 1, 1))]),
        new Person("AV8", "Somebody Else (invented)", Authorisations: [new Authorisation("avionics", "INV-AV1", new DateOnly(2028, 1, 1))])]);

    public void Dispose() => hangar.Dispose();

    [Theory]
    [InlineData("AV9")]
    [InlineData("AV8")]
    public void One_person_under_two_ids_is_no_second_person(string twin)
    {
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "done", "task/T1");
        hangar.Sign("AV1", "task/T1");
        Assert.Contains(hangar.TrySign(twin, "task/T1", "inspection"), r => r.Contains("the same name or authorisation number", StringComparison.Ordinal));
        hangar.Sign("AV2", "task/T1", "inspection");
    }

    [Fact]
    public void One_person_under_two_ids_does_not_inspect_their_own_work()
    {
        hangar.Do("AV9", "started", "task/T1");
        hangar.Do("AV9", "done", "task/T1");
        hangar.Sign("AV2", "task/T1");
        Assert.Contains(hangar.TrySign("AV1", "task/T1", "inspection"), r => r.Contains("AV1 worked on task/T1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_release_is_signed_under_the_authorisation_to_release_and_for_this_job()
    {
        using var free = new Hangar(required: new Required { Job = "WO-1", Certifying = "release to service" });
        Assert.Contains("signed under 'release to service'", Assert.Single(free.TrySign("AV1", "release/WO-1")));
        Assert.Contains("This is work order WO-1", Assert.Single(free.TrySign("AV1", "release/WO-2", scope: "release to service")));
        free.Sign("AV1", "release/WO-1", scope: "release to service");
    }

    [Fact]
    public void A_concession_counts_when_whoever_may_certify_has_signed_it()
    {
        hangar.Do("EL1", "conceded", "finding/CAP", ("reason", "cap is on order"));
        Assert.Contains(hangar.Open(), o => o.StartsWith("Finding CAP was conceded by EL1 (cap is on order) and nobody has signed", StringComparison.Ordinal));
        Assert.Contains(hangar.TrySign("AV1", "finding/CAP"), r => r.Contains("signed under 'release to service'", StringComparison.Ordinal));
        Assert.Contains(hangar.TrySign("AV1", "finding/OTHER", scope: "release to service"), r => r.Contains("not conceded", StringComparison.Ordinal));
        hangar.Sign("AV1", "finding/CAP", scope: "release to service");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("CAP", StringComparison.Ordinal));
    }

    [Fact]
    public void A_signature_of_somebody_whom_the_job_no_longer_names_asks_for_the_name()
    {
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "done", "task/T1");
        hangar.Sign("AV2", "task/T1");
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("no person of job.yaml", StringComparison.Ordinal));
        var left = Gate.WhatStandsOpen(hangar.Book.State, Job with { People = ["AV1"] }, hangar.Clock.Now);
        Assert.Equal("AV2, who signed task/T1 (entry 3), is no person of job.yaml: write the person in again, so that the papers say who it was.", Assert.Single(left, o => o.Text.Contains("AV2", StringComparison.Ordinal)).Text);
    }

    [Fact]
    public void The_last_day_of_an_authorisation_and_of_a_calibration_ends_at_midnight_of_the_hangar()
    {
        // The last day is 2027-04-11; at 23:30 it is 04:30 of the next day in UTC.
        var west = TimeZoneInfo.CreateCustomTimeZone("west", TimeSpan.FromHours(-5), "west", "west");
        hangar.Clock.Zone = west;
        hangar.Clock.Now = new DateTimeOffset(2027, 4, 11, 23, 20, 0, west.BaseUtcOffset);
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "done", "task/T1");
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "OLD-MM"));
        hangar.Sign("OUT", "task/T1");
        hangar.Clock.Now = new DateTimeOffset(2027, 4, 12, 0, 1, 0, west.BaseUtcOffset);
        Assert.Contains(hangar.TrySign("OUT", "test/BOND"), r => r.Contains("ended on 2027-04-11", StringComparison.Ordinal));
        hangar.Refused("calibration of 'OLD-MM' ended", "AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "OLD-MM"));
    }

    [Fact]
    public void In_the_east_an_authorisation_does_not_outlast_its_last_day_until_the_utc_midnight()
    {
        var east = TimeZoneInfo.CreateCustomTimeZone("east", TimeSpan.FromHours(10), "east", "east");
        hangar.Clock.Zone = east;
        hangar.Clock.Now = new DateTimeOffset(2027, 4, 12, 1, 0, 0, east.BaseUtcOffset);
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "done", "task/T1");
        Assert.Contains("ended on 2027-04-11", Assert.Single(hangar.TrySign("OUT", "task/T1")));
    }

    [Fact]
    public void The_log_of_another_job_is_neither_continued_nor_released()
    {
        hangar.Do("AV1", "opened", "panel/P1");
        Assert.Equal("WO-1", hangar.Book.State.Job);
        using var other = new Hangar(hangar.Store, Job with { Job = "WO-2" });
        other.Clock.Now = hangar.Clock.Now;
        other.Refused("This is the log of work order WO-1, and the job here is WO-2", "AV1", "closed", "panel/P1");
        Assert.Contains(other.Open(), o => o.StartsWith("This is the log of work order WO-1", StringComparison.Ordinal));

        // The number is put back by a revision, which is taken.
        Assert.NotNull(other.Book.Revise("AV1", "job.yaml", 0, "number: WO-1"u8.ToArray(), "number put back").Entry);
    }

    [Fact]
    public void While_a_job_is_only_written_its_number_may_change()
    {
        Assert.NotNull(hangar.Book.Revise("AV1", "job.yaml", 0, "number: WO-1"u8.ToArray(), "begun").Entry);
        using var renamed = new Hangar(hangar.Store, Job with { Job = "WO-2" });
        renamed.Clock.Now = hangar.Clock.Now;
        renamed.Do("AV1", "opened", "panel/P1");
        Assert.Equal("WO-2", renamed.Book.State.Job);
    }

    [Fact]
    public void What_the_log_alone_writes_cannot_be_told_to_it()
    {
        foreach (var name in new[] { "authorisation", "valid-until", "calibrated-until", "job" })
        {
            hangar.Refused($"'{name}' is written by the log itself", "AV1", "opened", "panel/P1", (name, "2099-12-31"));
        }
    }

    [Fact]
    public void One_entry_by_a_clock_far_ahead_does_not_end_the_log()
    {
        hangar.Do("AV1", "started", "task/T1");
        hangar.Refused("nothing has to be set right", "AV1", "clock-set", "clock/1", ("reason", "just so"));
        var right = hangar.Clock.Now;
        hangar.Clock.Now = right.AddYears(70);
        hangar.Do("AV1", "done", "task/T1");
        hangar.Clock.Now = right;
        Assert.Contains("ended on 2028-01-01", Assert.Single(hangar.TrySign("AV1", "task/T1")));
        hangar.Do("AV1", "clock-set", "clock/1", ("reason", "battery of the tablet was flat; time from the radio"));
        Assert.Contains(hangar.Open(), o => o.StartsWith("Clock 1 was set by AV1 (battery", StringComparison.Ordinal));
        hangar.Sign("AV1", "task/T1");
        Assert.Contains(hangar.TrySign("AV1", "clock/1"), r => r.Contains("signed under 'release to service'", StringComparison.Ordinal));
        hangar.Sign("AV2", "clock/1", scope: "release to service");
        Assert.DoesNotContain(hangar.Open(), o => o.StartsWith("Clock 1", StringComparison.Ordinal));
        Assert.Contains(hangar.TrySign("OUT", "task/T1"), r => r.Contains("ended on 2027-04-11", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("a\u001b[2Jb", "\\u001B")]
    [InlineData("two\nlines", "\\u000A")]
    [InlineData("right \u202Eto left", "\\u202E")]
    [InlineData("isolated \u2066here", "\\u2066")]
    [InlineData("para\u2029graph", "\\u2029")]
    public void Text_that_does_not_show_as_it_is_is_refused(string text, string shown)
    {
        hangar.Refused($"'text' holds {shown}", "AV1", "noted", "panel/P1", ("text", text));
        hangar.Refused($"'subject' holds {shown}", "AV1", "noted", "panel/" + text, ("text", "seen"));
        Assert.Contains(shown, PlainText.Shown(text));
    }

    [Theory]
    [InlineData("Größe 12 µm, ½ turn, 你好")]
    [InlineData("שלום, נבדק")]
    [InlineData("مرحبا \u200F(1)")]
    [InlineData("checked 👩‍🔧✈️")]
    public void Text_of_every_script_is_taken_as_it_is(string text)
    {
        hangar.Do("AV1", "noted", "panel/P1", ("text", text));
        Assert.Equal(text, hangar.Book.State.Last("panel/P1", "noted")!.Payload.Text("text"));
        Assert.Equal(text, PlainText.Shown(text));
    }

    [Fact]
    public void A_text_as_long_as_a_book_is_refused()
    {
        hangar.Do("AV1", "noted", "panel/P1", ("text", new string('x', 10_000)));
        hangar.Refused("an entry takes 10000", "AV1", "noted", "panel/P1", ("text", new string('x', 10_001)));
    }

    [Fact]
    public void Two_people_with_the_same_pin_have_different_verifiers_and_are_told_apart()
    {
        Assert.Null(hangar.SignIns.Set("AV1", "", Hangar.Pin, new byte[Passwords.SaltBytes]));
        Assert.Null(hangar.SignIns.Set("AV2", "", Hangar.Pin, Enumerable.Repeat((byte)1, Passwords.SaltBytes).ToArray()));
        Assert.NotEqual(hangar.Store.FindSignIn("AV1")!.Verifier, hangar.Store.FindSignIn("AV2")!.Verifier);
        Assert.Null(hangar.SignIns.Refusal("AV2", Hangar.Pin));
    }

    [Fact]
    public void What_does_not_depend_on_the_derived_tasks_does_not_wait_for_them()
    {
        var asked = 0;
        var register = hangar.Register with { Later = new Lazy<Required>(() => { asked++; return Job; }) };
        var book = new LogBook(hangar.Store, register, hangar.Clock);
        Assert.NotNull(book.Append(new Draft("AV1", "raised", "defect/D1", Hangar.Fields(("text", "chafed")))).Entry);
        Assert.NotNull(book.Append(new Draft("AV1", "carried-in", "tool/LAMP")).Entry);
        Assert.NotNull(book.Append(new Draft("AV1", "noted", "panel/P1", Hangar.Fields(("text", "seen")))).Entry);
        Assert.Equal(0, asked);
        Assert.NotNull(book.Append(new Draft("AV1", "opened", "panel/P1")).Entry);
        Assert.Equal(1, asked);
    }

    [Fact]
    public void A_measurement_keeps_the_calibration_of_its_day_when_the_instrument_is_calibrated_again()
    {
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        var again = hangar.Register with { Instruments = new([new Instrument("MM", "Meter", ["resistance"], new DateOnly(2030, 5, 5))]) };
        var book = new LogBook(hangar.Store, again, hangar.Clock);
        Assert.NotNull(book.Append(new Draft("AV1", "measured", "test/BOND", Hangar.Fields(("value", 1.0), ("unit", "mohm"), ("instrument", "MM")))).Entry);
        Assert.Equal(["2028-01-01", "2030-05-05"], book.State.Story("test/BOND").Select(e => e.Payload.Text("calibrated-until")));
    }

    [Fact]
    public void Two_copies_that_both_went_on_are_told_apart_by_a_note_of_either()
    {
        hangar.Do("AV1", "opened", "panel/P1");
        using var copy = new Hangar(required: Job);
        copy.Store.Fill([.. hangar.Store.Lines(0).Select(Entry.Read)], []);
        copy.Clock.Now = hangar.Clock.Now;
        hangar.Do("AV1", "noted", "panel/P1", ("text", "here"));
        copy.Do("AV1", "noted", "panel/P1", ("text", "there"));
        var note = ChainCheck.Check(hangar.Store.Lines(0)).Head;
        Assert.Null(ChainCheck.Check(hangar.Store.Lines(0), note).Fault);
        Assert.Contains("a copy that went on by itself", ChainCheck.Check(copy.Store.Lines(0), note).Fault!.What);

        // The entries of one do not follow those of the other, so they cannot be put behind them.
        Assert.NotNull(ChainCheck.Check(hangar.Store.Lines(0).Concat(copy.Store.Lines(1))).Fault);
    }

    [Fact]
    public void A_long_list_of_what_was_not_begun_does_not_hide_what_was()
    {
        using var many = new Hangar(required: new Required(Tasks: [.. Enumerable.Range(1, 300).Select(n => new RequiredTask($"T{n}", "Work"))], Removed: ["OLD"]));
        many.Do("AV1", "opened", "panel/P1");
        many.Do("AV1", "parted", "line/STATIC");
        var sheet = Handover.Of(many.Book.State, many.Register.Required, many.Clock.Now);
        Assert.Equal("300 tasks, 1 part: the plan says what comes next, and the release gate names each.", Assert.Single(sheet.Single(p => p.Title == "Not begun").Lines));
        Assert.Contains("Line STATIC is open", Assert.Single(sheet.Single(p => p.Title == "Pipes and hoses apart").Lines));
        Assert.True(sheet.Sum(p => p.Lines.Count) < 5);
    }
}
