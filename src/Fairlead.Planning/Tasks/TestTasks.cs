using Fairlead.Model;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Tasks;

/// <summary>Power comes on for the check at unplugged connectors, goes off while boxes are connected, and comes on again for settings and tests.</summary>
internal static class TestTasks
{
    /// <summary>Tests that show the aircraft as it was.</summary>
    public static void Before(Draft draft)
    {
        foreach (var card in Cards(draft, WorkStage.Before))
        {
            CardTasks.Add(draft, card, "", [], Source(card), [new Wait("SURVEY", "the aircraft is looked over before power is put on")]);
        }
    }

    /// <summary>Power, connections, settings, and tests with the panels open.</summary>
    public static void Add(Draft draft)
    {
        var fitted = draft.Change.Fit.Each().ToArray();

        // What is sealed cures meanwhile, and is measured again when the battery is off once more.
        var again = draft.Tasks.Where(t => t.Card is { Again: true }).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        var on = Battery(draft, "BATTERY-ON-1", "Connect the battery for the check of power at unplugged connectors",
            draft.Held("harnesses are checked before power is put on", TaskKind.HarnessCheck).Where(w => !again.Contains(w.Task)).Concat(draft.All("wires are in and terminated", TaskKind.Terminate, TaskKind.RunWire, TaskKind.Mount)));
        Items(draft, fitted, "POWER-", on);
        var off = Battery(draft, "BATTERY-OFF-2", "Disconnect the battery again", draft.All("power is off before boxes are connected", TaskKind.PrePower).Append(on), undoneBy: "BATTERY-ON-2");
        foreach (var item in fitted)
        {
            var plugs = Math.Max(1, draft.Job.Parts.Equipment?.Find(item.Part)?.Connectors?.Count ?? 1);
            draft.Add(
                new JobTask("CONNECT-" + item.Id, TaskKind.Connect, $"Put {item.Id} in place and mate its connectors; record part and serial number", item.Zone, draft.Labour.For("connect") * plugs, [Skills.Avionics], $"change/fit/{item.Id}")
                {
                    Panels = item.Panels, Authorisation = Skills.Avionics, Fits = item.Id, Cautions = ["Battery off: mating under power has let a pin touch a shell and energise a bus."],
                },
                draft.These("it is mounted", "MOUNT-" + item.Id).Concat(draft.These("power is proved at the plug before the box is connected", "POWER-" + item.Id).Select(w => w with { Hold = true })).Append(off));
        }

        on = Battery(draft, "BATTERY-ON-2", "Connect the battery for settings and tests", draft.All("everything is connected before power is put on", TaskKind.Connect).Concat(draft.These("the battery is off while resistances are measured", again)).Append(off));
        Items(draft, fitted, "CURRENT-", on);
        Items(draft, fitted, "SET-", on);
        var set = draft.All("software and settings are verified before tests", TaskKind.Configure).Concat(draft.All("every box has power", TaskKind.Test).Where(w => w.Task.StartsWith("CURRENT-", StringComparison.Ordinal))).Append(on).ToArray();
        Items(draft, fitted, "SYS-", [.. set]);
        foreach (var card in Cards(draft, WorkStage.Tests).Concat(Cards(draft, WorkStage.Work)).Where(c => draft.Tasks.All(t => t.Id != c.Id)))
        {
            CardTasks.Add(draft, card, "", [], Source(card), set);
        }
    }

    /// <summary>Tests outside and after closing.</summary>
    public static void After(Draft draft)
    {
        var clear = new Wait("VERIFY", "the aircraft is closed and clear");
        var paint = draft.Tasks.Where(t => t.Kind == TaskKind.Paint).Select(t => new Wait(t.Id, "paint is dry before the aircraft goes out", Cure.Paint)).ToArray();
        foreach (var card in Cards(draft, WorkStage.Outside).Concat(Cards(draft, WorkStage.Closed)))
        {
            CardTasks.Add(draft, card, "", [], Source(card), [clear, .. card.Stage == WorkStage.Outside ? paint : []]);
        }
    }

    private static IEnumerable<TestCard> Cards(Draft draft, WorkStage stage) => draft.Tests.Cards.Where(c => c.Stage == stage);

    // A card of each item that has one, each after the item's cards before it: power, connection and current, settings, function.
    private static void Items(Draft draft, FittedItem[] fitted, string prefix, params Wait[] after)
    {
        foreach (var item in fitted)
        {
            if (draft.Tests.Find(prefix + item.Id) is { } card)
            {
                var before = draft.These("it passes first", "CURRENT-" + item.Id, "SET-" + item.Id).Where(w => w.Task != card.Id).Select(w => w with { Hold = true });
                CardTasks.Add(draft, card, item.Zone, card.Kind is TestKind.Power or TestKind.Connect ? item.Panels : [], $"change/fit/{item.Id}", before.Concat(after));
            }
        }
    }

    private static string Source(TestCard card) => card.Id.Split('-', 2) switch
    {
        ["TEST", var id] => $"change/tests/{id}",
        ["RAMP", var id] => $"change/ramp/{id}",
        ["SCEN", var id] => $"change/scenarios/{id}",
        [_, var id] => $"change/fit/{id}",
        _ => "change",
    };

    private static Wait Battery(Draft draft, string id, string title, IEnumerable<Wait> after, string undoneBy = "")
    {
        draft.Add(new JobTask(id, TaskKind.Battery, title, "", draft.Labour.For("battery"), [Skills.Electrical], "change") { Authorisation = Skills.Electrical, UndoneBy = undoneBy }, after.Append(new Wait("BATTERY-OFF", "it is off first", Hold: true)));
        return new Wait(id, "the battery is switched for it", Hold: true);
    }
}
