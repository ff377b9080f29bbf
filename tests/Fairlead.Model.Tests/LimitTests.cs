using System.Text;
using Fairlead.Model;
using Fairlead.Model.Reading;

namespace Fairlead.Tests.Model;

/// <summary>Files that no one writes by hand: each gives a problem with a place, or is read as it stands.</summary>
public sealed class LimitTests
{
    private static readonly string Change = Jobs.Text("change.yaml");

    public static TheoryData<string, string, string> Hostile => new()
    {
        { "more bytes than a file may have", "too-large", Change + "#" + new string(' ', 10 * 1024 * 1024) },
        { "brackets in brackets", "syntax", "title: " + new string('[', 1_000_000) },
        { "braces in braces", "syntax", "title: " + string.Concat(Enumerable.Repeat("{a: ", 500_000)) },
        { "lists in lists", "syntax", "title: x\nfit:\n  " + string.Concat(Enumerable.Repeat("- ", 500_000)) },
        { "an explicit key in an explicit key", "syntax", string.Concat(Enumerable.Repeat("? ", 500_000)) },
        { "aliases that double", "anchor", "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: &d [*c, *c]\ntitle: *d\n" },
        { "a list of a million items", "wrong-form", Change.Replace("title: Cabin data recorder in place of the clock", "title: [" + string.Concat(Enumerable.Repeat("a,", 1_000_000)) + "]", StringComparison.Ordinal) },
        { "a list of unknown names", "unknown-id", Change.Replace("panels: [AFT]", "panels: [" + string.Concat(Enumerable.Repeat("AFTER,", 300_000)) + "]", StringComparison.Ordinal) },
        { "many unknown keys", "unknown-key", Change + string.Concat(Enumerable.Range(0, 200_000).Select(i => $"titel{i}: a\n")) },
        { "a text of a hundred thousand letters", "bad-value", Change.Replace("Cabin data", new string('a', 100_000), StringComparison.Ordinal) },
        { "a number of a hundred thousand digits", "bad-value", Change.Replace("slack: 10 %", "slack: " + new string('1', 100_000) + " %", StringComparison.Ordinal) },
        { "a key of a hundred thousand letters", "bad-key", Change + "? " + new string('a', 100_000) + "\n: b\n" },
        { "an id of a hundred thousand letters", "bad-key", Change.Replace("  K1:\n", "  ? " + new string('K', 100_000) + "\n  :\n", StringComparison.Ordinal) },
        { "a name of a hundred thousand letters", "bad-value", Change.Replace("item: CLK1", "item: " + new string('C', 100_000), StringComparison.Ordinal) },
        { "an end of a hundred thousand letters", "bad-value", Change.Replace("from: CB2", "from: " + new string('C', 100_000) + "!", StringComparison.Ordinal) },
        { "a zero byte", "not-text", Change.Replace("Cabin", "Ca\0bin", StringComparison.Ordinal) },
        { "a steering character", "bad-value", Change.Replace("Cabin", "Ca\u001b[2Jbin", StringComparison.Ordinal) },
    };

    [Theory]
    [MemberData(nameof(Hostile), DisableDiscoveryEnumeration = true)]
    public void A_hostile_file_gives_a_problem_in_that_file(string what, string code, string text)
    {
        var result = Jobs.With("change.yaml", text);
        Assert.Null(result.Job);
        Assert.True(result.Problems.Any(p => p.Code == code && p.Location is { File: "change.yaml", Line: >= 1, Column: >= 1 }), what + ": " + string.Join('\n', Jobs.Lines(result)));
        Assert.True(result.Problems.Length <= Limits.Problems + 1, what);
        Assert.All(result.Problems, p => Assert.True(p.ToString().Length < 2000 && !p.ToString().Any(char.IsControl), what));
    }

    [Fact]
    public void A_byte_that_is_not_text_is_told_at_its_place()
    {
        byte[] latin = [.. "title: Caf"u8, 0xE9, .. "\n"u8];
        Assert.Equal(["change.yaml:1:11: the file is not UTF-8 text; save it as UTF-8"], Jobs.Lines(Jobs.With("change.yaml", latin)));
    }

    public static TheoryData<string> OtherEncodings => ["utf-16", "utf-16BE", "utf-32"];

    [Theory]
    [MemberData(nameof(OtherEncodings))]
    public void Wider_encodings_are_refused_with_the_remedy(string name)
    {
        var encoding = Encoding.GetEncoding(name);
        var problem = Assert.Single(Jobs.With("change.yaml", [.. encoding.GetPreamble(), .. encoding.GetBytes(Change)]).Problems);
        Assert.Equal(new Location("change.yaml", 1, 1), problem.Location);
        Assert.Equal("save it as UTF-8", problem.Fix);
    }

    [Theory]
    [InlineData("\uFEFF", "\n")]
    [InlineData("", "\r\n")]
    [InlineData("\uFEFF", "\r\n")]
    public void A_byte_order_mark_and_either_line_ending_mean_nothing(string mark, string ending)
    {
        var same = Jobs.With("change.yaml", mark + Change.Replace("\n", ending, StringComparison.Ordinal));
        Assert.Empty(Jobs.Lines(same));
        Assert.Equal(Jobs.Load(Jobs.Starting()).Job!.Change, same.Job!.Change);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(33)]
    public void Nesting_is_refused_past_its_stated_limit_only(int levels)
    {
        var deep = new string('[', levels) + new string(']', levels);
        var problem = Assert.Single(Jobs.With("change.yaml", Change.Replace("family: W", "family: " + deep, StringComparison.Ordinal)).Problems);
        Assert.Equal(levels > Limits.Depth ? "syntax" : "wrong-form", problem.Code);
    }

    [Fact]
    public void A_file_that_cannot_be_opened_is_a_problem_in_that_file()
    {
        var result = JobReader.Read(new Locked("aircraft.yaml", Jobs.Starting()));
        var problem = Assert.Single(result.Problems);
        Assert.Equal(("unreadable", new Location("aircraft.yaml", 1, 1)), (problem.Code, problem.Location));
    }

    [Theory]
    [InlineData("'x/**********************************************************************************************************************'")]
    [InlineData("'../*.yaml'")]
    [InlineData("/etc/passwd")]
    [InlineData("'[a-z]+(x'")]
    public void A_pattern_that_names_no_file_is_told_as_such(string pattern)
    {
        var result = Jobs.With("job.yaml", Jobs.Replaced(Jobs.Text("job.yaml"), "parts: parts/*.yaml", "parts: " + pattern));
        Assert.Equal(["missing-file"], result.Problems.Select(p => p.Code));
    }

    [Fact]
    public void A_folder_of_more_files_than_a_job_may_have_says_so()
    {
        var files = Jobs.Starting();
        for (var i = 0; i <= Limits.Files; i++)
        {
            files[$"parts/{i}.yaml"] = [];
        }

        Assert.Equal("too-many-files", Assert.Single(Jobs.Load(files).Problems).Code);
    }

    private sealed class Locked(string name, SortedDictionary<string, byte[]> files) : IJobFiles
    {
        public IReadOnlyList<string> All => [.. files.Keys];

        public long Size(string path) => files[path].Length;

        public byte[] Read(string path) => path == name ? throw new UnauthorizedAccessException("Access to the path is denied.") : files[path];
    }
}
