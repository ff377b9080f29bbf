using Fairlead.Model;

namespace Fairlead.Substantiation.Kit;

/// <summary>Crimp tools with their dies, insertion and extraction tools, and test gear.</summary>
internal static class ToolNeeds
{
    public static void Add(Job job, IReadOnlyList<CircuitResult> circuits, KitNeeds needs)
    {
        foreach (var need in needs.All.Where(n => n.Part.Length > 0 && n.Kind is KitKind.Contact or KitKind.Terminal or KitKind.Shield).ToArray())
        {
            if (job.Parts.Contacts?.Find(need.Part) is { } contact && need.Kind == KitKind.Contact)
            {
                var of = $"contact {contact.Id}";
                Tool(contact.Tool, "crimp tool", of, needs);
                Tool(contact.Positioner, "positioner or die", of, needs);
                Tool(contact.Insertion, "insertion and extraction tool", of, needs);
            }
            else if (job.Parts.Consumables?.Find(need.Part) is { Use: ConsumableUse.Terminal or ConsumableUse.Splice } crimped)
            {
                Tool(crimped.Tool, "crimp tool", $"terminal {crimped.Id}", needs);
                Tool(crimped.Die, "die", $"terminal {crimped.Id}", needs);
            }
        }

        foreach (var (measure, of) in Measures(job, circuits))
        {
            var best = job.Aircraft.Instruments.OrEmpty().Where(i => i.Measures.Contains(measure)).MaxBy(i => i.CalibrationDue);
            needs.Add(KitKind.TestGear, best?.Id ?? "", best?.Name ?? $"instrument that measures {measure}", 1, of, "the tests that follow from the change");
        }

        foreach (var test in job.Change.Tests.OrEmpty())
        {
            foreach (var id in test.Instruments.Where(i => i != "none"))
            {
                needs.Add(KitKind.TestGear, id, job.Aircraft.Instruments?.Find(id)?.Name ?? job.Aircraft.Tools?.Find(id)?.Name ?? id, 1, test.Id, "the tests that follow from the change");
            }

            if (test.Instruments.Count == 0)
            {
                needs.Add(KitKind.TestGear, "", "test gear of a test", 0, test.Id, "the test does not say; [none] when it takes none");
            }
        }
    }

    // Several needs for one tool are one line of one tool.
    private static void Tool(string tool, string kind, string of, KitNeeds needs)
    {
        if (tool != "none")
        {
            needs.Add(KitKind.Tool, tool, tool.Length > 0 ? Figure(kind) : $"{kind} of {of}", 1, of, "one serves all");
        }
    }

    private static string Figure(string kind) => char.ToUpperInvariant(kind[0]) + kind[1..];

    private static IEnumerable<(string Measure, string Of)> Measures(Job job, IReadOnlyList<CircuitResult> circuits)
    {
        if (circuits.Count > 0)
        {
            yield return ("continuity", "circuits");
            yield return ("insulation resistance", "circuits");
        }

        if (job.Change.Power is { Count: > 0 })
        {
            yield return ("voltage", "power feeds");
        }

        if (job.Change.Fit.OrEmpty().Any(f => f.Fixing?.Bond is not null) || job.Change.Antennas.OrEmpty().Any(a => a.Bond is not null || a.Fixing?.Bond is not null))
        {
            yield return ("bonding resistance", "bonds");
        }

        if (circuits.Any(c => job.Parts.Coax?.Contains(c.Part) == true))
        {
            yield return ("cable loss", "coaxial cables");
        }
    }
}
