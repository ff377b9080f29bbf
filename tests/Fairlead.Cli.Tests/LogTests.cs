using Fairlead.Records;

namespace Fairlead.Tests.Cli;

/// <summary>The log from the command line, on the starter job.</summary>
public sealed class LogTests : IDisposable
{
    private const string Pin = "271828";
    private readonly Workshop workshop = new();
    private readonly string job;
    private readonly string who;

    public LogTests()
    {
        job = workshop.Job(Workshop.Panels);
        var people = Fairlead.Model.Storage.JobFolder.Load(job).Job!.Order.People!;
        who = people.First(p => p.Authorisations.Count > 0).Id;
    }

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void A_job_without_a_log_has_an_empty_one_and_asking_begins_none()
    {
        Assert.Equal(1, CommandLine.Run("release", job).Code);
        Assert.Equal(0, CommandLine.Run("handover", job).Code);
        Assert.Empty(CommandLine.Run("log", "show", job).Out);
        Assert.Contains($"0:{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData([]))}", CommandLine.Run("log", "verify", job).Out);
        Assert.False(File.Exists(Path.Combine(job, "log.db")));
    }

    [Fact]
    public void A_pack_with_the_log_is_not_written_while_the_gate_is_shut()
    {
        var ran = CommandLine.Run("release", job, "-o", workshop["release.pdf"]);
        Assert.Equal(1, ran.Code);
        Assert.Contains("is not written", ran.Error);
        Assert.False(File.Exists(workshop["release.pdf"]));
    }

    [Fact]
    public void What_is_entered_shows_verifies_and_keeps_the_gate_shut()
    {
        Assert.StartsWith("entered 1 ", Add("opened", "panel/P1", "fasteners=4").Out);
        Assert.Contains("Panel P1 is open (entry 1", CommandLine.Run(t => t with { Width = 1000 }, "release", job).Out);
        Assert.Contains("Panel P1 is open (entry 1", CommandLine.Run(t => t with { Width = 1000 }, "handover", job).Out);
        Assert.Contains("opened panel/P1: fasteners 4", CommandLine.Run("log", "show", job).Out);
        var refused = Add("closed", "panel/P1", "fasteners=3");
        Assert.Equal(1, refused.Code);
        Assert.Contains("4 fasteners came out", refused.Out);
        Assert.Equal(0, Add("closed", "panel/P1", "fasteners=4").Code);
        var verified = CommandLine.Run("log", "verify", job);
        Assert.Equal(0, verified.Code);
        var note = verified.Out.Trim().Split('\n')[^1];
        Assert.Equal(0, CommandLine.Run("log", "verify", job, "--witness", note).Code);
        Assert.Equal(1, CommandLine.Run("log", "verify", job, "--witness", "3" + note[1..]).Code);
        Assert.Equal(2, CommandLine.Run("log", "verify", job, "--witness", "nothing").Code);
    }

    [Fact]
    public void Lines_are_answered_one_by_one()
    {
        var ran = CommandLine.Run(t => t with { In = new StringReader("opened panel/P1\n\nplugged connector/C1\nnoted panel/P1 \"text=two words\"\n") }, "log", "add", job, "--who", who);
        Assert.Equal(1, ran.Code);
        var answers = ran.Out.Trim().Split('\n');
        Assert.StartsWith("entered 1 ", answers[0]);
        Assert.StartsWith("refused: ", answers[1]);
        Assert.StartsWith("entered 2 ", answers[2]);
        Assert.Equal(3, answers.Length);
        Assert.Contains("text two words", CommandLine.Run("log", "show", job).Out);
    }

    [Fact]
    public void A_line_that_cannot_be_read_does_not_keep_back_those_after_it()
    {
        var ran = CommandLine.Run(t => t with { In = new StringReader("opened panel/P1\nopend panel/P2\nnoted panel/P1 \"text=not closed\nnoted panel/P1 text=seen\n") }, "log", "add", job, "--who", who);
        Assert.Equal(2, ran.Code);
        var answers = ran.Out.Trim().Split('\n');
        Assert.Equal(["entered", "not", "not", "entered"], answers.Select(a => a.Split(' ')[0]));
        Assert.Contains("'opened'", answers[1]);
        Assert.StartsWith("entered 2 ", answers[3]);
    }

