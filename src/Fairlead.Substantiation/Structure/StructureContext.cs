using Fairlead.Calculations;
using Fairlead.Calculations.Structure;
using Fairlead.Model;

namespace Fairlead.Substantiation.Structure;

/// <summary>Something fitted: an item or an antenna, with what its fixing is judged by, and what the job does not tell of it.</summary>
/// <param name="Subject">Subject of its findings and sheets.</param>
/// <param name="Path">Where it stands in the files.</param>
/// <param name="Part">Its part.</param>
/// <param name="Fixing">How it is fixed.</param>
/// <param name="Sheet">What it is fixed to.</param>
/// <param name="Holes">Its mounting holes.</param>
/// <param name="Doubler">Thickness of the doubler on the sheet under it.</param>
internal sealed record Mounted(string Subject, string Path, string Part, Fixing? Fixing, StructureSheet? Sheet, Sequence<MountingHole> Holes, Length Doubler = default)
{
    /// <summary>What the job does not tell, in words.</summary>
    public List<string> Missing { get; } = [];

    /// <summary>The factor on its attachments.</summary>
    public FittingFactor Fitting => Fixing?.RemovedOften == true ? FittingFactor.FrequentRemoval : FittingFactor.Fitting;

    /// <summary>A value, noting that it is missing when it is.</summary>
    public T? Need<T>(T? value, string what)
        where T : struct
    {
        Note(value is null, what);
        return value;
    }

    /// <summary>A thing, noting that it is missing when it is.</summary>
    public T? Need<T>(T? value, string what)
        where T : class
    {
        Note(value is null, what);
        return value;
    }

    private void Note(bool missing, string what)
    {
        if (missing && !Missing.Contains(what))
        {
            Missing.Add(what);
        }
    }
}

/// <summary>What all checks of the stage share.</summary>
internal sealed class StructureContext
{
    private static readonly Source Rule = new("FAA AC 43.13-2B", "3 Mar 2008", "103 to 105: loads and their proof");

    public StructureContext(Job job, Memo memo)
    {
        (Job, Memo) = (job, memo);
        var stated = job.Aircraft.LoadFactors;
        Basis = InertiaBasis.Of(job.Aircraft.Certification, stated);
        (Positive, Negative) = (stated?.Positive, stated?.Negative);
        if (stated?.Positive is null && Basis.Category is { } category)
        {
            var outcome = memo.Run<ManoeuvreFactor, ManoeuvreFactorInput>(new(category, job.Aircraft.Envelope.MaxTakeOff), "n", "nneg");
            Shown.Add(new Shown("structure/factor", outcome, () => new Dictionary<string, string>(StringComparer.Ordinal) { ["category"] = "certification basis", ["W"] = "envelope of the aircraft" }));
            Add(Substantiation.Findings.Of(outcome, "structure/factor", "aircraft/certification", "State the load factors of the approved data in the aircraft record."));
            (Positive, Negative) = (outcome.Value(0), stated?.Negative ?? outcome.Value(1));
        }
    }

    public Job Job { get; }

    public Memo Memo { get; }

    public InertiaBasis Basis { get; }

    /// <summary>Positive limit load factor of the aircraft; null when not known.</summary>
    public double? Positive { get; }

    /// <summary>Size of the negative one.</summary>
    public double? Negative { get; }

    public List<Finding> Findings { get; } = [];

    public List<Shown> Shown { get; } = [];

    /// <summary>The material of a sheet, if the catalogue has it.</summary>
    public Material? Material(StructureSheet sheet) => Job.Parts.Materials?.Find(sheet.Material);

    /// <summary>Shows an outcome, and its finding if it has one.</summary>
    public void Add(Outcome outcome, Mounted mounted, string what, string remedy, Dictionary<string, string>? origins = null, string more = "")
    {
        Shown.Add(new Shown($"{mounted.Subject}/{what}", outcome, origins is null ? null : () => origins));
        if (Substantiation.Findings.Of(outcome, mounted.Subject, mounted.Path, remedy) is { } finding)
        {
            Findings.Add(finding with { Message = finding.Message + more });
        }
    }

    /// <summary>Holds the countersink of a flush rivet against the sheet it is in.</summary>
    public void Countersink(Mounted mounted, RivetPart rivet, StructureSheet sheet)
    {
        var outcome = Memo.Run<CountersinkDepth, CountersinkDepthInput>(new(rivet.Diameter, sheet.Thickness));
        Add(outcome, mounted, "countersink", "Use rivets with protruding heads, or dimple the sheet.", new() { ["D"] = $"rivet {rivet.Id}", ["t"] = $"structure {sheet.Id}" });
    }

    /// <summary>Holds a rivet against what it rivets: its length, and the shop head it makes.</summary>
    public void Rivet(Mounted mounted, RivetPart rivet, Length grip, string what, string stack)
    {
        if (StructureNames.Alloy(rivet.Material) is { } alloy)
        {
            var outcome = Memo.Run<RivetLength, RivetLengthInput>(new(rivet.Diameter, grip, alloy, rivet.Length));
            Add(outcome, mounted, what, "Use a rivet of the length that suits the grip.", new() { ["D"] = $"rivet {rivet.Id}", ["Lr"] = $"rivet {rivet.Id}", ["alloy"] = $"rivet {rivet.Id}", ["G"] = stack });
        }
    }

    /// <summary>Whether a skin holds cabin pressure: its zone does, or nobody says which zones of a pressurised aircraft do.</summary>
    public bool Pressurised(StructureSheet skin) =>
        Job.Aircraft.Zones.Find(skin.Zone)?.Pressurised == true || (Job.Aircraft.Pressurised && !Job.Aircraft.Zones.Any(z => z.Pressurised));

    public void Add(Finding? finding)
    {
        if (finding is not null)
        {
            Findings.Add(finding);
        }
    }

    /// <summary>The one finding that names everything missing.</summary>
    public void Incomplete(string subject, string path, IReadOnlyList<string> missing)
    {
        if (missing.Count > 0)
        {
            var what = missing.Count == 1 ? missing[0] : $"{string.Join(", ", missing.Take(missing.Count - 1))} and {missing[^1]}";
            Add(new Finding("structure-incomplete", Verdict.CannotTell, subject, $"Whether the structure holds cannot be told in full: the job does not state {what}.", "", Rule, "Add it from the maker's data, the approved data or the structural repair manual, which govern in any case.", path));
        }
    }
}
