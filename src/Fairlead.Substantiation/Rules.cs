using System.Collections.Frozen;
using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Calculations.Environment;
using Fairlead.Calculations.Power;
using Fairlead.Calculations.Radio;
using Fairlead.Calculations.Structure;
using Fairlead.Calculations.Traffic;
using Fairlead.Calculations.Wiring;

namespace Fairlead.Substantiation;

/// <summary>Every rule a finding can name: those of the job's make-up, and the calculations, whose names are rules too.</summary>
public static class Rules
{
    /// <summary>All rules by id.</summary>
    public static ImmutableArray<Rule> All { get; } = [.. MakeUp().Concat(Interconnect()).Concat(Wiring()).Concat(Power()).Concat(Radio()).Concat(Traffic()).Concat(Structure()).Concat(Balance()).Concat(Environment()).Concat(Provision()).Concat(Plan()).OrderBy(r => r.Id, StringComparer.Ordinal)];

    private static FrozenDictionary<string, Rule> ById { get; } = All.ToFrozenDictionary(r => r.Id, StringComparer.Ordinal);

    /// <summary>The rule of an id, or null.</summary>
    public static Rule? Find(string id) => ById.GetValueOrDefault(id);

    private static IEnumerable<Rule> MakeUp() =>
    [
        new("balance-incomplete", "Masses missing", "Whether the mass and place of all that comes out and goes in are known, so that the empty weight after the change is whole", "Give circuits a way or a length, removed wire its place, and parts their mass."),
        new("box-voltage", "Voltage at the box", "Whether a box gets at least the voltage its maker asks for", "Use a thicker wire, or a shorter way."),
        new("box-overvoltage", "Voltage too great for the box", "Whether a box gets no more than the voltage its maker allows", "Feed it from a bus of its own voltage, or through a converter."),
        new("breakers-joined", "Breakers joined", "Whether each line is fed by one breaker only, so that opening it makes the line dead", "Give each breaker a line of its own."),
        new("breaker-max", "Breaker too great for the box", "Whether a breaker is no greater than the maker of the box allows", "Fit a smaller breaker."),
        new("bus-not-essential", "Bus lost with the generators", "Whether a new load that stays on after the loss of all generators stands on a bus that stays alive", "Feed it from an essential bus, or leave the condition out."),
        new("bus-not-supplied", "Bus without a source", "Whether every bus with loads is reached by a source or battery in the condition", "Add the feeder to the aircraft record, or the source to the condition."),
        new("coax-carries-power", "Power in a coaxial cable", "Whether power runs in wires", "Use a wire."),
        new("concession-unused", "Concession without a finding", "Whether every concession accepts a finding that is there", "Remove the concession, or correct its rule or subject."),
        new("contact-used-twice", "Contact used twice", "Whether each contact ends one circuit", "Give each circuit a contact of its own, or join them at a splice or terminal."),
        new("feeder-protection", "Feeder protection", "Whether the protection of a feeder carries the loads behind it", "Take load off the buses behind it."),
        new("lateral-unknown", "Buttock line unknown", "Whether the buttock line of the centre of gravity and both lateral limits are known where the aircraft has one", "Add what is missing to the aircraft record."),
        new("length-short", "Length too short", "Whether every circuit has a length, and one that is stated reaches along its way", "State the length with slack and terminations, or leave it out."),
        new("loading-unknown", "No loading stations", "Whether the aircraft record says how the aircraft may be loaded", "Add the loading stations and tanks of the flight manual."),
        new("meshed", "More than one way for the current", "Whether a feed's current has one way only, so that the share of each wire is known", "Open the loop, or work out by hand what each way carries and accept it by a concession."),
        new("network-voltage-low", "Voltage too low at the box", "Whether a box gets its least voltage with every load of the condition on, over the whole network", "Take load off the feeders and buses ahead of it, or make them or its wires thicker."),
        new("no-route", "No way for a circuit", "Whether the raceways lead from one end of a circuit to the other", "Add the missing raceway segment or point, lift a restriction of the circuit, or state its length."),
        new("power-input-unknown", "Power input unknown", "Whether the part has the power input that a feed names", "Name a power input of the part."),
        new("power-not-wired", "Power not wired", "Whether circuits lead from the breaker to every pin of a power input", "Add the circuits."),
        new("raceway-fill", "Raceway full", "Whether the wires of a segment fit into it", "Take circuits another way, or use thinner wires."),
        new("return-missing", "Return missing", "Whether circuits lead from every return pin to a ground stud", "Add the circuits."),
        new("stud-full", "Stud full", "Whether no more than four terminals stand on one stud", "Take circuits to another stud."),
        new("weighing-record", "Weighing record", "Whether the empty weight of the record follows from its own readings", "Correct the record or its readings; if in doubt weigh again."),
        new("wire-unknown", "Wire unknown", "Whether the parts catalogue has the wire that is named", "Name a wire of the catalogue."),
    ];

