using Fairlead.Model;
using Fairlead.Model.Editing;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Workbench;

public sealed class JobTextsTests
{
    private static readonly JobTexts Twin = JobTexts.Of(new FolderFiles(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")));

    public static TheoryData<string> Roots => ["job", "aircraft", "change"];

    public static TheoryData<string> Catalogs =>
    [
        "change/circuits", "change/fit", "change/antennas", "change/remove", "change/power", "aircraft/panels", "aircraft/zones", "aircraft/loads", "aircraft/segments", "parts/equipment", "parts/wires", "job/people",
    ];

    public static TheoryData<string> Lists => ["job/people/AV1/authorisations", "job/approval/data", "aircraft/zones/Z110/environment", "change/power/XPD1/conditions", "aircraft/envelope/points"];

    [Theory]
    [MemberData(nameof(Roots))]
    public void Writing_a_value_that_stands_already_changes_no_meaning(string root)
    {
        var hash = Meaning(Twin);
        var written = 0;
        foreach (var field in Leaves(Form(Twin).Fields(root)).Where(f => f.Text.Length > 0))
        {
            Assert.Equal(hash, Meaning(Twin.Set(field.Path, field.Text)));
            written++;
        }

        Assert.True(written > 5);
    }

    [Theory]
    [MemberData(nameof(Catalogs))]
    public void Every_cell_of_a_grid_can_be_written_back_without_changing_a_meaning(string catalog)
    {
        var grid = Form(Twin).Grid(catalog)!;
        var texts = Twin;
        Assert.NotEmpty(grid.Rows);
        foreach (var row in grid.Rows.Take(4))
        {
            for (var i = 0; i < grid.Columns.Length; i++)
            {
                texts = row.Cells[i].Length == 0 ? texts : texts.Set($"{catalog}/{row.Id}/{grid.Columns[i].Path}", row.Cells[i]);
            }
        }

        Assert.Equal(Meaning(Twin), Meaning(texts));
    }

    [Theory]
    [MemberData(nameof(Lists))]
    public void A_list_of_records_is_a_grid_whose_rows_are_written_back_without_changing_a_meaning(string list)
    {
        var grid = Form(Twin).Grid(list)!;
        Assert.True(grid.Numbered);
        Assert.Equal(Enumerable.Range(0, grid.Rows.Length).Select(i => $"{i}"), grid.Rows.Select(r => r.Id));
        Assert.NotEmpty(grid.Rows);
        var texts = grid.Rows.Aggregate(Twin, (t, row) => grid.Columns.Zip(row.Cells).Where(c => c.Second.Length > 0).Aggregate(t, (u, c) => u.Set($"{list}/{row.Id}/{c.First.Path}", c.Second)));
        Assert.Equal(Meaning(Twin), Meaning(texts));
    }

    [Theory]
    [MemberData(nameof(Lists))]
    public void A_row_put_at_the_end_of_a_list_and_filled_as_the_last_is_the_last_again_and_taken_out_leaves_what_was(string list)
    {
        var grid = Form(Twin).Grid(list)!;
        var (last, row) = (grid.Rows[^1], $"{list}/{grid.Rows.Length}");
        var texts = grid.Columns.Zip(last.Cells).Where(c => c.Second.Length > 0).Aggregate(Twin.Add(list, ""), (t, c) => t.Set($"{row}/{c.First.Path}", c.Second));
        var after = Form(texts).Grid(list)!;
        Assert.Equal(grid.Rows.Length + 1, after.Rows.Length);
        Assert.Equal(last.Cells, after.Rows[^1].Cells);
        Assert.Equal(Meaning(Twin), Meaning(texts.Remove(row)));
    }

    [Fact]
    public void A_list_is_begun_where_none_stood()
    {
        const string list = "job/people/EL1/authorisations";
        Assert.Empty(Form(Twin).Grid(list)!.Rows);
        var job = Meaning(Twin.Add(list, "").Set(list + "/0/scope", "electrical").Set(list + "/0/number", "INV-9").Set(list + "/0/until", "2029-01-31"));
        Assert.Equal(("electrical", "INV-9", new DateOnly(2029, 1, 31)), job.Order.People!["EL1"].Authorisations.Select(a => (a.Scope, a.Number, a.Until)).Single());
    }

    [Fact]
    public void A_wrong_cell_of_a_grid_says_so_itself()
    {
        var desk = new Fairlead.Workbench.Desk(Twin.ToFiles());
        desk.Apply([new(Fairlead.Workbench.EditKind.Set, "aircraft/zones/Z110/hottest", "60 bananas")]);
        var grid = desk.Form.Grid("aircraft/zones")!;
        var row = grid.Rows.Single(r => r.Id == "Z110");
        Assert.Contains("60 bananas", row.Problems[grid.Columns.Select(c => c.Path).ToList().IndexOf("hottest")], StringComparison.Ordinal);
        Assert.StartsWith("'hottest' cannot be read", Assert.Single(row.Problems, p => p.Length > 0), StringComparison.Ordinal);
        Assert.All(grid.Rows.Where(r => r.Id != "Z110"), r => Assert.Empty(r.Problems));
    }

    [Theory]
    [MemberData(nameof(Catalogs))]
    public void Removing_an_entry_leaves_every_other_line_as_it_was(string catalog)
    {
        foreach (var row in Form(Twin).Grid(catalog)!.Rows)
        {
            var after = Twin.Remove($"{catalog}/{row.Id}");
            Assert.DoesNotContain(row.Id, after.IdsOf(catalog));
            Assert.Equal(Twin.IdsOf(catalog).Count() - 1, after.IdsOf(catalog).Count());
            var file = Twin.Files.Single(f => after.Files[f.Key] != f.Value).Key;
            Assert.Empty(after.Files[file].Split('\n').Except(Twin.Files[file].Split('\n')));
        }
    }

    [Fact]
    public void A_changed_value_is_the_only_change_of_its_file()
    {
        var after = Twin.Set("change/fit/XPD1/mounting", "0.5 kg");
        var (was, now) = (Twin.Files["change.yaml"].Split('\n'), after.Files["change.yaml"].Split('\n'));
        Assert.Equal(was.Length, now.Length);
        Assert.Equal(("    mounting: 0.42 kg", "    mounting: 0.5 kg"), was.Zip(now).Single(p => p.First != p.Second));
    }

    [Theory]
    [InlineData("plain words")]
    [InlineData("a: b")]
    [InlineData("with # sign")]
    [InlineData("'quoted' and \"twice\"")]
    [InlineData("{ braces }, [brackets]")]
    [InlineData("- begins with a dash")]
    [InlineData("ends with a colon:")]
    [InlineData("back \\ slash")]
    [InlineData("@home %x `y` &z *w !v |u >t")]
    [InlineData("Ünïcode µΩ°")]
    [InlineData("> folded")]
    [InlineData("-20 degC")]
    [InlineData("--- rules")]
    [InlineData("null")]
    [InlineData("true")]
    public void Any_words_are_read_as_they_were_typed(string words)
    {
        foreach (var texts in new[] { Twin.Set("change/title", words), Twin.Set("aircraft/zones/Z110/name", words) })
        {
            var read = JobReader.Read(texts.ToFiles());
            Assert.Empty(read.Problems);
            Assert.Contains(words, new[] { read.Job!.Change.Title, read.Job.Aircraft.Zones!["Z110"].Name });
        }
    }

    [Fact]
    public void A_value_is_put_where_none_stood_in_braces_in_blocks_and_in_groups_that_were_not_there()
    {
        var texts = Twin.Set("change/circuits/C101/twist", "T1").Set("change/fit/XPD1/redundant", "XPDR").Set("change/fit/TS1/fixing/washers", "0.032 in").Set("job/plan/overtime", "2 h");
        var job = JobReader.Read(texts.ToFiles()) is { Problems.IsEmpty: true, Job: { } read } ? read : throw new InvalidDataException(string.Join("\n", JobReader.Read(texts.ToFiles()).Problems));
        Assert.Equal("T1", job.Change.Circuits!["C101"].Twist);
        Assert.Equal("XPDR", job.Change.Fit!["XPD1"].Redundant);
        Assert.Equal(2, job.Order.Plan!.Overtime.In("h"), 9);
    }

    [Fact]
    public void An_entry_is_added_filled_renamed_and_taken_out_again()
    {
        var added = Twin.Add("change/grounds", "G99").Set("change/grounds/G99/terminals", "1");
        Assert.Contains("G99", added.IdsOf("change/grounds"));
        var renamed = added.Rename("change/grounds/G99", "G98");
        Assert.Contains("G98", renamed.IdsOf("change/grounds"));
        Assert.Equal(Meaning(Twin), Meaning(renamed.Remove("change/grounds/G98")));
        Assert.Throws<FormatException>(() => Twin.Add("change/circuits", "C101"));
        Assert.Throws<FormatException>(() => Twin.Add("change/circuits", "not an id"));
        Assert.Throws<FormatException>(() => Twin.Rename("change/circuits/C101", "C102"));
        Assert.Throws<FormatException>(() => Twin.Set("change/nonsense", "x"));
        Assert.Throws<FormatException>(() => Twin.Set("nowhere/at/all", "x"));
    }

    [Fact]
    public void Taking_out_the_last_entry_takes_its_catalogue_out()
    {
        var texts = Twin.IdsOf("change/concessions").Aggregate(Twin, (t, id) => t.Remove($"change/concessions/{id}"));
        Assert.Empty(texts.IdsOf("change/concessions"));
        Assert.Empty(JobReader.Read(texts.ToFiles()).Problems);
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_left_alone_and_says_so()
    {
        var broken = Twin.Replace("change.yaml", "title: [");
        Assert.Throws<FormatException>(() => broken.Set("change/title", "x"));
        Assert.Empty(Form(broken).Grid("change/circuits")!.Rows);
    }

    [Fact]
    public void Choices_of_a_reference_are_the_ids_that_exist()
    {
        var field = Form(Twin).Fields("change/fit/XPD1").Single(f => f.Key == "zone");
        Assert.Equal(FieldKind.Reference, field.Kind);
        Assert.Equal(Twin.IdsOf("aircraft/zones"), field.Choices);
        Assert.NotEmpty(field.Choices);
    }

    [Fact]
    public void Edits_that_make_the_texts_longer_than_a_job_may_be_are_refused_in_words_and_shorter_ones_are_taken()
    {
        var whole = new string('#', Limits.FileBytes);
        Assert.Contains("at most", Assert.Throws<FormatException>(() => Twin.Replace("parts/more.yaml", whole + "#")).Message, StringComparison.Ordinal);
        Assert.Contains("at most", Assert.Throws<FormatException>(() => Twin.Set("change/title", whole)).Message, StringComparison.Ordinal);
        var (texts, count) = (Twin, 0);
        var refused = Assert.Throws<FormatException>(() =>
        {
            for (; count <= Limits.TotalBytes / Limits.FileBytes; count++)
            {
                texts = texts.Replace($"parts/{count}.yaml", whole);
            }
        });
        Assert.Contains("characters together, and at most", refused.Message, StringComparison.Ordinal);
        Assert.Equal(Limits.TotalBytes / Limits.FileBytes - 1, count);
        Assert.Equal("", texts.Replace("parts/0.yaml", "").Files["parts/0.yaml"]);
    }

    [Fact]
    public void A_job_of_more_texts_than_are_read_is_not_made()
    {
        var most = JobTexts.Of(Enumerable.Range(0, Limits.Files).Select(i => KeyValuePair.Create($"parts/{i}.yaml", "")));
        Assert.Contains("no more are taken", Assert.Throws<FormatException>(() => most.Replace("parts/more.yaml", "")).Message, StringComparison.Ordinal);
        Assert.Equal("#", most.Replace("parts/1.yaml", "#").Files["parts/1.yaml"]);
    }

    private static JobForm Form(JobTexts texts) => new(texts, new Dictionary<string, string>(StringComparer.Ordinal));

    private static IEnumerable<FormField> Leaves(IEnumerable<FormField> fields) => fields.SelectMany(f => f.Kind switch { FieldKind.Group => Leaves(f.Fields), FieldKind.Entries => [], _ => [f] });

    // Records are equal by value: the same job is the same meaning, however it is written.
    private static Fairlead.Model.Job Meaning(JobTexts texts)
    {
        var read = JobReader.Read(texts.ToFiles());
        Assert.Empty(read.Problems);
        return read.Job!;
    }
}
