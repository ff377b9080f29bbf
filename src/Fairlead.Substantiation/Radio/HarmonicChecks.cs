using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Model;

namespace Fairlead.Substantiation.Radio;

/// <summary>Harmonics and mixing products of the transmitters in the bands of each box that receives. Their level cannot be worked out, so a test
/// of the change must show that the box still receives.</summary>
internal sealed class HarmonicChecks(Job job, Memo memo, IReadOnlySet<(string, string)> suppressed, RadioFindings found)
{
    private const int HighestHarmonic = 13;
    private const int HighestOrder = 3;

    public void Check(IReadOnlyList<Aerial> aerials)
    {
        var tested = job.Change.Tests.OrEmpty().SelectMany(t => t.Receivers).ToHashSet(StringComparer.Ordinal);
        var boxes = aerials.Where(a => a.Box.Length > 0).GroupBy(a => a.Box, StringComparer.Ordinal).ToArray();
        foreach (var box in boxes)
        {
            var bands = box.SelectMany(a => a.Ports).Select(p => p.Receive).OfType<Band>().Distinct().ToArray();
            var others = boxes.Where(b => b.Key != box.Key && !suppressed.Contains((b.Key, box.Key))).ToArray();
            var all = Senders(others, bands);
            var touched = box.Any(a => a.Touched);
            var before = touched ? [] : Senders(others.Where(o => !o.Any(a => a.Touched)), bands);
            if (bands.Length > 0 && all.Count > 0 && (touched || all != before))
            {
                Receiver(box.Key, box.First(), all, before, bands, tested.Contains(box.Key));
            }
        }
    }

    private void Receiver(string box, Aerial aerial, Sequence<RadioBand> all, Sequence<RadioBand> before, Band[] bands, bool tested)
    {
        var receivers = bands.Select(b => new RadioBand(box, b.From, b.To)).ToSequence();
        var outcome = Run(all, receivers);
        found.Show(outcome, $"radio/{box}/harmonics", ("tx", "parts of the boxes that transmit in other bands"), ("rx", $"part of {box}"));
        var old = before.Count == 0 ? 0 : Run(before, receivers).Value(0) ?? 0;
        if (outcome.Verdict == Verdict.CannotTell || (outcome.Value(0) > old && !tested))
        {
            var remedy = $"Add a test of the change that names {box} among its receivers: it must keep receiving while each transmitter of the sheet is keyed.";
            if (Findings.Of(outcome, $"radio/{box}", aerial.Path, remedy) is { } finding)
            {
                found.Add(finding);
            }
        }
    }

    private Outcome Run(Sequence<RadioBand> senders, Sequence<RadioBand> receivers) =>
        memo.Run<Harmonics, HarmonicsInput>(new(senders, receivers, HighestHarmonic, HighestOrder), "hits");

    // What transmits in the receiver's own band is judged by isolation. Only one of a box's transmitters of one band is on at a time; products of
    // two boxes that suppress each other are counted too, to the safe side.
    private static Sequence<RadioBand> Senders(IEnumerable<IGrouping<string, Aerial>> boxes, Band[] bands) =>
        (from box in boxes
         from band in box.SelectMany(a => a.Ports).Select(p => p.Transmit).OfType<Band>().Distinct()
         where !bands.Any(band.Touches)
         select new RadioBand(box.Key, band.From, band.To)).ToSequence();
}
