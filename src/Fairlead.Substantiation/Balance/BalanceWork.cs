using System.Collections.Immutable;
using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Model;

namespace Fairlead.Substantiation.Balance;

/// <summary>Empty weight and worst loading, before and after the change.</summary>
internal sealed class BalanceWork
{
    private const string Record = "aircraft/weighing";
    private static readonly Source ThisJob = new("This job", "", "weighing record", Basis.Stated);

    private readonly Job job;
    private readonly Memo memo;
    private readonly ImmutableArray<CircuitResult> circuits;

    private BalanceWork(Job job, Memo memo, ImmutableArray<CircuitResult> circuits, ImmutableArray<EquipmentLine> equipment)
    {
        (this.job, this.memo, this.circuits) = (job, memo, circuits);
        var weighing = job.Aircraft.Weighing;
        Before = new EmptyWeight(weighing.Mass, weighing.Fs, weighing.Bl, weighing.Wl);
        Lines = BalanceLines.Of(job, circuits, equipment);
        CheckWeighing(weighing);
        After = Change();
        LoadingBefore = Loading("balance/loading-before", Before, null);
        LoadingAfter = After is null ? [] : Loading("balance/loading", After, LoadingBefore);
        Lateral();
    }

    /// <summary>The balance of a job; what is known already where nothing that has mass or sets a limit changed.</summary>
    public static BalanceWork Of(Job job, Memo memo, ImmutableArray<CircuitResult> circuits, ImmutableArray<EquipmentLine> equipment, BalanceWork? known) =>
        known?.Serves(job, circuits) == true ? known : new BalanceWork(job, memo, circuits, equipment);

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    public BalanceLines Lines { get; }

    public EmptyWeight Before { get; }

    public EmptyWeight? After { get; }

    public ImmutableArray<LoadingExtreme> LoadingBefore { get; }

    public ImmutableArray<LoadingExtreme> LoadingAfter { get; }

    private bool Serves(Job other, ImmutableArray<CircuitResult> others) => ReferenceEquals(job.Aircraft, other.Aircraft) && ReferenceEquals(job.Parts, other.Parts)
        && ReferenceEquals(job.Change.Fit, other.Change.Fit) && ReferenceEquals(job.Change.Remove, other.Change.Remove)
        && ReferenceEquals(job.Change.Antennas, other.Change.Antennas) && ReferenceEquals(job.Change.Breakers, other.Change.Breakers)
        && circuits.AsSpan().SequenceEqual(others.AsSpan(), SameMass.Instance);

    // A record that does not follow from its own readings has a slip in it somewhere; rounding to the pound and the tenth of an inch is usual.
    private void CheckWeighing(WeighingRecord record)
    {
        if (record.Points.Count == 0)
        {
            return;
        }

        var outcome = memo.Run<Weighing, WeighingInput>(
            new(
                record.Points.Select(p => new WeighingRow(p.Name, p.Scale, p.Fs, p.Tare, p.Bl)).ToSequence(),
                record.Adjustments.Select(a => new AdjustmentRow(a.Name, a.Mass, a.Fs, a.Bl)).ToSequence()),
            "W", "FS", "BL");
        Shown.Add(new Shown("balance/weighing", outcome));
        Add(Substantiation.Findings.Of(outcome, "balance/weighing", Record, "Correct the readings of the weighing record."));
        var (bl, inch) = (Coordinate(outcome.Value(2)), Length.Of(0.1, "in").Si);
        if (outcome.Value(0) is { } mass && outcome.Value(1) is { } fs
            && (Math.Abs(mass - record.Mass.Si) > Mass.Of(1, "lb").Si || Math.Abs(fs - record.Fs.Si) > inch || (bl is { } a && record.Bl is { } b && Math.Abs(a.Si - b.Si) > inch)))
        {
            static string Across(Length? x) => x is { } line ? $", buttock line {line.As("in")}" : "";
            Findings.Add(new(
                "weighing-record", Verdict.Fails, "balance/weighing", "The empty weight of the record does not follow from its own readings.",
                $"readings give {new Mass(mass).As("lb")} at {new Length(fs).As("in")}{Across(bl)}, the record says {record.Mass.As("lb")} at {record.Fs.As("in")}{Across(record.Bl)}",
                ThisJob, "Correct the record or its readings; if in doubt weigh again. Items changed since the weighing belong among its adjustments.", Record));
        }
    }

