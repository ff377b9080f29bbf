using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>What stands in a log though it would not be taken: written by other means, brought from elsewhere, or no longer right because of what was struck out
/// or changed in the job. Hashes are right throughout.</summary>
public sealed class HindsightTests : IDisposable
{
    private static readonly Required Ordered = new(
        Tasks: [new("SURVEY", "Look it over") { Photographs = true }, new("FIT", "Fit the tray", ["P1"]) { After = [new Hold("task/SURVEY", "as found")], Stages = [new("s1", "the hole")] }],
        Tests: [new("BOND", "Bond", [new("bond", "tray to structure", "mohm", Most: 2.5)]) { After = [new Hold("task/FIT", "the tray is in")], Independent = true }])
    {
        Panels = [new("P1", [new Hold("task/SURVEY", "as found")], [new Hold("test/BOND", "it is covered")])],
    };

    private readonly Hangar hangar = new(required: Ordered);

    public void Dispose() => hangar.Dispose();

    [Fact]
    public void A_log_worked_in_its_order_has_nothing_out_of_order()
    {
        Survey();
        hangar.Do("AV1", "opened", "panel/P1", ("fasteners", 4));
        Fit();
        Bond();
        hangar.Do("AV1", "closed", "panel/P1", ("fasteners", 4));
        hangar.Sign("AV1", "panel/P1");
        Assert.Empty(hangar.Open());
    }

    [Fact]
    public void An_entry_out_of_its_order_keeps_the_gate_shut_until_it_is_done_again_in_its_order()
    {
        Force("AV1", "started", "task/FIT");
        Survey();
        Assert.Contains("Entry 1 (started task/FIT, AV1) is out of its order: task/FIT waits for task/SURVEY", Assert.Single(Out()));
        Stage();
        hangar.Do("AV1", "done", "task/FIT");
        Assert.Single(Out());
        Fit();
        Assert.Empty(Out());
    }

    [Fact]
    public void An_entry_out_of_its_order_is_accepted_by_whoever_may_certify_and_by_nobody_else()
    {
        Force("AV1", "opened", "panel/P1", ("fasteners", 4));
        Survey();
        Assert.Single(Out());
        hangar.Do("EL1", "conceded", "finding/ENTRY-1", ("reason", "opened for the survey itself"));
        Assert.Single(Out());
        Assert.Contains(hangar.Open(), o => o.StartsWith("Finding ENTRY-1 was conceded by EL1", StringComparison.Ordinal));
        Assert.NotEmpty(hangar.TrySign("EL1", "finding/ENTRY-1"));
        hangar.Sign("AV2", "finding/ENTRY-1");
        Assert.Empty(Out());
        Assert.DoesNotContain(hangar.Open(), o => o.Contains("ENTRY-1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_test_made_before_its_time_counts_when_it_is_made_again()
    {
        Survey();
        Force("AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        hangar.Do("AV1", "opened", "panel/P1", ("fasteners", 4));
        Fit();
        Assert.Contains("test/BOND waits for task/FIT", Assert.Single(Out()));
        Bond();
        Assert.Empty(Out());
    }

    [Fact]
    public void Striking_out_what_a_step_rests_on_does_not_pass_in_silence()
    {
        Survey();
        var photograph = hangar.Book.State.Last("task/SURVEY", "photographed")!.Sequence;
        Assert.Empty(Out());
        hangar.Do("AV1", "struck", $"entry/{photograph}", ("reason", "wrong picture"));
        Assert.Contains("is done with photographs", Assert.Single(Out()));
    }

    [Fact]
    public void Who_did_the_work_is_no_second_person_in_a_log_from_elsewhere_either()
    {
        Survey();
        hangar.Do("AV1", "opened", "panel/P1", ("fasteners", 4));
        Fit();
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        hangar.Sign("AV1", "test/BOND");
        Force("AV1", "signed", "test/BOND", ("role", "inspection"), ("scope", "avionics"));
        Assert.Contains(hangar.Open(), o => o.Contains("compared by a second person", StringComparison.Ordinal));
        Assert.Contains("AV1 worked on test/BOND", Assert.Single(Out()));
    }

    private IEnumerable<string> Out() => hangar.Open().Where(o => o.Contains("out of its order", StringComparison.Ordinal));

    private void Survey()
    {
        hangar.Do("AV1", "started", "task/SURVEY");
        hangar.Do("AV1", "photographed", "task/SURVEY", ("sha256", new string('a', 64)));
        hangar.Do("AV1", "done", "task/SURVEY");
        hangar.Sign("AV1", "task/SURVEY");
    }

    private void Fit()
    {
        hangar.Do("AV1", "started", "task/FIT");
        Stage();
        hangar.Do("AV1", "done", "task/FIT");
        hangar.Sign("AV1", "task/FIT");
    }

    private void Stage()
    {
        hangar.Do("AV1", "staged", "task/FIT", ("stage", "s1"), ("hold", "yes"));
        hangar.Sign("AV2", "stage/FIT/s1", "inspection");
    }

    private void Bond()
    {
        hangar.Do("AV1", "measured", "test/BOND", ("value", 1.0), ("unit", "mohm"), ("instrument", "MM"));
        hangar.Sign("AV1", "test/BOND");
        hangar.Sign("AV2", "test/BOND", "inspection");
    }

    // Into the store past the book, hashed as it should be.
    private void Force(string who, string kind, string subject, params (string Name, object Value)[] fields)
    {
        var state = hangar.Book.CatchUp();
        hangar.Clock.Now += TimeSpan.FromMinutes(1);
        Assert.True(hangar.Store.TryAppend(Entry.After(state.Sequence, state.Head, hangar.Clock.Now, who, kind, subject, Hangar.Fields(fields))));
    }
}
