using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Interconnect;

/// <summary>What must be true of the contacts that one net joins: kinds that go together, one driver, one standard, one leg, one sense.</summary>
internal sealed class NetRules(Memo memo, List<Finding> findings, List<Shown> shown)
{
    private static readonly Source Parts = new("Interconnect data of the parts", "", "contacts", Basis.Stated);

    public void Check(Net net)
    {
        foreach (var contact in net.Contacts)
        {
            Contact(contact);
        }

        Kinds(net);
        Drivers(net);
        Same(net, "signal-standard", "data of different standards or speeds", "standard", c => c.Kind is SignalKind.BusIn or SignalKind.BusOut or SignalKind.BusBoth ? Plain(c.Standard) : "", c => c.Standard);
        Same(net, "signal-leg", "different legs of a pair", "leg", c => Plain(c.Leg), c => c.Leg);
        Same(net, "discrete-sense", "discretes of different senses", "sense", c => c.Kind is SignalKind.DiscreteIn or SignalKind.DiscreteOut ? Plain(c.Sense) : "", c => c.Sense);
        Bus(net);
        Suppression(net);
    }

    private void Contact(Wired contact)
    {
        if (contact.Use is null)
        {
            Add("pin-undeclared", Verdict.Caution, $"contact/{contact.End}", $"A circuit ends on {contact.End}, of which the part says nothing.", "Add the contact to the part from its installation manual, or correct the circuit.", contact.Path);
        }
        else if (contact.Use.Kind == SignalKind.Reserved)
        {
            Add("pin-reserved", Verdict.Fails, $"contact/{contact.End}", $"{contact.End} ({contact.Use.Signal}) must stay unconnected, but a circuit ends on it.", "Take the circuit off the contact.", contact.Path);
        }
    }

    private void Kinds(Net net)
    {
        var families = net.Contacts.Where(c => c.Use is not null).Select(c => (Family: FamilyOf(c.Use!.Kind), Text: $"{c.End} ({c.Use.Signal})"))
            .Concat(net.Grounded ? [(Family.Ground, "a ground stud")] : []).Concat(net.Fed ? [(Family.Power, "a breaker")] : []).DistinctBy(x => x.Family).ToArray();
        foreach (var (a, b) in families.SelectMany((a, i) => families.Skip(i + 1).Select(b => (a, b))).Where(p => !GoTogether(p.a.Family, p.b.Family)))
        {
            Add("signal-kinds", Verdict.Fails, net.Subject, $"{a.Text} and {b.Text} are joined: {Words(a.Family)} and {Words(b.Family)} do not go together.", "Correct the end of the circuit.", net.Path);
        }
    }

    private void Drivers(Net net)
    {
        var analog = net.Of(SignalKind.AnalogOut).ToArray();
        var discrete = net.Of(SignalKind.DiscreteOut).ToArray();
        if (analog.Length > 1 || (discrete.Length > 1 && discrete.Any(d => !Plain(d.Use!.Sense).Contains("OPEN", StringComparison.Ordinal))))
        {
            var outputs = analog.Length > 1 ? analog : discrete;
            Add("driver-many", Verdict.Fails, net.Subject, $"{string.Join(" and ", outputs.Select(o => o.End.ToString()))} drive one line against each other.", "Leave one output on the line, or part them by diodes or a relay.", net.Path);
        }

        if (net.Of(SignalKind.AnalogIn).Any() && analog.Length == 0)
        {
            Add("driver-none", Verdict.Fails, net.Subject, $"Nothing drives {net.Of(SignalKind.AnalogIn).First().End}.", "Join it to an output.", net.Path);
        }
        else if (net.Of(SignalKind.DiscreteIn).FirstOrDefault() is { } input && discrete.Length == 0 && !net.Grounded && !net.Fed && !net.Of(SignalKind.Ground, SignalKind.PowerOut).Any())
        {
            Add("driver-none", Verdict.Caution, net.Subject, $"Nothing drives {input.End}: no output, switch, ground or breaker is on its line.", "Join it to an output, or declare the contact of the switch as one.", net.Path);
        }
    }

