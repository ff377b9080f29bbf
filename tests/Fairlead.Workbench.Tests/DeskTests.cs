using Fairlead.Calculations;
using Fairlead.Model.Editing;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Workbench;

public sealed class DeskTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin");

    [Fact]
    public void An_edit_shows_what_it_changed_and_can_be_taken_back_and_made_again()
    {
        var desk = Open();
        var before = desk.View;
        var after = desk.Apply([new JobEdit(EditKind.Set, "change/fit/XPD1/mounting", "9 kg")]);
        Assert.Contains(after.Change!.Figures, f => f.Name == "Empty weight");
        Assert.True(after.CanUndo);
        Assert.Equal(["change.yaml"], after.Edited);
        Assert.NotEqual(before.Hash, after.Hash);
        var back = desk.Undo();
        Assert.Equal((before.Hash, before.Verdict), (back.Hash, back.Verdict));
        Assert.Equal(before.Figures, back.Figures);
        Assert.Empty(back.Edited);
        Assert.Equal(after.Hash, desk.Redo().Hash);
    }

    [Fact]
    public void Great_edits_are_remembered_while_they_are_few_and_small_ones_by_the_hundred()
    {
        var desk = new Desk(Starter.Files());
        var before = desk.Held;
        for (var i = 0; i < 20; i++)
        {
            desk.Apply([new JobEdit(EditKind.Replace, "notes.yaml", new string((char)('a' + i), 1024 * 1024))]);
            Assert.InRange(desk.Held - before, 1, 16 * 1024 * 1024);
        }

        Assert.InRange(Undone(desk), 2, 19);
        for (var i = 0; i < 100; i++)
        {
            desk.Apply([new JobEdit(EditKind.Replace, "notes.yaml", $"# {i}")]);
        }

        Assert.Equal(100, Undone(desk));
    }

    [Fact]
    public void What_stands_after_edits_is_what_a_fresh_reading_gives()
    {
        var desk = Open();
        desk.Apply([new JobEdit(EditKind.Set, "change/wiring/slack", "12 %"), new JobEdit(EditKind.Remove, "change/circuits/C101")]);
        var view = desk.Apply([new JobEdit(EditKind.Set, "aircraft/zones/Z110/hottest", "71 degC")]);
        var fresh = new Desk(desk.Texts.ToFiles()).View;
        Assert.Equal(fresh.Verdict, view.Verdict);
        Assert.Equal(fresh.Findings, view.Findings);
        Assert.Equal(fresh.Figures, view.Figures);
    }

    [Fact]
    public void A_desk_opened_with_edits_stands_as_the_one_on_which_they_were_made()
    {
        JobEdit[][] steps = [[new(EditKind.Set, "change/fit/XPD1/mounting", "9 kg")], [new(EditKind.Remove, "change/circuits/C101"), new(EditKind.Set, "change/title", "Another")]];
        var made = Open();
        Assert.All(steps, s => made.Apply(s));
        var opened = new Desk(new FolderFiles(Folder), steps: steps);
        Assert.Equal((made.View.Hash, made.View.Verdict), (opened.View.Hash, opened.View.Verdict));
        Assert.Equal(made.View.Findings, opened.View.Findings);
        Assert.Equal(made.View.Figures, opened.View.Figures);
        Assert.Equal(made.View.Edited, opened.View.Edited);
        Assert.Equal(made.Undo().Hash, opened.Undo().Hash);
        Assert.Equal(made.Undo().Hash, opened.Undo().Hash);
        Assert.False(opened.View.CanUndo);
        Assert.Throws<FormatException>(() => new Desk(new FolderFiles(Folder), steps: [[new(EditKind.Set, "change/nowhere", "x")]]));
    }

    [Fact]
    public void Desks_that_begin_with_one_opened_job_at_once_each_give_what_a_desk_of_their_own_gives()
    {
        var opened = new OpenedJob(JobTexts.Of(new FolderFiles(Folder)));
        JobEdit[] edits =
        [
            new(EditKind.Set, "change/fit/XPD1/mounting", "0.5 kg"), new(EditKind.Set, "change/wiring/slack", "12 %"), new(EditKind.Remove, "change/circuits/C101"),
            new(EditKind.Set, "aircraft/zones/Z110/hottest", "71 degC"),
        ];
        var views = new DeskView[edits.Length];
        Parallel.For(0, edits.Length, i => views[i] = opened.Desk().Apply([edits[i]]));
        for (var i = 0; i < edits.Length; i++)
        {
            var own = Open().Apply([edits[i]]);
            Assert.Equal((own.Hash, own.Verdict, own.Change!.Calculations), (views[i].Hash, views[i].Verdict, views[i].Change!.Calculations));
            Assert.Equal(own.Findings, views[i].Findings);
            Assert.Equal(own.Figures, views[i].Figures);
        }

        Assert.Equal(Open().View.Hash, opened.Desk().View.Hash);
        Assert.True(opened.Has(JobTexts.Of(new FolderFiles(Folder))));
        Assert.False(opened.Has(JobTexts.Of(new FolderFiles(Folder)).Set("change/title", "x")));
    }

    [Fact]
    public void An_edit_taken_back_and_made_again_runs_no_calculation()
    {
        var desk = Open();
        desk.Apply([new JobEdit(EditKind.Set, "change/fit/XPD1/mounting", "0.5 kg")]);
        Assert.Equal(0, desk.Undo().Change!.Calculations);
        Assert.Equal(0, desk.Redo().Change!.Calculations);
        Assert.Equal(0, desk.Apply([new JobEdit(EditKind.Replace, "change.yaml", "# a remark\n" + desk.Texts.Files["change.yaml"])]).Change!.Calculations);
    }

    [Fact]
    public void A_value_that_cannot_be_read_is_said_at_its_field_and_the_last_assessment_stays()
    {
        var desk = Open();
        var view = desk.Apply([new JobEdit(EditKind.Set, "change/fit/XPD1/mounting", "0.42 bananas")]);
        Assert.Equal("unreadable", view.Verdict);
        Assert.Equal("change/fit/XPD1/mounting", Assert.Single(view.Problems).Path);
        Assert.NotEmpty(desk.Form.Fields("change/fit/XPD1").Single(f => f.Key == "mounting").Problem);
        Assert.NotEmpty(desk.Discipline(Discipline.Power).Sheets);
        Assert.Empty(view.Change!.Cured);
        Assert.Equal("caution", desk.Undo().Verdict);
    }

    [Fact]
    public void An_edit_that_cannot_be_made_changes_nothing()
    {
        var desk = Open();
        var hash = desk.View.Hash;
        Assert.Throws<FormatException>(() => desk.Apply([new JobEdit(EditKind.Set, "change/title", "x"), new JobEdit(EditKind.Set, "change/nonsense", "x")]));
        Assert.Equal(hash, desk.View.Hash);
        Assert.False(desk.View.CanUndo);
    }

    [Fact]
    public void A_finding_that_an_edit_brings_is_gained_and_the_edit_back_cures_it()
    {
        var desk = Open();
        var gained = desk.Apply([new JobEdit(EditKind.Set, "change/fit/XPD1/mounting", "400 kg")]).Change!.Gained;
        Assert.NotEmpty(gained);
        Assert.Equal(gained.Select(f => f.Rule), desk.Undo().Change!.Cured.Select(f => f.Rule));
    }

    [Fact]
    public void Every_sheet_is_on_exactly_one_page_and_can_be_shown()
    {
        var desk = Open();
        var subjects = Enum.GetValues<Discipline>().SelectMany(d => desk.Discipline(d).Sheets).Select(s => s.Subject).ToArray();
        Assert.Equal(new Assessor().Assess(JobFolder.Load(Folder).Job!).Sheets.Count(), subjects.Length);
        Assert.All(subjects.Where((_, i) => i % 40 == 0), s => Assert.NotNull(desk.Sheet(s)));
        Assert.Null(desk.Sheet("nothing/at/all"));
    }

    [Fact]
    public void Rows_from_a_spreadsheet_change_entries_that_stand_and_add_those_that_do_not()
    {
        var desk = Open();
        var grid = desk.Form.Grid("change/circuits")!;
        var (edits, refused) = PastedRows.Read(grid, "id\tfrom\tto\tfunction\nC101\tCB12\tXPD1 P1-1\tUZ\nC999\tCB12\tXPD1 P1-2\tUA\n");
        Assert.Equal("", refused);
        desk.Apply(edits);
        var rows = desk.Form.Grid("change/circuits")!;
        var function = rows.Columns.Select((c, i) => (c.Path, i)).Single(c => c.Path == "function").i;
        Assert.Equal("UZ", rows.Rows.Single(r => r.Id == "C101").Cells[function]);
        Assert.Contains(rows.Rows, r => r.Id == "C999");
        Assert.Contains("no column", PastedRows.Read(grid, "id\tcolour\nC1\tred").Refused, StringComparison.Ordinal);
        Assert.NotEmpty(PastedRows.Read(grid, "from\tto\nA\tB").Refused);
        Assert.NotEmpty(PastedRows.Read(grid, "id").Refused);
    }

    [Fact]
    public void Rows_are_pasted_to_the_end_of_a_list_and_into_columns_that_were_empty()
    {
        var desk = Open();
        var list = desk.Form.Grid("job/people/AV2/authorisations")!;
        var (edits, refused) = PastedRows.Read(list, "scope\tnumber\tuntil\nelectrical\tINV-7\t2029-05-31\nstructure\tINV-8\t2029-06-30\n");
        Assert.Empty(refused);
        desk.Apply(edits);
        Assert.Empty(desk.View.Problems);
        Assert.Equal(["avionics", "electrical", "structure"], desk.Form.Grid("job/people/AV2/authorisations")!.Rows.Select(r => r.Cells[0]));

        var empty = desk.Form.Grid("change/circuits")!;
        Assert.NotEmpty(empty.More);
        Assert.Empty(PastedRows.Read(empty, $"id\t{empty.More[0].Path}\n{empty.Rows[0].Id}\tx").Refused);
    }

    [Fact]
    public void Differences_name_each_line_that_differs_and_no_other()
    {
        Assert.Equal("line 2\n- b\n+ B", Changes.Lines("a\nb\nc", "a\nB\nc"));
        Assert.Equal("line 2\n+ b", Changes.Lines("a\nc", "a\nb\nc"));
        Assert.Equal("no difference", Changes.Lines("a\nc", "a\nc"));
    }

    [Fact]
    public void The_example_of_every_calculation_runs_on_the_bench()
    {
        Assert.NotEmpty(Bench.All);
        Assert.All(Bench.All, c =>
        {
            var result = Bench.Run(c.Name, c.Inputs.ToDictionary(i => i.Symbol, i => i.Example, StringComparer.Ordinal))!;
            Assert.Empty(result.Errors);
            Assert.NotNull(result.Sheet);
        });
        Assert.Null(Bench.Run("no-such", new Dictionary<string, string>(StringComparer.Ordinal)));
    }

    private static int Undone(Desk desk)
    {
        var count = 0;
        for (; desk.View.CanUndo; count++)
        {
            desk.Undo();
        }

        return count;
    }

    private static Desk Open() => new(new FolderFiles(Folder));
}
