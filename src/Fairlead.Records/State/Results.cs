using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Records;

/// <summary>The results of a test as the log has them: of each line the last one counts, which is that after the repair.</summary>
public static class Results
{
    private const int Named = 4;

    /// <summary>What is open of a test: lines without a result, lines that do not hold, signatures.</summary>
    public static IEnumerable<OpenItem> WhatStandsOpen(HangarState state, RequiredTest test)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(test);
        OpenItem[] open = [.. test.Lines.Select(l => Judged(test, l, Last(state, test, l))).OfType<OpenItem>(), .. Missing(state, test)];
        return open.Length > 0 ? open : Unsigned(state, test, "test/" + test.Id);
    }

    /// <summary>What is not written down of a test, whether it holds or not: lines without a result, signatures.</summary>
    public static IEnumerable<OpenItem> WhatIsNotWritten(HangarState state, RequiredTest test)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(test);
        OpenItem[] open = [.. Missing(state, test)];
        return open.Length > 0 ? open : Unsigned(state, test, "test/" + test.Id);
    }

    /// <summary>Whether an entry is a result.</summary>
    public static bool Is(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Kind is "measured" or "observed";
    }

    /// <summary>The last result about a subject; null when there is none.</summary>
    public static Entry? Last(HangarState state, string subject)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Story(subject).LastOrDefault(Is);
    }

    /// <summary>The last result of a line; null when there is none.</summary>
    /// <param name="state">How things stand.</param>
    /// <param name="test">Id of the test.</param>
    /// <param name="line">Id of the line.</param>
    /// <param name="only">Whether the test has no other line: then an entry need not name it.</param>
    public static Entry? Last(HangarState state, string test, string line, bool only)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Story("test/" + test).LastOrDefault(e => Is(e) && (e.Payload.Text("line") == line || (only && e.Payload.Text("line").Length == 0)));
    }

    /// <summary>The last result of a line; null when there is none.</summary>
    public static Entry? Last(HangarState state, RequiredTest test, RequiredLine line)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(line);
        return Last(state, test.Id, line.Id, test.Lines.Count == 1);
    }

    private static IEnumerable<OpenItem> Missing(HangarState state, RequiredTest test)
    {
        var subject = "test/" + test.Id;
        var missing = test.Lines.Where(l => Last(state, test, l) is null).ToArray();
        if (missing.Length == test.Lines.Count)
        {
            yield return new OpenItem(subject, $"Test {test.Id} has no result: {test.Name}.");
        }
        else if (missing.Length > 0)
        {
            yield return new OpenItem(subject, string.Create(CultureInfo.InvariantCulture, $"Test {test.Id} has no result for {missing.Length} of its {test.Lines.Count} lines: {string.Join(", ", missing.Take(Named).Select(l => l.Id))}{(missing.Length > Named ? " …" : "")}."), Last(state, subject)!.Sequence);
        }
    }

    private static OpenItem? Judged(RequiredTest test, RequiredLine line, Entry? result)
    {
        if (result is null)
        {
            return null;
        }

        var what = test.Lines.Count == 1 ? $"Test {test.Id}" : $"Test {test.Id}, line {line.Id},";
        var about = test.Lines.Count == 1 ? test.Name : line.Name;
        var text = line.Unit.Length > 0 ? Number(line, result, what, about) : Words(line, result, what, about);
        return text is null ? null : new OpenItem("test/" + test.Id, text, result.Sequence);
    }

    private static string? Number(RequiredLine line, Entry result, string what, string about)
    {
        // What is counted needs no instrument: it is observed.
        if (line.Unit == "contacts" && double.TryParse(result.Payload.Text("found"), NumberStyles.None, CultureInfo.InvariantCulture, out var count))
        {
            return count >= (line.Least ?? count) && count <= (line.Most ?? count) ? null : string.Create(CultureInfo.InvariantCulture, $"{what} counted {count} where {line.Least ?? line.Most} are due: {about}.");
        }

        if (result.Payload.Number("value") is not { } value)
        {
            return $"{what} found '{result.Payload.Text("found")}' where a number in {line.Unit} is due: {about}.";
        }

        var (unit, beyond) = (result.Payload.Text("unit"), result.Payload.Text("beyond") == "yes");
        return !Same(unit, line.Unit) ? $"{what} was measured in {unit} and its limit is in {line.Unit}: it cannot be told whether it passed."
            : value < line.Least ? string.Create(CultureInfo.InvariantCulture, $"{what} gave {value} {unit}, which is below {line.Least}: {about}.")
            : value > line.Most || (beyond && value >= line.Most) ? string.Create(CultureInfo.InvariantCulture, $"{what} gave {value} {unit}, which is above {line.Most}: {about}.")
            : beyond && line.Most is not null ? string.Create(CultureInfo.InvariantCulture, $"{what} gave more than {value} {unit}, and the limit is {line.Most}: it cannot be told whether it passed.") : null;
    }

    private static string? Words(RequiredLine line, Entry result, string what, string about)
    {
        var found = result.Payload.Text("found").Trim();
        return string.Equals(found, line.Expected.Trim(), StringComparison.OrdinalIgnoreCase) || (!line.Verbatim && string.Equals(found, "as expected", StringComparison.OrdinalIgnoreCase)) ? null
            : result.Kind == "measured" ? $"{what} is a number where '{line.Expected}' is due: {about}." : $"{what} found '{found}' where '{line.Expected}' is due: {about}.";
    }

    private static IEnumerable<OpenItem> Unsigned(HangarState state, RequiredTest test, string subject)
    {
        var signatures = state.Signatures(subject);
        if (signatures.Count == 0)
        {
            yield return new OpenItem(subject, $"The result of test {test.Id} is not signed.", Last(state, subject)!.Sequence);
        }
        else if (test.Independent && !Gate.Independent(signatures))
        {
            yield return new OpenItem(subject, $"The result of test {test.Id} has to be compared by a second person.", signatures[0].Sequence);
        }
    }

    // 'mohm' and 'mΩ' are one unit.
    private static bool Same(string one, string other) =>
        one == other || Enum.GetValues<Dimension>().Any(d => Units.Find(d, one) is { } unit && unit == Units.Find(d, other));
}
