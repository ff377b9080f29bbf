using System.Globalization;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Drawings;
using Fairlead.Model;
using Fairlead.Planning.Cards;

namespace Fairlead.Documents;

/// <summary>Job cards on pages: cards that fit share a page, with a line to cut along; a card is broken only where it is longer than a page.</summary>
public static class CardPages
{
    private const double Apart = 9;
    private const double EdgeInDocument = 11.2;
    private const double Beginning = 60;

    /// <summary>The cards as a PDF file.</summary>
    /// <param name="job">The job.</param>
    /// <param name="hash">The hash of its description.</param>
    /// <param name="cards">The cards.</param>
    /// <param name="format">The size.</param>
    /// <param name="date">The date of issue.</param>
    /// <param name="link">What the code of a card says before its number: an address of the workbench, or null for one that names work order and task.</param>
    /// <param name="progress">Told how much is done, in per cent.</param>
    /// <param name="cancellation">Stops the work between two pages.</param>
    public static byte[] Write(Job job, string hash, Sequence<JobCard> cards, CardFormat format, DateTimeOffset date, string? link = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(format);
        var info = new DocumentInfo($"Job cards: {job.Aircraft.Registration}, work order {job.Order.Number}, revision {job.Order.Revision}", job.Order.Title, job.Order.Operator, date, hash);
        return PdfWriter.Write(new Document(info, Of(job, hash, cards, format, level: 1, link).ToSequence()), progress, cancellation);
    }

    /// <summary>What the codes of a job's cards begin with when no address is named.</summary>
    public static string Link(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return $"fairlead:{Uri.EscapeDataString(job.Order.Number)}/";
    }

    // What an address may not hold is written out (RFC 3986): a space or a letter beyond ASCII would end it where a camera reads it.
    private static string Address(string link) =>
        string.Concat(link.EnumerateRunes().Select(r => r.IsAscii && (Rune.IsLetterOrDigit(r) || "-._~:/?#[]@!$&'()*+,;=%".Contains((char)r.Value, StringComparison.Ordinal)) ? r.ToString() : Uri.EscapeDataString(r.ToString())));

    /// <summary>The pages as blocks of a document.</summary>
    internal static IEnumerable<Block> Of(Job job, string hash, Sequence<JobCard> cards, CardFormat format, int level, string? link = null, bool inDocument = false)
    {
        var painter = new CardPainter(format, $"{job.Order.Number} revision {job.Order.Revision}  ·  {job.Aircraft.Registration}", link is null ? Link(job) : Address(link));
        var pages = new List<(List<Shape> Shapes, List<SheetHeading> Headings)>();
        var y = double.PositiveInfinity;
        foreach (var card in cards)
        {
            var pieces = painter.Of(card, advice: !inDocument).ToArray();
            var whole = pieces.Sum(p => p.Height);
            y += Apart;

            // In a document, which nobody carries to the aircraft, cards run on from page to page.
            if (y + (inDocument ? Math.Min(whole, Beginning) : whole) > format.Bottom)
            {
                Start();
            }
            else
            {
                pages[^1].Shapes.Add(new Line(new(0, y - (Apart / 2)), new(format.Width, y - (Apart / 2)), new Style(Ink.Quiet, 0.15, Dash.Dashed)));
            }

            pages[^1].Headings.Add(new SheetHeading($"{card.Id}: {card.Task.Title}", level, y, card.Id));
            for (var i = 0; i < pieces.Length; i++)
            {
                if (y + Kept(pieces, i) > format.Bottom && y > format.Margin)
                {
                    Start();
                    Place(painter.Continued(card));
                    if (pieces[i].Repeat is { } head)
                    {
                        Place(head);
                    }
                }

                Place(pieces[i]);
            }
        }

        return pages.Select((p, i) => new DrawingSheet(
            new Picture(format.Width, format.Height, p.Headings.Count > 0 ? p.Headings[0].Text : "Job card, continued", "", [.. p.Shapes, .. Foot(job, hash, format, inDocument ? "" : string.Create(CultureInfo.InvariantCulture, $"page {i + 1} of {pages.Count}"))]), p.Headings.ToSequence(), inDocument ? EdgeInDocument : null));

        void Start()
        {
            pages.Add(([], []));
            y = format.Margin;
        }

        void Place(CardPiece piece)
        {
            pages[^1].Shapes.AddRange(piece.Draw(y));
            y += piece.Height;
        }
    }

    // What stays together from a piece on.
    private static double Kept(CardPiece[] pieces, int from)
    {
        var height = pieces[from].Height;
        for (var i = from; pieces[i].Keep && i + 1 < pieces.Length; i++)
        {
            height += pieces[i + 1].Height;
        }

        return height;
    }

    private static IEnumerable<Shape> Foot(Job job, string hash, CardFormat format, string page)
    {
        var (y, size) = (format.Height - format.Margin, format.Small * 0.85);
        yield return new Line(new(format.Left, y - 3.2), new(format.Right, y - 3.2), Style.Thin);
        yield return new Text(new(format.Left, y), TextMeasure.Fitted($"{job.Order.Number}, job {hash}", size, format.Column - (page.Length > 0 ? 24 : 0)), size, Ink.Quiet);
        yield return new Text(new(format.Right, y), page, size, Ink.Quiet, Anchor.End);
    }
}
