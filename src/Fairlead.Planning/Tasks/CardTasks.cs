using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Planning.Tasks;

/// <summary>A task for each test card, under the card's own id: what is planned, printed, measured and required at release is one and the same.</summary>
internal static class CardTasks
{
    /// <summary>Adds the task of a card. While something radiates a second person stands outside and keeps people clear.</summary>
    public static JobTask Add(Draft draft, TestCard card, string zone, Sequence<string> panels, string source, IEnumerable<Wait> after)
    {
        var (kind, activity, crew, instrument) = Of(card);
        crew = card.Radiates ? [.. crew, Skills.Access] : crew;
        var count = card.Kind == TestKind.Continuity ? card.Lines.Count : 1;
        var named = draft.Change.Tests.Each().Where(t => "TEST-" + t.Id == card.Id).SelectMany(t => t.Instruments).Where(i => i != "none");
        return draft.Add(
            new JobTask(card.Id, kind, card.Title, zone, draft.Labour.For(activity) * count, crew, source)
            {
                Card = card, Panels = panels, Authorisation = Skills.Authorisation(crew[0]), Cautions = card.Cautions, Independent = card.SecondPerson,
                Outside = card.Stage == WorkStage.Outside, Tools = named.Concat(draft.Instruments(instrument)).Distinct(StringComparer.Ordinal).ToSequence(),
            },
            after);
    }

    // What it is as work, its row of the labour table, who does it, and what the instrument measures.
    private static (TaskKind Kind, string Activity, Sequence<string> Crew, Sequence<string> Instrument) Of(TestCard card) => card.Kind switch
    {
        TestKind.Visual => (TaskKind.Inspect, "visual", [Skills.Electrical], []),
        TestKind.Bonding => (TaskKind.HarnessCheck, "bond-check", [Skills.Electrical], ["bonding resistance"]),
        TestKind.Continuity => (TaskKind.HarnessCheck, "continuity", [Skills.Electrical, Skills.Electrical], ["continuity"]),
        TestKind.Isolation => (TaskKind.HarnessCheck, "isolation", [Skills.Electrical], ["insulation resistance"]),
        TestKind.Coax => (TaskKind.HarnessCheck, "coax-check", [Skills.Avionics], ["cable loss"]),
        TestKind.Power => (TaskKind.PrePower, "pre-power", [Skills.Electrical], ["voltage"]),
        TestKind.Connect => (TaskKind.Test, "first-power", [Skills.Avionics], ["current"]),
        TestKind.Settings => (TaskKind.Configure, "configure", [Skills.Configuration], []),
        _ when card.Id == "COMPASS" => (TaskKind.Test, "compass-swing", [Skills.Avionics, Skills.Avionics], []),
        _ when card.Id.StartsWith("ALT-", StringComparison.Ordinal) => (TaskKind.Test, "altitude", [Skills.Avionics], []),
        _ when card.Id.StartsWith("SYS-", StringComparison.Ordinal) => (TaskKind.Test, "function", [Skills.Avionics], []),
        _ when card.Id.StartsWith("SCEN-", StringComparison.Ordinal) => (TaskKind.Test, "test", [Skills.Avionics], ["traffic"]),
        _ when card.Id.StartsWith("XPDR-", StringComparison.Ordinal) || card.Id.StartsWith("RAMP-", StringComparison.Ordinal) => (TaskKind.Test, "test", [Skills.Avionics], ["transponder"]),
        _ => (TaskKind.Test, "test", [Skills.Avionics], []),
    };
}
