using Fairlead.Calculations.Wiring;

namespace Fairlead.Calculations.Structure;

/// <summary>Input of <see cref="AntennaDoubler"/>.</summary>
/// <param name="Skin">Skin thickness.</param>
/// <param name="Doubler">Doubler thickness.</param>
/// <param name="Cut">Greatest width of the cut-out, screw holes in the line of the cut included.</param>
/// <param name="Width">Width of the doubler across the load.</param>
/// <param name="Diameter">Rivet diameter.</param>
/// <param name="Pitch">Rivet pitch.</param>
/// <param name="Edge">Edge distance of the rivets.</param>
/// <param name="Rivets">Rivets on each side of the cut-out, along the load.</param>
/// <param name="Sheet">Table of the skin.</param>
/// <param name="Pressurized">Whether the skin holds cabin pressure.</param>
public sealed record AntennaDoublerInput(
    [In("t", "skin", "in", Min = 0.010, Max = 0.13)] Length Skin,
    [In("td", "doubler", "in", Min = 0.010, Max = 0.25)] Length Doubler,
    [In("d", "width of the cut-out, screw holes in its line included", "in", Min = 0.1, Max = 12)] Length Cut,
    [In("w", "width of the doubler across the load", "in", Min = 0.5, Max = 40)] Length Width,
    [In("D", "rivet diameter", "in", Min = 0.09, Max = 0.26)] Length Diameter,
    [In("p", "rivet pitch", "in", Min = 0.1, Max = 5)] Length Pitch,
    [In("e", "edge distance of the rivets", "in", Min = 0, Max = 5)] Length Edge,
    [In("nr", "rivets on each side of the cut-out, along the load", Min = 1, Max = 500)] int Rivets,
    [In("sheet", "table of the skin", Default = "alclad2024")] SheetGroup Sheet = SheetGroup.Alclad2024,
    [In("press", "whether the skin holds cabin pressure", Default = "no")] bool Pressurized = false);

/// <summary>Doubler of an antenna on a light, unpressurised skin: thickness, the section that replaces the one cut, and rivets on each side of the cut-out.</summary>
/// <remarks>
/// AC 43.13-2B figures 4-1 to 4-3 ask a doubler at least as thick as the skin, rivets of 1/8 in at about 1 in, and print an edge distance of 1.5 in; they give no size.
/// The section and the number of rivets follow AC 43.13-1B 4-58k and tables 4-9 to 4-11 as for a lap splice of what is cut.
/// </remarks>
public sealed class AntennaDoubler : ICalculation<AntennaDoublerInput>
{
    private static readonly Source Figures = StructureSources.Alteration("figures 4-1 to 4-3");
    private static readonly Source Splice = StructureSources.Repair("4-58k");
    private static readonly Source Tables = StructureSources.Repair("tables 4-9 to 4-11");

    /// <inheritdoc/>
    public static CalculationInfo<AntennaDoublerInput> Info { get; } = new(
        "antenna-doubler", "Antenna doubler", Discipline.Structure,
        "Whether a doubler and its rivets make good the skin cut for an antenna", "t='0.032 in' td='0.040 in' d='1.25 in' w='6 in' D='0.125 in' p='1 in' e='0.3125 in' nr=10", Figures, Splice, Tables);

    /// <inheritdoc/>
    public static Sheet Run(AntennaDoublerInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Pressurized)
        {
            s.CannotTell("A pressurised skin is outside AC 43.13: the doubler needs approved data with fatigue and damage tolerance.");
        }

        s.Check("doubler thickness", input.Doubler.As("in"), Sense.AtLeast, input.Skin.As("in"), "at least as thick as the skin, of its material and strength", Figures);
        s.Check("rivet diameter", input.Diameter.As("in"), Sense.AtLeast, Length.Of(0.125, "in").As("in"), "1/8 in at least", Figures);
        s.Check("rivet pitch", input.Pitch.As("in"), Sense.AtMost, Length.Of(1, "in").As("in"), "about 1 in", Figures, Verdict.Caution);
        s.Check("rivet pitch, least", input.Pitch.As("in"), Sense.AtLeast, (input.Diameter * 3).As("in"), "at least 3 D", StructureSources.Repair("4-57c"));
        s.Check("edge distance", input.Edge.As("in"), Sense.AtLeast, (input.Diameter * 2).As("in"), "at least 2 D", StructureSources.Repair("4-57c"));
        s.Check("edge distance of the figure", input.Edge.As("in"), Sense.AtLeast, Length.Of(1.5, "in").As("in"), "1.5 in as the figure prints it; 2 D is the general rule", Figures, Verdict.Caution);
        Section(s, input);
        if (s.Step("N", "rivets per inch of cut", "by skin, thickness and diameter", RivetPattern.PerInch(input.Sheet, input.Skin, input.Diameter)) is { } perInch)
        {
            var share = s.Step("share", "share for a single-lap sheet joint", "note c of the tables", RivetPattern.Share(SplicePlace.LapJoint), Tables);
            var needed = s.Step("n", "rivets needed on each side", "N · d · share, rounded up", Math.Ceiling((perInch * input.Cut.In("in") * share) - 1e-9), Tables);
            s.Check("rivets on each side", Measure.Number(input.Rivets), Sense.AtLeast, Measure.Number(needed), "they carry what the cut skin carried", Tables);
        }

        s.Caution("A cut stringer, frame or any other member needs its own repair; check the ground plane, the bond (0.003 ohm at most) and the seal.");
        s.Caution("AC 43.13-2B prints no size of doubler: section and rivets here follow the rules for splicing what is cut, for light unpressurised structure.");
        s.DeferToApprovedData();
    });

    private static void Section(SheetBuilder s, AntennaDoublerInput input)
    {
        var cut = s.Step("Ac", "section cut from the skin", "d · t", new Area(input.Cut.Si * input.Skin.Si), "in²", Splice);
        var made = s.Step("Ad", "section of the doubler beside the cut-out", "(w − d) · td", new Area((input.Width.Si - input.Cut.Si) * input.Doubler.Si), "in²", Splice);
        s.Check("section", made.As("in²"), Sense.AtLeast, cut.As("in²"), "the splice has more section than was cut", Splice);
    }
}
