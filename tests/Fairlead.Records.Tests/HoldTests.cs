using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>Holds where the work does not go as it was planned.</summary>
public sealed class HoldTests : IDisposable
{
    private static readonly Required Job = new(
        Tasks:
        [
            new("BATTERY-OFF-2", "Disconnect the battery again") { UndoneBy = "task/BATTERY-ON-2" },
            new("BATTERY-ON-2", "Connect the battery for tests"),
            new("CONNECT", "Put the box in") { After = [new("task/BATTERY-OFF-2", "the battery is switched for it")], Moves = ["plugged connector/NEW/P1"] },
            new("REMOVE", "Take the old box out") { After = [new("test/FOUND", "it shows the aircraft as found")] },
            new("GO-ON", "After a test of the change") { After = [new("test/AFTER", "it is tested first")] },
        ],
        Tests:
        [
            new("FOUND", "The old box, as found", [new("reply", "reply", Expected: "replies"), new("level", "level", "dBm", Least: -3)]) { AsFound = true },
            new("AFTER", "The new box", [new("reply", "reply", Expected: "replies")]),
        ],
        Fitted: ["NEW"], Connectors: ["NEW/P1"]);

    private readonly Hangar hangar = new(required: Job);

    public void Dispose() => hangar.Dispose();

    // A box that is dead when it comes in is honest work: nobody should have to write that it replies.
    [Fact]
    public void A_fault_found_before_the_work_lets_the_work_begin_once_all_of_it_is_written_down_and_signed()
    {
        hangar.Do("AV1", "observed", "test/FOUND", ("line", "reply"), ("found", "no reply, dead"));
        hangar.Refused("REMOVE waits for test/FOUND", "AV1", "started", "task/REMOVE");
        hangar.Do("AV1", "observed", "test/FOUND", ("line", "level"), ("found", "nothing to measure"));
        hangar.Refused("not finished and signed", "AV1", "started", "task/REMOVE");
        hangar.Sign("AV1", "test/FOUND");
        hangar.Do("AV1", "started", "task/REMOVE");
        Assert.Contains(Gate.WhatStandsOpen(hangar.Book.State, Job, hangar.Clock.Now), i => i.Subject == "test/FOUND");
    }

    [Fact]
    public void A_fault_found_after_the_work_holds_what_waits_for_the_test()
    {
        hangar.Do("AV1", "observed", "test/AFTER", ("line", "reply"), ("found", "no reply, dead"));
        hangar.Sign("AV1", "test/AFTER");
        hangar.Refused("GO-ON waits for test/AFTER", "AV1", "started", "task/GO-ON");
    }

    [Fact]
    public void Nothing_is_plugged_once_the_battery_is_on_again_until_it_is_off_again()
    {
        hangar.Work("BATTERY-OFF-2");
        hangar.Do("AV1", "started", "task/CONNECT");
        hangar.Do("AV1", "stopped", "task/CONNECT", ("where", "one plug left"), ("next", "mate it"));
        hangar.Do("AV1", "started", "task/BATTERY-ON-2");
        hangar.Refused("waits for task/BATTERY-OFF-2", "AV1", "started", "task/CONNECT");
        hangar.Refused("waits for task/BATTERY-OFF-2", "AV1", "plugged", "connector/NEW/P1");
        hangar.Work("BATTERY-OFF-2");
        hangar.Do("AV1", "started", "task/CONNECT");
        hangar.Do("AV1", "plugged", "connector/NEW/P1");
    }
}
