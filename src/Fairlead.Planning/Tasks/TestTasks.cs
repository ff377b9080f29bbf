using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Planning.Tasks;

/// <summary>Power comes on for the check at unplugged connectors, goes off while boxes are connected, and comes on again for settings and tests.</summary>
internal static class TestTasks
{
    /// <summary>Tests that show the aircraft as it was.</summary>
    public static void Before(Draft draft)
    {
        foreach (var test in draft.Change.Tests.Each().Where(t => t.Stage == WorkStage.Before))
        {
            Test(draft, test, [new Wait("SURVEY", "the aircraft is looked over before power is put on")]);
        }
    }

    /// <summary>Power, connections, settings, and tests with the panels open.</summary>
    public static void Add(Draft draft)
    {
        var fitted = draft.Change.Fit.Each().ToArray();
        var on = Battery(draft, "BATTERY-ON-1", "Connect the battery for the check of power at unplugged connectors", draft.All("harnesses are checked before power is put on", TaskKind.HarnessCheck, TaskKind.Terminate, TaskKind.RunWire, TaskKind.Mount));
        foreach (var item in fitted)
        {
            draft.Add(Work(draft, "PREPOWER-" + item.Id, TaskKind.PrePower, $"Check power, ground and lighting at the unplugged connectors of {item.Id}, and no power on its signal contacts", "pre-power", Skills.Electrical, item), [on]);
        }

        var off = Battery(draft, "BATTERY-OFF-2", "Disconnect the battery again", draft.All("power is off before boxes are connected", TaskKind.PrePower).Append(on));
        foreach (var item in fitted)
        {
            var plugs = Math.Max(1, draft.Job.Parts.Equipment?.Find(item.Part)?.Connectors?.Count ?? 1);
            var connect = Work(draft, "CONNECT-" + item.Id, TaskKind.Connect, $"Put {item.Id} in place and mate its connectors; record part and serial number", "connect", Skills.Avionics, item);
            draft.Add(connect with { Time = connect.Time * plugs }, draft.These("it is mounted, and its power is right", "MOUNT-" + item.Id, "PREPOWER-" + item.Id).Append(off));
        }

        on = Battery(draft, "BATTERY-ON-2", "Connect the battery for settings and tests", draft.All("everything is connected before power is put on", TaskKind.Connect).Append(off));
        foreach (var item in fitted.Where(i => draft.Change.Settings.Each().Any(s => s.Item == i.Id)))
        {
            draft.Add(Work(draft, "CONFIGURE-" + item.Id, TaskKind.Configure, $"Verify software and settings of {item.Id}", "configure", Skills.Configuration, item) with { Panels = [] }, [on]);
        }

        var set = draft.All("software and settings are verified before tests", TaskKind.Configure).Append(on).ToArray();
        foreach (var test in draft.Change.Tests.Each().Where(t => t.Stage is WorkStage.Tests or WorkStage.Work))
        {
            Test(draft, test, set);
        }
    }

    /// <summary>Tests outside and after closing.</summary>
    public static void After(Draft draft)
    {
        var clear = new Wait("VERIFY", "the aircraft is closed and clear");
        var paint = draft.Tasks.Where(t => t.Kind == TaskKind.Paint).Select(t => new Wait(t.Id, "paint is dry before the aircraft goes out", Cure.Paint)).ToArray();
        foreach (var test in draft.Change.Tests.Each().Where(t => t.Stage is WorkStage.Outside or WorkStage.Closed))
        {
            Test(draft, test, [clear, .. test.Stage == WorkStage.Outside ? paint : []]);
        }

        foreach (var check in draft.Change.Ramp.Each())
        {
            draft.Add(
                new JobTask("RAMP-" + check.Id, TaskKind.Test, $"Test {check.Antenna} on the ramp from {check.Distance.As("ft")}, as its sheet says", "", draft.Labour.For("test"), [Skills.Avionics], $"change/ramp/{check.Id}")
                {
                    Authorisation = Skills.Avionics, Outside = true, Cautions = [Radiation],
                },
                [clear, .. paint]);
        }
    }

    private const string Radiation = "Radiation: tell the air traffic unit, keep people clear of antennas that transmit, and never simulate traffic from an antenna that can be heard beyond the test.";

    private static void Test(Draft draft, ExtraTest test, IEnumerable<Wait> after) => draft.Add(
        new JobTask("TEST-" + test.Id, TaskKind.Test, $"{test.Name}: {test.Expected}", "", draft.Labour.For("test"), [Skills.Avionics], $"change/tests/{test.Id}")
        {
            Authorisation = Skills.Avionics, Tools = test.Instruments.Where(i => i != "none").ToSequence(), Outside = test.Stage == WorkStage.Outside, Cautions = test.Stage == WorkStage.Outside ? [Radiation] : [],
        },
        after);

    private static Wait Battery(Draft draft, string id, string title, IEnumerable<Wait> after)
    {
        draft.Add(new JobTask(id, TaskKind.Battery, title, "", draft.Labour.For("battery"), [Skills.Electrical], "change") { Authorisation = Skills.Electrical }, after.Append(new Wait("BATTERY-OFF", "it is off first")));
        return new Wait(id, "the battery is switched for it");
    }

    private static JobTask Work(Draft draft, string id, TaskKind kind, string title, string activity, string skill, FittedItem item) =>
        new(id, kind, title, item.Zone, draft.Labour.For(activity), [skill], $"change/fit/{item.Id}") { Panels = item.Panels, Authorisation = Skills.Authorisation(skill), Tools = kind == TaskKind.PrePower ? draft.Instruments("voltage").ToSequence() : [] };
}
