using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations.Traffic;

/// <summary>Input of <see cref="Squawk"/>.</summary>
/// <param name="Code">Four octal digits.</param>
/// <param name="Field">Thirteen-bit identity field of a Mode S reply, in hexadecimal, instead.</param>
public sealed record SquawkInput(
    [In("code", "four octal digits", Default = "by field")] string? Code = null,
    [In("field", "thirteen-bit identity field (hexadecimal)", Default = "by code")] string? Field = null);

/// <summary>A Mode A code as reply pulses and as the identity field of a Mode S reply, and back.</summary>
/// <remarks>Check values: 7700 is A1 A2 A4 B1 B2 B4 and 0x0AAA; the field 0x112D is 0356.</remarks>
public sealed class Squawk : ICalculation<SquawkInput>
{
    private static readonly Source Annex = new("ICAO Annex 10 Vol IV", "third edition text", "3.1.1.6.1 to 3.1.1.6.3");
    private static readonly Source Order = new("The 1090 megahertz riddle", "299a40cc", "surveillance replies: identity code");

    /// <inheritdoc/>
    public static CalculationInfo<SquawkInput> Info { get; } = new(
        "squawk", "Mode A code", Discipline.Traffic, "Which pulses and bits a code is, and back", "code=1200", Annex, Order);

    /// <inheritdoc/>
    public static Sheet Run(SquawkInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (Read(s, input) is not { } code)
        {
            return;
        }

        s.Note("squawk", "code", ModeACode.Text(code), "working");
        s.Note("ID", "identity field", string.Create(CultureInfo.InvariantCulture, $"0x{ModeACode.ToField(code):X4}"), "working");
        s.Step("n", "information pulses", "counted", ModeACode.Pulses(code).Length);
        s.Table("Reply", ["pulse", "after the first framing pulse", "sent"], Reply(code));
        if (ModeACode.Text(code) is "7500" or "7600" or "7700")
        {
            s.Caution("An emergency code: never radiate it, not even on the ramp. Test by cable with the antenna disconnected.", affectsVerdict: true);
        }
    });

    private static int? Read(SheetBuilder s, SquawkInput input)
    {
        if (input.Code is null == input.Field is null)
        {
            s.CannotTell("Give either a code or an identity field.");
            return null;
        }

        if (input.Code is { } text)
        {
            if (ModeACode.Read(text) is not { } code)
            {
                s.CannotTell($"'{text}' is not four octal digits (0 to 7).");
                return null;
            }

            return code;
        }

        if (!TryField(input.Field!, out var field))
        {
            s.CannotTell($"'{input.Field}' is not a thirteen-bit field in hexadecimal (0000 to 1FFF).");
            return null;
        }

        return ModeACode.FromField(field);
    }

    /// <summary>Reads a thirteen-bit field in hexadecimal.</summary>
    internal static bool TryField(string text, out int field) =>
        int.TryParse(text.StartsWith("0x", StringComparison.OrdinalIgnoreCase) ? text[2..] : text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out field) && field is >= 0 and <= 0x1FFF;

    private static IEnumerable<ImmutableArray<SheetValue>> Reply(int code)
    {
        ImmutableArray<SheetValue> Row(string name, double at, bool sent) => [name, Duration.Of(at, "µs").As("µs"), sent ? "yes" : "no"];
        var names = ModeACode.Pulses(code);
        return [Row("F1", 0, true), .. ModeACode.Sent.Select(p => Row(p.Name, p.Microseconds, names.Contains(p.Name))), Row("F2", 20.3, true)];
    }
}
