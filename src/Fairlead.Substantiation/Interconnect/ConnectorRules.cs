using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>What must be true of the connectors of each item that is fitted: the harness half mates, is not taken for its neighbour, and keeps spare contacts.</summary>
internal sealed class ConnectorRules(Job job, Memo memo, Netlist netlist, List<Finding> findings, List<Shown> shown)
{
    private static readonly Source Parts = new("Data of the parts", "", "connector halves", Basis.Stated);
    private static readonly Source Practice = new("Wiring of avionics", "", "keying of neighbouring connectors", Basis.CommonPractice);

    public void Check()
    {
        foreach (var item in job.Change.Fit.OrEmpty())
        {
            if (job.Parts.Equipment?.Find(item.Part) is { } part)
            {
                Item(item, part);
            }
        }

        var used = job.Change.Fit.OrEmpty().SelectMany(f => (job.Parts.Equipment?.Find(f.Part)?.Connectors).OrEmpty()).Select(u => u.Part).ToHashSet(StringComparer.Ordinal);
        foreach (var half in job.Parts.Connectors.OrEmpty().Where(c => c.Layout.Count > 0 && used.Contains(c.Id)))
        {
            Layout(half);
        }
    }

    // The view from the wire side and the search for a fault beside a contact both stand on where its cavities lie.
    private void Layout(ConnectorPart half)
    {
        var placed = half.Layout.SelectMany(r => r.Cavities).ToArray();
        string[] wrong =
        [
            .. Listed("names {0}, which it does not have", placed.Except(half.Cavities)),
            .. Listed("names {0} more than once", placed.GroupBy(c => c, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key)),
            .. Listed("leaves out {0}", half.Cavities.Except(placed)),
        ];
        if (wrong.Length > 0)
        {
            findings.Add(new("connector-layout", Verdict.Fails, $"connector/{half.Id}", $"The layout of {half.Id} does not fit its cavities: it {string.Join("; it ", wrong)}. Its view would lead wires into wrong cavities.", "", Parts,
                "Correct the layout, or leave it out: then the cavities are listed.", $"parts/connectors/{half.Id}/layout"));
        }
    }

    private static IEnumerable<string> Listed(string words, IEnumerable<string> cavities) =>
        cavities.ToArray() is { Length: > 0 } some ? [string.Format(CultureInfo.InvariantCulture, words, string.Join(", ", some))] : [];

    private void Item(FittedItem item, EquipmentPart part)
    {
        var first = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var use in part.Connectors.OrEmpty())
        {
            if (job.Parts.Connectors?.Find(use.Part) is not { } half)
            {
                continue;
            }

            Mates(item, use, half);
            if (half.Cavities.Count < 2)
            {
                continue;
            }

            Spares(item, part, use, half);
            if (!first.TryAdd(Likeness(half), use.Id))
            {
                Add("connector-exchange", Verdict.Caution, item, use, $"{item.Id} {first[Likeness(half)]} and {use.Id} take harness halves alike in shell, insert, contacts and keying, so each can be plugged into the other's place.", Practice,
                    "Order one of them with another keying, if the item allows it; otherwise tie the two so that neither reaches the other's place, and label both.");
            }
        }
    }

    // What is not stated on both sides is not compared.
    private void Mates(FittedItem item, ConnectorUse use, ConnectorPart half)
    {
        if (use.Own is not { } own)
        {
            return;
        }

        var differences = Differences(own, half).ToArray();
        if (differences.Length > 0)
        {
            Add("connector-mate", Verdict.Fails, item, use, $"The harness half {half.Id} does not mate with {item.Id} {use.Id}: {string.Join("; ", differences)}.", Parts,
                "Name the harness half that the installation manual of the item calls for.");
        }
        else if (Differ(own.Keying, half.Keying))
        {
            Add("connector-keying", Verdict.Fails, item, use, $"{half.Id} is keyed {half.Keying}, but {item.Id} {use.Id} is keyed {own.Keying}: the two do not go together.", Parts,
                "Order the harness half in the keying of the item.");
        }
    }

    private static IEnumerable<string> Differences(ConnectorHalf own, ConnectorPart half)
    {
        if (Differ(own.Part, half.Mate))
        {
            yield return $"it mates with {half.Mate}, and the item carries {own.Part}";
        }

        if (own.Form is { } form && form == half.Form)
        {
            yield return $"both are {(form == ConnectorForm.Plug ? "plugs" : "receptacles")}";
        }

        if (Differ(own.Shell, half.Shell))
        {
            yield return $"its shell is of size {half.Shell}, that of the item {own.Shell}";
        }

        if (Differ(own.Insert, half.Insert))
        {
            yield return $"its insert arrangement is {half.Insert}, that of the item {own.Insert}";
        }

        if (own.Gender is { } gender && gender == half.Gender)
        {
            yield return $"both carry {(gender == ContactGender.Pins ? "pins" : "sockets")}";
        }
    }

    private void Spares(FittedItem item, EquipmentPart part, ConnectorUse use, ConnectorPart half)
    {
        var (wired, reserved, free) = (0, 0, new List<string>());
        foreach (var cavity in half.Cavities)
        {
            if (netlist.CircuitAt(new Endpoint(item.Id, use.Id, cavity)) >= 0)
            {
                wired++;
            }
            else if (part.Contacts?.Find($"{use.Id}-{cavity}") is { Kind: SignalKind.Reserved })
            {
                reserved++;
            }
            else
            {
                free.Add(cavity);
            }
        }

        var outcome = memo.Run<SpareContacts, SpareContactsInput>(new(half.Cavities.Count, wired, reserved, job.Change.Wiring.Spares));
        shown.Add(new Shown(Subject(item, use), outcome, () => new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["n"] = half.Id,
            ["w"] = free.Count == 0 ? "circuits of this job; none is free" : $"circuits of this job; free are {string.Join(", ", free)}",
            ["r"] = string.Create(CultureInfo.InvariantCulture, $"contacts of {part.Id}"),
            ["smin"] = "wiring of this job",
        }));
        if (Findings.Of(outcome, Subject(item, use), $"change/fit/{item.Id}", "Take circuits to another connector, or a connector with more cavities where the item allows it.") is { } finding)
        {
            findings.Add(finding);
        }
    }

    private static string Likeness(ConnectorPart half) =>
        half.Shell.Length > 0 && half.Insert.Length > 0 ? $"{half.Shell} {half.Insert} {half.Form} {half.Gender} {half.Keying}" : half.Id;

    private static bool Differ(string a, string b) => a.Length > 0 && b.Length > 0 && !string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private static string Subject(FittedItem item, ConnectorUse use) => $"connector/{item.Id} {use.Id}";

    private void Add(string rule, Verdict severity, FittedItem item, ConnectorUse use, string message, Source source, string remedy) =>
        findings.Add(new(rule, severity, Subject(item, use), message, "", source, remedy, $"parts/equipment/{item.Part}/connectors/{use.Id}"));
}