    /// <summary>Rules that only the plan of the work can judge.</summary>
    public static IEnumerable<Rule> Plan() =>
    [
        new("authorisation-on-day", "Authorisation on the day", "Whether somebody may sign for each task on the day it is done", "Renew the authorisation, or call in a person who holds it."),
        new("calibration-on-day", "Calibration on the day", "Whether tools and instruments are in calibration on the day they are used", "Have it calibrated, or book another."),
        new("cure-time", "Cure time unknown", "Whether the cure of each sealant is known at the temperature of the structure", "Keep the structure warmer, or add the cure times of the maker."),
        new("hours-apart", "Hours that never meet", "Whether those who do a task are at work at the same time for as long as it goes on without a pause", "Give one of them a shift that meets the others', or its skill to somebody who is there."),
        new("kit-day", "Day of the kit", "Whether the kit is judged for the day on which the plan opens the aircraft, or before", "State that day in the stock file, or begin the work later."),
        new("labour-unknown", "Labour time for nothing", "Whether each labour time of the job is that of an activity or a task", "Name an activity or a task."),
        new("own-inspection", "Own work inspected", "Whether somebody else than who does the work looks at it before it is covered", "Give one of both to another person, or call in a second inspector."),
        new("promised-date", "Promised day", "Whether the plan keeps the promised day, and is likely to", "See what holds the finish and what one more person would buy, or agree another day."),
        new("ramp-hours", "Hours of the ramp too short", "Whether the hours of the ramp hold a whole quarter of an hour, in which the plan counts, and meet the shifts of those who test outside", "State hours of the ramp that are long enough for the tests outside."),
        new("sealant-life", "Sealing longer than a mix lasts", "Whether sealing that goes on without a pause ends within the application life of its sealant", "Split the work so that each part takes its own mix, or name a sealant with a longer application life."),
        new("second-person", "No second person", "Whether a second person can sign where one is due", "Call in a second person who is authorised; nobody signs twice."),
        new("skill-missing", "Skill nobody has", "Whether the people of the job can man each task", "Give the skill to a person who has it, or call somebody in."),
    ];

