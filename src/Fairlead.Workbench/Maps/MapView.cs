using System.Collections.Immutable;

namespace Fairlead.Workbench.Maps;

/// <summary>The aircraft from one side: a drawing, and over it what can be picked and moved.</summary>
/// <param name="Title">What is seen.</param>
/// <param name="Aspect">Side, Plan or Front.</param>
/// <param name="Svg">The drawing, as SVG.</param>
/// <param name="Width">Width of the drawing, mm.</param>
/// <param name="Height">Height of the drawing, mm.</param>
/// <param name="Scale">Millimetres of the aircraft for one of the drawing.</param>
/// <param name="Unit">Unit of the stations, as the job writes them.</param>
/// <param name="Marks">Boxes, antennas and panels, those that go in last.</param>
/// <param name="Zones">Zones, as far as what has a place in them tells their extent.</param>
public sealed record MapView(string Title, string Aspect, string Svg, double Width, double Height, double Scale, string Unit, ImmutableArray<MapMark> Marks, ImmutableArray<MapZone> Zones);

/// <summary>What a mark on the map is.</summary>
public enum MapKind
{
    /// <summary>A box that goes in.</summary>
    Box,

    /// <summary>An antenna that goes in.</summary>
    Antenna,

    /// <summary>A box or antenna that was there before.</summary>
    Before,

    /// <summary>A panel.</summary>
    Panel,
}

/// <summary>Something on the map.</summary>
/// <param name="Path">Its model path.</param>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it is.</param>
/// <param name="X">Middle from the left of the drawing, mm.</param>
/// <param name="Y">Middle from the top of the drawing, mm.</param>
/// <param name="Width">Width on the drawing, mm.</param>
/// <param name="Height">Height on the drawing, mm.</param>
/// <param name="Fs">Fuselage station in the unit of the map.</param>
/// <param name="Bl">Buttock line in the unit of the map.</param>
/// <param name="Wl">Waterline in the unit of the map.</param>
/// <param name="Verdict">The gravest of its findings as a word; empty without any.</param>
/// <param name="Findings">How many findings it has.</param>
public sealed record MapMark(
    string Path, string Id, string Name, MapKind Kind, double X, double Y, double Width, double Height, double Fs, double Bl, double Wl, string Verdict, int Findings)
{
    /// <summary>Whether it may be moved: what the change puts in may.</summary>
    public bool Movable => Kind is MapKind.Box or MapKind.Antenna;
}

/// <summary>The extent of a zone on the map.</summary>
public sealed record MapZone(string Id, string Name, double X, double Y, double Width, double Height);

/// <summary>What is known of something on the map.</summary>
/// <param name="Findings">Its findings.</param>
/// <param name="Sheets">Its sheets.</param>
public sealed record MapAbout(ImmutableArray<Views.FindingView> Findings, ImmutableArray<Views.SheetLine> Sheets);
