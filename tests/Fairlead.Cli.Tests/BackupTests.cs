using System.IO.Compression;
using System.Text;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Tests.Cli;

/// <summary>Copies on a stick: what they hold, what is refused, and that nothing is half there.</summary>
public sealed class BackupTests : IDisposable
{
    private readonly Workshop workshop = new();
    private readonly string job;
    private readonly string stick;
    private readonly string who;

    public BackupTests()
    {
        job = workshop.Job(Workshop.Panels);
        stick = workshop["stick of Zoë ✈"];
        Directory.CreateDirectory(stick);
        who = JobFolder.Load(job).Job!.Order.People!.First(p => p.Authorisations.Count > 0).Id;
        Assert.Equal(0, CommandLine.Run("log", "add", job, "opened", "panel/P1", "--who", who).Code);
    }

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void Names_with_spaces_and_letters_of_every_script_come_back()
    {
        Directory.CreateDirectory(Path.Combine(job, "photographs of Zoë"));
        File.WriteAllText(Path.Combine(job, "photographs of Zoë", "tail cone – 尾.txt"), "seen");
        Restore(Backup(), "back again ✈");
        Assert.Equal("seen", File.ReadAllText(Path.Combine(workshop["back again ✈"], "photographs of Zoë", "tail cone – 尾.txt")));
        Assert.Equal(0, CommandLine.Run("log", "verify", workshop["back again ✈"]).Code);
    }

    [Fact]
    public void A_backup_cut_off_anywhere_is_refused_in_words_and_leaves_nothing()
    {
        var whole = File.ReadAllBytes(Backup());
        for (var length = 0; length < whole.Length; length += 1 + (whole.Length / 40))
        {
            File.WriteAllBytes(workshop["cut.zip"], whole[..length]);
            Refused("It is cut off or damaged, or no zip file.", "restore", workshop["cut.zip"], workshop["back"]);
            Assert.False(Path.Exists(workshop["back"]));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("copies")]
    public void A_link_that_leads_into_the_job_is_no_place_for_its_backup(string below)
    {
        var inside = Path.Combine(job, "copies", below);
        Directory.CreateDirectory(inside);
        Directory.CreateSymbolicLink(workshop["way"], Path.Combine(job, "copies"));
        Directory.CreateSymbolicLink(workshop["way to the way"], workshop["way"]);
        Assert.All([workshop["way"], workshop["way to the way"], Path.Combine(workshop["way to the way"], below)], place => Refused("leads into it", "backup", job, "--to", place));
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(job, "copies"), "*", SearchOption.AllDirectories));

