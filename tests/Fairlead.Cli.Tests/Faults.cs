namespace Fairlead.Tests.Cli;

/// <summary>Edits of the starter job that put one known fault into it.</summary>
internal static class Faults
{
    /// <summary>A 40 A breaker before a wire that carries a few amperes.</summary>
    public static readonly (string, string, string)[] GreatBreaker =
    [
        ("parts/wiring.yaml", "name: Circuit breaker 3 A, rating: 3 A", "name: Circuit breaker 40 A, rating: 40 A"),
        ("change.yaml", "to: REC1 P1-1,", "to: REC1 P1-1, wire: W22,"),
    ];

    /// <summary>Three things wrong with the text: a key that is unknown, a malformed unit, an unknown id.</summary>
    public static readonly (string, string, string)[] Text =
    [
        ("change.yaml", "service-loop: 6 in", "service-lop: 6 in"),
        ("change.yaml", "termination: 3 in", "termination: 3 volts"),
        ("change.yaml", "zone: TAIL", "zone: TALE"),
    ];

    /// <summary>The great breaker, accepted by a concession for every finding it gives.</summary>
    public static (string, string, string)[] Accepted(IEnumerable<(string Rule, string Subject)> findings) =>
    [
        .. GreatBreaker,
        ("change.yaml", "tasks:\n", "concessions:\n" + string.Concat(findings.Select((f, i) => $"  X{i + 1}: {{ rule: {f.Rule}, subject: {f.Subject}, by: Inspector One, reason: \"shown by test, report 7\", until: 2028-06-30 }}\n")) + "tasks:\n"),
    ];
}
