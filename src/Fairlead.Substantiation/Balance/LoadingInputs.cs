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
        var groups = aircraft.StationGroups.OrEmpty();
        return new WorstLoadingInput(
            empty.Mass, empty.Fs,
            stations.Select(s => new LoadingStationRow(s.Id, s.Fs, s.Max, s.Min, string.Join('+', groups.Where(g => g.Stations.Contains(s.Id)).Select(g => g.Id)))).ToSequence(),
            aircraft.Tanks.OrEmpty().Select(t => new LoadingTankRow(t.Id, t.Fs, t.Density * t.Usable, t.BurnOrder)).ToSequence(),
            envelope.Points.Select(p => new EnvelopeRow(p.Mass, p.Fs)).ToSequence(),
            envelope.MaxTakeOff, envelope.MaxZeroFuel, envelope.MaxLanding,
            Groups: groups.Select(g => new LoadingGroupRow(g.Id, g.Max)).ToSequence());
    }
}