    private void Bus(Net net)
    {
        var (drivers, receivers, both) = (net.Of(SignalKind.BusOut).Count(), net.Of(SignalKind.BusIn).Count(), net.Of(SignalKind.BusBoth).Count());
        if (drivers + receivers + both == 0 || net.Of(SignalKind.BusOut, SignalKind.BusIn, SignalKind.BusBoth).Select(c => BusLoading.Named(c.Use!.Standard)).FirstOrDefault(s => s is not null) is not { } standard)
        {
            return;
        }

        var outcome = memo.Run<BusLoading, BusLoadingInput>(new(standard, drivers + both, receivers + both));
        shown.Add(new Shown($"{net.Subject}/bus", outcome));
        if (Findings.Of(outcome, net.Subject, net.Path, "Leave one transmitter on the line and no more receivers than its standard allows; a further bus needs a further output.") is { } finding)
        {
            findings.Add(finding);
        }
    }

    private void Suppression(Net net)
    {
        var boxes = net.Of(SignalKind.Suppression).DistinctBy(c => c.End.Item).Take(2).ToArray();
        if (boxes is [var alone] && net.Contacts.All(c => c.End.Item == alone.End.Item))
        {
            Add("suppression-alone", Verdict.Fails, net.Subject, $"The mutual suppression line of {alone.End} reaches no other box.", "Join it to every box that sends pulses in the same band.", net.Path);
        }
    }

    private void Same(Net net, string rule, string what, string name, Func<ContactUse, string> key, Func<ContactUse, string> text)
    {
        var different = net.Contacts.Where(c => c.Use is not null && key(c.Use).Length > 0).DistinctBy(c => key(c.Use!)).Take(2).ToArray();
        if (different is [var a, var b])
        {
            Add(rule, Verdict.Fails, net.Subject, $"{a.End} and {b.End} are joined, but are {what}: {name} '{text(a.Use!)}' and '{text(b.Use!)}'.", "Correct the end of the circuit, or the contact in the part.", net.Path);
        }
    }

    private void Add(string rule, Verdict severity, string subject, string message, string remedy, string path) =>
        findings.Add(new(rule, severity, subject, message, "", Parts, remedy, path));

    private static string Plain(string text) => text.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();

    private enum Family
    {
        Power,
        Ground,
        Discrete,
        Bus,
        Analog,
        Audio,
        Rf,
        Suppression,
        Strap,
        Lighting,
        Shield,
        Reserved,
    }

    private static Family FamilyOf(SignalKind kind) => kind switch
    {
        SignalKind.PowerIn or SignalKind.PowerOut => Family.Power,
        SignalKind.Ground => Family.Ground,
        SignalKind.DiscreteIn or SignalKind.DiscreteOut => Family.Discrete,
        SignalKind.BusIn or SignalKind.BusOut or SignalKind.BusBoth => Family.Bus,
        SignalKind.AnalogIn or SignalKind.AnalogOut => Family.Analog,
        SignalKind.Audio => Family.Audio,
        SignalKind.Rf => Family.Rf,
        SignalKind.Suppression => Family.Suppression,
        SignalKind.Strap => Family.Strap,
        SignalKind.Lighting => Family.Lighting,
        SignalKind.Shield => Family.Shield,
        _ => Family.Reserved,
    };

    // A reserved contact has a finding of its own. Discretes and straps are set by ground or by power; dimmed lighting comes off a breaker.
    private static bool GoTogether(Family a, Family b) => (a < b ? (a, b) : (b, a)) switch
    {
        (_, Family.Reserved) => true,
        (Family.Power, Family.Discrete or Family.Lighting) => true,
        (Family.Ground, Family.Discrete or Family.Strap or Family.Shield or Family.Lighting or Family.Audio or Family.Analog) => true,
        _ => false,
    };

    private static string Words(Family family) => family switch
    {
        Family.Bus => "data",
        Family.Rf => "radio frequency",
        Family.Analog => "an analogue signal",
        Family.Discrete => "a discrete",
        Family.Strap => "a strap",
        Family.Shield => "a shield",
        _ => family.ToString().ToLowerInvariant(),
    };
}
