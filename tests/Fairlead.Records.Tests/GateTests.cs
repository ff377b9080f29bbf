using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

public sealed class GateTests : IDisposable
{
    private readonly Hangar hangar = new(required: Hangar.Job);

    public void Dispose() => hangar.Dispose();

    [Fact]
    public void An_empty_log_leaves_all_that_is_required_open() => Assert.Equal(
        [
            "Task T1 (Fit the tray) was not started.",
            "Task T2 (Route the bundle) was not started.",
            "OLD still has to come out.",
            "NEW still has to go in.",
            "Connector A1/P1 has to be plugged in, and the log does not say that it was.",
            "Test BOND has no result: Bond of the tray.",
        ],
        hangar.Open());

    [Fact]
    public void The_gate_opens_when_everything_is_accounted_for_and_shuts_again_when_something_is_disturbed()
    {
        WholeJob();
        Assert.Empty(hangar.Open());
        hangar.Sign("AV2", "release/WO-1", scope: "release to service");
        hangar.Do("AV1", "opened", "panel/P2");
        Assert.StartsWith("Panel P2 is open (entry", Assert.Single(hangar.Open()));
        hangar.Do("AV1", "closed", "panel/P2");
        Assert.Equal(2, hangar.Open().Count);
        Assert.Contains(hangar.Open(), o => o.StartsWith("The flight controls behind panel P2 have to be checked", StringComparison.Ordinal));
        Assert.Contains(hangar.Open(), o => o.StartsWith("Panel P2 was closed by AV1 and nobody has signed", StringComparison.Ordinal));
        Assert.Equal(2, hangar.TrySign("AV1", "release/WO-1", scope: "release to service").Count);
    }

    // The panel of the starter's tail is marked itself; without its mark the zone's counts.
    [Fact]
    public void A_panel_of_a_zone_through_which_controls_run_has_them_checked_where_no_task_does()
    {
        var job = JobReader.Read(Starter.Files()).Job!;
        var unmarked = job with { Aircraft = job.Aircraft with { Panels = new(job.Aircraft.Panels!.Select(p => p with { Controls = false })) } };
        Assert.Equal(["AFT"], Required.Of(unmarked).Controls);
    }

    [Fact]
    public void Work_taken_up_again_lapses_its_signatures()
    {
        WholeJob();
        hangar.Do("AV1", "started", "task/T2");
        hangar.Do("AV1", "done", "task/T2");
        Assert.Contains("nobody has signed", Assert.Single(hangar.Open()));
        hangar.Sign("AV1", "task/T2");
        Assert.Contains("second person", Assert.Single(hangar.Open()));
        hangar.Sign("AV2", "task/T2", "inspection");
        Assert.Empty(hangar.Open());
    }

    [Theory]
    [InlineData(2.5, "mohm", null)]
    [InlineData(2.51, "mohm", "Test BOND gave 2.51 mohm, which is above 2.5: Bond of the tray.")]
    [InlineData(2.0, "ohm", "Test BOND was measured in ohm and its limit is in mohm: it cannot be told whether it passed.")]
    public void A_test_passes_within_its_limit_in_its_unit(double value, string unit, string? open)
    {
        WholeJob();
        hangar.Do("AV1", "measured", "test/BOND", ("value", value), ("unit", unit), ("instrument", "MM"));
        hangar.Sign("AV1", "test/BOND");
        Assert.Equal(open is null ? [] : [open], hangar.Open());
    }

    [Fact]
    public void Everything_disturbed_keeps_the_gate_shut_in_its_own_words()
    {
        using var bare = new Hangar();
        bare.Do("AV1", "opened", "panel/P1");
        bare.Do("AV1", "unplugged", "connector/C1");
        bare.Do("AV1", "loosened", "fastening/F1");
        bare.Do("AV1", "pulled", "breaker/CB1");
        bare.Do("AV1", "carried-in", "tool/LAMP");
        bare.Do("AV1", "started", "task/X");
        bare.Do("AV1", "stopped", "task/X", ("where", "tray"), ("next", "torque"), ("loose", "four screws"));
        bare.Do("AV1", "raised", "defect/D1", ("text", "corrosion"));
        bare.Do("AV1", "permitted", "radiation/R1", ("until", Hangar.Morning.AddHours(4)), ("told", "tower"), ("outside", "AV2"), ("covered", "all"));
        bare.Do("AV1", "mixed", "sealant/M1", ("batch", "B7"), ("part", "SEAL-B2"), ("temperature", 25.0));
        bare.Do("AV1", "conceded", "finding/F", ("reason", "spare is on order"), ("until", Hangar.Morning.AddHours(1)));
        bare.Sign("AV1", "finding/F");
        bare.Clock.Now = Hangar.Morning.AddHours(3);
        string[] words = ["Panel P1 is open", "C1 is unplugged", "F1 is loose or not torqued", "CB1 is pulled", "LAMP is at the aircraft", "X was left half done at 'tray'; next: torque; loose: four screws", "D1 is not cleared: corrosion", "permit to radiate R1", "M1 is not cured until", "concession for F ended"];
        var open = bare.Open();
        Assert.Equal(words.Length, open.Count);
        Assert.All(words, w => Assert.Single(open, o => o.Contains(w, StringComparison.Ordinal)));
    }

