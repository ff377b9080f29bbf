using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Harness.Identification;

/// <summary>Everything that is printed: a line for each mark of a wire, and the labels of items, connectors, breakers, studs and joints.</summary>
public static class PrintFile
{
    /// <summary>The lines, sleeves first.</summary>
    public static ImmutableArray<PrintLine> Of(Job job, ImmutableArray<WireMark> marks)
    {
        ArgumentNullException.ThrowIfNull(job);
        var change = job.Change;
        return
        [
            .. marks.Select(m => new PrintLine(m.Text, m.Length is null ? 2 : m.Places.Count, m.Carrier switch { MarkCarrier.Jacket => "sleeve, cable", MarkCarrier.Core => "sleeve, core", _ => "sleeve, wire" },
                $"{m.Id}: {m.From} to {m.To}", m.Diameter, m.Places)),
            .. change.Fit.OrEmpty().Select(f => Label(f.Id, "label, item", $"item {f.Id}")),
            .. change.Antennas.OrEmpty().Select(a => Label(a.Id, "label, antenna", $"antenna {a.Id}")),
            .. change.Fit.OrEmpty().SelectMany(f => (job.Parts.Equipment?.Find(f.Part)?.Connectors).OrEmpty().Select(u => Label($"{f.Id} {u.Id}", "label, connector", $"connector {u.Id} of {f.Id}"))),
            .. change.Breakers.OrEmpty().Select(b => Label(job.Parts.Breakers?.Find(b.Part) is { } part ? $"{b.Name} {part.Rating.As("A")}" : b.Name, "label, breaker", $"breaker {b.Id}")),
            .. change.Grounds.OrEmpty().Select(g => Label(g.Id, "label, ground stud", $"ground stud {g.Id}")),
            .. change.Joints.OrEmpty().Select(j => Label(j.Id, "label, joint", $"joint {j.Id}")),
        ];
    }

    private static PrintLine Label(string text, string kind, string of) => new(text, 1, kind, of, null, []);
}
