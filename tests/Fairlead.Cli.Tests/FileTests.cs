using System.Text;
using System.Text.Json;
using Fairlead.Model;

namespace Fairlead.Tests.Cli;

public sealed class FileTests : IDisposable
{
    private readonly Workshop workshop = new();

    public void Dispose() => workshop.Dispose();

    [Fact]
    public void A_new_job_holds_and_is_never_written_over_another()
    {
        Assert.Equal(0, CommandLine.Run("new", workshop["job"]).Code);
        Assert.Equal(0, CommandLine.Run("check", workshop["job"]).Code);
        File.AppendAllText(Path.Combine(workshop["job"], "change.yaml"), "# mine\n");
        AssertUntouched("new", workshop["job"]);
    }

    [Theory]
    [InlineData("new")]
    [InlineData("demo")]
    public void A_file_in_the_place_of_a_folder_is_left_alone(string command)
    {
        File.WriteAllText(workshop["file"], "mine");
        AssertUntouched(command, workshop["file"]);
    }

    [Fact]
    public void The_demo_and_an_import_are_never_written_over_something()
    {
        var job = workshop.Job();
        Assert.Equal(0, CommandLine.Run("export", job, "-o", workshop["job.zip"]).Code);
        AssertUntouched("demo", job);
        AssertUntouched("import", workshop["job.zip"], job);
    }

    [Fact]
    public void The_demo_writes_its_jobs_and_a_pack_and_says_how_to_check_them()
    {
        var ran = CommandLine.Run(t => t with { Command = "./fairlead", Width = 1000 }, "demo", workshop["demo"]);
        Assert.Equal(0, ran.Code);
        var (sound, faulty) = (Path.Combine(workshop["demo"], "survey-twin"), Path.Combine(workshop["demo"], "with-faults"));
        Assert.Contains($"./fairlead check {sound}\n", ran.Out);
        Assert.Contains($"./fairlead check {faulty}\n", ran.Out);
        Assert.Equal(0, CommandLine.Run("check", sound).Code);
        Assert.Equal(1, CommandLine.Run("check", faulty).Code);
        Assert.True(new FileInfo(sound + "-pack.pdf").Length > 0);
    }

    [Fact]
    public void A_command_that_is_proposed_can_be_pasted_though_the_folder_has_spaces()
    {
        var ran = CommandLine.Run(t => t with { Width = 1000 }, "new", workshop["a job"]);
        Assert.Contains($"'fairlead check \"{workshop["a job"]}\"'", ran.Out);
        Assert.Contains($"'fairlead sheet \"{workshop["a job"]}\"'", CommandLine.Run("sheet", workshop["a job"], "zzz").Error);
        Assert.Contains($"'fairlead new \"{workshop["no job"]}\"'", CommandLine.Run("check", workshop["no job"]).Error);
    }

    [Fact]
    public void What_is_exported_imports_as_it_was()
    {
        var job = workshop.Job();
        Assert.Equal(0, CommandLine.Run("export", job, "-o", workshop["job.zip"]).Code);
        Assert.Equal(0, CommandLine.Run("import", workshop["job.zip"], workshop["again"]).Code);
        Assert.Equal(Files(job), Files(workshop["again"]));
    }

    [Fact]
    public void An_export_into_its_own_job_is_refused()
    {
        var job = workshop.Job();
        AssertUntouched("export", job, "-o", Path.Combine(job, "job.zip"));
    }

    [Fact]
    public void A_zip_that_is_none_or_absent_is_bad_input()
    {
        File.WriteAllText(workshop["bad.zip"], "this is no zip");
        AssertUntouched("import", workshop["bad.zip"], workshop["new"]);
        AssertUntouched("import", workshop["absent.zip"], workshop["new"]);
        Assert.False(Directory.Exists(workshop["new"]));
    }

    [Fact]
    public void The_schemas_are_those_of_the_reader()
    {
        Assert.Equal(0, CommandLine.Run("schema", "-o", workshop["schemas"]).Code);
        Assert.All(Schemas.Write(), s => Assert.Equal(s.Value, File.ReadAllText(Path.Combine(workshop["schemas"], s.Key))));
    }

    [Fact]
    public void The_pack_of_one_date_has_the_same_bytes_and_the_code_of_the_verdict()
    {
        var job = workshop.Job(Faults.GreatBreaker);
        Assert.Equal(1, CommandLine.Run("pack", job, "-o", workshop["a.pdf"], "--date", "2027-03-31").Code);
        Assert.Equal(1, CommandLine.Run("pack", job, "-o", workshop["b.pdf"], "--date", "2027-03-31").Code);
        var pack = File.ReadAllBytes(workshop["a.pdf"]);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString(pack, 0, 5));
        Assert.Equal(pack, File.ReadAllBytes(workshop["b.pdf"]));
        Assert.Equal(2, CommandLine.Run("pack", job, "-o", workshop["c.pdf"], "--date", "31.3.2027").Code);
        Assert.False(File.Exists(workshop["c.pdf"]));
    }

    [Fact]
    public void A_sheet_shows_its_working_and_an_unknown_subject_gets_the_nearest()
    {
        var job = workshop.Job();
        var list = CommandLine.Run("sheet", job);
        Assert.Equal(0, list.Code);
        Assert.Contains("circuit/C1/current", list.Out);
        var sheet = CommandLine.Run("sheet", job, "feed/REC/drop");
        Assert.Equal(0, sheet.Code);
        Assert.Contains("Working\n", sheet.Out);
        using var json = JsonDocument.Parse(CommandLine.Run("sheet", job, "feed/REC/drop", "--format", "json").Out);
        Assert.Equal("voltage-drop", json.RootElement.GetProperty("name").GetString());
        var unknown = CommandLine.Run("sheet", job, "feed/REC/dorp");
        Assert.Equal(2, unknown.Code);
        Assert.Contains("'feed/REC/drop'", unknown.Error);
    }

    private void AssertUntouched(params string[] args)
    {
        var before = workshop.Everything().ToArray();
        var ran = CommandLine.Run(args);
        Assert.Equal(2, ran.Code);
        Assert.NotEmpty(ran.Error);
        Assert.Equal(before, workshop.Everything());
    }

    private static IEnumerable<(string, string)> Files(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => (Path.GetRelativePath(folder, f), File.ReadAllText(f)));
}
