using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Wiring;
using Fairlead.Model;

namespace Fairlead.Substantiation.Wiring;

/// <summary>Checks one circuit once its wire and bundles are settled.</summary>
internal sealed class CircuitChecks(CircuitState state, WiringContext context, Memo memo)
{
    private readonly ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
    private readonly ImmutableArray<Shown>.Builder shown = ImmutableArray.CreateBuilder<Shown>();
    private readonly WirePart? wire = state.IsAuto && state.Chosen < 0 ? null : state.WireIn(context.Candidates, start: false);
    private Condition? tightest;
    private Current? allowed;
    private Temperature? hot;

    /// <summary>Runs the checks.</summary>
    /// <param name="cableMembers">How many circuits share the cable.</param>
    public CircuitWork Run(int cableMembers)
    {
        findings.AddRange(new[] { state.RouteFinding, state.LengthFinding }.OfType<Finding>());

        if (wire is not null)
        {
            CheckCurrent(wire);
            CheckContact(wire, state.FromContact, "contact-from", state.Circuit.From);
            CheckContact(wire, state.ToContact, "contact-to", state.Circuit.To);
            CheckProtection(wire);
            CheckDrop(wire);
        }
        else if (state.Coax is not null && state.Current > Current.Zero)
        {
            findings.Add(new("coax-carries-power", Verdict.Fails, state.Subject, $"The coaxial cable carries {state.Current.As("A")} of power.", "", Stated, "Use a wire.", state.Path));
        }
        else if (state.Coax is null && !state.IsAuto)
        {
            findings.Add(new("wire-unknown", Verdict.Fails, state.Subject, $"The parts catalogue has no wire, cable or coax '{state.Circuit.Wire}'.", "", Stated, "Name a wire of the catalogue, or 'auto'.", state.Path));
        }

        ShowSize();
        return new CircuitWork(Result(cableMembers), tightest?.At ?? default, wire is not null ? tightest?.Rating(wire) ?? wire.Rating : default, findings.ToImmutable(), shown.ToImmutable())
        {
            Cold = Supply.ColdOf(wire, state.Length ?? default) ?? default,
        };
    }

    private static Source Stated { get; } = new("This job", "", "circuits", Basis.Stated);

    // The share of a loop is unknown: the whole is an upper bound, with which a check may hold but not fail.
    private bool InLoop => state.Shares.Any(s => s.Feed.Loop.Contains(state));

    private IEnumerable<Condition> Conditions => Sizing.Conditions(state, context, b => b.FinalLoading);

    private void CheckCurrent(WirePart wire)
    {
        foreach (var condition in Conditions)
        {
            var most = memo.Run<WireCurrent, WireCurrentInput>(CurrentInput(wire, condition, null), "Imax").Value(0);
            if (most is { } ampere && (allowed is null || ampere < allowed.Value.Si))
            {
                (tightest, allowed) = (condition, new Current(ampere));
            }
        }

        if ((tightest ?? Conditions.Cast<Condition?>().FirstOrDefault()) is not { } worst)
        {
            return;
        }

        var outcome = memo.Run<WireCurrent, WireCurrentInput>(CurrentInput(wire, worst, state.Current), "Imax");
        Add(outcome, "current", () => ThickerWire(wire, worst), Origins(wire, worst));
        if (allowed is { } limit)
        {
            hot = ConductorTemperature.Estimate(worst.At.Ambient, worst.Rating(wire), state.Current / limit);
            var temperature = memo.Run<ConductorTemperature, ConductorTemperatureInput>(new(worst.At.Ambient, worst.Rating(wire), state.Current, limit));
            shown.Add(new Shown($"{state.Subject}/temperature", temperature, Origins(wire, worst)));
        }
    }

    private static WireCurrentInput CurrentInput(WirePart wire, Condition condition, Current? actual) =>
        new(wire.Gauge, condition.Rating(wire), condition.At.Ambient, condition.At.Altitude, condition.Wires, condition.Loading, WiringContext.MaterialOf(wire), actual);

