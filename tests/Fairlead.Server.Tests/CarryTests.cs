using System.Net;
using Fairlead.Model.Storage;
using Fairlead.Records;

namespace Fairlead.Tests.Server;

/// <summary>What leaves the server as a file, and comes back.</summary>
public sealed class CarryTests
{
    [Fact]
    public async Task The_pack_of_a_job_is_given_out_as_pdf()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        var answer = await browser.GetAsync("/api/jobs/demo/pack", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var pack = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        Assert.True(pack.AsSpan().StartsWith("%PDF"u8));
    }

    [Fact]
    public async Task A_job_leaves_with_its_log_and_comes_back_with_it()
    {
        await using var server = await RunningServer.Start(lan: false);
        using var browser = server.Anybody();
        server.Enter("opened", "panel/AFT");
        var zip = await browser.GetByteArrayAsync("/api/jobs/demo/zip", TestContext.Current.CancellationToken);
        using var body = new ByteArrayContent(zip);
        body.Headers.ContentType = new("application/zip");
        Assert.Equal(HttpStatusCode.Created, (await browser.PutAsync("/api/jobs/copy/zip", body, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(Lines(server.Job), Lines(Path.Combine(server.Data, "jobs", "copy")));
        Assert.Single(Lines(server.Job));
        Assert.False(File.Exists(Path.Combine(server.Data, "jobs", "copy", JobArchive.LogName)));
    }

    private static string[] Lines(string folder)
    {
        using var store = SqliteLogStore.Open(Path.Combine(folder, FolderFiles.Log));
        return [.. store.Lines(0)];
    }
}
