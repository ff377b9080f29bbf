using System.Globalization;

namespace Fairlead.Records;

/// <summary>What the log itself writes beside what a person tells, so that an entry can be judged later by itself: the authorisation used and
/// its end, and the end of the instrument's calibration, as they stood.</summary>
internal static class Evidence
{
    /// <summary>The work order, as the first entry about the work has it.</summary>
    public const string Job = "job";

    /// <summary>Names that only the log writes.</summary>
    public static IReadOnlyList<string> Names { get; } = ["authorisation", "valid-until", "calibrated-until", Job, "tablet", "tablet-entry", "tablet-time", "tablet-clock", "tablet-moved"];

    /// <summary>The payload of the next entry: the first about the work says whose log it is, so that it is not taken for that of another job. While the
    /// job is only written its number may still change.</summary>
    public static Payload Begin(HangarState state, Register register, string kind, Payload payload) =>
        state.Job.Length == 0 && !Writes(kind) ? payload.With(Job, register.Job) : payload;

    /// <summary>Whether an entry is about the papers and people of a job and not about its work.</summary>
    public static bool Writes(string kind) => kind is "revised" or "pin-set";

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
