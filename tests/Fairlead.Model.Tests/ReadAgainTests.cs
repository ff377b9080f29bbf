using System.Text;
using CsCheck;
using Fairlead.Model.Editing;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Model;

/// <summary>A job that is read again after edits: what comes is what reading it afresh gives, and what did not change is the same object as before.</summary>
public sealed class ReadAgainTests
{
    [Theory]
    [InlineData("survey-twin", 12, "0N0XIzNsQ0O4")]
    [InlineData("with-faults", 12, "0N0XIzNsQ0O5")]
    public void Damage_after_damage_reads_as_a_fresh_reading_does(string demo, int iterations, string seed) => Hold(Texts(demo), iterations, seed);

    [Fact]
    public void Damage_after_damage_of_the_starter_job_reads_as_a_fresh_reading_does() => Hold(Jobs.Starting(), 200, "0N0XIzNsQ0O6");

    [Theory]
    [InlineData("survey-twin")]
    [InlineData("with-faults")]
    public void Every_edit_of_a_value_reads_as_a_fresh_reading_does(string demo)
    {
        var texts = JobTexts.Of(Texts(demo).Select(f => KeyValuePair.Create(f.Key, Encoding.UTF8.GetString(f.Value))));
        var memory = new ReadMemory();
        string[] paths = [.. JobReader.Read(texts.ToFiles(), memory).Sources.All.Select(p => p.Key).Where(p => p.Count(c => c == '/') is 2 or 3)];
        string[] words = ["0.42 kg", "12 A", "3 in", "G1", "nonsense", "", "1", "yes", "{ fs: 1 m, bl: 0 m, wl: 1 m }", "a: b", "[N01, N02]"];
        Gen.Select(Gen.Int[0, paths.Length - 1], Gen.Int[0, words.Length - 1], Gen.Bool).Array[1, 6].Sample(
            edits =>
            {
                var now = texts;
                foreach (var (path, word, back) in edits)
                {
                    now = back ? texts : Edited(now, paths[path], words[word]);
                    Same(JobReader.Read(now.ToFiles()), JobReader.Read(now.ToFiles(), memory));
                }
            },
            iter: 8, threads: 1, seed: "0N0XIzNsQ0O7");
    }

    [Theory]
    [InlineData("survey-twin")]
    [InlineData("with-faults")]
    public void An_edit_that_reads_one_piece_gives_the_text_that_one_of_the_whole_file_gives(string demo)
    {
        foreach (var (name, bytes) in Texts(demo))
        {
            var file = new TextFile(Encoding.UTF8.GetString(bytes));
            foreach (var keys in Keys(file.Outline!).Where((_, i) => i % 19 == 0))
            {
                TextEdit[] edits = [(text, at) => YamlEdit.Set(text, at, "x"), YamlEdit.Remove, (text, at) => YamlEdit.Rename(text, at, "Y"), (text, at) => YamlEdit.Set(text, [.. at, "new"], "{}")];
                foreach (var edit in edits)
                {
                    Assert.Equal(Outcome(() => edit(file.Text, keys)), Outcome(() => file.Edit(keys, edit).Text));
                    Assert.Equal(Outcome(() => edit(file.Text, [.. keys[..^1], "NEW"])), Outcome(() => file.Edit([.. keys[..^1], "NEW"], edit).Text));
                }
            }
        }
    }

    [Fact]
    public void A_step_leads_back_and_forth()
    {
        var texts = JobTexts.Of(new FolderFiles(Demo.Folder));
        Gen.Select(Gen.Int[0, 3], Gen.String[0, 8], Gen.Int[0, 9]).Array[1, 4].Sample(
            edits =>
            {
                var after = edits.Aggregate(texts, (t, e) => e.Item1 == 0 ? t.Replace($"parts/new{e.Item3}.yaml", e.Item2) : e.Item1 == 1 ? t.Without("stock.yaml") : t.Replace("job.yaml", t.Files["job.yaml"].Insert(e.Item3 * 100, e.Item2)));
                var step = TextStep.Between(texts, after);
                Assert.Equal(texts.Files, step.Back(after).Files);
                Assert.Equal(after.Files, step.Forth(texts).Files);
            },
            iter: 200, seed: "0N0XIzNsQ0O8");
    }

    [Fact]
    public void What_an_edit_does_not_concern_stays_the_same_object()
    {
        var (texts, memory) = (JobTexts.Of(new FolderFiles(Demo.Folder)), new ReadMemory());
        var before = JobReader.Read(texts.ToFiles(), memory).Job!;
        var after = JobReader.Read(texts.Set("change/circuits/C101/function", "UZ").ToFiles(), memory).Job!;
        Assert.Same(before.Order, after.Order);
        Assert.Same(before.Aircraft, after.Aircraft);
        Assert.Same(before.Parts, after.Parts);
        Assert.Same(before.Change.Fit, after.Change.Fit);
        Assert.NotSame(before.Change.Circuits!["C101"], after.Change.Circuits!["C101"]);
        Assert.All(after.Change.Circuits.Where(c => c.Id != "C101"), c => Assert.Same(before.Change.Circuits[c.Id], c));
    }

