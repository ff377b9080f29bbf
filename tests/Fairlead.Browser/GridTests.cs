using Microsoft.Playwright;

namespace Fairlead.Tests.Browser;

/// <summary>Grids: rows from a spreadsheet, what is wrong with a cell, lists without ids.</summary>
public sealed class GridTests(Workbench served)
{
    private const string Twin = "grids";
    private readonly Workbench workbench = served.With(Twin);

    [Fact]
    public async Task Rows_are_pasted_from_a_spreadsheet_a_wrong_unit_is_told_at_its_cell_and_both_are_undone_and_redone()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/job/" + Twin + "/edit/aircraft/stations");
        var rows = visit.Page.Locator("table.grid tbody tr th[scope=row]");
        await rows.First.WaitForAsync();
        var before = await rows.CountAsync();
        await Paste(visit, "id\tname\tfs\tmax\nNOSE-2\tNose locker (invented)\t1.1 m\t40 lb\nTAIL-2\tTail locker (invented)\t7.1 bananas\t30 lb");
        await Assertions.Expect(rows).ToHaveCountAsync(before + 2);
        var wrong = visit.Page.GetByLabel("TAIL-2 fs", new() { Exact = true });
        await Assertions.Expect(wrong).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(wrong).ToHaveAccessibleDescriptionAsync(new System.Text.RegularExpressions.Regex("7.1 bananas", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)));
        await Assertions.Expect(visit.Page.GetByLabel("NOSE-2 fs", new() { Exact = true })).ToHaveAttributeAsync("aria-invalid", "false");
        await Assertions.Expect(visit.Page.Locator(".standing")).ToContainTextAsync("Text to mend");

        await wrong.FillAsync("7.1 m");
        await wrong.PressAsync("Enter");
        await Assertions.Expect(wrong).ToHaveAttributeAsync("aria-invalid", "false");
        await Assertions.Expect(visit.Page.Locator(".standing")).Not.ToContainTextAsync("Text to mend");

        await Press(visit, "Undo");
        await Assertions.Expect(wrong).ToHaveValueAsync("7.1 bananas");
        await Assertions.Expect(visit.Page.Locator(".standing")).ToContainTextAsync("Text to mend");
        await Press(visit, "Undo");
        await Assertions.Expect(rows).ToHaveCountAsync(before);
        await Press(visit, "Redo");
        await Assertions.Expect(rows).ToHaveCountAsync(before + 2);
        await Press(visit, "Redo");
        await Assertions.Expect(wrong).ToHaveValueAsync("7.1 m");
        visit.Sound();
    }

    [Fact]
    public async Task A_list_within_an_entry_is_edited_row_by_row()
    {
        Workbench.Require();
        await using var visit = await workbench.Open("/job/" + Twin + "/edit/job/people/EL1");
        await visit.Page.Locator("main").GetByRole(AriaRole.Link, new() { Name = "authorisations", Exact = true }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/authorisations");
        await Assertions.Expect(visit.Page.GetByText("Nothing stands here yet")).ToBeVisibleAsync();
        await Press(visit, "Add a row");
        foreach (var (column, words) in new[] { ("scope", "electrical"), ("number", "INV-B2-103"), ("until", "2029-01-31") })
        {
            var cell = visit.Page.GetByLabel($"row 1 {column}", new() { Exact = true });
            await cell.FillAsync(words);
            await cell.PressAsync("Enter");
            await Assertions.Expect(cell).ToHaveAttributeAsync("aria-invalid", "false");
            await visit.Idle();
        }

        await Assertions.Expect(visit.Page.Locator(".standing")).Not.ToContainTextAsync("Text to mend");
        await Paste(visit, "scope\tnumber\tuntil\navionics\tINV-B2-104\t2029-02-28");
        await Assertions.Expect(visit.Page.GetByLabel("row 2 number", new() { Exact = true })).ToHaveValueAsync("INV-B2-104");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Remove row 1" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("row 1 number", new() { Exact = true })).ToHaveValueAsync("INV-B2-104");
        visit.Sound();
    }

    private static Task Press(Visit visit, string name) => visit.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync();

    // As it comes from a spreadsheet: through the clipboard, into the field.
    private static async Task Paste(Visit visit, string rows)
    {
        await Press(visit, "Paste rows");
        var field = visit.Page.Locator(".paste textarea");
        await field.EvaluateAsync("(field, rows) => { const data = new DataTransfer(); data.setData('text/plain', rows); field.focus(); if (field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))) document.execCommand('insertText', false, rows); }", rows);
        await Press(visit, "Take over");
        await Assertions.Expect(field).ToHaveCountAsync(0);
    }
}
