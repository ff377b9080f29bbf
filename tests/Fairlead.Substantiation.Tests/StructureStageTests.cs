using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Tests.Substantiation;

/// <summary>The structure stage against statics worked by hand, on the starter job: one recorder of 2.1 lb with its mounting, on a shelf, by
/// four screws at the corners of a rectangle of 3.5 in across and 5 in along, its centre of gravity in the middle and 0.9 in up.</summary>
public sealed class StructureStageTests
{
    private static readonly Job Start = JobReader.Read(Starter.Files()).Job!;

    [Fact]
    public void A_screw_into_an_anchor_nut_of_another_thread_fails()
    {
        var twin = JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!;
        var nuts = twin.Parts.AnchorNuts!;
        var job = twin with { Parts = twin.Parts with { AnchorNuts = nuts.With(nuts["AN8"] with { Thread = Length.Of(0.138, "in") }) } };
        Assert.Equal("equipment/GPS1", new Assessor().Assess(job).Findings.Single(f => f.Rule == "fixing-thread").Subject);
    }

    // 14 CFR 23.561(b)(3): 18 forward, 4.5 sideward, 3 up; 23.337: n = 2.1 + 24,000/(W + 10,000), at most 3.8, here 3.8 for a light aircraft:
    // 1.5 · 3.8 = 5.7 down. The fitting factor of 23.625 is 1.15. A pound of mass weighs a pound of force.
    [Fact]
    public void Inertia_loads_follow_from_the_certification_basis()
    {
        var sheet = new Assessor().Assess(Start).Sheet("equipment/REC1/loads")!;
        Assert.Equal(1.15 * 18 * 2.1, sheet["PF"].Value, 1e-6);
        Assert.Equal(1.15 * 4.5 * 2.1, sheet["PS"].Value, 1e-6);
        Assert.Equal(1.15 * 5.7 * 2.1, sheet["PD"].Value, 1e-6);
        Assert.Equal(1.15 * 3 * 2.1, sheet["PU"].Value, 1e-6);
        Assert.Equal(3.8, new Assessor().Assess(Start).Sheet("structure/factor")!["n"].Si, 1e-12);
    }

    // Forward 43.47 lbf through the middle: 10.8675 lbf shear in each screw. Its moment at 0.9 in height is borne about the centroid by two screws
    // 2.5 in behind and two ahead: 43.47 · 0.9 / (4 · 2.5) = 3.9123 lbf. Over the front edge, at 0 in, by screws at 0.5 and 5.5 in:
    // 43.47 · 0.9 · 5.5 / (2 · (0.5² + 5.5²)) = 3.5274 lbf: the former is more. Share: 10.8675/900 + 3.9123/1100 = 0.015632.
    [Fact]
    public void The_worst_of_all_directions_and_tilts_is_shown()
    {
        var sheet = new Assessor().Assess(Start).Sheet("equipment/REC1/fasteners")!;
        Assert.Equal(10.8675, sheet["Vmax"].Value, 1e-6);
        Assert.Equal(3.9123, sheet["Tmax"].Value, 1e-6);
        Assert.Equal((10.8675 / 900) + (3.9123 / 1100), sheet["u"].Si, 1e-9);
        Assert.Contains(sheet.Given, g => g is { Symbol: "Px", Origin: "load forward, the worst of 10 runs" });
    }

    // Behind a panel the box hangs out forward: in its axes up is along the face, and forward pulls it off: 43.47 / 4 in each screw and no shear.
    // Its own weight has an arm of 3 in: down 13.7655 lbf, twist none, tilt 13.7655 · 3 = 41.2965 lbf·in over screws at 0.5 and 1.5 in of a face 2 in high.
    [Fact]
    public void A_box_behind_a_panel_is_pulled_off_by_the_forward_load()
    {
        var part = Start.Parts.Equipment!["RECORDER"] with
        {
            Cg = new Place(In(-3), In(2), In(1)), Holes = [Hole(0.25, 0.5), Hole(3.75, 0.5), Hole(0.25, 1.5), Hole(3.75, 1.5)],
        };
        var sheet = new Assessor().Assess(With(part) with { Change = WithItem(f => f with { Stands = Direction.Forward }) }).Sheet("equipment/REC1/fasteners")!;

        // About the centroid: 41.2965 / (4 · 0.5) = 20.648 lbf with 13.7655 / 4 = 3.4414 lbf shear: 0.022595. Forward: 10.8675 / 1100 = 0.00988.
        Assert.Equal((3.441375 / 900) + (20.64825 / 1100), sheet["u"].Si, 1e-9);
        Assert.Contains(sheet.Given, g => g is { Symbol: "Py", Origin: "load down, the worst of 10 runs" });
    }

    [Fact]
    public void The_starter_job_holds() => Assert.DoesNotContain(new Assessor().Assess(Start).Findings, IsStructure);