    private static IEnumerable<Rule> Interconnect() =>
    [
        new("coax-ends", "Ends of a coaxial cable", "Whether radio frequency runs in coaxial cables, and nothing else in them", "Correct the end, or the kind of wire."),
        new("connector-exchange", "Connectors that can be exchanged", "Whether connectors of one item that lie side by side differ in shell, insert, contacts or keying", "Order one of them with another keying."),
        new("connector-keying", "Keying of a connector", "Whether the harness half is keyed as the half on the item", "Order the harness half in the keying of the item."),
        new("connector-layout", "Layout of a connector", "Whether the layout of a connector half places each of its cavities once, and no other", "Correct the layout, or leave it out."),
        new("connector-mate", "Connector halves that do not mate", "Whether the harness half mates with the half on the item: part, plug to receptacle, shell size, insert arrangement, pins to sockets", "Name the harness half that the installation manual calls for."),
        new("discrete-sense", "Senses of a discrete", "Whether output and input of a discrete mean the same by it", "Correct the end of the circuit, or the contact in the part."),
        new("driver-many", "Several drivers on a line", "Whether one output drives a line", "Leave one output on the line."),
        new("driver-none", "No driver on a line", "Whether something drives each input that is wired", "Join it to an output."),
        new("pair-apart", "Pair kept apart", "Whether circuits twisted together or sharing a cable run the same way in the same bundle", "Give them the same ends, way and bundle."),
        new("pair-not-twisted", "Data bus not twisted", "Whether both legs of a balanced data bus are a twisted pair", "Use a twisted shielded cable for both legs."),
        new("pair-single", "Twisted with nothing", "Whether a twisted circuit has its fellow", "Give both circuits of the pair the same name."),
        new("pin-open", "Required contact open", "Whether every contact that must be wired is", "Add the circuit."),
        new("pin-reserved", "Reserved contact wired", "Whether contacts that must stay unconnected do", "Take the circuit off the contact."),
        new("pin-undeclared", "Contact not described", "Whether the part describes every contact that is wired", "Add the contact to the part, or correct the circuit."),
        new("redundant-breaker", "Redundant items on one breaker", "Whether items that back each other up have breakers of their own", "Feed them from breakers of their own."),
        new("redundant-bundle", "Redundant items in one bundle", "Whether items that back each other up have bundles of their own", "Give their circuits different bundles and ways."),
        new("redundant-connector", "Redundant items through one connector", "Whether the lines of items that back each other up go through connectors of their own", "Take the lines of one of them through another connector."),
        new("redundant-way", "Redundant ways in one segment", "Whether circuits that back each other up take different segments", "Add a segment, or place one of them elsewhere."),
        new("separation-class", "Classes that must keep apart meet", "Whether circuits of separation classes that stay apart take different segments", "Add a segment for one of the classes."),
        new("redundant-bus", "Redundant items on one bus", "Whether items that back each other up stand on different buses", "Feed them from different buses."),
        new("shield-absent", "Shield that is not there", "Whether a wire whose shield is to be grounded has one", "Use a shielded cable."),
        new("shield-ends", "Shield grounded at the wrong ends", "Whether shields are grounded at both ends on data buses that want it, and at one end on audio", "Follow the installation manual."),
        new("shield-open", "Shield grounded nowhere", "Whether every shield is grounded somewhere", "Say at which ends the shield is grounded."),
        new("signal-kinds", "Signals that do not go together", "Whether the contacts that circuits join are of kinds that go together", "Correct the end of the circuit."),
        new("signal-leg", "Legs of a pair crossed", "Whether like legs are joined", "Correct the ends of the pair."),
        new("signal-standard", "Different data standards", "Whether data of one standard and speed are joined", "Correct the end of the circuit, or the contact in the part."),
        new("suppression-alone", "Suppression line with one box", "Whether a mutual suppression line joins at least two boxes", "Join it to every box that sends pulses in the same band."),
        new("strap-forbidden", "Strap that must not be there", "Whether contacts set open are open", "Remove the strap."),
        new("strap-missing", "Strap missing", "Whether contacts set strapped are strapped", "Add the strap."),
    ];

    private static IEnumerable<Rule> Wiring() =>
    [
        Of<BreakerWire, BreakerWireInput>("Fit a smaller breaker, or use a thicker wire."),
        Of<BundleDiameter, BundleDiameterInput>("Take circuits another way."),
        Of<BusLoading, BusLoadingInput>("Leave one transmitter on the line and no more receivers than its standard allows."),
        Of<BundleLoading, BundleLoadingInput>("Split the bundle, move circuits to another one, or use thicker wires."),
        Of<ConductorTemperature, ConductorTemperatureInput>("Use a thicker wire."),
        Of<ContactFit, ContactFitInput>("Use a wire that the contact takes, another contact, or several contacts."),
        Of<SpareContacts, SpareContactsInput>("Take circuits to another connector."),
        Of<VoltageDrop, VoltageDropInput>("Use a thicker wire, or a shorter way."),
        Of<WireCurrent, WireCurrentInput>("Use a thicker wire, divide the current over several circuits, or use another bundle."),
        Of<WireSize, WireSizeInput>("Add thicker wires to the family, divide the current, shorten the run, or use another bundle or contact."),
    ];