    private void CheckContact(WirePart wire, ContactPart? contact, string name, Endpoint end)
    {
        if (contact is not null)
        {
            var current = CurrentOrigin();
            var outcome = memo.Run<ContactFit, ContactFitInput>(new(contact.Size, wire.Gauge, state.Current, contact.Thinnest, contact.Thickest, contact.Rating));
            Add(outcome, name, () => $"At {end} use a wire from {contact.Thinnest} to {contact.Thickest} AWG with at most {contact.Rating.As("A")}, a contact that takes this one, or several contacts.",
                () => new Dictionary<string, string>(StringComparer.Ordinal) { ["contact"] = $"contact {contact.Id} of {end}", ["AWG"] = wire.Id, ["I"] = current, ["thinnest"] = contact.Id, ["thickest"] = contact.Id, ["Ic"] = contact.Id });
        }
    }

    private void CheckProtection(WirePart wire)
    {
        if (state.Protection is not { } protection)
        {
            return;
        }

        Outcome? worst = null;
        foreach (var c in Conditions)
        {
            var outcome = memo.Run<BreakerWire, BreakerWireInput>(new(protection.Rating, wire.Gauge, c.Rating(wire), c.At.Ambient, c.At.Altitude, c.Wires, c.Loading, WiringContext.MaterialOf(wire)));
            worst = worst is null || outcome.Verdict > worst.Verdict ? outcome : worst;
        }

        if (worst is not null)
        {
            // Rounded down: a breaker of the rounded figure must still hold.
            var most = worst.Broken.IsEmpty ? "" : Current.Of(Math.Floor(worst.Broken[0].Limit.Value * 10) / 10, "A").ToString();
            Add(worst, "breaker", () => $"Fit a breaker of at most {most} as {protection.Breaker}, or use a thicker wire.",
                () => new Dictionary<string, string>(StringComparer.Ordinal) { ["Ib"] = $"breaker {protection.Breaker}", ["AWG"] = wire.Id, ["TR"] = wire.Id });
        }
    }

    // A circuit on no feed whose current is stated: what else lies on its way is not known, but it alone may not drop more than the whole.
    private void CheckDrop(WirePart wire)
    {
        if (state.Shares.Count == 0 && state.Current > Current.Zero && state.Length is { } length && tightest is { } at && allowed is { } limit && state.Current <= limit)
        {
            var duty = state.Circuit.Duty == Model.Duty.Intermittent ? Calculations.Wiring.Duty.Intermittent : Calculations.Wiring.Duty.Continuous;
            var leg = new DropLeg(length, state.Current, limit, at.At.Ambient, at.Rating(wire), wire.Gauge, wire.Resistance, WiringContext.MaterialOf(wire));
            var outcome = memo.Run<VoltageDrop, VoltageDropInput>(new([leg], context.StrictestNominal, duty));
            Add(outcome, "drop", () => $"Use a wire thicker than {wire.Gauge} AWG, or a shorter way.", () => new Dictionary<string, string>(StringComparer.Ordinal) { ["V"] = "lowest bus voltage of the aircraft, as no feed runs through the circuit" });
        }
    }

    // The sheet of the size stands beside every 'auto' circuit; it is a finding only when nothing serves, as its checks stand on their own sheets.
    private void ShowSize()
    {
        if (!state.IsAuto || state.RouteFinding is { Severity: Verdict.Fails })
        {
            return;
        }

        if (context.Candidates.IsEmpty)
        {
            findings.Add(new("wire-size", Verdict.CannotTell, state.Subject, $"The parts catalogue has no wire of family '{context.Defaults.Family}'.", "", Stated, "Add wires of the family, or name another in the change.", state.Path));
            return;
        }

        var conditions = Sizing.Conditions(state, context, b => state.Start < 0 ? BundleDerating.Curves[0] : b.StartLoading).ToArray();
        if (conditions.Length == 0)
        {
            return;
        }

        var governing = conditions.MaxBy(c => Sizing.Choose(state, context, memo, c) is >= 0 and var index ? index : int.MaxValue);
        var input = Sizing.Input(state, context, governing);
        var outcome = memo.Run<WireSize, WireSizeInput>(wire is not null && WireSize.Choose(input) is null ? input with { Limit = null, Candidates = [new(wire.Gauge, wire.Resistance)] } : input);
        shown.Add(new Shown($"{state.Subject}/size", outcome));
        if (wire is null && Findings.Of(outcome, state.Subject, state.Path, SizeRemedy(outcome), "wires that serve") is { } finding)
        {
            findings.Add(finding);
        }
    }

