using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Substantiation;

/// <summary>The starter job with a power system of two generators, two buses and a battery, small enough to be worked by hand.</summary>
internal static class PowerJob
{
    public static Job Start { get; } = Of(JobReader.Read(Starter.Files()).Job!);

    public static Current A(double value) => Current.Of(value, "A");

    public static Duration Min(double value) => Duration.Of(value, "min");

    public static Job WithLoad(Job job, ExistingLoad load) => job with { Aircraft = job.Aircraft with { Loads = job.Aircraft.Loads!.With(load) } };

    public static Job WithBattery(Job job, Battery battery) => job with { Aircraft = job.Aircraft with { Batteries = job.Aircraft.Batteries!.With(battery) } };

    public static Job WithFeed(Job job, PowerFeed feed) => job with { Change = job.Change with { Power = job.Change.Power!.With(feed) } };

    public static ExistingLoad Draw(ExistingLoad load, string condition, double ampere) =>
        load with { Demands = [.. load.Demands.Select(d => d.Condition == condition ? d with { Current = A(ampere) } : d)] };

    private static Job Of(Job starter) => starter with
    {
        Aircraft = starter.Aircraft with
        {
            Sources = new([
                new PowerSource("G1", "Left generator", SourceKind.Generator, "MAIN", Voltage.Of(28, "V"), A(60), A(70), A(90), Resistance.Of(20, "mΩ")),
                new PowerSource("G2", "Right generator", SourceKind.Generator, "MAIN", Voltage.Of(28, "V"), A(30), Resistance: Resistance.Of(20, "mΩ")),
            ]),
            Buses = new([new Bus("MAIN", "Main bus", Voltage.Of(28, "V")), new Bus("ESS", "Essential bus", Voltage.Of(28, "V"), Essential: true)]),
            Feeders = new([
                new Feeder("F1", "G1", "MAIN", "W8", Length.Of(30, "in"), A(60), Protector: "LM60"), new Feeder("F2", "G2", "MAIN", "W8", Length.Of(60, "in"), A(40), Protector: "LM60"),
                new Feeder("TIE", "MAIN", "ESS", "W8", Length.Of(20, "in")),
            ]),
            Breakers = new([new Breaker("CB1", "RADIO", "ESS", "BR5", "N1")]),
            Batteries = new([new Battery("BAT", "Battery", "ESS", Voltage.Of(24, "V"), Charge.Of(24, "A·h"), CapacityRate.OneHour, Min(30), Min(5), "on-battery")]),
            Conditions = new([
                new OperatingCondition("cruise", "Cruise", ConditionKind.Normal, ["G1", "G2"]), new OperatingCondition("one-out", "Right generator lost", ConditionKind.Abnormal, ["G1"]),
                new OperatingCondition("on-battery", "Both lost", ConditionKind.Emergency), new OperatingCondition("battery-landing", "Landing on battery", ConditionKind.Emergency),
            ]),
            Loads = new([
                new ExistingLoad("LIGHT", "Lights", "MAIN", [new("cruise", A(12)), new("one-out", A(12))]),
                new ExistingLoad("OLD", "Clock", "MAIN", [new("cruise", A(6)), new("one-out", A(6))]),
                new ExistingLoad("PUMP", "Pump", "MAIN", [new("cruise", A(20), Min(3))]),
                new ExistingLoad("RADIO", "Radio", "ESS", [new("cruise", A(4)), new("one-out", A(4)), new("on-battery", A(4)), new("battery-landing", A(4))], "CB1"),
                new ExistingLoad("PITOT", "Pitot heat", "ESS", [new("cruise", A(8)), new("on-battery", A(8))], ShedAt: Min(10)),
                new ExistingLoad("GEAR", "Gear motor", "ESS", [new("battery-landing", A(30), Duration.Of(12, "s"))]),
            ]),
        },
        Change = starter.Change with
        {
            Remove = new([starter.Change.Remove![0] with { Loads = ["OLD"] }]),
            Breakers = new([starter.Change.Breakers!["CB2"] with { Bus = "ESS" }]),
            Power = new([new PowerFeed("REC", "REC1", "main", "CB2", [new("cruise", "record"), new("one-out", "record"), new("on-battery", "standby"), new("battery-landing", "standby")])]),
        },
    };
}