    private static IEnumerable<Rule> Power() =>
    [
        Of<BatteryEndurance, BatteryEnduranceInput>("Shed loads earlier, feed the new ones from a bus that is shed, or fit a greater battery."),
        Of<Calculations.Power.BreakerLoad, BreakerLoadInput>("Move a load to another breaker, or fit a greater breaker if its wires allow it."),
        new("source-resistance-unknown", "Resistance of a source missing", "Whether every source states what limits its short-circuit current", "Add its internal resistance."),
        new("trip-curve-unknown", "Trip times missing", "Whether breakers and the protection of feeders state their trip times", "Add the trip times from the maker's curve."),
        Of<Calculations.Network.ShortSurvey, Calculations.Network.ShortSurveyInput>("Use a thicker wire, a faster breaker, or slower protection ahead of it."),
        Of<Calculations.Network.VoltageSurvey, Calculations.Network.VoltageSurveyInput>("Correct the resistances or loads of the power system."),
        Of<FeederDrop, FeederDropInput>("Use a thicker or shorter feeder."),
        Of<LoadAnalysis, LoadAnalysisInput>("Take loads off the source, or fit monitoring or a greater source."),
        Of<LoadChange, LoadChangeInput>("Correct the loads that come out."),
        Of<SheddingTimeline, SheddingTimelineInput>("Shed loads earlier, feed the new ones from a bus that is shed, or fit a greater battery."),
    ];

    private static IEnumerable<Rule> Radio() =>
    [
        new("antenna-place", "Two antennas in one place", "Whether every antenna has a place of its own", "Correct the place of one of them."),
        new("antenna-spacing", "Spacing of antennas", "Whether an antenna stands as far from those that transmit as its maker asks", "Move the antennas apart."),
        new("coax-bend", "Bend radius of a coaxial cable", "Whether every coaxial cable states its least bend radius", "Add the bend radius from the cable's sheet."),
        new("coax-impedance", "Impedance along a coaxial line", "Whether the cables of a line have one impedance", "Use cables of one impedance."),
        new("radio-unknown", "Radio data missing", "Whether what a box transmits and receives through an antenna is known", "Add it to the radios of the box's part."),
        Of<AntennaIsolation, AntennaIsolationInput>("Move the antennas apart, or measure their isolation."),
        Of<CoaxDelay, CoaxDelayInput>("Correct the velocity of the cable."),
        Of<CoaxLoss, CoaxLossInput>("Use a cable of less loss, or a shorter way."),
        Of<CoaxSeries, CoaxSeriesInput>("Use cables of less loss, or a shorter way."),
        Of<CoaxWindow, CoaxWindowInput>("Cut the cable to a length within the window."),
        Of<GroundPlane, GroundPlaneInput>("Move the antenna away from the edge of the skin, or add conducting skin."),
        Of<Harmonics, HarmonicsInput>("Add a test that names the box among its receivers."),
        Of<MatchedPair, MatchedPairInput>("Cut the cables of the set to one length."),
        Of<NearField, NearFieldInput>("Put the test antenna further away, or couple by cable."),
        Of<RampTest, RampTestInput>("Give either a level or a range, from at least three wavelengths away."),
        Of<SurveillanceRange, SurveillanceRangeInput>("Use cables of less loss."),
    ];

    private static IEnumerable<Rule> Traffic() =>
    [
        new("traffic-unknown", "Traffic sensor not known", "Whether it is known what the sensor of a scenario shows of traffic", "Add 'traffic' to its part, or name the traffic sensor."),
        Of<AltitudeCode, AltitudeCodeInput>("Correct the altitude that the ramp test sets."),
        Of<BusWord, BusWordInput>("Correct the altitude that the ramp test sets."),
        Of<ModeSReply, ModeSReplyInput>("Correct address, code, identification or position that the ramp test sets."),
        Of<Squawk, SquawkInput>("Correct the code that the ramp test sets."),
        Of<TrafficScenario, TrafficScenarioInput>("Correct the target, or what the scenario expects of it."),
    ];

