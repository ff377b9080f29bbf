using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Model;

namespace Fairlead.Substantiation.Radio;

/// <summary>Each antenna that the change fits or wires: near field, ground plane, range of surveillance, ramp test, and what is not known of it.</summary>
internal sealed class AntennaChecks(Job job, Memo memo, ILookup<string, CoaxLine> lines, Dictionary<CoaxLine, double> losses, RadioFindings found)
{
    public void Check(IReadOnlyList<Aerial> aerials)
    {
        var touched = aerials.Where(a => a.Touched).ToArray();
        foreach (var aerial in touched)
        {
            NearField(aerial);
            Ground(aerial);
            Range(aerial);
        }

        // Of antennas that were there, only those that transmit in the band of one that the change touches need to be known.
        foreach (var aerial in aerials.Where(a => a.Touched || (a.Part.Transmits && touched.Any(t => t.Box != a.Box && t.Band.Touches(a.Band)))))
        {
            Unknown(aerial);
        }

        if (touched.Length > 0)
        {
            Nameless();
        }

        var byId = aerials.ToDictionary(a => a.Id, StringComparer.Ordinal);
        foreach (var check in job.Change.Ramp.OrEmpty())
        {
            if (byId.TryGetValue(check.Antenna, out var aerial))
            {
                Ramp(check, aerial);
            }
        }
    }

    private void NearField(Aerial aerial)
    {
        if (aerial.Part.Size is { } size)
        {
            Length? nearest = job.Change.Ramp.OrEmpty().Where(r => r.Antenna == aerial.Id).Select(r => (Length?)r.Distance).Min();
            found.Add(memo.Run<NearField, NearFieldInput>(new(aerial.Part.To, size, nearest)), $"{aerial.Subject}/far-field", aerial.Subject, aerial.Path,
                "Put the test antenna further away, or couple by cable.", ("f", aerial.Part.Id), ("D", aerial.Part.Id), ("d", "ramp test of the change"));
        }
    }

    private void Ground(Aerial aerial)
    {
        if (aerial.Fitted?.GroundPlane is { } radius)
        {
            found.Add(memo.Run<GroundPlane, GroundPlaneInput>(new(aerial.Part.From, radius)), $"{aerial.Subject}/ground", aerial.Subject, aerial.Path,
                "Move the antenna away from the edge of the skin, or add conducting skin.", ("f", aerial.Part.Id), ("R", $"change/antennas/{aerial.Id}"));
        }
    }

    private void Range(Aerial aerial)
    {
        foreach (var port in aerial.Ports.Where(p => p is { Power: not null, Threshold: not null, Range: not null, Transmit: not null, Receive: not null }))
        {
            var (out1030, back1090) = (SurveillanceRange.Interrogation, SurveillanceRange.Reply);
            var known = lines[aerial.Id].Where(l => l.Port == port).Select(l => losses.TryGetValue(l, out var loss) ? loss : (double?)null).ToArray();
            if (port.Transmit!.Touches(new(out1030, out1030)) && port.Receive!.Touches(new(back1090, back1090)) && known.Length > 0 && known.All(l => l is not null))
            {
                found.Add(memo.Run<SurveillanceRange, SurveillanceRangeInput>(new(port.Power!.Value, known.Max()!.Value, aerial.Part.Gain, port.Threshold!.Value, Required: port.Range)), $"{aerial.Subject}/range", aerial.Subject, aerial.Path,
                    "Use cables of less loss, or state the range that the installation reaches in the flight manual supplement.",
                    ("P", $"part of {aerial.Box}"), ("A", "greatest loss among its cables"), ("G", aerial.Part.Id), ("MTL", $"part of {aerial.Box}"), ("Rmin", $"part of {aerial.Box}"));
            }
        }
    }

    // A ramp test always asks for care with other aircraft; that stands on its sheet and is no finding.
    private void Ramp(RampCheck check, Aerial aerial)
    {
        if (check.Replies is { } set)
        {
            new ReplyChecks(job, memo, found).Check(check, set, aerial.Box);
            if (check is { Level: null, Range: null })
            {
                return;
            }
        }

        if (aerial.Ports.Select(p => p.Receive).OfType<Band>().FirstOrDefault() is not { } band)
        {
            return;
        }

        var outcome = memo.Run<RampTest, RampTestInput>(new(check.Distance, (band.From + band.To) / 2, check.Level, check.Range, AircraftGain: aerial.Part.Gain, TestGain: check.TestGain, TestLoss: check.TestLoss));
        found.Show(outcome, $"ramp/{check.Id}", ("d", "this ramp test"), ("f", $"middle of the band that {aerial.Box} receives"), ("Pa", "this ramp test"), ("R", "this ramp test"), ("Ga", aerial.Part.Id), ("Gs", "this ramp test"), ("As", "this ramp test"));
        if (outcome.Verdict > Verdict.Caution && Findings.Of(outcome, $"ramp/{check.Id}", $"change/ramp/{check.Id}", "Correct the ramp test: either a level or a range, from at least three wavelengths away.") is { } finding)
        {
            found.Add(finding);
        }
    }

    private void Nameless()
    {
        var gone = job.Change.Remove.OrEmpty().Select(r => r.Item).ToHashSet(StringComparer.Ordinal);
        foreach (var antenna in job.Aircraft.Antennas.OrEmpty().Where(a => a.Part is null && !gone.Contains(a.Id)))
        {
            found.Add(new("radio-unknown", Verdict.CannotTell, $"antenna/{antenna.Id}", $"Of {antenna.Id} is not known: its part. What it and the antennas of the change do to each other is not judged.", "", RadioFindings.Stated,
                "Name its part, with its band and whether it transmits.", $"aircraft/antennas/{antenna.Id}"));
        }
    }

    private void Unknown(Aerial aerial)
    {
        string[] missing = aerial.Ports.IsEmpty ? ["what its box transmits and receives"] : [.. Missing(aerial)];
        if (missing.Length > 0)
        {
            found.Add(new(
                "radio-unknown", Verdict.CannotTell, aerial.Subject, $"Of {aerial.Id} is not known: {string.Join(", ", missing)}.", "", RadioFindings.Stated,
                aerial.Ports.IsEmpty && !aerial.Touched ? "Name the item it is connected to, and give the item a part with radios." : "Add it to the radios of the box's part.", aerial.Path));
        }
    }

    private IEnumerable<string> Missing(Aerial aerial)
    {
        if (aerial.Ports.Any(p => p is { Transmit: not null, Power: null }))
        {
            yield return "the power transmitted";
        }

        if (aerial.Ports.Any(p => p is { Range: not null, Threshold: null }))
        {
            yield return "the weakest level its receiver works with";
        }

        if (aerial.Ports.All(p => p.Receive is null) && job.Change.Ramp.OrEmpty().Any(r => r.Antenna == aerial.Id))
        {
            yield return "the band it receives in, for its ramp test";
        }
    }
}