    private EmptyWeight? Change()
    {
        var outcome = memo.Run<EmptyWeightChange, EmptyWeightChangeInput>(
            new(Before.Mass, Before.Fs, Lines.Removed, Lines.Fitted, Before.Bl, Before.Wl), "W", "FS", "BL", "WL", "dW", "dFS");
        var origins = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["W0"] = $"weighing record {job.Aircraft.Weighing.Reference}", ["FS0"] = "weighing record", ["BL0"] = "weighing record", ["WL0"] = "weighing record",
        };
        Shown.Add(new Shown("balance/empty-weight", outcome, () => origins));
        Add(Substantiation.Findings.Of(outcome, "balance/empty-weight", Record, "Correct the masses of what comes out and goes in, or the weighing record."));
        Incomplete(Lines.Unknown, Verdict.CannotTell, "Give circuits a way or a length, wire that comes out its place, and items their mass.");
        Incomplete(Lines.Unweighed, Verdict.Caution, "Weigh the parts and give their mass.");

        if (outcome.Value(0) is not { } mass || outcome.Value(1) is not { } fs)
        {
            return null;
        }

        Revision(new Mass(outcome.Value(4) ?? 0), new Length(outcome.Value(5) ?? 0));
        var after = new EmptyWeight(new(mass), new(fs), Coordinate(outcome.Value(2)), Coordinate(outcome.Value(3)));
        if (job.Aircraft.Envelope.Mac is { } mac)
        {
            var position = memo.Run<MacPosition, MacPositionInput>(new(after.Fs, mac.LeadingEdge, mac.Length));
            Shown.Add(new Shown("balance/chord", position));
        }