    [Fact]
    public void What_is_missing_is_named_once_for_each_item()
    {
        var part = Start.Parts.Equipment!["RECORDER"] with { Cg = null, Holes = [] };
        var finding = Assert.Single(new Assessor().Assess(With(part)).Findings, IsStructure);
        Assert.Equal(("structure-incomplete", Verdict.CannotTell, "equipment/REC1", "change/fit/REC1"), (finding.Rule, finding.Severity, finding.Subject, finding.Path));
        Assert.Contains("the mounting holes of RECORDER and the centre of gravity of RECORDER", finding.Message, StringComparison.Ordinal);
        Assert.Contains("structural repair manual", finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("14 CFR 23", "amendment 23-62", true)]
    [InlineData("14 CFR part 23", "Amendment 62", true)]
    [InlineData("14 CFR 23", "amendment 23-64", false)]
    [InlineData("14 CFR 23", "as amended", false)]
    [InlineData("CS-23", "amendment 4", true)]
    [InlineData("CS-23", "amendment 5", false)]
    [InlineData("CAR 3", "1949", true)]
    [InlineData("CS-VLA", "initial issue", true)]
    [InlineData("14 CFR 25", "amendment 25-91", true)]
    [InlineData("14 CFR 27", "amendment 27-40", true)]
    [InlineData("National rules", "1", false)]
    public void The_basis_tells_the_factors_or_says_that_it_does_not(string rule, string edition, bool told)
    {
        var job = Start with { Aircraft = Start.Aircraft with { Certification = new(rule, edition, "normal") } };
        var findings = new Assessor().Assess(job).Findings;
        Assert.Equal(told, !findings.Any(f => f.Rule == "inertia-basis"));
        Assert.Equal(told, new Assessor().Assess(job).Sheet("equipment/REC1/fasteners") is not null);

        // Factors of the approved data need no rule.
        var stated = job with { Aircraft = job.Aircraft with { LoadFactors = new LoadFactors(3.8, 1.5, 3, 18, 4.5, 5.7) } };
        Assert.Equal(1.15 * 18 * 2.1, new Assessor().Assess(stated).Sheet("equipment/REC1/loads")!["PF"].Value, 1e-6);
    }

    [Fact]
    public void What_comes_clockmakes_room_on_a_shared_shelf()
    {
        var (aircraft, sheets) = (Start.Aircraft, Start.Aircraft.Structures!);
        var full = Start with { Aircraft = aircraft with { Structures = sheets.With(sheets["SHELF"] with { Carries = Mass.Of(4, "lb"), Capacity = Mass.Of(6, "lb") }) } };
        Assert.Contains(new Assessor().Assess(full).Findings, f => f is { Rule: "shared-tray", Subject: "structure/SHELF", Severity: Verdict.Fails });
        var clock = full.Aircraft.Equipment![full.Change.Remove![0].Item];
        var freed = full with { Aircraft = full.Aircraft with { Equipment = full.Aircraft.Equipment.With(clock with { Structure = "SHELF", Mass = Mass.Of(0.5, "lb") }) } };
        Assert.DoesNotContain(new Assessor().Assess(freed).Findings, f => f.Rule == "shared-tray");
    }

    // A heavier recorder: its inertia loads, ten fastener groups and the sheet under its screws, the shelf's total, and one balance; the loads of another item stay.
    [Fact]
    public void Editing_a_mounting_runs_that_item_and_its_shelf_only()
    {
        var heavier = Start with { Change = Start.Change with { Fit = Start.Change.Fit!.With(Start.Change.Fit["REC1"] with { Mounting = Mass.Of(0.4, "lb") }) } };
        var elsewhere = heavier with { Change = heavier.Change with { Fit = heavier.Change.Fit!.With(heavier.Change.Fit["REC1"] with { Fixing = heavier.Change.Fit["REC1"].Fixing! with { EdgeDistance = In(0.45) } }) } };
        var assessor = new Assessor();
        assessor.Assess(Start);
        var before = assessor.Runs;
        assessor.Assess(heavier);
        Assert.Equal(1 + 10 + 1 + 1 + Balance, assessor.Runs - before);
        before = assessor.Runs;
        assessor.Assess(elsewhere);
        Assert.Equal(1, assessor.Runs - before);
    }

    [Fact]
    public void After_edits_the_result_is_that_of_a_fresh_assessment()
    {
        var fixing = Start.Change.Fit!["REC1"].Fixing!;
        Job[] edits =
        [
            Start with { Change = WithItem(f => f with { Count = 3 }) },
            Start with { Change = WithItem(f => f with { Stands = Direction.Left }) },
            Start with { Change = WithItem(_ => fixing with { Fastener = "none" }) },
            Start with { Change = WithItem(f => f with { EdgeDistance = In(0.1), Bond = Resistance.Of(10, "mΩ") }) },
            Start with { Aircraft = Start.Aircraft with { Certification = new("none", "none", "none") } },
            Start with { Aircraft = Start.Aircraft with { Structures = null } },
            With(Start.Parts.Equipment!["RECORDER"] with { Holes = [Hole(0, 0), Hole(0, 0), Hole(0, 0), Hole(0, 0)] }),
            Start,
        ];
        var assessor = new Assessor();
        Assert.All(edits, job =>
        {
            var (kept, fresh) = (assessor.Assess(job), new Assessor().Assess(job));
            Assert.Equal(fresh.Findings, kept.Findings);
            Assert.Equal(fresh.Sheets.Select(s => s.Subject), kept.Sheets.Select(s => s.Subject));
            Assert.All(kept.Sheets, s => Assert.All(s.Sheet.Steps, step => Assert.True(double.IsFinite(step.Value.Si), s.Subject)));
        });
    }

    // Empty weight, its revision, and the worst loading after the change, once for its sheet and once for its extremes.
    private const int Balance = 4;

    private static bool IsStructure(Finding finding) =>
        finding.Subject.StartsWith("equipment/", StringComparison.Ordinal) || finding.Subject.StartsWith("structure/", StringComparison.Ordinal);

    private static Job With(EquipmentPart part) => Start with { Parts = Start.Parts with { Equipment = Start.Parts.Equipment!.With(part) } };

    private static Change WithItem(Func<Fixing, Fixing> edit)
    {
        var item = Start.Change.Fit!["REC1"];
        return Start.Change with { Fit = Start.Change.Fit.With(item with { Fixing = edit(item.Fixing!) }) };
    }

    private static MountingHole Hole(double x, double y) => new(In(x), In(y), In(0.2));

    private static Length In(double value) => Length.Of(value, "in");
}
