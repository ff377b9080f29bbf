using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Substantiation.Balance;
using Fairlead.Substantiation.Environment;
using Fairlead.Substantiation.Harness.Cutting;
using Fairlead.Substantiation.Harness.Identification;
using Fairlead.Substantiation.Harness.Routing;
using Fairlead.Substantiation.Interconnect;
using Fairlead.Substantiation.Kit;
using Fairlead.Substantiation.Power;
using Fairlead.Substantiation.Radio;
using Fairlead.Substantiation.Structure;
using Fairlead.Substantiation.Survey;
using Fairlead.Substantiation.Traffic;
using Fairlead.Substantiation.Wiring;

namespace Fairlead.Substantiation;

/// <summary>Assesses jobs. Keeps what it worked out, so that assessing a job again after an edit costs only what the edit changed.
/// Not safe for use by several threads at once.</summary>
public sealed class Assessor
{
    private const int MostTerminals = 4;
    private const int Disciplines = 8;
    private static readonly Source Studs = new("FAA AC 43.13-1B", "9/8/98 with CHG 1 of 9/27/01", "11-174 b");
    private static readonly Source Contacts = new("This job", "", "circuits", Basis.Stated);

    private readonly Memo memo;
    private readonly WiringStage wiring;
    private readonly InterconnectStage interconnect;
    private PowerWork? power;
    private RadioWork? radio;
    private TrafficWork? traffic;
    private StructureWork? structure;
    private BalanceWork? balance;
    private SurveyWork? survey;
    private ShortWork? shorts;
    private EnvironmentWork? environment;
    private readonly CutMemory cuts = new();
    private MarkWork? marks;
    private Provision? provision;
    private Assessment? last;

    /// <summary>An assessor that knows nothing yet.</summary>
    public Assessor()
        : this(new Memo())
    {
    }

    private Assessor(Memo memo) => (this.memo, wiring, interconnect) = (memo, new WiringStage(memo), new InterconnectStage(memo));

    /// <summary>Another assessor that begins with what this one knows. Several may begin with one, also at once, as long as it assesses nothing more itself.</summary>
    public Assessor Another() => new(new Memo(memo))
    {
        power = power, radio = radio, traffic = traffic, structure = structure, balance = balance, survey = survey, shorts = shorts, environment = environment, marks = marks, provision = provision, last = last,
    };

    /// <summary>Calculations run so far. Sheets worked again to be shown do not count.</summary>
    public long Runs => memo.Runs;

    /// <summary>Assesses a job.</summary>
    public Assessment Assess(Job job) => Assess(job, CancellationToken.None);

    /// <summary>Assesses a job, unless an end is asked for before. Nothing half done is kept: the job can be assessed again.</summary>
    /// <exception cref="OperationCanceledException">An end was asked for.</exception>
    public Assessment Assess(Job job, CancellationToken stop) => Assess(job, null, stop);

    /// <summary>Assesses a job and tells how far it is.</summary>
    /// <exception cref="OperationCanceledException">An end was asked for.</exception>
    public Assessment Assess(Job job, IProgress<WorkDone>? progress, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (ReferenceEquals(last?.Job, job))
        {
            return last;
        }

        memo.Capacity = Math.Max(4096, 8 * (job.Change.Circuits?.Count ?? 0));
        var watch = new Watch(stop, progress);
        wiring.Update(job, watch);
        power = power?.Serves(job) == true ? power : new PowerWork(job, memo);
        structure = structure?.Serves(job) == true ? structure : new StructureWork(job, memo);
        return last = Assemble(job, watch);
    }

