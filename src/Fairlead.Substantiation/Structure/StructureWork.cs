using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>Whether the structure holds what the change fits to it. Never changed after it was worked out.</summary>
internal sealed class StructureWork
{
    private static readonly Source Loads = new("FAA AC 43.13-2B", "3 Mar 2008", "103: load factors by certification basis");

    private readonly StructureContext context;

    public StructureWork(Job job, Memo memo)
    {
        context = new StructureContext(job, memo);
        var (items, antennas) = (job.Change.Fit.OrEmpty(), job.Change.Antennas.OrEmpty());
        if (context.Basis is { Rule: null, WhyNot: var why } && items.Count + antennas.Count > 0)
        {
            context.Add(new Finding("inertia-basis", Verdict.CannotTell, "structure/basis", $"The inertia loads cannot be told. {why}", "", Loads, "Name rule and amendment, or state the load factors of the approved data in the aircraft record.", "aircraft/certification"));
        }

        foreach (var item in items)
        {
            new ItemChecks(context, item).Run();
        }

        foreach (var antenna in antennas)
        {
            new AntennaChecks(context, antenna).Run();
        }

        foreach (var sheet in job.Aircraft.Structures.OrEmpty())
        {
            Tray(sheet);
        }
    }

    public List<Finding> Findings => context.Findings;

    public List<Shown> Shown => context.Shown;

    /// <summary>Whether the work holds for another job too.</summary>
    public bool Serves(Job other)
    {
        var (was, now) = (context.Job.Change, other.Change);
        return ReferenceEquals(context.Job.Aircraft, other.Aircraft) && ReferenceEquals(context.Job.Parts, other.Parts)
            && ReferenceEquals(was.Fit, now.Fit) && ReferenceEquals(was.Antennas, now.Antennas) && ReferenceEquals(was.Remove, now.Remove);
    }

    // What a sheet carries after the change: what it carried, less what comes out, with what goes in.
    private void Tray(StructureSheet sheet)
    {
        var (job, subject, path) = (context.Job, $"structure/{sheet.Id}", $"aircraft/structures/{sheet.Id}");
        var items = job.Change.Fit.OrEmpty().Where(f => f.Structure == sheet.Id).Select(f => (f.Id, Mass: job.Parts.Equipment?.Find(f.Part)?.Mass + f.Mounting)).ToArray();
        var antennas = job.Change.Antennas.OrEmpty().Where(a => a.Structure == sheet.Id).Select(a => (a.Id, Mass: job.Parts.Antennas?.Find(a.Part)?.Mass + a.Doubler)).ToArray();
        if (items.Length == 0 && (antennas.Length == 0 || sheet.Capacity is null))
        {
            return;
        }

        context.Incomplete(subject, path, [.. sheet.Carries is null ? ["the mass it carries before the change"] : Array.Empty<string>(), .. sheet.Capacity is null ? ["the mass it may carry"] : Array.Empty<string>()]);
        if (sheet is { Carries: { } before, Capacity: { } limit })
        {
            var added = items.Concat(antennas).Where(i => i.Mass is not null).Select(i => new TrayItemRow(i.Id, i.Mass!.Value));
            var removed = job.Change.Remove.OrEmpty().Select(r => job.Aircraft.Equipment?.Find(r.Item)).OfType<InstalledItem>().Where(i => i.Structure == sheet.Id).Select(i => new TrayItemRow(i.Id, i.Mass));
            var outcome = context.Memo.Run<SharedTray, SharedTrayInput>(new([new TrayItemRow("before the change", before)], added.ToSequence(), removed.ToSequence(), limit));
            context.Shown.Add(new Shown(subject, outcome, () => new Dictionary<string, string>(StringComparer.Ordinal) { ["Wmax"] = $"structure {sheet.Id}" }));
            context.Add(Substantiation.Findings.Of(outcome, subject, path, "Fit an item elsewhere, or strengthen the structure by approved data."));
        }
    }
}
