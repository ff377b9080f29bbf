using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Fairlead.Cli;
using Fairlead.Documents;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Planning.Cards;
using Fairlead.Records;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Conventions;

/// <summary>The map of the job names only what there is, and has a line for every step, paper and failure.</summary>
public sealed partial class JobMapTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(Root(), "docs", "job-map.md"));

    [Fact]
    public void Every_name_on_the_map_is_a_command_a_rule_a_card_an_entry_or_a_section()
    {
        var names = Names().ToHashSet(StringComparer.Ordinal);
        var spans = Lines.Where(l => l.StartsWith('|')).SelectMany(l => Span().Matches(l).Select(m => (Line: l, Name: m.Groups["name"].Value))).ToArray();
        Assert.NotEmpty(spans);
        Assert.All(spans, s => Assert.True(names.Contains(s.Name), $"'{s.Name}' does not exist: {s.Line}"));
    }

    [Fact]
    public void Every_step_paper_and_failure_has_its_line_and_each_line_a_name()
    {
        int[] rows = [.. Lines.Aggregate(new List<int>(), (counts, l) =>
        {
            if (l.StartsWith("## ", StringComparison.Ordinal))
            {
                counts.Add(-2);
            }
            else if (l.StartsWith('|'))
            {
                counts[^1]++;
            }

            return counts;
        })];
        Assert.Equal([23, 16, 38], rows);
        Assert.Equal(Enumerable.Range(1, 23), Lines.Select(l => Number().Match(l)).Where(m => m.Success).Select(m => int.Parse(m.Groups["number"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.All(Lines.Where(l => l.StartsWith("| ", StringComparison.Ordinal) && !l.Contains("---", StringComparison.Ordinal) && !l.EndsWith("| Names |", StringComparison.Ordinal)), l => Assert.True(Span().IsMatch(l.Split('|')[^2]), l));
    }

    private static IEnumerable<string> Names()
    {
        var job = JobFolder.Load(Path.Combine(Root(), "demo", "survey-twin")).Job!;
        var assessment = new Assessor().Assess(job);

        // Without tests of its own the same change raises the side tests.
        var bare = new Assessor().Assess(job with { Change = job.Change with { Tests = Catalog<ExtraTest>.Empty } });
        var cards = JobCards.Of(assessment).Concat(JobCards.Of(bare)).Select(c => c.Id.Split('-')[0]);
        var pack = ReleasePack.Of(assessment, new PackOptions(default, "hash", [])).Blocks.OfType<Heading>().Where(h => h.Level == 1).Select(h => h.Text);
        return [.. FairleadApp.CommandNames.Select(c => "fairlead " + c), .. Rules.All.Select(r => r.Id), .. cards, .. Kinds.All.Select(k => k.Name), .. pack];
    }

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));

    [GeneratedRegex("`(?<name>[^`]+)`", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Span();

    [GeneratedRegex(@"^\| (?<number>\d+) \|", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Number();
}