    [Fact]
    public void Lines_put_in_above_and_remarks_change_no_object_and_move_the_places()
    {
        var (files, memory) = (Texts("survey-twin"), new ReadMemory());
        var before = JobReader.Read(new MemoryFiles(files), memory);
        files["change.yaml"] = Encoding.UTF8.GetBytes("# one\n\n# two\n" + Encoding.UTF8.GetString(files["change.yaml"]).Replace("circuits:", "circuits:   # all of them", StringComparison.Ordinal));
        var after = JobReader.Read(new MemoryFiles(files), memory);
        Assert.Same(before.Job, after.Job);
        Assert.Equal(before.Sources.Find("change/circuits/C101")!.Line + 3, after.Sources.Find("change/circuits/C101")!.Line);
        Assert.Equal(before.Sources.Find("aircraft/zones/Z110"), after.Sources.Find("aircraft/zones/Z110"));
    }

    [Theory]
    [InlineData("fit:\n  A1: 'x\n  A2: y'\n")]
    [InlineData("fit:\n  A1: { part: x,\n  zone: y }\n")]
    [InlineData("fit:\n  A1: |\n    text\n  A2: |2\n      more\n\n\ntitle: x\n")]
    [InlineData("fit:\n  ? A1\n  : x\n")]
    [InlineData("title: a\n b: c\n")]
    [InlineData("remove:\n- a\n- b\ntitle: x\n")]
    [InlineData("title: one\n---\ntitle: two\n")]
    [InlineData("title: one\n...\n")]
    [InlineData("%YAML 1.2\n---\ntitle: one\n")]
    [InlineData("title: one\r\nfit:\r\n  A1:\r\n    part: x\r\n")]
    [InlineData("title: &a one\nfit: *a\n")]
    [InlineData("fit:\n  A1:\n  A2:\n\nwiring:\n")]
    [InlineData("fit:\n    A1: {}\n  A2: {}\n")]
    [InlineData("fit:\n  A1: {}\n  A1: {}\nfit:\n  A3: {}\n")]
    [InlineData("{ title: x, fit: {} }\n")]
    public void Texts_that_try_where_a_piece_ends_read_as_a_fresh_reading_does(string change)
    {
        var (files, memory) = (Texts("survey-twin"), new ReadMemory());
        var good = files["change.yaml"];
        JobReader.Read(new MemoryFiles(files), memory);
        foreach (var text in new[] { Encoding.UTF8.GetBytes(change), good, Encoding.UTF8.GetBytes("# up\n" + change) })
        {
            files["change.yaml"] = text;
            Same(JobReader.Read(new MemoryFiles(files)), JobReader.Read(new MemoryFiles(files), memory));
        }
    }

    private static SortedDictionary<string, byte[]> Texts(string demo)
    {
        var files = new FolderFiles(Path.Combine(Demo.Repository(), "demo", demo));
        return new(files.All.Where(JobTexts.IsText).ToDictionary(f => f, files.Read, StringComparer.Ordinal), StringComparer.Ordinal);
    }

    private static IEnumerable<string[]> Keys(Outline outline) =>
        outline.Entries.SelectMany(e => Keys(e.Value).Select(k => (string[])[e.Key, .. k]).Prepend([e.Key]));

    private static string Outcome(Func<string> edit)
    {
        try
        {
            return edit();
        }
        catch (FormatException e)
        {
            return e.Message;
        }
    }

    private static JobTexts Edited(JobTexts texts, string path, string words)
    {
        try
        {
            return texts.Set(path, words);
        }
        catch (FormatException)
        {
            return texts;
        }
    }

    // Damage adds up over a few readings with one memory, as when somebody types; each is held against a reading that remembers nothing.
    private static void Hold(SortedDictionary<string, byte[]> files, int iterations, string seed)
    {
        var names = files.Keys.ToArray();
        var whole = 0;
        Gen.Select(Gen.Int[0, names.Length - 1], MutationTests.OneDamage).Array[1, 4].Sample(
            damages =>
            {
                var (memory, now) = (new ReadMemory(), new SortedDictionary<string, byte[]>(files, StringComparer.Ordinal));
                JobReader.Read(new MemoryFiles(now), memory);
                foreach (var (file, damage) in damages)
                {
                    now[names[file]] = MutationTests.Damaged(now[names[file]], damage);
                    var again = JobReader.Read(new MemoryFiles(now), memory);
                    Same(JobReader.Read(new MemoryFiles(now)), again);
                    whole += again.Job is null ? 0 : 1;
                }

                Same(JobReader.Read(new MemoryFiles(files)), JobReader.Read(new MemoryFiles(files), memory));
            },
            iter: iterations, threads: 1, seed: seed);
        Assert.True(whole > iterations / 50, $"{whole} read whole: the damage is too great to tell anything");
    }

    private static void Same(LoadResult fresh, LoadResult again)
    {
        Assert.Equal(fresh.Hash, again.Hash);
        Assert.Equal(fresh.Problems.AsEnumerable(), again.Problems);
        Assert.Equal(fresh.Job, again.Job);
        Assert.Equal(fresh.Sources.All.OrderBy(p => p.Key, StringComparer.Ordinal), again.Sources.All.OrderBy(p => p.Key, StringComparer.Ordinal));
    }
}
