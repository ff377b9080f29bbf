using System.Net;
using System.Text.Json;
using Fairlead.Model.Storage;
using Fairlead.Workbench;
using Fairlead.Workbench.Routing;
using Fairlead.Workbench.Views;

namespace Fairlead.Tests.Workbench;

public sealed class DeskRouterTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin");

    [Fact]
    public void What_is_read_back_from_an_answer_is_what_the_desk_says()
    {
        var desk = new Desk(new FolderFiles(Folder));
        var body = JsonSerializer.Serialize<JobEdit[]>([new(EditKind.Set, "change/fit/XPD1/mounting", "9 kg")], DeskRouter.Json);
        var view = JsonSerializer.Deserialize<DeskView>(DeskRouter.Ask(desk, "POST", "edits", body).Json, DeskRouter.Json)!;
        Assert.Equal((desk.View.Hash, desk.View.Verdict, desk.View.Stamp), (view.Hash, view.Verdict, view.Stamp));
        Assert.Equal(desk.View.Findings, view.Findings);
        Assert.Equal(desk.View.Change!.Figures, view.Change!.Figures);
        var texts = JsonSerializer.Deserialize<IReadOnlyDictionary<string, string>>(DeskRouter.Ask(desk, "GET", "text", "").Json, DeskRouter.Json);
        Assert.Equal(desk.Texts.Files, texts);
    }

    [Theory]
    [InlineData("GET", "nowhere", HttpStatusCode.NotFound, "nowhere")]
    [InlineData("POST", "form?path=change", HttpStatusCode.NotFound, "POST")]
    [InlineData("GET", "form", HttpStatusCode.BadRequest, "'path' is not given")]
    [InlineData("GET", "discipline/Alchemy", HttpStatusCode.BadRequest, "Alchemy")]
    [InlineData("GET", "map/Side?zoom=near", HttpStatusCode.BadRequest, "expected a number")]
    [InlineData("GET", "map/Side?zoom=NaN", HttpStatusCode.BadRequest, "expected a number")]
    [InlineData("POST", "edits", HttpStatusCode.BadRequest, "body")]
    [InlineData("GET", "sheet?subject=none", HttpStatusCode.NotFound, "nothing of that name")]
    public void What_cannot_be_answered_is_refused_with_its_reason(string method, string route, HttpStatusCode status, string reason)
    {
        var answer = DeskRouter.Ask(new Desk(new MemoryFiles([])), method, route, "");
        Assert.Equal(status, answer.Status);
        Assert.Contains(reason, answer.Json.Replace("\\u0027", "'", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
