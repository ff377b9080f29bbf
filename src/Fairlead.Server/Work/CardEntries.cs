using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Work;

/// <summary>What each card asks to be entered and signed, in order, with what the log has of it: so that nobody has to know the words of the log.</summary>
internal sealed class CardEntries(AssessedJob job, HangarState state, DateTimeOffset now)
{
    private static readonly ImmutableDictionary<string, string> Nothing = ImmutableDictionary<string, string>.Empty;
    private static readonly AskView Serial = Ask("serial", "serial number");

    /// <summary>The entries of a task, without signatures and results of tests.</summary>
    public ImmutableArray<CardEntryView> Of(JobTask task) => task.Kind switch
    {
        TaskKind.Open => [Panel("opened", "Opened", task, Fasteners(task))],
        TaskKind.Close => [Panel("closed", "Closed", task, state.Last(JobCards.SubjectOf(task), "opened")?.Payload.Text("fasteners") is { Length: > 0 } taken ? taken : Fasteners(task))],
        TaskKind.Controls or TaskKind.Release => [],
        _ when task.Card is { Radiates: true } => Radiating(task),
        _ when task.Card is not null => [],
        _ => [.. Worked(task)],
    };

    /// <summary>The signatures of a task.</summary>
    public ImmutableArray<SignatureView> Signatures(JobTask task) => [.. JobCards.Signatures(task).Select(s => Signature(s, state.Signatures(s.Subject)))];

    private static SignatureView Signature(CardSignature due, IReadOnlyList<Entry> made)
    {
        var stage = due.Role.StartsWith("stage", StringComparison.Ordinal);
        var by = made.FirstOrDefault(s => stage || s.Payload.Text("role") == due.Entered);
        return new SignatureView(due.Subject, due.What, due.Entered, due.Scope, by?.Who ?? "", by?.At);
    }

    private CardEntryView Panel(string kind, string words, JobTask task, string fasteners)
    {
        var subject = JobCards.SubjectOf(task);
        var made = kind == "closed" && state.IsOpen(subject) ? null : state.Last(subject, kind);
        return Entry(kind, subject, words, made, Ask("fasteners", kind == "opened" ? "fasteners taken out" : "fasteners put back", fasteners, needed: true, "number"));
    }

    private string Fasteners(JobTask task) => NumberFormat.Text(job.Job.Aircraft.Panels?.Find(task.Panels[0])?.Fasteners ?? 0);

    private IEnumerable<CardEntryView> Worked(JobTask task)
    {
        var (subject, standing) = ("task/" + task.Id, state.Standing("task/" + task.Id));
        yield return Entry("started", subject, standing is { Kind: "stopped" } ? "Begin again" : "Begin", standing is { Kind: "stopped" } ? null : state.Last(subject, "started"));
        foreach (var stage in task.Stages)
        {
            yield return Entry("staged", subject, $"Stage reached: {stage.Id.Replace('-', ' ')}", state.Stage($"{task.Id}/{stage.Id}")) with { Payload = Nothing.Add("stage", stage.Id).Add("hold", "yes") };
        }

        if (task.Photographs)
        {
            yield return Entry("photographed", subject, "A photograph of it", state.Last(subject, "photographed"));
        }

        var mix = task.Kind == TaskKind.Seal ? Mix(task.Id, standing) : ("", null);
        if (mix.Id.Length > 0)
        {
            yield return Entry("mixed", "sealant/" + mix.Id, "Sealant mixed", mix.Mixed, Ask("batch", "batch", needed: true), Ask("part", "sealant", task.Parts is [var sealant, ..] ? sealant : "", needed: true) with { Choices = [.. (job.Job.Parts.Sealants ?? Catalog<SealantPart>.Empty).Select(s => s.Id)] },
                Ask("temperature", "temperature of the structure, °C", needed: true, form: "number"), Ask("humidity", "relative humidity, per cent", form: "number"));
        }

        foreach (var part in Parts(task))
        {
            yield return part;
        }

        yield return Entry("done", subject, "Done", standing is { Kind: "done" } ? standing : null) with { Payload = mix.Id.Length > 0 ? Nothing.Add("sealant", mix.Id) : Nothing };
    }

    // A mix whose application life is over before the work is done is followed by another.
    private (string Id, Entry? Mixed) Mix(string task, Entry? standing)
    {
        for (var number = 1; ; number++)
        {
            var id = number == 1 ? $"MIX-{task}" : $"MIX-{task}-{NumberFormat.Text(number)}";
            var mixed = state.Last("sealant/" + id, "mixed");
            if (mixed is null || mixed.Payload.Time("until") >= now || standing?.Payload.Text("sealant") == id)
            {
                return (id, mixed);
            }
        }
    }

    private IEnumerable<CardEntryView> Parts(JobTask task)
    {
        if (task.Removes is { Length: > 0 } item)
        {
            yield return Part("removed", item, $"{item} is out", "", Serial with { Words = "serial number, or none", Needed = true }, Ask("weight", "weight as on the scales, with its unit", needed: true), Ask("condition", "in which condition"));
        }
        else if (job.Required.Parts.FirstOrDefault(p => p.Id == task.Fits) is { } part)
        {
            yield return Part("fitted", part.Id, $"{part.Id} is in", part.Part, Serial with { Words = "serial number, or none", Needed = true }, Ask("batch", "batch"));
            foreach (var connector in job.Required.ConnectorsOf(part.Id))
            {
                var subject = "connector/" + connector;
                yield return Entry("plugged", subject, $"{connector.Replace('/', ' ')} is plugged in", state.Standing(subject) is { Kind: "plugged" } plugged ? plugged : null);
            }
        }
    }

    private CardEntryView Part(string kind, string id, string words, string part, params ImmutableArray<AskView> asks)
    {
        var last = state.Last("part/" + id, "removed", "fitted");
        return Entry(kind, "part/" + id, words, last?.Kind == kind ? last : null, asks) with { Payload = part.Length > 0 ? Nothing.Add("part", part) : Nothing };
    }

    private ImmutableArray<CardEntryView> Radiating(JobTask task)
    {
        var (subject, standing) = ("radiation/" + task.Id, state.Standing("radiation/" + task.Id));
        return
        [
            Entry("permitted", subject, "Permit to radiate", standing is { Kind: "permitted" } && standing.Payload.Time("until") < now ? null : state.Last(subject, "permitted"),
                Ask("until", "for how long", needed: true, form: "time"), Ask("told", "air traffic unit told, and what", needed: true), Ask("outside", "who watches outside and keeps people clear", needed: true), Ask("covered", "which antennas are covered or coupled", needed: true)),
            Entry("silenced", subject, "Radiating has ended", standing is { Kind: "silenced" } ? standing : null),
        ];
    }

    private static AskView Ask(string name, string words, string value = "", bool needed = false, string form = "text") => new(name, words, value, needed, form, []);

    private static CardEntryView Entry(string kind, string subject, string words, Entry? made, params ImmutableArray<AskView> asks) => new(kind, subject, words, Nothing, asks, made?.Who ?? "", made?.At);
}
