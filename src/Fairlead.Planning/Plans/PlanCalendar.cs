using Fairlead.Calculations;
using Fairlead.Planning.Scheduling;

namespace Fairlead.Planning.Plans;

/// <summary>Days and hours as the ticks of a plan: quarters of an hour of the hangar's wall clock, from midnight of the first day.
/// Every day has 96, also the two of the year on which clocks change: they change at night, and a cure across that night is an hour longer or shorter than planned.</summary>
/// <param name="Start">First day.</param>
/// <param name="Days">How many days are looked at.</param>
/// <param name="Closed">Days on which nobody works.</param>
public sealed record PlanCalendar(DateOnly Start, int Days, Sequence<DateOnly> Closed = default)
{
    /// <summary>Ticks of an hour.</summary>
    public const int PerHour = 4;

    /// <summary>Ticks of a day.</summary>
    public const int PerDay = 24 * PerHour;

    /// <summary>End of the time looked at.</summary>
    public int Horizon => Days * PerDay;

    /// <summary>Wall time at a tick.</summary>
    public DateTime At(int tick) => Start.ToDateTime(TimeOnly.MinValue).AddMinutes(tick * (60.0 / PerHour));

    /// <summary>First tick that is not before a wall time.</summary>
    public int Tick(DateTime time) => (int)Math.Ceiling(Math.Max(0, (time - Start.ToDateTime(TimeOnly.MinValue)).TotalHours) * PerHour);

    /// <summary>Whole ticks for some hours: at least one when there is anything to do. Check value: 0.3 h takes two.</summary>
    public static int Ticks(double hours) => (int)Math.Ceiling(Math.Round(hours * PerHour, 6));

    /// <summary>Day of a tick; the end of a stretch belongs to the day before when it falls on midnight.</summary>
    public DateOnly DayOfEnd(int tick) => Start.AddDays(Math.Max(0, tick - 1) / PerDay);

    /// <summary>Hours of some days of the week, in the quarters that lie wholly within them; those that pass midnight end on the next day.</summary>
    public Sequence<Slot> Hours(Sequence<DayOfWeek> days, TimeOnly from, TimeOnly to)
    {
        var (first, last) = ((int)Math.Ceiling(InDay(from)), (int)Math.Floor(InDay(to)) + (to <= from ? PerDay : 0));
        return Enumerable.Range(0, Days).Where(d => days.Contains(Start.AddDays(d).DayOfWeek) && !Closed.Contains(Start.AddDays(d)))
            .Select(d => new Slot((d * PerDay) + first, (d * PerDay) + last)).Where(s => s.Length > 0).ToSequence();
    }

    private static double InDay(TimeOnly time) => time.ToTimeSpan().TotalHours * PerHour;
}
