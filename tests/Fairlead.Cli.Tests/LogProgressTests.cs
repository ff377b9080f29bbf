using Fairlead.Calculations;
using Fairlead.Model.Storage;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Server.Work;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Cli;

/// <summary>What the plan takes from the log: begun, left half done, done early or late, and undone again.</summary>
public sealed class LogProgressTests
{
    private static readonly DateTimeOffset Morning = new(2027, 3, 22, 7, 0, 0, TimeSpan.Zero);
    private static readonly Lazy<Assessment> Twin = new(() => new Assessor().Assess(JobFolder.Load(Demo()).Job!));
    private static readonly Lazy<Sequence<JobTask>> Tasks = new(() => TaskList.Of(Twin.Value));
    private static readonly Lazy<Required> Needed = new(() => Requirements.Of(Twin.Value));

    [Fact]
    public void A_begun_task_has_its_start_and_its_people()
    {
        var begun = Of("SURVEY", (0, "AV1", "started", "task/SURVEY"))!;
        Assert.Equal(Wall(0), begun.Started);
        Assert.Null(begun.Done);
        Assert.Equal(["AV1"], begun.People);
    }

    [Fact]
    public void A_task_left_half_done_is_not_done_and_its_pauses_are_no_work()
    {
        var paused = Of("SURVEY", (0, "AV1", "started", "task/SURVEY"), (2, "AV1", "stopped", "task/SURVEY"), (20, "AV1", "started", "task/SURVEY"))!;
        Assert.Null(paused.Done);
        Assert.Equal([new(Wall(0), Wall(2)), new(Wall(20), DateTime.MaxValue)], paused.On);
        Assert.Equal([new(Wall(0), Wall(2))], Of("SURVEY", (0, "AV1", "started", "task/SURVEY"), (2, "AV1", "stopped", "task/SURVEY"))!.On);
    }

    [Fact]
    public void A_task_that_is_done_early_or_late_keeps_its_own_times() =>
        Assert.Equal(Wall(50), Of("CUT-D", (49, "EL1", "started", "task/CUT-D"), (50, "EL1", "done", "task/CUT-D"))!.Done);

    [Fact]
    public void A_task_begun_again_after_it_was_done_is_begun_and_only_what_came_since_counts()
    {
        var again = Of("CUT-D", (0, "EL1", "started", "task/CUT-D"), (1, "EL1", "done", "task/CUT-D"), (30, "AV1", "started", "task/CUT-D"))!;
        Assert.Equal(Wall(30), again.Started);
        Assert.Null(again.Done);
        Assert.Equal(["AV1"], again.People);
    }

    [Fact]
    public void A_test_of_which_some_lines_are_measured_is_begun_and_not_done()
    {
        var card = Tasks.Value.Single(t => t.Id == "CONT-TS1-P1").Card!;
        (int, string, string, string, string, double)[] all = [.. card.Lines.Select((l, i) => (i, "EL1", "measured", "test/CONT-TS1-P1", l.Id, 0.1))];
        Assert.Null(Tested(all[..3])!.Done);
        Assert.Null(Tested([.. all[..^1], (40, "EL1", "measured", "test/CONT-TS1-P1", card.Lines[^1].Id, 99)])!.Done);
        Assert.Null(Tested(all)!.Done);
        Assert.NotNull(Tested(all, signed: true)!.Done);
    }

    [Fact]
    public void A_panel_opened_again_has_its_closing_and_its_controls_before_it()
    {
        (int, string, string, string)[] closed = [(0, "EL1", "opened", "panel/FLOOR-1"), (9, "EL1", "closed", "panel/FLOOR-1"), (10, "IN1", "signed", "controls/FLOOR-1"), (11, "AV1", "signed", "controls/FLOOR-1")];
        Assert.Equal(Wall(9), Of("CLOSE-FLOOR-1", closed)!.Done);
        Assert.Equal(Wall(11), Of("CONTROLS-FLOOR-1", closed)!.Done);
        Assert.Null(Of("CONTROLS-FLOOR-1", closed[..3])!.Done);
        var opened = closed.Append((20, "EL1", "opened", "panel/FLOOR-1")).ToArray();
        Assert.Null(Of("CLOSE-FLOOR-1", opened));
        Assert.Null(Of("CONTROLS-FLOOR-1", opened));
        Assert.NotNull(Of("OPEN-FLOOR-1", opened)!.Done);
    }

