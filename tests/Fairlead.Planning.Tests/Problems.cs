using CsCheck;
using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Tests.Planning;

/// <summary>Small problems of every kind.</summary>
internal static class Problems
{
    /// <summary>Up to five tasks in pieces, two skills, three people with shifts and overtime, one shared tool, lags, windows.</summary>
    public static readonly Gen<Problem> Any =
        from count in Gen.Int[1, 5]
        from tasks in Gen.Select(Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[0, 3], Gen.Int[0, 31], Gen.Int[0, 2], Gen.Int[0, 5], Gen.Int[0, 3]).Array[count]
        from shift in Gen.Int[2, 5]
        from over in Gen.Int[0, 2]
        from room in Gen.Int[1, 2]
        select new Problem(
            48,
            tasks.Select((t, i) => new Work(
                $"T{i}", t.Item1, Enumerable.Range(0, i).Where(b => (t.Item4 >> b & 1) == 1).Select(b => new Predecessor($"T{b}", t.Item5)).ToSequence(),
                t.Item3 switch { 0 => [], 1 => [new("a", 1)], 2 => [new("b", 1)], _ => [new("a", 1), new("b", 1)] },
                t.Item2 > 0 && t.Item2 <= room ? [new("tool", t.Item2)] : [], 2, t.Item6 == 0 ? [new(3, 9), new(14, 30)] : [], t.Item7)).ToSequence(),
            [
                new("P", ["a"], Days(0, shift), Days(shift, shift + over)),
                new("Q", ["a", "b"], Days(1, shift), Days(shift, shift + over)),
                new("R", ["b"], Days(2, shift + 2)),
            ],
            [new("tool", room)]);

    private static Sequence<Slot> Days(int from, int to) => from == to ? [] : Enumerable.Range(0, 6).Select(d => new Slot((8 * d) + from, (8 * d) + to)).ToSequence();
}