    [Theory]
    [InlineData("opened panel/P1 fasteners=4 fasteners=5", "'fasteners' is given twice")]
    [InlineData("opend panel/P1", "'opened'")]
    [InlineData("opened", "expected KIND CLASS/ID")]
    [InlineData("opened panel/P1 fasteners=many", "expected a number")]
    [InlineData("opened panel/P1 fastners=4", "'fasteners'")]
    [InlineData("opened panel/P1 four", "expected name=value")]
    [InlineData("permitted radiation/R1 until=tomorrow", "expected a time")]
    public void What_cannot_be_read_is_told_with_what_would_be(string entry, string words)
    {
        var ran = Add(entry.Split(' '));
        Assert.Equal(2, ran.Code);
        Assert.Contains(words, ran.Error);
    }

    [Fact]
    public void A_signature_takes_the_pin_and_the_pin_is_nowhere_to_be_read()
    {
        Add("opened", "panel/P1");
        Add("closed", "panel/P1");
        var scope = Fairlead.Model.Storage.JobFolder.Load(job).Job!.Order.People!.Find(who)!.Authorisations[0].Scope;
        var moment = new Moment(new DateTimeOffset(2027, 1, 5, 8, 0, 0, TimeSpan.Zero));
        string[] sign = ["log", "sign", job, "panel/P1", "--who", who, "--scope", scope];
        Assert.Contains("no PIN or password yet", CommandLine.Run(t => t with { Secret = _ => Pin }, sign).Out);
        Assert.Equal(0, CommandLine.Run(t => t with { Secret = _ => Pin }, "log", "pin", job, "--who", who).Code);
        Assert.Equal(1, CommandLine.Run(t => t with { Secret = _ => "000000", Clock = moment }, sign).Code);
        var signed = CommandLine.Run(t => t with { Secret = _ => Pin, Clock = moment }, sign);
        Assert.Equal(0, signed.Code);
        Assert.Equal(0, CommandLine.Run("export", job, "-o", workshop["job.zip"]).Code);
        using var zip = System.IO.Compression.ZipFile.OpenRead(workshop["job.zip"]);
        using var log = new StreamReader(zip.GetEntry("log.jsonl")!.Open());
        var text = log.ReadToEnd();
        Assert.DoesNotContain(Pin, text);
        Assert.DoesNotContain("argon2", text);
        Assert.DoesNotContain(zip.Entries, e => e.FullName == "log.db");
    }

    [Fact]
    public void A_proof_of_one_entry_holds_without_the_job_and_an_altered_one_does_not()
    {
        Add("opened", "panel/P1");
        Add("noted", "panel/P1", "text=seen");
        var proof = CommandLine.Run("log", "prove", job, "2").Out;
        File.WriteAllText(workshop["proof.json"], proof);
        Assert.Equal(0, CommandLine.Run("log", "check-proof", workshop["proof.json"]).Code);
        File.WriteAllText(workshop["proof.json"], proof.Replace("seen", "seem"));
        Assert.Equal(1, CommandLine.Run("log", "check-proof", workshop["proof.json"]).Code);
        foreach (var (old, now) in new[] { ("\"entries\":2", "\"entries\":1e30"), ("\"root\":\"", "\"root\":null,\"was\":\""), ("\"path\":[\"", "\"path\":[null,\""), ("\"path\":[\"", "\"path\":[\"zz") })
        {
            Assert.Contains(old, proof);
            File.WriteAllText(workshop["proof.json"], proof.Replace(old, now));
            var ran = CommandLine.Run("log", "check-proof", workshop["proof.json"]);
            Assert.Equal(2, ran.Code);
            Assert.Contains("This is no proof", ran.Error);
        }

        Assert.Equal(2, CommandLine.Run("log", "prove", job, "3").Code);
    }