    // BELLY-1 opens into Z130, through which controls run; BELLY-1 is no part of Z310.
    [Theory]
    [InlineData("ZONE-CONTROLS-Z130", "opened", "panel/BELLY-1", true)]
    [InlineData("ZONE-CONTROLS-Z130", "done", "task/RIVET-E2", true)]
    [InlineData("ZONE-CONTROLS-Z310", "opened", "panel/BELLY-1", false)]
    [InlineData("VERIFY", "opened", "panel/BELLY-1", true)]
    public void A_check_that_later_work_made_void_is_planned_again(string task, string kind, string subject, bool again)
    {
        (int, string, string, string)[] done = [(0, "IN1", "started", "task/" + task), (1, "IN1", "done", "task/" + task)];
        Assert.Equal(Wall(1), Of(task, [(0, "ST1", kind, subject), .. done])!.Done);
        Assert.Equal(again, Of(task, [.. done, (5, "ST1", kind, subject)]) is null);
        Assert.Equal(Wall(7), Of(task, [.. done, (5, "ST1", kind, subject), (6, "IN1", "started", "task/" + task), (7, "IN1", "done", "task/" + task)])!.Done);
    }

    // Planned at 25 degC the filleting sealant of the demonstration takes 30 h, as at 21; this mix was cold, and the log says when it is cured.
    [Fact]
    public void A_seal_is_cured_when_the_mix_in_the_log_is()
    {
        var state = After(HangarState.Empty, 0, "ST1", "mixed", "sealant/M1", Payload.Empty.With("part", "FIL05").With("cured", Morning.AddHours(60)));
        state = After(state, 0, "ST1", "started", "task/SEAL-E1", Payload.Empty);
        Assert.Null(LogProgress.Of(state, Tasks.Value, Needed.Value, TimeZoneInfo.Utc).Single(p => p.Task == "SEAL-E1").Cured);
        state = After(state, 1, "ST1", "done", "task/SEAL-E1", Payload.Empty.With("sealant", "M1"));
        Assert.Equal(Wall(60), LogProgress.Of(state, Tasks.Value, Needed.Value, TimeZoneInfo.Utc).Single(p => p.Task == "SEAL-E1").Cured);
        Assert.Null(Of("SEAL-E1", (0, "ST1", "started", "task/SEAL-E1"), (1, "ST1", "done", "task/SEAL-E1"))!.Cured);
    }

    private static TaskProgress? Tested((int, string, string, string, string Line, double Value)[] lines, bool signed = false)
    {
        var state = HangarState.Empty;
        foreach (var (hour, who, kind, subject, line, value) in lines)
        {
            state = After(state, hour, who, kind, subject, Payload.Empty.With("line", line).With("value", value).With("unit", "Ω").With("instrument", "DMM-01"));
        }

        state = signed ? After(state, 60, "AV1", "signed", "test/CONT-TS1-P1", Payload.Empty.With("role", "work").With("scope", "electrical")) : state;
        return LogProgress.Of(state, Tasks.Value, Needed.Value, TimeZoneInfo.Utc).FirstOrDefault(p => p.Task == "CONT-TS1-P1");
    }

    private static TaskProgress? Of(string task, params (int Hour, string Who, string Kind, string Subject)[] entries) => LogProgress.Of(
        entries.Aggregate(HangarState.Empty, (state, e) => After(state, e.Hour, e.Who, e.Kind, e.Subject, e.Kind == "signed" ? Payload.Empty.With("role", e.Who == "IN1" ? "work" : "inspection") : Payload.Empty)),
        Tasks.Value, Needed.Value, TimeZoneInfo.Utc).FirstOrDefault(p => p.Task == task);

    private static HangarState After(HangarState state, int hour, string who, string kind, string subject, Payload payload) =>
        state.After(Entry.After(state.Sequence, state.Head, Morning.AddHours(hour), who, kind, subject, payload));

    private static DateTime Wall(int hour) => Morning.AddHours(hour).DateTime;

    private static string Demo([System.Runtime.CompilerServices.CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "demo", "survey-twin"));
}