    [Fact]
    public void An_entry_of_an_unknown_kind_is_never_passed_over_in_silence()
    {
        using var bare = new Hangar();
        Assert.True(bare.Store.TryAppend(Entry.After(0, Entry.Origin, Hangar.Morning, "AV1", "levitated", "panel/P1", Payload.Empty)));
        Assert.Contains("cannot be told", Assert.Single(bare.Open()));
    }

    [Fact]
    public void The_handover_sheet_has_each_open_thing_once_and_what_to_watch()
    {
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "stopped", "task/T1", ("where", "tray"), ("next", "rivets"), ("loose", "two screws"));
        hangar.Do("AV1", "loosened", "fastening/F1");
        hangar.Do("AV1", "handed-over", "shift/1", ("to", "AV2"), ("watch", "swarf under the floor"));
        hangar.Do("AV2", "noted", "task/T1", ("text", "rivets are short"));
        var sheet = Handover.Of(hangar.Book.State, hangar.Register.Required, hangar.Clock.Now);
        Assert.Equal(hangar.Open().Order(), sheet.Skip(1).SelectMany(p => p.Lines).Order());
        Assert.Contains("swarf under the floor", sheet[0].Lines[0]);
        Assert.Contains("rivets are short", sheet[0].Lines[1]);
    }

    [Fact]
    public void The_log_by_itself_says_what_was_begun_and_not_ended_or_signed_and_claims_nothing_of_the_job()
    {
        hangar.Do("AV1", "started", "task/T1");
        hangar.Do("AV1", "done", "task/T1");
        hangar.Do("AV1", "unplugged", "connector/A1/P1");
        hangar.Do("AV1", "plugged", "connector/A1/P1");
        hangar.Do("AV1", "parted", "line/L1");
        hangar.Do("AV1", "joined", "line/L1");
        hangar.Do("AV1", "raised", "defect/D1", ("text", "a dent"));
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.2), ("unit", "mohm"), ("instrument", "MM"));
        Assert.Collection(
            Gate.WhatWasLeft(hangar.Book.CatchUp(), hangar.Clock.Now).Select(o => o.Text),
            defect => Assert.StartsWith("Defect D1 is not cleared: a dent", defect, StringComparison.Ordinal),
            task => Assert.Equal("Task T1 was done by AV1 and nobody has signed for it.", task),
            test => Assert.Equal("Test BOND has results, the last by AV1, and nobody has signed for it.", test),
            line => Assert.StartsWith("Line L1 was opened and joined again", line, StringComparison.Ordinal));
        hangar.Sign("AV1", "task/T1");
        hangar.Sign("AV1", "test/BOND");
        Assert.Equal(["defect/D1", "line/L1"], Gate.WhatWasLeft(hangar.Book.CatchUp(), hangar.Clock.Now).Select(o => o.Subject));
        Assert.NotEmpty(new LogBook(hangar.Store, Register.Nobody, hangar.Clock).Append(new Draft("AV1", "noted", "zone/A", Payload.Empty.With("text", "seen"))).Refused);
    }

    private void WholeJob()
    {
        hangar.Do("AV1", "opened", "panel/P2");
        hangar.Do("AV1", "removed", "part/OLD", ("serial", "0012"), ("weight", "1.1 kg"));
        foreach (var task in new[] { "T1", "T2" })
        {
            hangar.Do("AV1", "started", "task/" + task);
            hangar.Do("AV1", "done", "task/" + task);
            hangar.Sign("AV1", "task/" + task);
        }

        hangar.Sign("AV2", "task/T2", "inspection");
        hangar.Do("AV1", "fitted", "part/NEW", ("serial", "0101"));
        hangar.Do("AV1", "unplugged", "connector/A1/P1");
        hangar.Do("AV1", "plugged", "connector/A1/P1");
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.2), ("unit", "mohm"), ("instrument", "MM"));
        hangar.Sign("AV1", "test/BOND");
        hangar.Do("AV1", "closed", "panel/P2");
        hangar.Sign("AV1", "panel/P2");
        hangar.Sign("AV1", "controls/P2");
        hangar.Sign("AV2", "controls/P2", "inspection");
    }
}
