using System.Collections.Immutable;
using Fairlead.Model;

namespace Fairlead.Substantiation.Tests;

/// <summary>All test cards of a job, in the safe order, and the harnesses that faults are looked for in.</summary>
/// <param name="Cards">The cards.</param>
/// <param name="Harnesses">The harness of each connector.</param>
public sealed record TestPlan(ImmutableArray<TestCard> Cards, ImmutableArray<HarnessUnderTest> Harnesses)
{
    /// <summary>What every card defers to.</summary>
    public const string Advice = "Limits of the approved data and of the equipment's own manuals come before these. Licensed staff decide, by them and by what they see.";

    /// <summary>The plan of an assessed job.</summary>
    public static TestPlan Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        var takeOff = new HarnessTakeOff(assessment);
        var (items, systems, harness) = (new ItemCards(assessment), new SystemCards(assessment), new HarnessCards(takeOff));
        TestCard[] cards =
        [
            .. items.Visual(takeOff.Connectors), .. items.Bonding(), .. takeOff.Connectors.SelectMany(harness.Of), .. systems.Coax(), .. items.Power(takeOff.Connectors),
            .. items.Connect(), .. items.Settings(), .. systems.Systems(), .. SideCards.Of(assessment), .. systems.Ramp(),
        ];

        // The aircraft is tested as found before anything is touched; the rest is in the safe order of the kinds.
        return new TestPlan([.. cards.OrderBy(c => c.Stage != WorkStage.Before).ThenBy(c => c.Kind)], takeOff.Connectors);
    }

    /// <summary>The card of an id, or null.</summary>
    public TestCard? Find(string id) => Cards.FirstOrDefault(c => c.Id == id);
}
