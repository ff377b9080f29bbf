using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Kit;

namespace Fairlead.Tests.Substantiation;

/// <summary>The kit of the demonstration job, counted a second time over the job itself, and its laws.</summary>
public sealed class KitTests
{
    private static readonly Job Twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;
    private static readonly Assessment Assessed = new Assessor().Assess(Twin);
    private static readonly KitList Kit = Assessed.Kit;

    [Fact]
    public void The_kit_of_the_demonstration_job_is_at_hand()
    {
        Assert.True(Kit.IsComplete);
        Assert.Equal("Everything is at hand.", Kit.Verdict);
        Assert.Equal(new DateOnly(2027, 3, 22), Kit.UseDate);
        Assert.All(Kit.Lines, l => Assert.Equal(KitState.Covered, l.State));
    }

    [Fact]
    public void Boxes_antennas_and_breakers_are_those_of_the_change()
    {
        AssertCounts(Twin.Change.Fit!.Select(f => f.Part), KitKind.Equipment);
        AssertCounts(Twin.Change.Antennas!.Select(a => a.Part), KitKind.Antenna);
        AssertCounts(Twin.Change.Breakers!.Select(b => b.Part), KitKind.Breaker);
    }

    [Fact]
    public void Contacts_are_the_ends_of_circuits_in_connectors_and_a_plug_on_each_antenna()
    {
        var parts = Twin.Parts;
        var boxes = Twin.Change.Fit!.ToDictionary(f => f.Id, f => f.Part).Concat(Twin.Aircraft.Equipment!.Where(e => e.Part is { Length: > 0 }).ToDictionary(e => e.Id, e => e.Part!)).ToDictionary(p => p.Key, p => p.Value);
        var contacts = new List<string>();
        foreach (var end in Twin.Change.Circuits!.SelectMany(c => new[] { c.From, c.To }))
        {
            if (boxes.TryGetValue(end.Item, out var box))
            {
                var half = parts.Connectors![parts.Equipment![box].Connectors![end.Connector].Part];
                contacts.Add(half.SpecialCavities.Where(s => s.Cavity == end.Contact).Select(s => s.Contact).SingleOrDefault(half.Contact));
            }
            else if (Twin.Change.Antennas!.Find(end.Item) is { } antenna)
            {
                contacts.Add(parts.Connectors![parts.Antennas![antenna.Part].Plug!].Contact);
            }
        }

        AssertCounts(contacts, KitKind.Contact);
    }

    [Fact]
    public void Every_cavity_of_a_new_connector_holds_a_wire_or_a_plug()
    {
        var cavities = Twin.Change.Fit!.SelectMany(f => Twin.Parts.Equipment![f.Part].Connectors!.Select(u => Twin.Parts.Connectors![u.Part])).Where(c => c.Contact != "CCOAX").Sum(c => c.Cavities.Count);
        var wired = Twin.Change.Circuits!.SelectMany(c => new[] { c.From, c.To }).Where(e => Twin.Change.Fit!.Contains(e.Item) && e.Connector.StartsWith('P')).Distinct().Count();
        Assert.Equal(cavities - wired, Kit.Lines.Where(l => l.Kind == KitKind.Plug).Sum(l => l.Used));
    }

