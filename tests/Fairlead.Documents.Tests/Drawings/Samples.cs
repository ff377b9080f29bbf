using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

/// <summary>Invented views that look like real ones.</summary>
internal static class Samples
{
    public static BalancePoint Point(double arm, double mass) => new(Length.Of(arm, "in"), Mass.Of(mass, "lb"));

    public static EnvelopeView Envelope { get; } = new(
        "X9-FLD: loadings against the approved envelope",
        [new("Normal category", [Point(180, 3600), Point(180, 5200), Point(184.5, 6300), Point(196, 6300), Point(196, 3600)])],
        [
            new("empty before", Point(183.2, 4012), EnvelopeMarkKind.EmptyBefore),
            new("empty after", Point(183.5, 4031.6), EnvelopeMarkKind.EmptyAfter),
            new("crew only, full fuel", Point(184.1, 5230), EnvelopeMarkKind.Loading),
            new("aftmost: cabin full, aft baggage full", Point(195.4, 6287), EnvelopeMarkKind.Loading),
            new("foremost: crew only, no fuel", Point(181.0, 4380), EnvelopeMarkKind.Loading),
            new("aft baggage first, fuel last", Point(196.7, 5810), EnvelopeMarkKind.Loading, Outside: true),
        ],
        [new("fuel burn", [Point(195.4, 6287), Point(193.8, 5600), Point(192.9, 5010)])]);

    public static LoadView Load { get; } = new(
        "Generator 1: load by operating condition, before and after the change",
        [
            new("Ground", Current.Of(41.2, "A"), Current.Of(44.9, "A"), Current.Of(160, "A")),
            new("Engine start", Current.Of(22.5, "A"), Current.Of(22.5, "A"), null),
            new("Take-off and climb", Current.Of(121.4, "A"), Current.Of(127.8, "A"), Current.Of(200, "A")),
            new("Cruise", Current.Of(118.0, "A"), Current.Of(124.4, "A"), Current.Of(200, "A")),
            new("Cruise in ice", Current.Of(187.3, "A"), Current.Of(203.7, "A"), Current.Of(200, "A")),
            new("Approach and landing", Current.Of(150.2, "A"), Current.Of(156.6, "A"), Current.Of(158, "A")),
            new("One generator", Current.Of(88.1, "A"), Current.Of(94.5, "A"), Current.Of(200, "A")),
        ]);

    public static TimelineView Timeline { get; } = new(
        "Battery discharge after the last generator is lost",
        Charge.Of(28.8, "Ah"),
        [
            new("before shedding", Duration.Of(0, "min"), Duration.Of(5, "min"), Current.Of(62, "A"), Charge.Of(23.63, "Ah")),
            new("cabin and galley shed", Duration.Of(5, "min"), Duration.Of(28, "min"), Current.Of(31, "A"), Charge.Of(11.75, "Ah")),
            new("approach, gear and lights", Duration.Of(28, "min"), Duration.Of(38, "min"), Current.Of(44, "A"), Charge.Of(4.42, "Ah")),
        ],
        Duration.Of(30, "min"));
}
