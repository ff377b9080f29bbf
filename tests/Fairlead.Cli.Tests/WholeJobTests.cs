using Fairlead.Server.Work;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Model.Storage;
using Fairlead.Planning.Cards;
using Fairlead.Planning.Tasks;
using Fairlead.Records;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Cli;

/// <summary>The whole demonstration job, card by card through the log: every entry that the cards ask for is taken in the order of the tasks, and in the end
/// nothing stands open. A hold that can never be satisfied would show here.</summary>
public sealed class WholeJobTests : IDisposable
{
    private const string Worker = "W1";
    private const string Second = "W2";
    private static readonly DateTimeOffset Start = new(2027, 3, 22, 7, 0, 0, TimeSpan.Zero);
    private static readonly string Photograph = new('a', 64);

    private readonly Workshop workshop = new();
    private readonly Assessment assessment;
    private readonly Register register;
    private readonly List<Entry> entries = [];
    private HangarState state = HangarState.Empty;
    private DateTimeOffset now = Start;

    public WholeJobTests()
    {
        // Two people who may do and sign everything: who is there is the plan's business.
        Folder(Demo(), workshop["job"]);
        var file = Path.Combine(workshop["job"], "job.yaml");
        var text = File.ReadAllText(file);
        var (from, to) = (text.IndexOf("people:\n", StringComparison.Ordinal), text.IndexOf("shifts:\n", StringComparison.Ordinal));
        File.WriteAllText(file, text[..from] + "people:\n" + string.Concat(new[] { Worker, Second }.Select(Person)) + text[to..]);
        assessment = new Assessor().Assess(JobFolder.Load(workshop["job"]).Job!);
        register = Register.Of(assessment.Job, Requirements.Of(assessment));
    }

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void Worked_through_card_by_card_the_gate_opens_and_not_before()
    {
        var cards = JobCards.Of(assessment);
        foreach (var card in cards.SkipLast(1))
        {
            Assert.NotEmpty(Gate.WhatStandsOpen(state, register.Required, now));
            Do(card);
        }

        Assert.Empty(Gate.WhatStandsOpen(state, register.Required, now).Select(o => o.Text));
        Sign(Worker, "release/" + assessment.Job.Order.Number, "work", Skills.Release);
        AssertPacked();
        AssertReleased();
    }

    [Fact]
    public void What_is_sealed_is_measured_before_and_after_and_the_gate_waits_for_both()
    {
        string[] antennas = [.. assessment.Job.Change.Antennas!.Where(a => a.Sealant is not null).Select(a => a.Id)];
        Assert.NotEmpty(antennas);
        Assert.All(antennas, a => Assert.Equal((true, true), (StandsOpen("BOND-" + a), StandsOpen("REBOND-" + a))));
        foreach (var card in JobCards.Of(assessment).TakeWhile(c => c.Task.Card is not { Again: true }))
        {
            Do(card);
        }

        Assert.Equal((false, true), (StandsOpen("BOND-" + antennas[0]), StandsOpen("REBOND-" + antennas[0])));
        Assert.Contains(Refused(Worker, "started", "task/PAINT-" + antennas[0], Payload.Empty), r => r.Contains("waits for test/REBOND-" + antennas[0], StringComparison.Ordinal));
    }