    [Fact]
    public void Wire_is_the_sum_of_the_cut_lengths_with_a_cable_counted_once()
    {
        foreach (var line in Kit.Lines.Where(l => l.Kind == KitKind.Wire))
        {
            var circuits = Assessed.Circuits.Where(c => c.Part == line.Part).ToArray();
            var metres = circuits.GroupBy(c => c.Circuit.Cable is { Length: > 0 } cable ? cable : c.Circuit.Id).Sum(g => g.Max(c => c.Cut!.Value.Si));
            Assert.InRange(line.Used - metres, 0, 0.001 * circuits.Length);
            Assert.Equal(0.15 * line.Used, line.Spare, 9);
        }

        Assert.Equal(Assessed.Circuits.Select(c => c.Part).Distinct().Order(StringComparer.Ordinal), Kit.Lines.Where(l => l.Kind == KitKind.Wire).Select(l => l.Part).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Screws_anchor_nuts_and_rivets_are_those_of_the_fixings_doublers_and_tasks()
    {
        var fixings = Twin.Change.Fit!.Select(f => f.Fixing!).Concat(Twin.Change.Antennas!.Select(a => a.Fixing!)).ToArray();
        AssertSums(fixings.Select(f => (f.Fastener, (double)f.Count)), l => l.Kind == KitKind.Fastener && !l.Part.StartsWith('W'));
        AssertSums(fixings.Where(f => f.AnchorNut is not null).Select(f => (f.AnchorNut!, (double)f.Count)), l => l.Kind == KitKind.AnchorNut);
        AssertSums(
            fixings.Where(f => f.AnchorNut is not null).Select(f => (Twin.Parts.AnchorNuts![f.AnchorNut!].Rivet!, 2.0 * f.Count))
                .Concat(Twin.Change.Antennas!.Select(a => (a.Plate!.Rivet, 2.0 * a.Plate.Rivets))).Concat(Twin.Change.Tasks!.SelectMany(t => t.Takes).Where(t => Twin.Parts.Rivets!.Contains(t.Part)).Select(t => (t.Part, t.Quantity))),
            l => l.Kind == KitKind.Rivet);
    }

    // By hand: E1, E2 and E3 take 5 in by 8 in of 60 in2 a pack, E6 and E7 8 in by 11 in; E4 and E5 9 in by 11 in of 120 in2 a pack, and task K1 one pack.
    [Fact]
    public void Sealant_is_whole_packs_for_each_antenna()
    {
        Assert.Equal(7, Line("FIL05").Used);
        Assert.Equal(3, Line("FAY2").Used);
        Assert.Contains("cure", Line("FIL05").Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void No_item_of_the_change_is_absent_from_the_kit()
    {
        var named = Kit.Lines.SelectMany(l => l.For).SelectMany(f => f.Split(' ', '+')).ToHashSet(StringComparer.Ordinal);
        Assert.All(Twin.Change.Circuits!, c => Assert.Contains(c.Id, named));
        Assert.All(Twin.Change.Fit!, f => Assert.Contains(f.Id, named));
        Assert.All(Twin.Change.Antennas!, a => Assert.Contains(a.Id, named));
        Assert.All(Twin.Change.Breakers!, b => Assert.Contains(b.Id, named));
        Assert.All(Twin.Change.Grounds!, g => Assert.Contains(g.Id, named));
        Assert.All(Twin.Change.Joints!, j => Assert.Contains(j.Id, named));
    }

    [Fact]
    public void A_part_stands_on_one_line_so_that_its_stock_is_counted_once() =>
        Assert.All(Kit.Lines.Where(l => l.Part.Length > 0 && l.Kind is not (KitKind.Drill or KitKind.Tool or KitKind.TestGear)).GroupBy(l => l.Part), g => Assert.Single(g));

    [Fact]
    public void Every_line_says_what_it_is_for_and_how_its_quantity_came() =>
        Assert.All(Kit.Lines, l => Assert.True(l.For.Count > 0 && l.How.Length > 0, l.Name));

    [Fact]
    public void Kits_of_two_parts_of_the_circuits_add()
    {
        bool First(Circuit c) => c.Function is "UA" or "LP";
        Dictionary<string, double> Used(Func<Circuit, bool> keep) => new Assessor().Assess(Twin with { Change = Twin.Change with { Circuits = new(Twin.Change.Circuits!.Where(keep).Select(c => c with { Wire = c.Wire == "auto" ? "W22" : c.Wire })) } }).Kit
            .Lines.Where(l => l.Kind is KitKind.Wire or KitKind.Contact or KitKind.Terminal or KitKind.Shield).ToDictionary(l => l.Part, l => l.Used);
        var (one, other, all) = (Used(First), Used(c => !First(c)), Used(_ => true));
        Assert.Equal(all.Keys.Order(StringComparer.Ordinal), one.Keys.Union(other.Keys).Order(StringComparer.Ordinal));
        Assert.All(all, l => Assert.Equal(l.Value, one.GetValueOrDefault(l.Key) + other.GetValueOrDefault(l.Key), 9));
    }

    [Fact]
    public void A_shortage_is_need_less_stock_and_never_negative()
    {
        foreach (var share in new[] { 0, 0.5, 0.9, 1.0 })
        {
            var stock = Twin.Stock! with { Lots = new(Twin.Stock!.Lots!.Select(l => l with { Quantity = Math.Floor(l.Quantity * share) })) };
            var kit = new Assessor().Assess(Twin with { Stock = stock }).Kit;
            Assert.All(kit.Lines.Where(l => l.OnHand is not null && l.Kind is not (KitKind.Wire or KitKind.Tool or KitKind.TestGear)), l =>
            {
                Assert.Equal(Math.Max(0, l.Need - l.OnHand!.Value), l.Shortage, 9);
                Assert.Equal(l.Shortage > 0, l.State == KitState.Short);
            });
            Assert.Equal(share == 1, kit.IsComplete);
        }
    }

    [Fact]
    public void A_wire_is_short_when_no_reel_is_long_enough_though_there_is_enough_of_it()
    {
        var pieces = Twin.Stock! with { Reels = new(Enumerable.Range(0, 60).Select(i => new Reel($"SHORT{i}", "W22", Length.Of(2, "m"))).Concat(Twin.Stock!.Reels!.Where(r => r.Part != "W22"))) };
        var line = new Assessor().Assess(Twin with { Stock = pieces }).Kit.Lines.Single(l => l.Part == "W22");
        Assert.Equal(KitState.Short, line.State);
        Assert.Equal(Assessed.Circuits.Where(c => c.Part == "W22" && c.Cut!.Value.Si > 2).Sum(c => c.Cut!.Value.Si), line.Shortage, 0.05);
    }

    [Fact]
    public void A_circuit_that_allows_it_is_spliced_once_and_no_other_is()
    {
        var reels = Twin.Stock! with { Reels = new(Twin.Stock!.Reels!.Where(r => r.Part != "W20").Concat([new("A", "W20", Length.Of(4, "m")), new("B", "W20", Length.Of(4, "m")), new("C", "W20", Length.Of(4, "m"))])) };
        var plain = new Assessor().Assess(Twin with { Stock = reels }).Cuts.Single(c => c.Part == "W20");
        Assert.Equal((2, 0), (plain.Plan!.TooLong.Count, plain.Splices));
        var allowed = Twin.Change.Circuits!.With(Twin.Change.Circuits["C401"] with { Splice = true });
        var spliced = new Assessor().Assess(Twin with { Stock = reels, Change = Twin.Change with { Circuits = allowed } }).Cuts.Single(c => c.Part == "W20");
        Assert.Equal((1, 1), (spliced.Plan!.TooLong.Count + spliced.Plan.NotPlaced.Count, spliced.Splices));
    }

    [Fact]
    public void Without_a_stock_file_the_kit_is_known_and_the_aircraft_stays_closed()
    {
        var assessment = new Assessor().Assess(Twin with { Stock = null });
        Assert.False(assessment.Kit.IsComplete);
        Assert.Equal("Do not open the aircraft yet.", assessment.Kit.Verdict);
        Assert.DoesNotContain(assessment.Findings, f => f.Rule.StartsWith("kit", StringComparison.Ordinal));
        Assert.Equal(Kit.Lines.Select(l => (l.Part, l.Used)), assessment.Kit.Lines.Select(l => (l.Part, l.Used)));
    }

    [Fact]
    public void What_is_missing_is_ordered_by_the_use_date_less_the_lead_time()
    {
        // By hand: 60 days before 2027-03-22.
        var stock = Twin.Stock! with { Lots = Twin.Stock!.Lots!.Without(Twin.Stock.Lots!.Single(l => l.Part == "ZZ-TS70").Id) };
        Assert.Equal(new DateOnly(2027, 1, 21), new Assessor().Assess(Twin with { Stock = stock }).Kit.Lines.Single(l => l.Part == "ZZ-TS70").OrderBy);
    }

    private static KitLine Line(string part) => Kit.Lines.Single(l => l.Part == part);

    private static void AssertCounts(IEnumerable<string> parts, KitKind kind) => AssertSums(parts.Select(p => (p, 1.0)), l => l.Kind == kind);

    private static void AssertSums(IEnumerable<(string Part, double Quantity)> wanted, Func<KitLine, bool> lines) => Assert.Equal(
        wanted.GroupBy(w => w.Part).Select(g => (g.Key, g.Sum(w => w.Quantity))).OrderBy(x => x.Key, StringComparer.Ordinal),
        Kit.Lines.Where(lines).Select(l => (l.Part, l.Used)).OrderBy(x => x.Part, StringComparer.Ordinal));
}