        return after;
    }

    private void Incomplete(ImmutableArray<(string Name, string Path)> missing, Verdict severity, string remedy)
    {
        if (missing.Length > 0)
        {
            Findings.Add(new(
                "balance-incomplete", severity, "balance/empty-weight", $"The mass of {Named([.. missing.Select(m => m.Name)])} cannot be told, so the empty weight after the change leaves it out.", "",
                ThisJob, remedy, missing[0].Path));
        }
    }

    // Whether the change is negligible only says whether an amendment is due, and the pack brings one in any case; the sheet is kept.
    private void Revision(Mass change, Length shift)
    {
        var envelope = job.Aircraft.Envelope;
        if (envelope.Mac is { } mac)
        {
            Shown.Add(new Shown("balance/negligible", memo.Run<NegligibleChange, NegligibleChangeInput>(new(Before.Mass, change, shift, mac.Length))));
        }

        var revision = memo.Run<RecordRevision, RecordRevisionInput>(new(envelope.MaxLanding ?? envelope.MaxTakeOff, change, shift, envelope.Mac?.Length));
        var origin = envelope.MaxLanding is null ? "greatest take-off mass, as the record names no landing mass" : "envelope of the aircraft";
        Shown.Add(new Shown("balance/revision", revision, () => new Dictionary<string, string>(StringComparer.Ordinal) { ["MLM"] = origin }));
        Add(Substantiation.Findings.Of(revision, "balance/revision", Record, "Establish mass and centre of gravity anew, by weighing or by the calculation of this pack."));
    }

    private ImmutableArray<LoadingExtreme> Loading(string subject, EmptyWeight empty, ImmutableArray<LoadingExtreme>? before)
    {
        if (LoadingInputs.Of(job.Aircraft, empty) is not { } input)
        {
            if (before is null)
            {
                Findings.Add(new("loading-unknown", Verdict.CannotTell, subject, "The aircraft record names no loading stations, so no worst loading can be found.", "", ThisJob, "Add the loading stations and tanks of the flight manual.", "aircraft/envelope"));
            }

            return [];
        }

        var outcome = memo.Run<WorstLoading, WorstLoadingInput>(input);
        Shown.Add(new Shown(subject, outcome, () => new Dictionary<string, string>(StringComparer.Ordinal) { ["We"] = before is null ? "weighing record" : "balance/empty-weight", ["FSe"] = before is null ? "weighing record" : "balance/empty-weight" }));
        var extremes = Extremes(memo.Get<WorstLoading, WorstLoadingInput, Found>(input, i => new(WorstLoading.Find(i))).Loadings);
        if (before is { } was && Substantiation.Findings.Of(outcome, subject, "aircraft/envelope", "Move equipment, fit ballast, or exclude the loading by a placard or the loading instructions of the flight manual supplement.") is { } finding)
        {
            Findings.Add(AsBefore(finding, was, extremes));
        }

        return extremes;
    }

    private void Lateral()
    {
        var (aircraft, remedy) = (job.Aircraft, "Move equipment across, fit ballast, or exclude the loading by a placard or the loading instructions.");
        if (aircraft.Envelope.LateralLeft is null != aircraft.Envelope.LateralRight is null)
        {
            Findings.Add(new("lateral-unknown", Verdict.CannotTell, "balance/lateral", "The aircraft record gives a lateral limit to one side only, so the worst loading across is not judged.", "", ThisJob, "Add the limit to the other side.", "aircraft/envelope"));
        }

        if (aircraft.Envelope is not { LateralLeft: { } left, LateralRight: { } right } || After is null || aircraft.Stations is not { Count: > 0 })
        {
            return;
        }

        if (After.Bl is not { } bl)
        {
            Findings.Add(new("lateral-unknown", Verdict.CannotTell, "balance/lateral", "The aircraft has lateral limits, but the buttock line of its centre of gravity after the change is not known.", "", ThisJob, "Add the buttock line to the weighing record.", Record));
            return;
        }

        var outcome = memo.Run<WorstLateral, WorstLateralInput>(LoadingInputs.Across(aircraft, After.Mass, bl, left, right));
        Shown.Add(new Shown("balance/lateral", outcome));
        Add(Substantiation.Findings.Of(outcome, "balance/lateral", "aircraft/envelope", remedy));
    }

    // Many aircraft can be loaded out of their envelope within every single limit, which their loading instructions must then exclude.
    // That is the change's affair only where it makes it worse.
    private static Finding AsBefore(Finding finding, ImmutableArray<LoadingExtreme> before, ImmutableArray<LoadingExtreme> after) =>
        finding.Severity == Verdict.Fails && before.Length == after.Length && before.Zip(after).All(p => p.Second.Margin.Si >= Math.Min(0, p.First.Margin.Si) - 1e-9)
            ? finding with { Severity = Verdict.Caution, Message = finding.Message + " It was so before the change, which makes it no worse." }
            : finding;

    private static ImmutableArray<LoadingExtreme> Extremes(WorstLoadings? found) => found is null ? [] :
    [
        Extreme("most forward", found.Forward), Extreme("most aft", found.Aft), Extreme("heaviest", found.Heaviest),
    ];

    private static LoadingExtreme Extreme(string name, LoadingCase loading) => new(name, loading.Mass, loading.Fs, loading.Margin);

    private static Length? Coordinate(double? si) => si is { } value ? new Length(value) : null;

    private static string Named(ImmutableArray<string> ids) =>
        ids.Length <= 3 ? string.Join(", ", ids) : $"{string.Join(", ", ids.Take(3))} and {NumberFormat.Text(ids.Length - 3)} more";

    private void Add(Finding? finding)
    {
        if (finding is not null)
        {
            Findings.Add(finding);
        }
    }

    private sealed record Found(WorstLoadings? Loadings);

    // Two results of one circuit that weigh the same at the same place, its contacts included.
    private sealed class SameMass : IEqualityComparer<CircuitResult>
    {
        public static readonly SameMass Instance = new();

        public bool Equals(CircuitResult? x, CircuitResult? y) => ReferenceEquals(x, y) || (x is not null && y is not null
            && x.Circuit.Id == y.Circuit.Id && x.Mass == y.Mass && x.Centre == y.Centre && x.Length is null == y.Length is null
            && ReferenceEquals(x.Way, y.Way) && ReferenceEquals(x.FromContact, y.FromContact) && ReferenceEquals(x.ToContact, y.ToContact));

        public int GetHashCode(CircuitResult obj) => obj.Circuit.Id.GetHashCode(StringComparison.Ordinal);
    }
}
