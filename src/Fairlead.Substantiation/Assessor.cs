using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Balance;
using Fairlead.Substantiation.Environment;
using Fairlead.Substantiation.Interconnect;
using Fairlead.Substantiation.Power;
using Fairlead.Substantiation.Radio;
using Fairlead.Substantiation.Structure;
using Fairlead.Substantiation.Survey;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation;

/// <summary>Assesses jobs. Keeps what it worked out, so that assessing a job again after an edit costs only what the edit changed.
/// Not safe for use by several threads at once.</summary>
public sealed class Assessor
{
    private const int MostTerminals = 4;
    private static readonly Source Studs = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "11-174 b");
    private static readonly Source Contacts = new("This job", "", "circuits", Basis.Stated);

    private readonly Memo memo = new();
    private readonly WiringStage wiring;
    private readonly InterconnectStage interconnect;
    private PowerWork? power;
    private RadioWork? radio;
    private StructureWork? structure;
    private Assessment? last;

    /// <summary>An assessor that knows nothing yet.</summary>
    public Assessor() => (wiring, interconnect) = (new WiringStage(memo), new InterconnectStage(memo));

    /// <summary>Calculations run so far. Sheets worked again to be shown do not count.</summary>
    public long Runs => memo.Runs;

    /// <summary>Assesses a job.</summary>
    public Assessment Assess(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (ReferenceEquals(last?.Job, job))
        {
            return last;
        }

        memo.Capacity = Math.Max(4096, 8 * (job.Change.Circuits?.Count ?? 0));
        wiring.Update(job);
        power = power?.Serves(job) == true ? power : new PowerWork(job, memo);
        structure = structure?.Serves(job) == true ? structure : new StructureWork(job, memo);
        return last = Assemble(job);
    }

    private Assessment Assemble(Job job)
    {
        var findings = new List<Finding>();
        var shown = new List<ImmutableArray<Shown>>();
        var circuits = ImmutableArray.CreateBuilder<CircuitResult>(wiring.Circuits.Count);
        foreach (var circuit in wiring.Circuits)
        {
            circuits.Add(circuit.Work!.Result);
            findings.AddRange(circuit.Work.Findings.AsSpan());
            shown.Add(circuit.Work.Shown);
        }

        foreach (var feed in wiring.Feeds)
        {
            findings.AddRange(feed.Work!.Findings.AsSpan());
            shown.Add(feed.Work.Shown);
        }

        findings.AddRange(wiring.Bundles.Select(b => b.Work!.Finding).Concat(wiring.Fills.Select(f => f.Finding)).OfType<Finding>());
        shown.Add([.. wiring.Bundles.Select(b => b.Work!.Shown).Concat(wiring.Fills.Select(f => f.Shown)).OfType<Shown>()]);
        findings.AddRange(wiring.Crowded.Select(Twice));
        findings.AddRange(wiring.Studs.Where(s => s.Circuits > 0 && s.Stud.Terminals + s.Circuits > MostTerminals).Select(s => Full(job, s.Stud, s.Circuits)));
        findings.AddRange(power!.Findings);
        shown.Add([.. power.Shown]);
        var results = circuits.MoveToImmutable();
        ImmutableArray<FeedResult> feeds = [.. wiring.Feeds.Select(f => f.Work!.Result)];
        var survey = new SurveyWork(job, memo, results, feeds);
        findings.AddRange(survey.Findings);
        shown.Add([.. survey.Shown]);
        interconnect.Update(job, results);
        findings.AddRange(interconnect.Findings.AsSpan());
        shown.Add(interconnect.Shown);
        radio = RadioWork.Of(job, memo, results, interconnect.Nets, radio);
        findings.AddRange(radio.Findings);
        shown.Add([.. radio.Shown]);
        findings.AddRange(structure!.Findings);
        shown.Add([.. structure.Shown]);
        var equipment = EquipmentList.Of(job);
        var balance = new BalanceWork(job, memo, results, equipment);
        findings.AddRange(balance.Findings);
        shown.Add([.. balance.Shown]);
        var environment = new EnvironmentWork(job, memo, wiring.Bundles.Select(b => b.Segment).Distinct(StringComparer.Ordinal));
        findings.AddRange(environment.Findings);
        shown.Add([.. environment.Shown]);
        return new Assessment(job, Findings.Settle(findings, job.Change.Concessions.OrEmpty()), new Lazy<ImmutableArray<SubjectSheet>>(() => [.. shown.SelectMany(s => s).Select(s => s.Sheet())]))
        {
            Circuits = results,
            Feeds = feeds,
            Bundles = [.. wiring.Bundles.Select(b => b.Work!.Result)],
            SourceLoads = power.SourceLoads,
            BusLoads = power.BusLoads,
            BreakerLoads = power.BreakerLoads,
            Batteries = power.Batteries,
            EmptyBefore = balance.Before,
            EmptyAfter = balance.After,
            MassOut = balance.Lines.Removed,
            MassIn = balance.Lines.Fitted,
            LoadingBefore = balance.LoadingBefore,
            LoadingAfter = balance.LoadingAfter,
            Equipment = equipment,
        };
    }

    private static Finding Full(Job job, GroundStud stud, int circuits) => new(
        "stud-full", Verdict.Caution, $"ground/{stud.Id}", $"{NumberFormat.Text(stud.Terminals + circuits)} terminals stand on {stud.Id}: {NumberFormat.Text(stud.Terminals)} from before and {NumberFormat.Text(circuits)} new ones. No more than four belong on one stud.", "",
        Studs, "Take circuits to another stud, or join studs by a small metal bus; a ground block takes what its maker says, by concession.", $"{(job.Change.Grounds?.Find(stud.Id) is null ? "aircraft" : "change")}/grounds/{stud.Id}");

    private static Finding Twice((Endpoint Contact, CircuitState[] Circuits) crowded) => new(
        "contact-used-twice", Verdict.Fails, $"contact/{crowded.Contact}", $"{string.Join(" and ", crowded.Circuits.Select(c => c.Circuit.Id))} end on one contact, {crowded.Contact}.", "",
        Contacts, "Give each circuit a contact of its own, or join them at a splice or terminal.", crowded.Circuits[1].Path);
}
