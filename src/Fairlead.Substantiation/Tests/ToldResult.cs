using System.Collections.Immutable;

namespace Fairlead.Substantiation.Tests;

/// <summary>Something that an entry tells of a result.</summary>
/// <param name="Name">The field of the entry.</param>
/// <param name="Text">Its text; empty for a number.</param>
/// <param name="Number">Its number; null for a text.</param>
public readonly record struct ToldField(string Name, string Text, double? Number = null);

/// <summary>A result as the log tells it, by which it is entered, shown again, and judged on a tablet before the log has it: a number as measured, with its unit and instrument;
/// what is counted, or seen where no number is due, as observed.</summary>
public static class ToldResult
{
    /// <summary>Unit of what is counted. It takes no instrument, and its entry names no unit.</summary>
    public const string Counted = "contacts";

    /// <summary>The result that an entry tells.</summary>
    /// <param name="row">Its number, for what is said of it.</param>
    /// <param name="card">The card.</param>
    /// <param name="line">The line.</param>
    /// <param name="who">Who made the entry.</param>
    /// <param name="told">The text of a field; empty where it is not told.</param>
    public static TestResult Read(int row, string card, TestLine line, string who, Func<string, string> told)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(told);
        return new(row, card, line.Id, Value(told), line.Unit == Counted && told("value").Length == 0 ? Counted : told("unit"), told("instrument"), who, told("outside"));
    }

    /// <summary>What an entry says was read or found, without its unit.</summary>
    /// <param name="told">The text of a field; empty where it is not told.</param>
    public static string Value(Func<string, string> told)
    {
        ArgumentNullException.ThrowIfNull(told);
        return told("value") is { Length: > 0 } value ? (told("beyond") == "yes" ? ">" : "") + value : told("found");
    }

    /// <summary>The kind of the entry for a result, and what it tells: the value in the unit of the line, or in its own where a further measurement has no line.</summary>
    public static (string Kind, ImmutableArray<ToldField> Told) Write(JudgedResult judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        var (result, due) = (judged.Result, judged.Line?.Unit ?? "");
        var unit = due.Length > 0 ? due : result.Unit;
        ToldField[] always = [new("line", result.Line), new("outside", result.Outside)];
        return due != Counted && unit.Length > 0 && Judging.Value(result, unit) is var (value, beyond)
            ? ("measured", [.. always, new("value", "", value), new("unit", unit), new("instrument", result.Instrument), new("beyond", beyond ? "yes" : "")])
            : ("observed", [.. always, new("found", result.Value)]);
    }
}
