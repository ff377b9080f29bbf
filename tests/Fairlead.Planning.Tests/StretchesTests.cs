using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Planning.Plans;
using Fairlead.Planning.Scheduling;
using Fairlead.Planning.Tasks;
using Fairlead.Substantiation;
using Problem = Fairlead.Planning.Scheduling.Problem;

namespace Fairlead.Tests.Planning;

/// <summary>How long work goes on without a pause: as long as those who do it are there together, and never in crumbs for the sake of one who is there briefly.</summary>
public sealed class StretchesTests
{
    // Four shifts of a day of 96 quarters: 07:00 to 15:30, 13:00 to 21:00, 07:00 to 10:00, and a quarter of an hour.
    private static readonly Worker Day = new("D", ["a", "d"], [new(28, 62), new(124, 158)]);
    private static readonly Worker Late = new("L", ["a", "l"], [new(52, 84), new(148, 180)]);
    private static readonly Worker Half = new("H", ["a", "h"], [new(28, 40), new(124, 136)]);
    private static readonly Worker Brief = new("B", ["a", "b"], [new(28, 29), new(124, 125)]);

    [Fact]
    public void Work_that_anyone_of_several_could_do_fits_the_shortest_of_their_shifts_that_lasts_an_hour()
    {
        Assert.Equal(16, Piece(new CrewNeed("d", 1)));
        Assert.Equal(12, Piece(new CrewNeed("a", 1)));
        Assert.Equal(1, Piece(new CrewNeed("b", 1)));
    }

    [Fact]
    public void Work_for_two_fits_the_hours_they_are_there_together() => Assert.Equal(10, Piece(new("d", 1), new("l", 1)));

    [Fact]
    public void Work_outside_fits_the_hours_of_the_ramp_in_the_shift() => Assert.Equal(6, Fitted(new Work("T", 40, Crew: [new("d", 1)], Piece: 16, Windows: [new(56, 68)])));

    [Fact]
    public void What_may_not_pause_stays_whole() => Assert.Equal(0, Fitted(new Work("T", 40, Crew: [new("a", 1)])));

    // Before, one such shift put all the work of everybody into quarters of an hour: planning took minutes.
    [Fact]
    public void A_shift_of_a_quarter_of_an_hour_leaves_the_work_of_the_others_in_as_many_pieces()
    {
        var job = TaskListTests.Demo("survey-twin");
        var tasks = TaskList.Of(new Assessor().Assess(job));
        int Pieces(Job job) => new PlanTakeOff(tasks, job, new(new DateOnly(2027, 3, 22))) is var takeOff ? takeOff.Problem(takeOff.Calendar(60)).Tasks.Sum(t => t.Pieces().Count()) : 0;
        var people = job.Order.People!;
        var brief = job with { Order = job.Order with { Shifts = new(job.Order.Shifts!.Append(new Shift("brief", [DayOfWeek.Monday], new(7, 0), new(7, 15)))), People = people.With(people["EL1"] with { Shift = "brief" }) } };
        Assert.InRange(Pieces(job), tasks.Count, 2 * tasks.Count);
        Assert.InRange(Pieces(brief), tasks.Count, 2 * tasks.Count);
    }

    [Theory]
    [InlineData(7, 0, 7, 10)]
    [InlineData(7, 5, 7, 25)]
    public void A_shift_with_no_whole_quarter_in_it_is_no_time_and_not_a_whole_day(int hour, int minute, int toHour, int toMinute) =>
        Assert.Empty(new PlanCalendar(new DateOnly(2027, 3, 22), 7).Hours([DayOfWeek.Monday], new(hour, minute), new(toHour, toMinute)));

    [Fact]
    public void A_shift_is_planned_in_the_quarters_that_lie_within_it() =>
        Assert.Equal([new Slot(29, 61)], new PlanCalendar(new DateOnly(2027, 3, 22), 7).Hours([DayOfWeek.Monday], new(7, 5), new(15, 25)));

    private static int Piece(params CrewNeed[] crew) => Fitted(new Work("T", 40, Crew: crew.ToSequence(), Piece: 16));

    private static int Fitted(Work work) => Stretches.Fitted(new Problem(192, [work], [Day, Late, Half, Brief])).Tasks[0].Piece;
}
