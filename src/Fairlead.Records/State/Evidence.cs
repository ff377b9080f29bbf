using System.Globalization;

namespace Fairlead.Records;

/// <summary>What the log itself writes beside what a person tells, so that an entry can be judged later by itself: the authorisation used and
/// its end, and the end of the instrument's calibration, as they stood.</summary>
internal static class Evidence
{
    /// <summary>Names that only the log writes.</summary>
    public static IReadOnlyList<string> Names { get; } = ["authorisation", "valid-until", "calibrated-until"];

    /// <summary>The payload with its evidence.</summary>
    public static Payload Add(Register register, string who, string kind, Payload payload, DateTimeOffset now)
    {
        if (kind == "mixed")
        {
            return Mixing.Complete(register, payload, now);
        }

        if (kind == "signed" && Signing.Find(register, who, payload.Text("scope")) is { } authorisation)
        {
            return payload.With("authorisation", authorisation.Number).With("valid-until", Day(authorisation.Until));
        }

        var instrument = payload.Text("instrument");
        var until = instrument.Length == 0 ? null : register.Instruments.Find(instrument)?.CalibrationDue ?? register.Tools.Find(instrument)?.CalibrationDue;
        return until is { } day ? payload.With("calibrated-until", Day(day)) : payload;
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