    [Theory]
    [InlineData("{}", "found no 'entry'")]
    [InlineData("[]", "found no object of JSON")]
    [InlineData("not JSON", "found what cannot be read as JSON")]
    [InlineData("{\"entry\":{},\"entries\":1,\"root\":7,\"path\":[]}", "found another form of 'root'")]
    [InlineData("{\"entry\":{},\"entries\":1.5,\"root\":\"\",\"path\":[]}", "found an 'entries' that is no whole number")]
    public void What_is_no_proof_is_told_with_what_was_found_what_was_expected_and_where_to_get_it(string text, string found)
    {
        File.WriteAllText(workshop["proof.json"], text);
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "log", "check-proof", workshop["proof.json"]);
        Assert.Equal(2, ran.Code);
        Assert.Contains($"This is no proof: {found}, expected an object with the 'entry'", ran.Error);
        Assert.EndsWith("what 'fairlead log prove DIR NUMBER' printed.", ran.Error.Trim());
    }

    [Fact]
    public void A_proof_of_something_that_is_no_entry_and_a_folder_or_nothing_in_place_of_one_are_told_in_words()
    {
        File.WriteAllText(workshop["proof.json"], $"{{\"entry\":{{}},\"entries\":1,\"root\":\"{new string('a', 64)}\",\"path\":[]}}");
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "log", "check-proof", workshop["proof.json"]);
        Assert.Equal((1, "It proves nothing: the line is not an entry, which has at, hash, kind, payload, previous, sequence, subject, who, each in its form."), (ran.Code, ran.Out.Trim()));
        Assert.Contains("is a folder; give the file with what 'fairlead log prove", CommandLine.Run(t => t with { Width = 1000 }, "log", "check-proof", job).Error);
        Assert.Contains("There is no file", CommandLine.Run(t => t with { Width = 1000 }, "log", "check-proof", workshop["none"]).Error);
    }

    [Fact]
    public void Export_and_backup_carry_the_log_and_bring_it_back_as_it_was()
    {
        Add("opened", "panel/P1", "fasteners=4");
        Add("noted", "panel/P1", "text=Größe");
        var before = CommandLine.Run("log", "show", job, "--format", "json").Out;
        Assert.Equal(0, CommandLine.Run("export", job, "-o", workshop["job.zip"]).Code);
        Assert.Equal(0, CommandLine.Run("import", workshop["job.zip"], workshop["imported"]).Code);
        Assert.Equal(before, CommandLine.Run("log", "show", workshop["imported"], "--format", "json").Out);
        Directory.CreateDirectory(workshop["stick"]);
        var backup = CommandLine.Run("backup", job, "--to", workshop["stick"]);
        Assert.Equal(0, backup.Code);
        Assert.Contains("read back", backup.Out);
        var file = Assert.Single(Directory.GetFiles(workshop["stick"]));
        Assert.Equal(0, CommandLine.Run("restore", file, workshop["restored"]).Code);
        Assert.Equal(before, CommandLine.Run("log", "show", workshop["restored"], "--format", "json").Out);
        Assert.Equal(2, CommandLine.Run("restore", file, workshop["restored"]).Code);
        Assert.Equal(2, CommandLine.Run("backup", job, "--to", workshop["no stick"]).Code);
        Assert.Equal(0, CommandLine.Run("export", workshop["restored"], "-o", workshop["again.zip"]).Code);
        Assert.Equal(File.ReadAllBytes(workshop["job.zip"]), File.ReadAllBytes(workshop["again.zip"]));
    }

    [Fact]
    public void A_backup_whose_log_was_altered_is_not_restored()
    {
        Add("opened", "panel/P1");
        Directory.CreateDirectory(workshop["stick"]);
        CommandLine.Run("backup", job, "--to", workshop["stick"]);
        var file = Directory.GetFiles(workshop["stick"])[0];
        using (var zip = System.IO.Compression.ZipFile.Open(file, System.IO.Compression.ZipArchiveMode.Update))
        {
            var entry = zip.GetEntry("log.jsonl")!;
            string text;
            using (var reader = new StreamReader(entry.Open()))
            {
                text = reader.ReadToEnd();
            }

            entry.Delete();
            using var writer = new StreamWriter(zip.CreateEntry("log.jsonl").Open());
            writer.Write(text.Replace("opened", "closed"));
        }

        var ran = CommandLine.Run("restore", file, workshop["restored"]);
        Assert.Equal(2, ran.Code);
        Assert.Contains("The log was altered: entry 1", ran.Error);
        Assert.False(Directory.Exists(workshop["restored"]));
    }

    [Fact]
    public void An_altered_log_is_told_by_every_command_that_reads_it()
    {
        Add("opened", "panel/P1");
        Add("noted", "panel/P1", "text=seen");
        var file = Path.Combine(job, "log.db");
        var bytes = File.ReadAllBytes(file);
        var at = bytes.AsSpan().IndexOf("seen"u8);
        bytes[at] = (byte)'S';
        File.WriteAllBytes(file, bytes);
        var verified = CommandLine.Run("log", "verify", job);
        Assert.Equal(1, verified.Code);
        Assert.Contains("ALTERED: entry 2", verified.Out);
        foreach (var format in new[] { "text", "json" })
        {
            var shown = CommandLine.Run("log", "show", job, "--format", format);
            Assert.Equal(1, shown.Code);
            Assert.Contains("ALTERED: entry 2", shown.Error);
            Assert.Contains("opened", Assert.Single(shown.Out.Trim().Split('\n')));
        }

        Assert.Equal(2, CommandLine.Run("release", job).Code);
        Assert.Equal(2, Add("closed", "panel/P1").Code);
        Assert.Equal(2, CommandLine.Run("export", job, "-o", workshop["x.zip"]).Code);
    }

    [Fact]
    public void A_text_taken_out_of_the_store_is_missed()
    {
        var file = Path.Combine(job, "log.db");
        using (var store = SqliteLogStore.Open(file))
        {
            var loaded = Fairlead.Model.Storage.JobFolder.Load(job).Job!;
            Assert.NotNull(new LogBook(store, Register.Of(loaded), TimeProvider.System).Revise(who, "change.yaml", 0, "text"u8.ToArray(), "first").Entry);
        }

        Assert.Equal(0, CommandLine.Run("log", "verify", job).Code);
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={file};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "DELETE FROM content";
            command.ExecuteNonQuery();
        }

        var verified = CommandLine.Run(t => t with { Width = 1000 }, "log", "verify", job);
        Assert.Equal(1, verified.Code);
        Assert.Contains("ALTERED: the text of document/change.yaml, entry 1, is missing.", verified.Out);
    }

    [Fact]
    public void The_log_of_another_job_in_the_folder_is_told()
    {
        Add("opened", "panel/P1");
        var file = Path.Combine(job, "job.yaml");
        File.WriteAllLines(file, File.ReadAllLines(file).Select(l => l.StartsWith("number:", StringComparison.Ordinal) ? "number: WO-9999" : l));
        Assert.Contains("and the job here is WO-9999", CommandLine.Run(t => t with { Width = 1000 }, "log", "verify", job).Out);
        Assert.Contains("and the job here is WO-9999", CommandLine.Run(t => t with { Width = 1000 }, "release", job).Out);
        Assert.Equal(1, Add("closed", "panel/P1").Code);
    }

    [Fact]
    public void An_entry_made_elsewhere_cannot_write_over_the_screen()
    {
        using (var store = SqliteLogStore.Open(Path.Combine(job, "log.db")))
        {
            Assert.True(store.TryAppend(Entry.After(0, Entry.Origin, DateTimeOffset.UnixEpoch, who, "raised", "defect/D1", Payload.Empty.With("text", "\u001b[2J\n     2  2027 nothing to see"))));
        }

        foreach (var ran in new[] { CommandLine.Run("log", "show", job), CommandLine.Run("release", job), CommandLine.Run("handover", job) })
        {
            Assert.DoesNotContain('\u001b', ran.Out);
            Assert.Contains("\\u001B[2J\\u000A", ran.Out);
        }
    }

    [Fact]
    public void The_kinds_are_listed_with_what_they_need()
    {
        var ran = CommandLine.Run("log", "kinds");
        Assert.All(Kinds.All, k => Assert.Contains($"{k.Name} {(k.Class.Length > 0 ? k.Class : "CLASS")}/ID", ran.Out));
        Assert.Contains("measured CLASS/ID value= unit= instrument= [line=] [beyond=] [outside=] [condition=]", ran.Out);
    }

    private Ran Add(params string[] words) => CommandLine.Run(["log", "add", job, .. words, "--who", who]);
}