    [Fact]
    public void Out_of_order_nothing_that_is_held_is_taken()
    {
        // Of an empty log only what waits for nothing that holds is taken.
        foreach (var task in TaskList.Of(assessment).Where(t => t.After.Any(w => w.Hold)))
        {
            var (kind, subject) = task.Kind switch
            {
                TaskKind.Open => ("opened", "panel/" + task.Panels[0]),
                TaskKind.Close or TaskKind.Controls or TaskKind.Release => ("", ""),
                _ when task.Card is not null => ("observed", "test/" + task.Id),
                _ => ("started", "task/" + task.Id),
            };
            if (kind.Length > 0)
            {
                var payload = kind == "observed" ? Payload.Empty.With("found", "as expected").With("line", task.Card!.Lines[0].Id) : Payload.Empty;
                Assert.Contains(Refused(Worker, kind, subject, payload), r => r.Contains(" waits for ", StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void No_box_comes_out_goes_in_or_is_plugged_before_its_card_may_begin()
    {
        var first = Refused(Worker, "removed", "part/" + assessment.Job.Change.Remove![0].Item, Payload.Empty);
        Assert.Contains(first, r => r.Contains("waits for task/BATTERY-OFF", StringComparison.Ordinal));
        Assert.Contains(first, r => r.Contains("has not begun", StringComparison.Ordinal));
        foreach (var card in JobCards.Of(assessment).TakeWhile(c => c.Task.Id != "POWER-TS1"))
        {
            Do(card);
        }

        Assert.Contains(Refused(Worker, "fitted", "part/TS1", Fitted("TS1")), r => r.Contains("waits for test/POWER-TS1", StringComparison.Ordinal));
        Assert.Contains(Refused(Worker, "plugged", "connector/TS1/P1", Payload.Empty), r => r.Contains("waits for test/POWER-TS1", StringComparison.Ordinal));
    }

    // The front belly panel lies in a zone of controls that the work goes through; what is behind a nacelle's panel nobody has planned.
    [Fact]
    public void Controls_of_a_zone_are_checked_once_for_it_and_behind_a_panel_only_where_the_panel_asks_for_it()
    {
        Assert.Contains("FLOOR-1", register.Required.Controls);
        Assert.DoesNotContain("BELLY-1", register.Required.Controls);
        var check = Assert.Single(register.Required.Tasks, t => t.Id == "ZONE-CONTROLS-Z130");
        Assert.True(check.Independent);
        Assert.Contains("panel/BELLY-1", check.VoidAfter);
        Assert.Contains("task/RIVET-E2", check.VoidAfter);
        Assert.Contains("panel/FLOOR-1", check.After.Select(h => h.Subject));
    }

    [Fact]
    public void The_log_asks_of_each_signature_the_authorisation_that_its_card_asks()
    {
        string[] asked = [.. register.Required.Asks.Where(a => a.Scope == Skills.Inspection).Select(a => $"{a.Role} {a.Subject}")];
        Assert.All(["work controls/FLOOR-1", "work task/INSPECT-FLOOR-1", "work task/ZONE-CONTROLS-Z130", "work task/KIT"], line => Assert.Contains(line, asked));
        Assert.DoesNotContain(register.Required.Asks, a => a.Subject.StartsWith("panel/", StringComparison.Ordinal) || a.Subject.StartsWith("stage/", StringComparison.Ordinal) || a is { Subject: "controls/FLOOR-1", Role: "inspection" });
        Assert.All(JobCards.Of(assessment).SelectMany(c => c.Signatures).Where(s => s.Scope.Length > 0), s => Assert.Contains(new RequiredSignature(s.Subject, s.Role.StartsWith("work", StringComparison.Ordinal) ? "work" : "inspection", s.Scope), register.Required.Asks));
    }

    private bool StandsOpen(string test) => Gate.WhatStandsOpen(state, register.Required, now).Any(o => o.Subject == "test/" + test);

    // The pack of a release has each result and signature of the log, its root, and the log itself.
    private void AssertPacked()
    {
        var lines = entries.Select(e => e.Line()).ToArray();
        var head = ChainCheck.Check(lines).Head;
        var pack = ReleasePack.Of(assessment, new PackOptions(now, "hash", []) { Record = new ReleaseRecord(state, register.Required, head, [.. LogFile.Write(lines)]) });
        var tables = pack.Blocks.OfType<Table>().ToArray();
        Assert.Equal(register.Required.Tests.Sum(t => t.Lines.Count), tables.Single(t => t.Columns[0].Header == "Test" && t.Columns[^1].Header == "Entry").Rows.Count);
        Assert.Equal(entries.Count(e => e.Kind == "signed"), tables.Single(t => t.Columns[0].Header == "For").Rows.Count);
        Assert.Contains(pack.Blocks.OfType<Paragraph>(), p => p.Words.Contains(head.ToString(), StringComparison.Ordinal));
        Assert.Null(LogFile.Read([.. pack.Attachments.Single(a => a.Name == ReleasePack.LogFile).Content]).Fault);
    }

    // The same from the command line, with the log where a user has it.
    private void AssertReleased()
    {
        using (var store = SqliteLogStore.Open(Path.Combine(workshop["job"], FolderFiles.Log)))
        {
            store.Fill(entries, []);
        }

        var pack = workshop["release.pdf"];
        var ran = CommandLine.Run(t => t with { Clock = new Moment(now), Width = 1000 }, "release", workshop["job"], "-o", pack);
        Assert.Equal((0, "The release gate is OPEN: the log leaves nothing open."), (ran.Code, ran.Out.Split('\n')[0]));
        Assert.Contains($"Log {entries.Count}:", ran.Out);
        Assert.Equal("%PDF-1.7"u8, File.ReadAllBytes(pack).AsSpan(0, 8));
        Assert.Equal(0, CommandLine.Run("log", "verify", workshop["job"]).Code);

        // The log in the pack is checked by itself, and altered it is told.
        var log = LogFile.Write(entries.Select(e => e.Line()));
        File.WriteAllBytes(workshop["log.jsonl"], log);
        Assert.Contains(ChainCheck.Check(entries.Select(e => e.Line())).Head.ToString(), CommandLine.Run("log", "verify", workshop["log.jsonl"]).Out);
        log[log.Length / 2] ^= 1;
        File.WriteAllBytes(workshop["log.jsonl"], log);
        Assert.Contains("ALTERED: entry", CommandLine.Run("log", "verify", workshop["log.jsonl"]).Out);
    }

    private void Do(JobCard card)
    {
        var (task, subject) = (card.Task, card.Subject);
        switch (task.Kind)
        {
            case TaskKind.Open:
                Enter(Worker, "opened", subject, Payload.Empty.With("fasteners", Fasteners(task)));
                return;
            case TaskKind.Close:
                Enter(Worker, "closed", subject, Payload.Empty.With("fasteners", Fasteners(task)));
                break;
            case TaskKind.Controls:
                break;
            case var _ when task.Card is not null:
                Test(task);
                break;
            default:
                Work(task);
                break;
        }

        foreach (var signature in card.Signatures.Where(s => !s.Role.StartsWith("stage", StringComparison.Ordinal)))
        {
            var work = signature.Role.StartsWith("work", StringComparison.Ordinal);
            Sign(work ? Worker : Second, signature.Subject, work ? "work" : "inspection", signature.Scope.Length > 0 ? signature.Scope : Skills.Inspection);
        }
    }

    private void Work(JobTask task)
    {
        var subject = "task/" + task.Id;
        Enter(Worker, "started", subject);
        foreach (var stage in task.Stages)
        {
            Enter(Worker, "staged", subject, Payload.Empty.With("stage", stage.Id).With("hold", "yes"));
            Sign(Second, $"stage/{task.Id}/{stage.Id}", "inspection", Skills.Inspection);
        }

        if (task.Photographs)
        {
            Enter(Worker, "photographed", subject, Payload.Empty.With("sha256", Photograph));
        }

        var done = Payload.Empty;
        if (task.Kind == TaskKind.Seal)
        {
            Enter(Worker, "mixed", "sealant/MIX-" + task.Id, Payload.Empty.With("batch", "B1").With("part", task.Parts[0]).With("temperature", 25.0).With("until", now.AddMinutes(30)).With("cured", now.AddDays(7)));
            done = done.With("sealant", "MIX-" + task.Id);
        }

        Parts(task);
        Enter(Worker, "done", subject, done);
        now += task.Kind == TaskKind.Seal ? TimeSpan.FromDays(7) : TimeSpan.Zero;
    }

    private void Parts(JobTask task)
    {
        var id = task.Id[(task.Id.IndexOf('-', StringComparison.Ordinal) + 1)..];
        if (task.Id.StartsWith("REMOVE-", StringComparison.Ordinal))
        {
            Enter(Worker, "removed", "part/" + assessment.Job.Change.Remove![id].Item, Payload.Empty.With("serial", "none").With("weight", "1.1 kg"));
        }
        else if (task.Kind is TaskKind.Connect || (task.Kind is TaskKind.Mount && assessment.Job.Change.Antennas!.Contains(id)))
        {
            Enter(Worker, "fitted", "part/" + id, Fitted(id));
            foreach (var connector in register.Required.Connectors.Where(c => c.StartsWith(id + "/", StringComparison.Ordinal)))
            {
                Enter(Worker, "unplugged", "connector/" + connector);
                Enter(Worker, "plugged", "connector/" + connector);
            }
        }
    }

    private Payload Fitted(string id) => Payload.Empty.With("part", register.Required.Parts.First(p => p.Id == id).Part).With("serial", "0101");

    private void Test(JobTask task)
    {
        var test = register.Required.Tests.First(t => t.Id == task.Id);
        if (test.Radiates)
        {
            Enter(Second, "permitted", "radiation/" + task.Id, Payload.Empty.With("until", now.AddHours(4)).With("told", "tower").With("outside", Second).With("covered", "all"));
        }

        foreach (var line in test.Lines)
        {
            var payload = Payload.Empty.With("line", line.Id);
            if (line.Unit.Length > 0 && line.Unit != "contacts")
            {
                Enter(Worker, "measured", "test/" + task.Id, payload.With("value", Within(line)).With("unit", line.Unit).With("instrument", assessment.Job.Aircraft.Instruments![0].Id));
            }
            else
            {
                Enter(Worker, "observed", "test/" + task.Id, payload.With("found", line.Unit == "contacts" ? NumberFormat.Text(line.Least!.Value) : line.Expected));
            }
        }

        if (test.Radiates)
        {
            Enter(Second, "silenced", "radiation/" + task.Id);
        }
    }

    private static double Within(RequiredLine line) => (line.Least, line.Most) switch
    {
        ({ } least, { } most) => (least + most) / 2,
        ({ } least, null) => least + 1,
        (null, { } most) => most / 2,
        _ => 1,
    };

    private double Fasteners(JobTask task) => assessment.Job.Aircraft.Panels![task.Panels[0]].Fasteners;

    private void Sign(string who, string subject, string role, string scope) => Enter(who, "signed", subject, Payload.Empty.With("role", role).With("scope", scope));

    private void Enter(string who, string kind, string subject, Payload? payload = null)
    {
        now += TimeSpan.FromMinutes(1);
        Assert.Empty(Refused(who, kind, subject, payload ?? Payload.Empty));
        entries.Add(Next(who, kind, subject, payload ?? Payload.Empty));
        state = state.After(entries[^1]);
    }

    private IReadOnlyList<string> Refused(string who, string kind, string subject, Payload payload) => Refusals.Of(state, register, Next(who, kind, subject, payload));

    private Entry Next(string who, string kind, string subject, Payload payload) =>
        Entry.After(state.Sequence, state.Head, now, who, kind, subject, payload);

    private static string Person(string id) => $"  {id}:\n    name: Engineer {id} (invented)\n    skills: [access, structure, sealing, electrical, avionics, configuration, inspection]\n    authorisations:\n"
        + string.Concat(new[] { Skills.Structure, Skills.Electrical, Skills.Avionics, Skills.Inspection, Skills.Release }.Select(s => $"      - {{ scope: {s}, number: INV-{id}, until: 2030-01-01 }}\n")) + "    shift: day\n";

    private static void Folder(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    private static string Demo([System.Runtime.CompilerServices.CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "demo", "survey-twin"));
}
