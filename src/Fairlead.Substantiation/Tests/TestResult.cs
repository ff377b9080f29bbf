using Fairlead.Calculations;

namespace Fairlead.Substantiation.Tests;

/// <summary>A result as somebody entered it.</summary>
/// <param name="Row">Its row in the file.</param>
/// <param name="Card">The card.</param>
/// <param name="Line">The line of the card; of a further measurement the terminals, as <c>A+B&gt;C</c>.</param>
/// <param name="Value">What was read: a number, <c>&gt;200</c> beyond a range, <c>open</c>, or text where no number is due.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="By">Who measured.</param>
/// <param name="Outside">Who watches outside, on the ramp.</param>
public sealed record TestResult(int Row, string Card, string Line, string Value, string Unit = "", string Instrument = "", string By = "", string Outside = "");

/// <summary>A result against its limits.</summary>
/// <param name="Result">The result.</param>
/// <param name="Line">The line of the plan; null when the plan has none.</param>
/// <param name="Verdict">Whether it holds; cannot-tell whenever something that is due is missing.</param>
/// <param name="Why">Why, in words.</param>
public sealed record JudgedResult(TestResult Result, TestLine? Line, Verdict Verdict, string Why);

/// <summary>Judges results. A number is due wherever the card has a unit: a tick proves nothing there.</summary>
public static class Judging
{
    /// <summary>Judges one result.</summary>
    public static JudgedResult Judge(TestPlan plan, TestResult result)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(result);
        var card = plan.Find(result.Card);
        return Judge(card?.Kind ?? default, card?.Lines.FirstOrDefault(l => l.Id == result.Line), result);
    }

    /// <summary>Judges one result by its line alone, as where the plan is not at hand.</summary>
    /// <param name="kind">The kind of its card.</param>
    /// <param name="line">The line; null when the plan has none.</param>
    /// <param name="result">The result.</param>
    public static JudgedResult Judge(TestKind kind, TestLine? line, TestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var (verdict, why) = line is null ? (Verdict.CannotTell, Measurement.Read(result.Line) is null ? "the plan has no such line" : "beyond the cards: it serves to find the fault")
            : result.By.Length == 0 ? (Verdict.CannotTell, "who measured is not named")
            : kind == TestKind.Ramp && result.Outside.Length == 0 ? (Verdict.CannotTell, "who watches outside is not named")
            : line.IsNumber ? Number(line, result) : Text(kind, line, result);
        return new JudgedResult(result, line, verdict, why);
    }

    /// <summary>The value of a result in a unit, and whether it is only known to be beyond it; null when there is no number of that kind.</summary>
    public static (double Value, bool Beyond)? Value(TestResult result, string unit)
    {
        ArgumentNullException.ThrowIfNull(result);
        var (text, beyond) = result.Value.TrimStart() is ['>', .. var rest] ? (rest.Trim(), true) : (result.Value.Trim(), false);
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            if (Units.Find(dimension, unit) is { Symbol.Length: > 0 } known && QuantityReader.TryRead(dimension, $"{text} {result.Unit}", out var si, out _))
            {
                return (known.FromSi(si), beyond);
            }
        }

        return result.Unit == unit && QuantityReader.TryRead(Dimension.Number, text, out var number, out _) ? (number, beyond) : null;
    }

    /// <summary>Whether a result says that nothing reads through: what meters show beyond their range, with or without dots.</summary>
    internal static bool IsOpen(TestResult result) =>
        result.Value.Replace(".", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant() is "OPEN" or "OL" or "0L" or "OVERLOAD" or "INF" or "INFINITE" or "INFINITY" or "∞";

    private static (Verdict Verdict, string Why) Number(TestLine line, TestResult result)
    {
        if (IsOpen(result))
        {
            return line.Most is not null ? (Verdict.Fails, "open") : (Verdict.CannotTell, $"open beyond what range? Write for example '>200' and the unit; {line.Limits} is due");
        }

        if (Value(result, line.Unit) is not var (value, beyond))
        {
            return (Verdict.CannotTell, $"a number in {line.Unit} is due, '{$"{result.Value} {result.Unit}".Trim()}' is none");
        }

        // Some way below nothing is the zero of the leads and no resistance: neither a pass nor a failure of the wire.
        if (value < 0 && line.Unit.EndsWith('Ω'))
        {
            return (Verdict.CannotTell, $"no resistance is below nothing, and {NumberFormat.Text(value)} {line.Unit} was written: zero the leads and measure again");
        }

        if (result.Instrument.Length == 0 && line.Unit != ToldResult.Counted)
        {
            return (Verdict.CannotTell, "the instrument is not named");
        }

        // A bearing just left of north is written as 350 degrees.
        value = line.Unit == "°" && value > line.Most && value - 360 >= line.Least ? value - 360 : value;
        var found = $"{(beyond ? "more than " : "")}{NumberFormat.Text(value)} {line.Unit}, {line.Limits}";
        return value < line.Least ? (beyond ? Verdict.CannotTell : Verdict.Fails, found)
            : value > line.Most || (beyond && value >= line.Most) ? (Verdict.Fails, found)
            : beyond && line.Most is not null ? (Verdict.CannotTell, found) : (Verdict.Holds, found);
    }

    // What a box shows is written down as it stands; of what is only looked at, that it is as expected.
    private static (Verdict Verdict, string Why) Text(TestKind kind, TestLine line, TestResult result)
    {
        var value = result.Value.Trim();
        return value.Length == 0 ? (Verdict.CannotTell, "nothing is written")
            : Same(value, line.Expected) || (kind != TestKind.Settings && Same(value, "as expected")) ? (Verdict.Holds, line.Expected)
            : kind == TestKind.Settings && Same(value, "as expected") ? (Verdict.CannotTell, $"write what is found, word for word; '{line.Expected}' is due")
            : (Verdict.Fails, $"'{value}' where '{line.Expected}' is due");
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
