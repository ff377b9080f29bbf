using System.Collections.Frozen;
using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Calculations.Power;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Substantiation;

/// <summary>Every rule a finding can name: those of the job's make-up, and the calculations, whose names are rules too.</summary>
public static class Rules
{
    /// <summary>All rules by id.</summary>
    public static ImmutableArray<Rule> All { get; } = [.. MakeUp().Concat(Wiring()).Concat(Power()).Concat(Balance()).OrderBy(r => r.Id, StringComparer.Ordinal)];

    private static FrozenDictionary<string, Rule> ById { get; } = All.ToFrozenDictionary(r => r.Id, StringComparer.Ordinal);

    /// <summary>The rule of an id, or null.</summary>
    public static Rule? Find(string id) => ById.GetValueOrDefault(id);

    private static IEnumerable<Rule> MakeUp() =>
    [
        new("balance-incomplete", "Masses missing", "Whether the mass of every circuit is known, so that the empty weight after the change is whole", "Give the circuits a way or a length."),
        new("box-voltage", "Voltage at the box", "Whether a box gets at least the voltage its maker asks for", "Use a thicker wire, or a shorter way."),
        new("breaker-max", "Breaker too great for the box", "Whether a breaker is no greater than the maker of the box allows", "Fit a smaller breaker."),
        new("bus-not-essential", "Bus lost with the generators", "Whether a new load that stays on after the loss of all generators stands on a bus that stays alive", "Feed it from an essential bus, or leave the condition out."),
        new("bus-not-supplied", "Bus without a source", "Whether every bus with loads is reached by a source or battery in the condition", "Add the feeder to the aircraft record, or the source to the condition."),
        new("coax-carries-power", "Power in a coaxial cable", "Whether power runs in wires", "Use a wire."),
        new("concession-unused", "Concession without a finding", "Whether every concession accepts a finding that is there", "Remove the concession, or correct its rule or subject."),
        new("contact-used-twice", "Contact used twice", "Whether each contact ends one circuit", "Give each circuit a contact of its own, or join them at a splice or terminal."),
        new("feeder-protection", "Feeder protection", "Whether the protection of a feeder carries the loads behind it", "Take load off the buses behind it."),
        new("lateral-unknown", "Buttock line unknown", "Whether the buttock line of the centre of gravity is known where the aircraft has lateral limits", "Add the buttock line to the weighing record."),
        new("loading-unknown", "No loading stations", "Whether the aircraft record says how the aircraft may be loaded", "Add the loading stations and tanks of the flight manual."),
        new("meshed", "More than one way for the current", "Whether a feed's current has one way only, so that the share of each wire is known", "Open the loop, or state the current of the circuits in it."),
        new("no-route", "No way for a circuit", "Whether the raceways lead from one end of a circuit to the other", "Add the missing raceway segment or point, lift a restriction of the circuit, or state its length."),
        new("power-input-unknown", "Power input unknown", "Whether the part has the power input that a feed names", "Name a power input of the part."),
        new("power-not-wired", "Power not wired", "Whether circuits lead from the breaker to every pin of a power input", "Add the circuits."),
        new("raceway-fill", "Raceway full", "Whether the wires of a segment fit into it", "Take circuits another way, or use thinner wires."),
        new("return-missing", "Return missing", "Whether circuits lead from every return pin to a ground stud", "Add the circuits."),
        new("weighing-record", "Weighing record", "Whether the empty weight of the record follows from its own readings", "Correct the record or its readings; if in doubt weigh again."),
        new("wire-unknown", "Wire unknown", "Whether the parts catalogue has the wire that is named", "Name a wire of the catalogue."),
    ];

    private static IEnumerable<Rule> Wiring() =>
    [
        Of<BreakerWire, BreakerWireInput>("Fit a smaller breaker, or use a thicker wire."),
        Of<BundleDiameter, BundleDiameterInput>("Take circuits another way."),
        Of<BundleLoading, BundleLoadingInput>("Split the bundle, move circuits to another one, or use thicker wires."),
        Of<ConductorTemperature, ConductorTemperatureInput>("Use a thicker wire."),
        Of<ContactFit, ContactFitInput>("Use a wire that the contact takes, another contact, or several contacts."),
        Of<FaultProtection, FaultProtectionInput>("Use a thicker wire, or a faster breaker."),
        Of<VoltageDrop, VoltageDropInput>("Use a thicker wire, or a shorter way."),
        Of<WireCurrent, WireCurrentInput>("Use a thicker wire, divide the current over several circuits, or use another bundle."),
        Of<WireSize, WireSizeInput>("Add thicker wires to the family, divide the current, shorten the run, or use another bundle or contact."),
    ];

    private static IEnumerable<Rule> Power() =>
    [
        Of<BatteryEndurance, BatteryEnduranceInput>("Shed loads earlier, feed the new ones from a bus that is shed, or fit a greater battery."),
        Of<Calculations.Power.BreakerLoad, BreakerLoadInput>("Move a load to another breaker, or fit a greater breaker if its wires allow it."),
        Of<FeederDrop, FeederDropInput>("Use a thicker or shorter feeder."),
        Of<LoadAnalysis, LoadAnalysisInput>("Take loads off the source, or fit monitoring or a greater source."),
        Of<LoadChange, LoadChangeInput>("Correct the loads that come out."),
        Of<SheddingTimeline, SheddingTimelineInput>("Shed loads earlier, feed the new ones from a bus that is shed, or fit a greater battery."),
    ];

    private static IEnumerable<Rule> Balance() =>
    [
        Of<EmptyWeightChange, EmptyWeightChangeInput>("Correct the masses of what comes out and goes in, or the weighing record."),
        Of<MacPosition, MacPositionInput>("Correct the chord of the aircraft record."),
        Of<NegligibleChange, NegligibleChangeInput>("Amend the weight and balance record."),
        Of<RecordRevision, RecordRevisionInput>("Establish mass and centre of gravity anew, by weighing or by the calculation of the pack."),
        Of<Weighing, WeighingInput>("Correct the readings of the weighing record."),
        Of<WorstLateral, WorstLateralInput>("Move equipment across, fit ballast, or exclude the loading by a placard or the loading instructions."),
        Of<WorstLoading, WorstLoadingInput>("Move equipment, fit ballast, or exclude the loading by a placard or the loading instructions of the flight manual supplement."),
    ];

    private static Rule Of<TCalculation, TInput>(string mend)
        where TCalculation : ICalculation<TInput>
        where TInput : notnull => new(TCalculation.Info.Name, TCalculation.Info.Title, TCalculation.Info.Purpose, mend);
}
