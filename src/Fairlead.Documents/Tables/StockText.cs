using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Fairlead.Model;

namespace Fairlead.Documents.Tables;

/// <summary>Writes a stock file. Reading it gives the same stock.</summary>
public static class StockText
{
    private static readonly JsonSerializerOptions Quotation = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of <c>stock.yaml</c>.</summary>
    public static string Write(Stock stock)
    {
        ArgumentNullException.ThrowIfNull(stock);
        var text = new StringBuilder("# What lies in the stores for this job.\n");
        if (stock.Use is { } use)
        {
            text.Append(CultureInfo.InvariantCulture, $"use: {Figures.Day(use)}\n");
        }

        if (stock.Keep is { } keep)
        {
            text.Append(CultureInfo.InvariantCulture, $"keep: {Exact(keep.Si)} m\n");
        }

        Section(text, "reels", stock.Reels, r => $"part: {r.Part}, length: {Exact(r.Length.Si)} m{Batch(r.Batch)}{(r.Remnant ? ", remnant: yes" : "")}");
        Section(text, "lots", stock.Lots, l => $"part: {l.Part}, quantity: {Exact(l.Quantity)}{Batch(l.Batch)}{Day("made", l.Made)}{Day("expires", l.Expires)}");
        Section(text, "deliveries", stock.Deliveries, d => $"part: {d.Part}, lead: {Lead(d.Lead)}");
        if (stock.Spares is { } spares)
        {
            text.Append("spares:\n");
            Rule(text, "wire", spares.Wire);
            Rule(text, "contacts", spares.Contacts);
            Rule(text, "terminations", spares.Terminations);
            Rule(text, "fasteners", spares.Fasteners);
            Rule(text, "rivets", spares.Rivets);
            Rule(text, "anchor-nuts", spares.AnchorNuts);
            Rule(text, "consumables", spares.Consumables);
            Rule(text, "sealants", spares.Sealants);
        }

        return text.ToString();
    }

    private static void Section<T>(StringBuilder text, string key, Catalog<T>? entries, Func<T, string> line)
        where T : class, IEntity
    {
        if (entries is { Count: > 0 })
        {
            text.Append(CultureInfo.InvariantCulture, $"{key}:\n");
            foreach (var entry in entries)
            {
                text.Append(CultureInfo.InvariantCulture, $"  {entry.Id}: {{ {line(entry)} }}\n");
            }
        }
    }

    private static void Rule(StringBuilder text, string key, SpareRule? rule)
    {
        if (rule is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {key}: {{ share: {Share(rule.Share)}, least: {rule.Least} }}\n");
        }
    }

    private static string Batch(string batch) => batch.Length == 0 ? "" : $", batch: {Quoted(batch)}";

    // A batch that was read from a table may hold anything, line ends too: as in JSON, which YAML takes as it is.
    private static string Quoted(string text) => JsonSerializer.Serialize(text, Quotation);

    // In days and per cent as a person would write them, where that is the same value; exactly otherwise.
    private static string Lead(Duration lead) => Duration.Of(Math.Round(lead.In("day"), 6), "day") == lead ? $"{Exact(Math.Round(lead.In("day"), 6))} day" : $"{Exact(lead.Si)} s";

    private static string Share(Fraction share) => Fraction.Of(Math.Round(share.In("%"), 6), "%") == share ? $"{Exact(Math.Round(share.In("%"), 6))} %" : Exact(share.Si);

    private static string Day(string key, DateOnly? day) => day is { } d ? $", {key}: {Figures.Day(d)}" : "";

    private static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