    private string SizeRemedy(Outcome outcome)
    {
        var table = outcome.Work().Tables.FirstOrDefault(t => t.Title == "Candidates");
        var why = table is null || table.Rows.IsEmpty ? "" : $"The thickest, {table.Rows[^1][0]} AWG: {table.Rows[^1][^1].ToString()!.TrimEnd('.')}. ";
        return $"{why}Add thicker wires to family '{context.Defaults.Family}', divide the current over several circuits, shorten the run, or use another bundle or contact.";
    }

    private string ThickerWire(WirePart wire, Condition at)
    {
        var material = WiringContext.MaterialOf(wire);
        var serves = WireTable.Sizes(material).Where(g => g > wire.Gauge)
            .FirstOrDefault(g => WireCurrent.Allowed(CurrentInput(wire with { Gauge = g }, at, null)) is { IsKnown: true } a && a.Value >= state.Current, wire.Gauge);
        return serves == wire.Gauge ? "Divide the current over several circuits, or use another bundle." : $"Use {serves} AWG, or put the circuit into another bundle.";
    }

    private Func<IReadOnlyDictionary<string, string>> Origins(WirePart wire, Condition at)
    {
        var (zone, altitude) = (state.Bundles.IsEmpty ? $"raceway point {at.Where}" : $"segment {at.Where}", at.At.Altitude == WiringContext.CabinAltitude ? "pressurised zone: cabin altitude, common practice" : "ceiling of the aircraft");
        var (bundle, current) = ($"bundle {state.Circuit.Bundle} in {at.Where}", CurrentOrigin());
        return () => new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["AWG"] = wire.Id, ["TR"] = at.Rating(wire) < wire.Rating ? $"lowest rating in {bundle}" : wire.Id, ["T1"] = zone, ["alt"] = altitude, ["N"] = bundle, ["p"] = $"{bundle}: see its loading", ["I"] = current, ["Imax"] = "see its current sheet", ["conductor"] = wire.Id,
        };
    }

    private void Add(Outcome outcome, string name, Func<string> remedy, Func<IReadOnlyDictionary<string, string>> origins)
    {
        shown.Add(new Shown($"{state.Subject}/{name}", outcome, origins));
        if (outcome.Verdict != Verdict.Holds && !InLoop && Findings.Of(outcome, state.Subject, state.Path, remedy()) is { } finding
            && !findings.Any(f => f.Rule == finding.Rule && f.Message == finding.Message))
        {
            findings.Add(finding);
        }
    }

    private string CurrentOrigin() => state.Shares.Count > 0 && !(state.Circuit.Current >= state.Current) ? string.Join("; ", state.Shares.Select(s => $"{s.Current.As("A")} of {s.Feed.Feed.Id} ({s.Feed.CurrentOrigin})"))
        : state.Circuit.Current is not null ? "stated for the circuit" : "signal: taken as 0 A";

    private CircuitResult Result(int cableMembers)
    {
        var perLength = state.Cable is { } cable ? cable.Mass / cableMembers : state.Coax?.Mass ?? wire?.Mass ?? default;
        var drop = wire is not null && hot is { } t && state.Length is { } length && Supply.ColdOf(wire, length) is { } cold
            ? state.Current * cold * WireTable.HotFactor(WiringContext.MaterialOf(wire), t) : (Voltage?)null;
        var known = state.RouteFinding is null && (state.Coax is not null || (wire is not null && (state.Bundles.IsEmpty || state.Bundles.All(b => b.FinalLoading is not null))));
        return new CircuitResult(
            state.Circuit, findings.Select(f => f.Severity).Append(known ? Verdict.Holds : Verdict.CannotTell).Max(), state.Way, state.Length, state.LengthOrigin,
            state.IsAuto ? wire?.Id ?? "" : state.Circuit.Wire, wire, state.IsAuto && wire is not null, state.Current, CurrentOrigin(), allowed, hot, drop,
            state.FromContact, state.ToContact, perLength * (state.Length ?? default), context.Raceways.Centre(state.Way, state.Spread.Along, state.Spread.From, state.Spread.To))
        {
            Shortest = state.Free?.Length,
            Cut = state.Length is { } cut ? cut + context.Defaults.CutAllowance : null,
        };
    }
}
