using Fairlead.Calculations.Traffic;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Radio;

/// <summary>What a transponder must reply on the ramp, mode by mode, for what it is set to; and the word that must bring it its altitude.</summary>
internal sealed class ReplyChecks(Job job, Memo memo, RadioFindings found)
{
    private const string Remedy = "Correct what the ramp test sets.";
    private const int AltitudeRange = 131072, AltitudeBits = 17;

    public void Check(RampCheck check, ExpectedReplies set, string box)
    {
        if (set.Squawk.Length > 0)
        {
            Add(check, "mode-a", memo.Run<Squawk, SquawkInput>(new(set.Squawk)), "code");
        }

        if (set.Altitude is { } altitude)
        {
            Add(check, "mode-c", memo.Run<AltitudeCode, AltitudeCodeInput>(new(altitude)), "h");
            if (Boxes.Parts(job).GetValueOrDefault(box)?.Contacts.OrEmpty().Any(c => c.Kind == SignalKind.BusIn && BusLoading.Named(c.Standard) == BusStandard.Arinc429) == true)
            {
                Add(check, "altitude-word", memo.Run<BusWord, BusWordInput>(new("203", WordForm.Binary, Math.Round(altitude.In("ft"), 6), Range: AltitudeRange, Bits: AltitudeBits)), "value");
            }
        }

        if (set.Address.Length > 0)
        {
            var (squawk, flight) = (set.Squawk.Length > 0 ? set.Squawk : null, set.Flight.Length > 0 ? set.Flight : null);
            Add(check, "mode-s", memo.Run<ModeSReply, ModeSReplyInput>(new(set.Address, set.Altitude, squawk, flight, set.Latitude, set.Longitude, set.Ident)), "address", "h", "squawk", "flight", "lat", "lon", "ident");
        }
    }

    private void Add(RampCheck check, string sheet, Outcome outcome, params string[] symbols) =>
        found.Add(outcome, $"ramp/{check.Id}/{sheet}", $"ramp/{check.Id}", $"change/ramp/{check.Id}", Remedy, [.. symbols.Select(s => (s, "this ramp test"))]);
}
