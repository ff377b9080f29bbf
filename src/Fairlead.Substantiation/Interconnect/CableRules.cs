using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>What must be true of the wires themselves: coax where radio frequency is, pairs twisted and kept together, shields ended.</summary>
internal sealed class CableRules(Job job, List<Finding> findings)
{
    private static readonly Source Bus = new("ARINC 429", "", "twisted shielded pair, shield grounded at both ends", Basis.Memory);
    private static readonly Source Practice = new("Wiring of avionics", "", "pairs and shields", Basis.CommonPractice);
    private static readonly Source Circuits = new("This job", "", "circuits", Basis.Stated);

    public void Check(Net net)
    {
        foreach (var circuit in net.Circuits)
        {
            Coax(net, circuit);
            Shield(net, circuit);
        }

        if (net.Of(SignalKind.BusIn, SignalKind.BusOut, SignalKind.BusBoth).Select(c => BusLoading.Named(c.Use!.Standard)).Any(s => s is BusStandard.Arinc429 or BusStandard.Rs422 or BusStandard.Rs485))
        {
            foreach (var circuit in net.Circuits.Where(c => c.Circuit.Twist.Length == 0 && job.Parts.Cables?.Find(c.Circuit.Wire) is not { Twisted: true }))
            {
                Add("pair-not-twisted", Verdict.Fails, circuit, $"{circuit.Circuit.Id} carries one leg of a data bus but is not part of a twisted pair.", Bus, "Use a twisted shielded cable for both legs, or twist the two circuits.");
            }
        }
    }

    /// <summary>Circuits that are twisted together or share a cable run the same way in the same bundle.</summary>
    public void CheckTogether(IReadOnlyList<CircuitResult> circuits)
    {
        var groups = circuits.Where(c => c.Circuit.Twist.Length > 0).GroupBy(c => ("twist", c.Circuit.Twist))
            .Concat(circuits.Where(c => c.Circuit.Cable.Length > 0 && c.Circuit.Twist.Length == 0).GroupBy(c => ("cable", c.Circuit.Cable)));
        foreach (var group in groups)
        {
            var (first, (kind, name)) = (group.First(), group.Key);
            if (kind == "twist" && !group.Skip(1).Any())
            {
                Add("pair-single", Verdict.Fails, first, $"{first.Circuit.Id} is twisted with '{name}', which is no other circuit.", Circuits, "Give both circuits of the pair the same name.");
            }

            if (group.FirstOrDefault(c => c.Circuit.Bundle != first.Circuit.Bundle || !SameWay(c.Way, first.Way)) is { } apart)
            {
                Add("pair-apart", Verdict.Fails, apart, $"{first.Circuit.Id} and {apart.Circuit.Id} belong to {kind} '{name}' but do not run the same way in the same bundle.", Circuits, "Give both the same ends, way and bundle.");
            }
        }
    }

    private void Coax(Net net, CircuitResult circuit)
    {
        var isCoax = job.Parts.Coax?.Find(circuit.Circuit.Wire) is not null;
        var ends = net.Contacts.Where(c => c.End == circuit.Circuit.From || c.End == circuit.Circuit.To).ToArray();
        if (isCoax && ends.FirstOrDefault(e => e.Use is { } use && use.Kind is not (SignalKind.Rf or SignalKind.Suppression)) is { } wrong)
        {
            Add("coax-ends", Verdict.Fails, circuit, $"The coaxial cable {circuit.Circuit.Id} ends on {wrong.End} ({wrong.Use!.Signal}), which carries no radio frequency.", Circuits, "Correct the end, or use a wire.");
        }
        else if (!isCoax && ends.FirstOrDefault(e => e.Use is { Kind: SignalKind.Rf }) is { } radio)
        {
            Add("coax-ends", Verdict.Fails, circuit, $"{radio.End} ({radio.Use!.Signal}) carries radio frequency, but {circuit.Circuit.Id} is not a coaxial cable.", Circuits, "Use the coaxial cable that the installation manual names.");
        }
    }

    private void Shield(Net net, CircuitResult circuit)
    {
        var shielded = job.Parts.Cables?.Find(circuit.Circuit.Wire) is { Shielded: true };
        if (!shielded && circuit.Circuit.Shield != ShieldEnds.None)
        {
            Add("shield-absent", Verdict.Fails, circuit, $"{circuit.Circuit.Id} is to have its shield grounded, but '{circuit.Part}' has no shield.", Circuits, "Use a shielded cable.");
        }
        else if (shielded && circuit.Circuit.Shield == ShieldEnds.None)
        {
            Add("shield-open", Verdict.Caution, circuit, $"The shield of {circuit.Circuit.Id} is grounded at no end.", Practice, "Say at which ends the shield is grounded.");
        }
        else if (shielded && circuit.Circuit.Shield != ShieldEnds.Both && net.Contacts.Any(c => c.Use is { } use && BusLoading.Named(use.Standard) == BusStandard.Arinc429))
        {
            Add("shield-ends", Verdict.Caution, circuit, $"The shield of {circuit.Circuit.Id} is grounded at one end; on this data bus it is grounded at both.", Bus, "Ground the shield at both ends, unless the installation manual says otherwise.");
        }
        else if (shielded && circuit.Circuit.Shield == ShieldEnds.Both && net.Of(SignalKind.Audio).Any())
        {
            Add("shield-ends", Verdict.Caution, circuit, $"The shield of the audio circuit {circuit.Circuit.Id} is grounded at both ends, which lets hum in.", Practice, "Ground it at one end, unless the installation manual says otherwise.");
        }
    }

    private static bool SameWay(Way? a, Way? b) => a is null || b is null
        ? ReferenceEquals(a, b) : a.Segments.Order(StringComparer.Ordinal).SequenceEqual(b.Segments.Order(StringComparer.Ordinal), StringComparer.Ordinal);

    private void Add(string rule, Verdict severity, CircuitResult circuit, string message, Source source, string remedy) =>
        findings.Add(new(rule, severity, $"circuit/{circuit.Circuit.Id}", message, "", source, remedy, $"change/circuits/{circuit.Circuit.Id}"));
}
