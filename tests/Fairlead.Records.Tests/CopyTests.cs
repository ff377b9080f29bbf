using Fairlead.Cli;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Records;

/// <summary>Copies of a job whose log is in a database, and onto a stick that is full.</summary>
public sealed class CopyTests(PostgresServer server) : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-copy-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_log_in_a_database_goes_along_and_comes_back_into_an_empty_one()
    {
        var (job, who) = Job();
        var (one, two) = (Database(), Database());
        Assert.Equal(0, Run(one, "log", "add", job, "opened", "panel/P1", "--who", who).Code);
        Assert.False(File.Exists(Path.Combine(job, FolderFiles.Log)));
        var backup = Backup(one, job);
        Assert.Equal(0, Run(two, "restore", backup, At("back")).Code);
        Assert.False(File.Exists(Path.Combine(At("back"), FolderFiles.Log)));
        Assert.Equal(Run(one, "log", "show", job).Out, Run(two, "log", "show", At("back")).Out);
    }

    [Fact]
    public void Restoring_beside_the_log_it_came_from_keeps_what_was_added_since()
    {
        var (job, who) = Job();
        var database = Database();
        Run(database, "log", "add", job, "opened", "panel/P1", "--who", who);
        var backup = Backup(database, job);
        Run(database, "log", "add", job, "closed", "panel/P1", "--who", who);
        Assert.Equal(0, Run(database, "restore", backup, At("back")).Code);
        Assert.Contains("closed panel/P1", Run(database, "log", "show", At("back")).Out);
    }

    [Fact]
    public void Another_log_under_the_number_is_not_mixed_and_nothing_is_left_half_done()
    {
        var (job, who) = Job();
        var (one, two) = (Database(), Database());
        Run(one, "log", "add", job, "opened", "panel/P1", "--who", who);
        var backup = Backup(one, job);
        Run(two, "log", "add", job, "opened", "panel/P2", "--who", who);
        var ran = Run(two, "restore", backup, At("back"));
        Assert.Equal(2, ran.Code);
        Assert.Contains("another log of work order", ran.Error);
        Assert.False(Path.Exists(At("back")));
        Assert.DoesNotContain("panel/P1", Run(two, "log", "show", job).Out);
    }

    [Fact]
    public void A_full_stick_is_told_and_keeps_no_half_copy()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess && OperatingSystem.IsLinux(), "A small file system can only be mounted by root.");
        server.Need();
        var (job, _) = Job();
        var noise = new byte[3 * 1024 * 1024];
        new Random(1).NextBytes(noise);
        File.WriteAllBytes(Path.Combine(job, "picture.bin"), noise);
        using var stick = new SmallDisk(megabytes: 2);
        var ran = Run(null, "backup", job, "--to", stick.Folder);
        Assert.Equal(2, ran.Code);
        Assert.Contains("space", ran.Error);
        Assert.Empty(Directory.EnumerateFileSystemEntries(stick.Folder));
        stick.Grow(megabytes: 8);
        Assert.Equal(0, Run(null, "backup", job, "--to", stick.Folder).Code);
    }

    private (string Folder, string Who) Job()
    {
        var job = At("job");
        Starter.Write(job);
        var aircraft = Path.Combine(job, "aircraft.yaml");
        File.WriteAllText(aircraft, File.ReadAllText(aircraft).Replace("panels:\n  GLARE:", "panels:\n" + Panel("P1") + Panel("P2") + "  GLARE:", StringComparison.Ordinal));
        return (job, JobFolder.Load(job).Job!.Order.People!.First(p => p.Authorisations.Count > 0).Id);
    }

    // One that the change does not touch, so that nothing of it waits for it.
    private static string Panel(string id) => "  " + id + ": { name: A cover beside the change (invented), kind: cover, zone: COCKPIT, open: { low: 5 min, likely: 6 min, high: 9 min }, close: { low: 5 min, likely: 6 min, high: 9 min }, fasteners: 4, fastener: screw }\n";

    private string Backup(string database, string job)
    {
        Directory.CreateDirectory(At("stick"));
        var ran = Run(database, "backup", job, "--to", At("stick"));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        return Directory.GetFiles(At("stick")).Single();
    }

    private string Database() => PostgresStoreTests.Created(server.Need());

    private string At(string name) => Path.Combine(folder.FullName, name);

    private static (int Code, string Out, string Error) Run(string? database, params string[] args)
    {
        using var result = new StringWriter();
        using var error = new StringWriter();
        var code = FairleadApp.Run(args, new Terminal(result, error) { LogDatabase = database });
        return (code, result.ToString(), error.ToString());
    }
}