    private static IEnumerable<Rule> Structure() =>
    [
        new("edge-distance", "Edge distance of screws", "Whether screws stand at least twice their diameter from the edge of the sheet", "Move the screws in from the edge."),
        new("fixing-count", "Screws and holes", "Whether a screw goes into every mounting hole", "Fit a screw in every hole, or correct the number."),
        new("fixing-hole", "Screw thicker than its hole", "Whether screws go through the mounting holes", "Use a thinner screw."),
        new("fixing-thread", "Screw and anchor nut", "Whether screws go into the threads of their anchor nuts", "Use the anchor nut of the screw's thread."),
        new("inertia-basis", "Certification basis not known", "Whether inertia factors follow from the certification basis", "Name rule and amendment, or state the load factors of the approved data."),
        new("pressurised-skin", "Antenna on a pressurised skin", "Whether pressure and fatigue around the opening are judged", "Take the installation from approved data of the type."),
        new("structure-incomplete", "Data of structure missing", "Whether the job states what the structure is judged by", "Add it from the maker's data, the approved data or the structural repair manual."),
        Of<AnchorNut, AnchorNutInput>("Use a stronger anchor nut, or one with its rivets further apart."),
        Of<AntennaDoubler, AntennaDoublerInput>("Use a thicker or wider doubler, or more rivets."),
        Of<AntennaDrag, AntennaDragInput>("Correct the areas of the antenna or the design speeds."),
        Of<BondingResistance, BondingResistanceInput>("Ask for no more than the published limit."),
        Of<CountersinkDepth, CountersinkDepthInput>("Use rivets with protruding heads, or dimple the sheet."),
        Of<FastenerGroup, FastenerGroupInput>("Use more or stronger screws, or spread them further."),
        Of<GripLength, GripLengthInput>("Use a screw of another length."),
        Of<InertiaLoads, InertiaLoadsInput>("State the load factors of the approved data."),
        Of<ManoeuvreFactor, ManoeuvreFactorInput>("State the load factors of the approved data."),
        Of<PanelBending, PanelBendingInput>("Stiffen the sheet under the item."),
        Of<RivetLength, RivetLengthInput>("Use a rivet of the length that suits the grip."),
        Of<SharedTray, SharedTrayInput>("Fit an item elsewhere, or strengthen the structure by approved data."),
        Of<SkinMoment, SkinMomentInput>("Fit a thicker doubler that reaches frames or stringers, or move the antenna to one."),
        Of<SheetBearing, SheetBearingInput>("Use more or thicker screws, thicker sheet or a doubler, or move the screws in from the edge."),
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

    private static IEnumerable<Rule> Provision() =>
    [
        new("calibration-expired", "Calibration ends before use", "Whether crimp tools and test gear are calibrated on the use date", "Have it calibrated, or name another."),
        new("kit-incomplete", "Kit not whole", "Whether the job states everything the kit is made from", "Add it to the parts, the change or the stock."),
        new("kit-shortage", "Shortage", "Whether everything the change needs is on hand, spares included", "Get what is missing, or correct the stock."),
        new("letters-unknown", "Circuit function letters unknown", "Whether the circuit function letters stand in the table of the aircraft", "Use letters of the table, or add them to it."),
        new("mark-not-unique", "One mark on two wires", "Whether every wire has a mark of its own", "Give one of them another number or a mark of its own."),
        new("stock-expired", "Shelf life ends before use", "Whether stock with a shelf life may be used on the use date", "Get a fresh lot."),
    ];

    private static IEnumerable<Rule> Environment() =>
    [
        new("environment-data", "Data of a place missing", "Whether everything is known that tells whether a place suits what is fitted there", "Add the datum."),
        Of<BayHeat, BayHeatInput>("Move equipment to another zone, let air through the bay, or fit equipment for higher temperatures."),
        Of<CompassDistance, CompassDistanceInput>("Move the item away from the compass, or the compass away from it."),
        Of<LineClearance, LineClearanceInput>("Take the circuits another way, or move and clamp the bundle so that it keeps clear."),
        Of<QualificationMatch, QualificationMatchInput>("Fit equipment qualified for the zone, place it in a milder one, or have the difference assessed."),
    ];

    private static Rule Of<TCalculation, TInput>(string mend)
        where TCalculation : ICalculation<TInput>
        where TInput : notnull => new(TCalculation.Info.Name, TCalculation.Info.Title, TCalculation.Info.Purpose, mend);
}
