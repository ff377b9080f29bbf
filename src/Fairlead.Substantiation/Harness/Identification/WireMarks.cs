using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Harness.Identification;

/// <summary>Significant identification of wires: circuit function letters, wire number, segment letter, gauge, and N on a wire to ground.</summary>
/// <remarks>The pattern is that of MIL-W-5088 and AS50881, for example UA101A22 or LP605A22N. Wires that meet at a splice, terminal or disconnect share the number and the
/// predominant letters, and each has a segment letter of its own; I and O are left out, as they read like digits. The number is that of the circuit's id
/// where it is letters and then a number, as in C101, and the whole id otherwise. A coaxial cable has no gauge. What a circuit states as its mark stands instead.</remarks>
public static class WireMarks
{
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    /// <summary>Where the pattern comes from.</summary>
    public static Source Pattern { get; } = new("MIL-W-5088L", "appendix", "significant wire identification", Basis.Memory);

    /// <summary>The marks of a job: a circuit each, and the jackets of cables with several cores.</summary>
    public static ImmutableArray<WireMark> Of(Job job, IReadOnlyList<CircuitResult> circuits)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(circuits);
        var texts = Texts(job, circuits);
        var marks = ImmutableArray.CreateBuilder<WireMark>(circuits.Count);
        foreach (var c in circuits)
        {
            marks.Add(Mark(job, c, texts[c.Circuit.Id]));
        }

        marks.AddRange(circuits.Where(c => c.Circuit.Cable.Length > 0 && job.Parts.Cables?.Find(c.Part) is { Cores: > 1 }).GroupBy(c => c.Circuit.Cable, StringComparer.Ordinal).Select(g => Jacket(job, g.Key, [.. g])));
        return marks.ToImmutable();
    }

    /// <summary>The mark of a circuit.</summary>
    internal static WireMark Mark(Job job, CircuitResult c, string text)
    {
        var cable = job.Parts.Cables?.Find(c.Part);
        var core = cable is { Cores: > 1 };
        var diameter = core ? c.Wire?.Diameter : cable?.Diameter ?? job.Parts.Coax?.Find(c.Part)?.Diameter ?? c.Wire?.Diameter;
        return new WireMark(text, c.Circuit.Id, core ? MarkCarrier.Core : MarkCarrier.Wire, c.Circuit.From, c.Circuit.To, diameter, c.Length,
            c.Length is not { } length ? [] : core ? MarkPlaces.Ends(length) : MarkPlaces.Of(length));
    }

    /// <summary>Findings of the marks: the same mark on two wires, and letters that the aircraft's table does not have.</summary>
    internal static IEnumerable<Finding> Findings(Job job, ImmutableArray<WireMark> marks)
    {
        foreach (var same in marks.GroupBy(m => m.Text, StringComparer.Ordinal).Where(g => g.Skip(1).Any()))
        {
            var path = same.Select(m => m.Id).FirstOrDefault(id => job.Change.Circuits?.Find(id)?.Mark.Length > 0) ?? same.Last().Id;
            yield return new("mark-not-unique", Verdict.Fails, $"mark/{same.Key}", $"{string.Join(" and ", same.Select(m => m.Id))} carry one mark, {same.Key}: whoever opens the bundle cannot tell them apart.", "",
                Pattern, "Give one of them another number or a mark of its own.", $"change/circuits/{path}");
        }

        if (job.Aircraft.CircuitLetters is { Count: > 0 } letters)
        {
            foreach (var circuit in job.Change.Circuits.OrEmpty().Where(c => c.Mark.Length == 0 && !letters.Contains(c.Function)))
            {
                yield return new("letters-unknown", Verdict.Caution, $"circuit/{circuit.Id}", circuit.Function.Length == 0 ? $"{circuit.Id} has no circuit function letters." : $"The aircraft's table has no circuit function letters {circuit.Function}.", "",
                    new Source("This job", "", "circuit-letters of the aircraft", Basis.Stated), "Use letters of the table, or add them to it from the aircraft's wiring manual.", $"change/circuits/{circuit.Id}/function");
            }
        }
    }

    private static WireMark Jacket(Job job, string cable, CircuitResult[] cores)
    {
        var longest = cores.Any(c => c.Length is null) ? null : cores.Max(c => c.Length);
        return new WireMark(cable, cable, MarkCarrier.Jacket, cores[0].Circuit.From, cores[0].Circuit.To, job.Parts.Cables!.Find(cores[0].Part)!.Diameter, longest, longest is { } length ? MarkPlaces.Of(length) : []);
    }

    private static Dictionary<string, string> Texts(Job job, IReadOnlyList<CircuitResult> circuits)
    {
        var grounds = job.Aircraft.Grounds.OrEmpty().Concat(job.Change.Grounds.OrEmpty()).Select(g => g.Id).ToHashSet(StringComparer.Ordinal);
        var texts = new Dictionary<string, string>(circuits.Count, StringComparer.Ordinal);
        foreach (var line in Lines(job, circuits))
        {
            var number = line.Select(c => Number(c.Circuit.Id)).MinBy(n => (n.Length, n))!;
            var letters = line.CountBy(c => c.Circuit.Function, StringComparer.Ordinal).MaxBy(f => f.Value).Key;
            for (var i = 0; i < line.Count; i++)
            {
                var c = line[i];
                var gauge = job.Parts.Coax?.Contains(c.Part) == true ? "" : c.Wire?.Gauge.ToString() ?? "";
                var ground = grounds.Contains(c.Circuit.From.Item) || grounds.Contains(c.Circuit.To.Item) ? "N" : "";
                texts[c.Circuit.Id] = c.Circuit.Mark.Length > 0 ? c.Circuit.Mark : $"{letters}{number}{Segment(i)}{gauge}{ground}";
            }
        }

        return texts;
    }

    // Circuits that meet at joints, in the order of the change.
    private static IEnumerable<IReadOnlyList<CircuitResult>> Lines(Job job, IReadOnlyList<CircuitResult> circuits)
    {
        var over = new int[circuits.Count];
        int Root(int i) => over[i] == i ? i : over[i] = Root(over[i]);
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < over.Length; i++)
        {
            over[i] = i;
            foreach (var joint in new[] { circuits[i].Circuit.From, circuits[i].Circuit.To }.Where(e => e.IsPoint && job.Change.Joints?.Contains(e.Item) == true).Select(e => e.Item))
            {
                if (!first.TryAdd(joint, i))
                {
                    over[Root(i)] = Root(first[joint]);
                }
            }
        }

        return Enumerable.Range(0, over.Length).GroupBy(Root).Select(g => (IReadOnlyList<CircuitResult>)[.. g.Select(i => circuits[i])]);
    }

    private static string Number(string id) => id.TrimStart([.. id.Where(char.IsAsciiLetter)]) is { Length: > 0 } digits && digits.All(char.IsAsciiDigit) ? digits : id;

    private static string Segment(int index) => (index < Letters.Length ? "" : Segment((index / Letters.Length) - 1)) + Letters[index % Letters.Length];
}
