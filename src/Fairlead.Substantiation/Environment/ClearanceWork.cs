using Fairlead.Calculations;
using Fairlead.Calculations.Environment;
using Fairlead.Model;

namespace Fairlead.Substantiation.Environment;

/// <summary>Clearance of the raceway segments that new circuits use from fluid lines and, in zones with flight controls, from these.</summary>
internal sealed class ClearanceWork(Job job, Memo memo, List<Finding> findings, List<Shown> shown)
{
    private const int Named = 3;

    private readonly List<string> noFluid = [];
    private readonly List<string> noControl = [];

    public void Check(IEnumerable<string> segments)
    {
        foreach (var id in segments)
        {
            if (job.Aircraft.Segments?.Find(id) is { } segment)
            {
                Segment(segment);
            }
        }

        if (noFluid.Count + noControl.Count > 0)
        {
            var parts = new[] { Words("from fluid and oxygen lines", noFluid), Words("from moving controls", noControl) }.OfType<string>();
            findings.Add(EnvironmentWork.MissingDatum(
                "aircraft/clearances", $"The clearance of the wires is not recorded: {string.Join("; ", parts)}.", "Add the clearances to the segments; where nothing is near, a great one.",
                $"aircraft/segments/{noFluid.Concat(noControl).First()}"));
        }
    }

    private void Segment(RacewaySegment segment)
    {
        if (segment.FluidClearance is null)
        {
            noFluid.Add(segment.Id);
        }

        if (segment.ControlClearance is null && (HasControls(segment.From) || HasControls(segment.To)))
        {
            noControl.Add(segment.Id);
        }

        if (segment is { FluidClearance: null, ControlClearance: null })
        {
            return;
        }

        var subject = $"segment/{segment.Id}/clearance";
        var outcome = memo.Run<LineClearance, LineClearanceInput>(new(segment.FluidClearance, segment.ControlClearance));
        shown.Add(new Shown(subject, outcome));
        if (Findings.Of(outcome, subject, $"aircraft/segments/{segment.Id}", "Take the circuits another way, or move and clamp the bundle so that it keeps clear.") is { } finding)
        {
            findings.Add(finding);
        }
    }

    private bool HasControls(string node) => job.Aircraft.Nodes?.Find(node) is { } n && job.Aircraft.Zones.Find(n.Zone)?.Controls == true;

    private static string? Words(string what, List<string> ids) => ids.Count == 0 ? null
        : $"{what} for {string.Join(", ", ids.Take(Named))}{(ids.Count > Named ? $" and {NumberFormat.Text(ids.Count - Named)} more" : "")}";
}
