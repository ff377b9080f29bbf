using System.Globalization;
using Fairlead.Records;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Server.Records;

/// <summary>Results of tests as entries of the log: one for each line, with its value in the unit of the card, or what was found where no number is due.</summary>
public static class ResultEntries
{
    /// <summary>Enters each result in the name of who measured it.</summary>
    /// <returns>How many were entered, and of the others the row and the reason.</returns>
    public static (int Count, IReadOnlyList<string> Refused) Add(LogBook book, TestReport report)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(report);
        var (count, refused) = (0, new List<string>());
        foreach (var judged in report.Results)
        {
            var outcome = judged.Result.By.Length == 0 ? new Outcome(null, ["who measured is not named."]) : book.Append(Draft(judged));
            count += outcome.Entry is null ? 0 : 1;
            refused.AddRange(outcome.Refused.Select(reason => string.Create(CultureInfo.InvariantCulture, $"row {judged.Result.Row}, {judged.Result.Card} {judged.Result.Line}: {reason}")));
        }

        return (count, refused);
    }

    private static Draft Draft(JudgedResult judged)
    {
        var (result, unit) = (judged.Result, judged.Line?.Unit ?? "");
        var payload = Payload.Empty.With("line", result.Line).With("outside", result.Outside);

        // What is counted takes no instrument; a further measurement has the unit it was made in.
        if (unit != "contacts" && Judging.Value(result, unit.Length > 0 ? unit : result.Unit) is var (value, beyond) && (unit.Length > 0 || result.Unit.Length > 0))
        {
            payload = payload.With("value", value).With("unit", unit.Length > 0 ? unit : result.Unit).With("instrument", result.Instrument);
            return new Draft(result.By, "measured", "test/" + result.Card, beyond ? payload.With("beyond", "yes") : payload);
        }

        return new Draft(result.By, "observed", "test/" + result.Card, payload.With("found", result.Value));
    }
}
