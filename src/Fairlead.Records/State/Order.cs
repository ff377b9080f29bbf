namespace Fairlead.Records;

/// <summary>Why something may not begin yet: what comes first is not finished and signed. Only what hurts someone, cannot be seen later or cannot be undone is held so;
/// the rest of the order is the plan's.</summary>
internal static class Order
{
    /// <summary>The reasons against an entry that begins something.</summary>
    public static IEnumerable<string> Of(Candidate c)
    {
        var id = Kinds.IdOf(c.Entry.Subject);
        var card = Moved(c);
        var holds = (c.Entry.Kind, Kinds.ClassOf(c.Entry.Subject)) switch
        {
            ("started", "task") => Task(c, id)?.After,
            ("measured" or "observed", "test") => Test(c, id)?.After,
            ("opened", "panel") => Panel(c, id)?.Opening,
            ("closed", "panel") => Panel(c, id)?.Closing,
            _ => card?.After,
        };
        var waits = (holds ?? default).Where(h => !Finished(c, h.Subject)).Select(h => $"{c.Entry.Subject} waits for {h.Subject}, which is not finished and signed: {h.Why}.");
        return card is null || c.State.Standing("task/" + card.Id) is not null ? waits
            : waits.Append($"{c.Entry.Subject} is {c.Entry.Kind} as part of task/{card.Id}, which has not begun: 'started task/{card.Id}' comes first.");
    }

    /// <summary>Why nothing may radiate: a permit that still runs stands in the log first.</summary>
    public static IEnumerable<string> Radiating(Candidate c)
    {
        if (Kinds.ClassOf(c.Entry.Subject) == "test" && Test(c, Kinds.IdOf(c.Entry.Subject)) is { Radiates: true }
            && !c.State.Open.Any(s => Kinds.ClassOf(s) == "radiation" && c.State.Standing(s)!.Payload.Time("until") >= c.Now))
        {
            yield return $"{c.Entry.Subject} radiates, and no permit to radiate stands: 'permitted radiation/ID until= told= outside= covered='. Never simulate traffic from an antenna that can be heard beyond the test.";
        }
    }

    /// <summary>Why a task is not done yet, whatever its worker says.</summary>
    public static IEnumerable<string> Finishing(Candidate c)
    {
        if (Task(c, Kinds.IdOf(c.Entry.Subject)) is not { } task)
        {
            return [];
        }

        var mix = c.Entry.Payload.Text("sealant");
        return
        [
            .. task.Stages.Where(s => c.State.Signatures($"stage/{task.Id}/{s.Id}").Count == 0).Select(s => $"Stage '{s.Id}' of {c.Entry.Subject} is held until a second person has signed it: {s.Name}."),
            .. task.Photographs && c.State.Last(c.Entry.Subject, "photographed") is null ? [$"{c.Entry.Subject} is done with photographs, and the log has none: 'photographed {c.Entry.Subject} sha256='."] : Array.Empty<string>(),
            .. task.Against.Length > 0 ? [$"{c.Entry.Subject} cannot be done: {task.Against}."] : Array.Empty<string>(),
            .. task.Sealant && mix.Length == 0 ? [$"{c.Entry.Subject} is done with a sealant mix: tell which, 'sealant=MIX'."] : mix.Length > 0 ? Mixing.Used(c, mix) : [],
            .. task.Clear ? c.State.Open.Where(Disturbed).Select(s => $"{s} is {c.State.Standing(s)!.Kind}: the aircraft is not clear.") : [],
        ];
    }

    /// <summary>Whether a subject is a part of the aircraft, or something left in it, that has to be back in its place.</summary>
    public static bool Disturbed(string subject) => Kinds.ClassOf(subject) is "panel" or "tool" or "connector" or "fastening" or "line";

    private static bool Finished(Candidate c, string subject) => Kinds.ClassOf(subject) switch
    {
        "test" => Test(c, Kinds.IdOf(subject)) is not { } test || !(test.AsFound ? Results.WhatIsNotWritten(c.State, test) : Results.WhatStandsOpen(c.State, test)).Any(),
        "panel" => c.State.Standing(subject) is { Kind: "closed" },
        "controls" => c.State.Standing("panel/" + Kinds.IdOf(subject)) is not { Kind: "closed" } || Gate.Independent(c.State.Signatures(subject)),
        _ => c.State.Standing(subject) is { Kind: "done" } done && Signed(c, subject) && !Undone(c, done) && Mixing.Wet(c, Kinds.IdOf(subject)) is null,
    };

    // As switching on undoes switching off.
    private static bool Undone(Candidate c, Entry done) => Task(c, Kinds.IdOf(done.Subject)) is { UndoneBy.Length: > 0 } task && c.State.Standing(task.UndoneBy)?.Sequence > done.Sequence;

    private static bool Signed(Candidate c, string subject) => c.State.Signatures(subject) is { Count: > 0 } signatures && (Task(c, Kinds.IdOf(subject)) is not { Independent: true } || Gate.Independent(signatures));

    // The card in which a part comes out or goes in, or a connector of it is plugged.
    private static RequiredTask? Moved(Candidate c) => c.Entry.Kind is "removed" or "fitted" or "plugged"
        ? c.Register.Required.Tasks.FirstOrDefault(t => t.Moves.Contains($"{c.Entry.Kind} {c.Entry.Subject}")) : null;

    private static RequiredTask? Task(Candidate c, string id) => c.Register.Required.Tasks.FirstOrDefault(t => t.Id == id);

    private static RequiredTest? Test(Candidate c, string id) => c.Register.Required.Tests.FirstOrDefault(t => t.Id == id);

    private static RequiredPanel? Panel(Candidate c, string id) => c.Register.Required.Panels.FirstOrDefault(p => p.Id == id);
}
