using Fairlead.Calculations;
using Fairlead.Calculations.Balance;
using Fairlead.Model;

namespace Fairlead.Substantiation.Balance;

/// <summary>The loading limits of an aircraft as input of the search for its worst loading.</summary>
internal static class LoadingInputs
{
    /// <summary>The input for an empty weight; null when the aircraft record names no loading stations.</summary>
    public static WorstLoadingInput? Of(Aircraft aircraft, EmptyWeight empty)
    {
        if (aircraft.Stations is not { Count: > 0 } stations)
        {
            return null;
        }

        var envelope = aircraft.Envelope;
        return new WorstLoadingInput(
            empty.Mass, empty.Fs,
            stations.Select(s => new LoadingStationRow(s.Id, s.Fs, s.Max, s.Min, Groups(aircraft, s))).ToSequence(),
            aircraft.Tanks.OrEmpty().Select(t => new LoadingTankRow(t.Id, t.Fs, t.Density * t.Usable, t.BurnOrder)).ToSequence(),
            envelope.Points.Select(p => new EnvelopeRow(p.Mass, p.Fs)).ToSequence(),
            envelope.MaxTakeOff, envelope.MaxZeroFuel, envelope.MaxLanding,
            Groups: Groups(aircraft));
    }

    /// <summary>The input across the aircraft.</summary>
    public static WorstLateralInput Across(Aircraft aircraft, Mass mass, Length bl, Length left, Length right) => new(
        mass, bl,
        aircraft.Stations.OrEmpty().Select(s => new LateralStationRow(s.Id, s.Bl, s.Max, s.Min, Groups(aircraft, s))).ToSequence(),
        aircraft.Tanks.OrEmpty().Select(t => new LateralTankRow(t.Id, t.Bl, t.Density * t.Usable, t.BurnOrder)).ToSequence(),
        left, right, aircraft.Envelope.MaxTakeOff, aircraft.Envelope.MaxZeroFuel, Groups(aircraft));

    private static string Groups(Aircraft aircraft, LoadingStation station) =>
        string.Join('+', aircraft.StationGroups.OrEmpty().Where(g => g.Stations.Contains(station.Id)).Select(g => g.Id));

    private static Sequence<LoadingGroupRow> Groups(Aircraft aircraft) =>
        aircraft.StationGroups.OrEmpty().Select(g => new LoadingGroupRow(g.Id, g.Max)).ToSequence();
}
