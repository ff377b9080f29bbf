using System.IO.Compression;
using Fairlead.Calculations;
using Fairlead.Documents;
using Fairlead.Documents.Tables;
using Fairlead.Drawings;
using Fairlead.Drawings.Harness;
using Fairlead.Planning.Cards;
using Fairlead.Server.Hosting;
using Fairlead.Server.Jobs;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Fairlead.Server.Work;

/// <summary>What is printed or taken away of a job as it was kept last: cards, tables, drawings; and the cutting plan and marks to look at.</summary>
internal static class PaperEndpoints
{
    public static void MapPapers(this IEndpointRouteBuilder routes)
    {
        var papers = routes.MapGroup("/jobs/{job}").WithTags("papers").RequireAuthorization(Policies.View);
        papers.MapGet("/cutting", (JobRef job, AssessedJobs jobs) => job.Do(j => TypedResults.Ok(SupplyView.Cuts(jobs.Of(j))))).WithSummary("Which piece is cut from which reel or remnant.");
        papers.MapGet("/marks", (JobRef job, AssessedJobs jobs) => job.Do(j => TypedResults.Ok(SupplyView.Marks(jobs.Of(j))))).WithSummary("Sleeves and labels to print.");
        papers.MapGet("/cards.pdf", (JobRef job, string? task, string? size, AssessedJobs jobs, HttpRequest request, TimeProvider clock, CancellationToken stop) =>
            job.Do(j => Cards(jobs.Of(j), task, size ?? CardFormat.A4.Name, request, clock, stop))).WithSummary("The job cards and test cards to print, all or one; a4 or pocket size.");
        papers.MapGet("/kit.{form}", (JobRef job, string form, AssessedJobs jobs) => job.Do(j => Kit(jobs.Of(j), form))).WithSummary("The kit, .csv or .xlsx; a workbook holds the cutting plan and the sleeves as well.");
        papers.MapGet("/cutting.{form}", (JobRef job, string form, AssessedJobs jobs) => job.Do(j => Table(jobs.Of(j), "cutting", form, SupplyTables.Cuts(jobs.Of(j).Assessment.Cuts)))).WithSummary("The cutting plan, .csv or .xlsx.");
        papers.MapGet("/marks.{form}", (JobRef job, string form, AssessedJobs jobs) => job.Do(j => Table(jobs.Of(j), "marks", form, SupplyTables.Print(jobs.Of(j).Assessment.PrintLines, j.Job.Order.Number))))
            .WithSummary("Sleeves and labels for the printer, .csv or .xlsx, with the text of a square code for each.");
        papers.MapGet("/drawings.zip", (JobRef job, AssessedJobs jobs, CancellationToken stop) => job.Do(j => Drawings(jobs.Of(j), stop))).WithSummary("All drawings as SVG.");
    }

    // The code of a card opens it on whatever tablet reaches this server under the address it was asked by.
    private static IResult Cards(AssessedJob job, string? task, string size, HttpRequest request, TimeProvider clock, CancellationToken stop)
    {
        var cards = JobCards.Of(job.Assessment).Where(c => task is null || c.Id == task).ToSequence();
        if (CardFormat.All.FirstOrDefault(f => f.Name == size) is not { } format || cards.Count == 0)
        {
            return TypedResults.NotFound();
        }

        var link = $"{request.Scheme}://{request.Host}/job/{Uri.EscapeDataString(Path.GetFileName(job.Folder))}/work/";
        var pages = CardPages.Write(job.Job, job.Hash, cards, format, new DateTimeOffset(clock.GetLocalNow().Date, TimeSpan.Zero), link, progress: null, stop);
        return TypedResults.File(pages, "application/pdf", $"{job.Job.Order.Number}-{task ?? "cards"}-{size}.pdf");
    }

    private static IResult Kit(AssessedJob job, string form) =>
        Table(job, "kit", form, SupplyTables.Kit(job.Kit), SupplyTables.Cuts(job.Assessment.Cuts), SupplyTables.Print(job.Assessment.PrintLines));

    private static IResult Table(AssessedJob job, string name, string form, params DataTable[] tables) =>
        DataFile.Write("." + form, tables) is var (bytes, type) ? TypedResults.File(bytes, type, $"{job.Job.Order.Number}-{name}.{form}") : TypedResults.NotFound();

    private static FileContentHttpResult Drawings(AssessedJob job, CancellationToken stop)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var drawing in Enum.GetValues<DrawingKind>().SelectMany(kind => DrawingSet.Of(job.Assessment, job.Hash, kind, TilePaper.A4)))
            {
                stop.ThrowIfCancellationRequested();
                var (name, svg) = DrawingSet.File(drawing);
                using var file = zip.CreateEntry(name).Open();
                file.Write(svg);
            }
        }

        return TypedResults.File(bytes.ToArray(), "application/zip", $"{job.Job.Order.Number}-drawings.zip");
    }
}