    private Assessment Assemble(Job job, Watch watch)
    {
        var harvest = new Harvest();
        ImmutableArray<CircuitResult> circuits = [.. wiring.Circuits.Select(c => c.Work!.Result)];
        ImmutableArray<FeedResult> feeds = [.. wiring.Feeds.Select(f => f.Work!.Result)];
        var equipment = EquipmentList.Of(job);
        GatherWiring(job, harvest);
        harvest.Add(power!.Findings, power.Shown);
        Tell(watch, 1);
        survey = SurveyWork.Of(job, memo, circuits, feeds, survey);
        harvest.Add(survey.Findings, survey.Shown);
        Tell(watch, 2);
        shorts = ShortWork.Of(job, memo, circuits, feeds, shorts);
        harvest.Add(shorts.Findings, shorts.Shown);
        Tell(watch, 3);
        interconnect.Update(job, circuits);
        harvest.Add(interconnect.Findings, interconnect.Shown);
        Tell(watch, 4);
        radio = RadioWork.Of(job, memo, circuits, interconnect.Nets, radio);
        harvest.Add(radio.Findings, radio.Shown);
        Tell(watch, 5);
        traffic = TrafficWork.Of(job, memo, traffic);
        harvest.Add(traffic.Findings, traffic.Shown);
        harvest.Add(structure!.Findings, structure.Shown);
        Tell(watch, 6);
        balance = BalanceWork.Of(job, memo, circuits, equipment, balance);
        harvest.Add(balance.Findings, balance.Shown);
        Tell(watch, 7);
        environment = EnvironmentWork.Of(job, memo, [.. wiring.Segments.Select(s => s.Id)], environment);
        harvest.Add(environment.Findings, environment.Shown);
        Tell(watch, 8);
        marks = MarkWork.Of(job, circuits, marks);
        provision = new Provision(job, circuits, [.. wiring.Fills.Select(f => f.Use)], cuts, marks, watch, provision);
        harvest.Add(provision.Findings, []);
        return new Assessment(job, Findings.Settle(harvest.Findings, job.Change.Concessions.OrEmpty()), harvest.Sheets(), provision)
        {
            Circuits = circuits,
            Feeds = feeds,
            Bundles = Joined(wiring.Segments, s => s.Bundles),
            Routing = wiring.Routing,
            Segments = [.. wiring.Fills.Select(f => f.Use)],
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

    private static void Tell(Watch watch, int done) => watch.Tell("assessing", done, Disciplines, "disciplines");

    private void GatherWiring(Job job, Harvest harvest)
    {
        foreach (var circuit in wiring.Circuits)
        {
            harvest.Add(circuit.Work!.Findings, circuit.Work.Shown);
        }

        foreach (var feed in wiring.Feeds)
        {
            harvest.Add(feed.Work!.Findings, feed.Work.Shown);
        }

        harvest.Add(Joined(wiring.Segments, s => s.Findings), Joined(wiring.Segments, s => s.Shown));
        harvest.Add(wiring.Fills.Select(f => f.Finding).OfType<Finding>(), wiring.Fills.Select(f => f.Shown).OfType<Shown>());
        harvest.Add(RoutingFindings.Of(wiring.Clashes, wiring.Routing.Proved), []);
        harvest.Add(wiring.Crowded.Select(Twice), []);
        harvest.Add(wiring.Studs.Where(s => s.Circuits > 0 && s.Stud.Terminals + s.Circuits > MostTerminals).Select(s => Full(job, s.Stud, s.Circuits)), []);
    }

    // There may be many times more bundles than segments: their arrays are copied, not walked.
    private static ImmutableArray<T> Joined<T>(IReadOnlyCollection<SegmentState> segments, Func<SegmentState, ImmutableArray<T>> part)
    {
        var joined = ImmutableArray.CreateBuilder<T>(segments.Sum(s => part(s).Length));
        foreach (var segment in segments)
        {
            joined.AddRange(part(segment));
        }

        return joined.MoveToImmutable();
    }

    private static Finding Full(Job job, GroundStud stud, int circuits) => new(
        "stud-full", Verdict.Caution, $"ground/{stud.Id}", $"{NumberFormat.Text(stud.Terminals + circuits)} terminals stand on {stud.Id}: {NumberFormat.Text(stud.Terminals)} from before and {NumberFormat.Text(circuits)} new ones. No more than four belong on one stud.", "",
        Studs, "Take circuits to another stud, or join studs by a small metal bus; a ground block takes what its maker says, by concession.", $"{(job.Change.Grounds?.Find(stud.Id) is null ? "aircraft" : "change")}/grounds/{stud.Id}");

    private static Finding Twice((Endpoint Contact, CircuitState[] Circuits) crowded) => new(
        "contact-used-twice", Verdict.Fails, $"contact/{crowded.Contact}", $"{string.Join(" and ", crowded.Circuits.Select(c => c.Circuit.Id))} end on one contact, {crowded.Contact}.", "",
        Contacts, "Give each circuit a contact of its own, or join them at a splice or terminal.", crowded.Circuits[1].Path);

    // What the stages found, in their order. Sheets are worked only when somebody asks for them.
    private sealed class Harvest
    {
        private readonly List<ImmutableArray<Shown>> shown = [];

        public List<Finding> Findings { get; } = [];

        public void Add(IEnumerable<Finding> findings, IEnumerable<Shown> sheets)
        {
            Findings.AddRange(findings);
            Keep([.. sheets]);
        }

        public void Add(ImmutableArray<Finding> findings, ImmutableArray<Shown> sheets)
        {
            Findings.AddRange(findings.AsSpan());
            Keep(sheets);
        }

        public Lazy<ImmutableArray<SubjectSheet>> Sheets() => new(() => [.. shown.SelectMany(s => s).Select(s => s.Sheet())]);

        private void Keep(ImmutableArray<Shown> sheets)
        {
            if (!sheets.IsEmpty)
            {
                shown.Add(sheets);
            }
        }
    }
}