        // The job itself behind a link is the same folder; a link that leads elsewhere is as good as a folder.
        Directory.CreateSymbolicLink(workshop["the job"], job);
        Refused("leads into it", "backup", workshop["the job"], "--to", inside);
        Directory.CreateSymbolicLink(workshop["way out"], stick);
        Assert.Equal(0, CommandLine.Run("backup", job, "--to", workshop["way out"]).Code);
    }

    [Fact]
    public void A_job_whose_text_has_problems_is_backed_up_and_comes_back()
    {
        File.AppendAllText(Path.Combine(job, "change.yaml"), "\nnonsense: [\n");
        Assert.Equal(2, CommandLine.Run("check", job).Code);
        Assert.Equal(0, CommandLine.Run("log", "verify", job).Code);
        Assert.Contains("opened panel/P1", CommandLine.Run("log", "show", job).Out);
        var copy = Backup();
        Assert.Equal("job-", Path.GetFileName(copy)[..4]);
        Restore(copy, "back");
        Assert.Equal(File.ReadAllText(Path.Combine(job, "change.yaml")), File.ReadAllText(Path.Combine(workshop["back"], "change.yaml")));
    }

    [Fact]
    public void A_job_that_stands_is_never_restored_over()
    {
        var copy = Backup();
        var before = workshop.Everything().ToArray();
        Refused("is not empty", "restore", copy, job);
        Assert.Equal(before, workshop.Everything());
    }

    [Fact]
    public void A_backup_does_not_go_into_the_job_itself()
    {
        Directory.CreateDirectory(Path.Combine(job, "copies"));
        Refused("lies in the job folder", "backup", job, "--to", Path.Combine(job, "copies"));
        Refused("lies in the job folder", "backup", job, "--to", job);
        Assert.Empty(Directory.GetFiles(job, "*.zip", SearchOption.AllDirectories));
    }

    [Theory]
    [InlineData("../out.txt")]
    [InlineData("/tmp/out.txt")]
    [InlineData("a/../../out.txt")]
    [InlineData("..\\out.txt")]
    [InlineData("C:out.txt")]
    public void A_zip_that_reaches_out_of_its_folder_is_refused_whole(string name)
    {
        var copy = Backup();
        Put(copy, name, "out");
        Directory.CreateDirectory(workshop["in"]);
        Refused("cannot stand in a job folder", "restore", copy, Path.Combine(workshop["in"], "back"));
        Assert.Empty(Directory.EnumerateFileSystemEntries(workshop["in"]));
        Assert.False(File.Exists(workshop["out.txt"]));
    }

    [Theory]
    [InlineData("log.db")]
    [InlineData("LOG.DB")]
    [InlineData("log.db-wal")]
    public void A_database_planted_in_a_zip_never_becomes_the_log(string name)
    {
        var zip = workshop["planted.zip"];
        JobFolder.Export(job, zip);
        Put(zip, name, "planted");
        foreach (var command in new[] { "import", "restore" })
        {
            Refused("a database that nobody can check", command, zip, workshop["back"]);
            Assert.False(Path.Exists(workshop["back"]));
        }
    }

    [Fact]
    public void What_is_just_being_written_is_no_part_of_the_job()
    {
        File.WriteAllText(Path.Combine(job, "change.yaml.writing1"), "half a fi");
        Assert.Equal(0, CommandLine.Run("check", job).Code & 2);
        using var zip = ZipFile.OpenRead(Backup());
        Assert.DoesNotContain(zip.Entries, e => e.FullName.Contains("writing", StringComparison.Ordinal));
    }

    [Fact]
    public void A_log_with_more_than_a_job_folder_may_hold_is_backed_up()
    {
        // Two photographs of 40 MiB are more than the 64 MiB of a job's own files.
        using (var store = Log())
        {
            var book = Book(store);
            for (var i = 0; i < 2; i++)
            {
                var bytes = new byte[40 * 1024 * 1024];
                bytes[0] = (byte)i;
                Assert.NotNull(book.Revise(who, "photograph", i, bytes, "taken").Entry);
            }
        }

        Restore(Backup(), "back");
        Assert.Equal(0, CommandLine.Run("log", "verify", workshop["back"]).Code);
    }

    [Fact]
    public async Task A_backup_taken_while_others_write_holds_a_whole_log()
    {
        using var stop = new CancellationTokenSource();
        var writer = Task.Run(() =>
        {
            using var store = Log();
            var book = Book(store);
            while (!stop.IsCancellationRequested)
            {
                Assert.NotNull(book.Append(new Draft(who, "noted", "panel/P1", Payload.Empty.With("text", "written meanwhile"))).Entry);
            }
        }, TestContext.Current.CancellationToken);
        for (var i = 0; i < 3; i++)
        {
            var folder = Path.Combine(stick, $"{i}");
            Directory.CreateDirectory(folder);
            var ran = CommandLine.Run("backup", job, "--to", folder);
            Assert.Equal((0, ""), (ran.Code, ran.Error));
            Restore(Directory.GetFiles(folder)[0], $"back {i}");
        }

        await stop.CancelAsync();
        await writer;
    }

    private static void Put(string zip, string name, string text)
    {
        using var archive = ZipFile.Open(zip, ZipArchiveMode.Update);
        using var stream = archive.CreateEntry(name).Open();
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private static void Refused(string words, params string[] command)
    {
        var ran = CommandLine.Run(command);
        Assert.Equal(2, ran.Code);
        Assert.Contains(words, ran.Error);
    }

    private string Backup()
    {
        Assert.Equal(0, CommandLine.Run("backup", job, "--to", stick).Code);
        return Assert.Single(Directory.GetFiles(stick));
    }

    private void Restore(string file, string folder) => Assert.Equal(0, CommandLine.Run("restore", file, workshop[folder]).Code);

    private SqliteLogStore Log() => SqliteLogStore.Open(Path.Combine(job, FolderFiles.Log));

    private LogBook Book(ILogStore store) => new(store, Register.Of(JobFolder.Load(job).Job!), TimeProvider.System);
}
