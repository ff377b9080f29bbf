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
        var (kind, told) = ToldResult.Write(judged);
        return new Draft(judged.Result.By, kind, "test/" + judged.Result.Card, told.Aggregate(Payload.Empty, (p, f) => f.Number is { } number ? p.With(f.Name, number) : p.With(f.Name, f.Text)));
    }
}
