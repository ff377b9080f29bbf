using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>Findings, the command line and the documents name rules of one list.</summary>
public sealed partial class RulesTests
{
    // Words joined by hyphens that name parts of a subject, not rules.
    private static readonly string[] NotRules = ["altitude-word", "contact-from", "contact-to", "mode-a", "mode-c", "mode-s"];

    [Fact]
    public void Every_rule_is_said_in_full()
    {
        Assert.Equal(Rules.All.Length, Rules.All.Select(r => r.Id).Distinct().Count());
        Assert.All(Rules.All, rule =>
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", rule.Id);
            Assert.NotEmpty(rule.Title);
            Assert.NotEmpty(rule.Checks);
            Assert.EndsWith(".", rule.Mend, StringComparison.Ordinal);
            Assert.Same(rule, Rules.Find(rule.Id));
        });
        Assert.Null(Rules.Find("no-such-rule"));
    }

    [Fact]
    public void Every_calculation_the_stages_run_is_a_rule()
    {
        var used = Metadata(reader => reader.TypeReferences.Select(reader.GetTypeReference)
            .Select(t => $"{reader.GetString(t.Namespace)}.{reader.GetString(t.Name)}").ToArray());
        var calculations = CalculationCatalog.All.Select(e => e.Info).ToDictionary(i => i.Name);
        var names = typeof(CalculationCatalog).Assembly.GetExportedTypes()
            .Where(t => used.Contains(t.FullName) && t.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ICalculation<>)))
            .Select(t => ((CalculationInfo)t.GetProperty("Info")!.GetValue(null)!).Name).ToArray();
        Assert.NotEmpty(names);
        Assert.All(names, name => Assert.NotNull(Rules.Find(name)));
        Assert.All(names, name => Assert.Equal(calculations[name].Title, Rules.Find(name)!.Title));
    }

    [Fact]
    public void Every_id_that_stands_in_the_code_is_a_rule()
    {
        var ids = Metadata(reader =>
        {
            var (found, handle) = (new List<string>(), MetadataTokens.UserStringHandle(0));
            while (!(handle = reader.GetNextHandle(handle)).IsNil)
            {
                found.Add(reader.GetUserString(handle));
            }

            return found.Where(s => Id().IsMatch(s) && !NotRules.Contains(s)).ToArray();
        });
        Assert.Contains("bus-not-supplied", ids);
        Assert.All(ids, id => Assert.NotNull(Rules.Find(id)));
    }

    [Fact]
    public void Every_finding_of_a_job_taken_apart_names_a_rule()
    {
        var job = JobReader.Read(Starter.Files()).Job!;
        var faults = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "with-faults")).Job!;
        var findings = Broken(job).Append(faults).SelectMany(j => new Assessor().Assess(j).Findings).ToArray();
        Assert.True(findings.Select(f => f.Rule).Distinct().Count() >= 20);
        Assert.All(findings, f =>
        {
            Assert.NotNull(Rules.Find(f.Rule));
            Assert.NotEmpty(f.Remedy);
            Assert.NotEmpty(f.Path);
        });
    }

    private static IEnumerable<Job> Broken(Job job)
    {
        var (aircraft, change, parts) = (job.Aircraft, job.Change, job.Parts);
        yield return job;
        yield return job with { Parts = parts with { Wires = Catalog<WirePart>.Empty } };
        yield return job with { Parts = parts with { Equipment = Catalog<EquipmentPart>.Empty, Breakers = Catalog<BreakerPart>.Empty } };
        yield return job with { Change = change with { Circuits = Catalog<Circuit>.Empty } };
        yield return job with { Change = change with { Breakers = Catalog<Breaker>.Empty, Fit = Catalog<FittedItem>.Empty } };
        yield return job with { Change = change with { Circuits = new(change.Circuits!.Select(c => c with { From = change.Circuits![0].From })) } };
        yield return job with { Change = change with { Circuits = new(change.Circuits!.Select(c => c with { Current = Current.Of(60, "A"), Wire = "none" })) } };
        yield return job with { Change = change with { Concessions = new([new Concession("X", "wire-size", "circuit/none", "nobody", "a test")]) } };
        yield return job with { Aircraft = aircraft with { Segments = Catalog<RacewaySegment>.Empty, Stations = Catalog<LoadingStation>.Empty } };
        yield return job with { Aircraft = aircraft with { Sources = Catalog<PowerSource>.Empty, Feeders = Catalog<Feeder>.Empty, Batteries = Catalog<Battery>.Empty } };
        yield return job with { Aircraft = aircraft with { Buses = Catalog<Bus>.Empty } };
        yield return job with { Aircraft = aircraft with { Buses = new(aircraft.Buses!.Select(b => b with { Essential = false })) } };
        yield return job with { Aircraft = aircraft with { Loads = new(aircraft.Loads!.Select(l => l with { Demands = [.. l.Demands.Select(d => d with { Current = d.Current * 20 })] })) } };
    }

    private static TResult Metadata<TResult>(Func<MetadataReader, TResult> read)
    {
        using var file = File.OpenRead(typeof(Assessor).Assembly.Location);
        using var image = new PEReader(file);
        return read(image.GetMetadataReader());
    }

    [GeneratedRegex("^[a-z]+(-[a-z]+)+$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Id();
}
