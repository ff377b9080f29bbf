using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Server;
using Fairlead.Server.Desks;
using Fairlead.Server.Jobs;
using Fairlead.Workbench;
using Microsoft.Extensions.Time.Testing;

namespace Fairlead.Tests.Server;

/// <summary>What the server holds in memory, and what it lets go.</summary>
public sealed class HeldTests : IDisposable
{
    private static readonly IReadOnlyList<IReadOnlyList<JobEdit>> Nothing = [];
    private readonly string data = Directory.CreateTempSubdirectory("fairlead-held").FullName;
    private readonly FakeTimeProvider clock = new();

    public void Dispose() => Directory.Delete(data, recursive: true);

    [Fact]
    public void What_is_known_of_a_job_is_let_go_when_the_job_is_gone_or_nobody_has_asked_for_it_for_long()
    {
        var jobs = new JobStore(new ServerOptions(data), clock);
        foreach (var name in new[] { "one", "two", "three" })
        {
            jobs.Add(name, Starter.Files());
            Assert.NotNull(jobs.Read(jobs.Find(name)!).Job);
        }

        Assert.Equal(3, jobs.Held);
        Directory.Delete(jobs.Find("three")!, recursive: true);
        clock.Advance(TimeSpan.FromMinutes(50));
        jobs.Read(jobs.Find("one")!);
        Assert.Equal(2, jobs.Held);
        clock.Advance(TimeSpan.FromMinutes(50));
        jobs.Read(jobs.Find("one")!);
        Assert.Equal(1, jobs.Held);
        Assert.NotNull(jobs.Read(jobs.Find("two")!).Job);
    }

    [Fact]
    public void What_is_let_go_is_ended_and_made_anew_when_it_is_asked_for_again()
    {
        var ended = new List<string>();
        var known = new Remembered<string>(clock, ended.Add);
        Assert.Equal("a", known.Of(data, old => old ?? "a"));
        Assert.Equal("a", known.Of(data, old => old ?? "b"));
        Assert.Empty(ended);
        clock.Advance(TimeSpan.FromHours(2));
        known.Of(Path.Combine(data, "other"), _ => "other");
        Assert.Contains("a", ended);
        Assert.Null(known.Find(data));
        Assert.Equal("b", known.Of(data, old => old ?? "b"));
    }

    [Fact]
    public void A_person_with_many_desks_takes_no_room_from_others()
    {
        var hall = new DeskHall(clock, () => Guid.NewGuid().ToString());
        var other = hall.Open("demo", data, null, Nothing, "other").Id;
        var mine = new List<string>();
        for (var i = 0; i < 100; i++)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            mine.Add(hall.Open("demo", data, null, Nothing, "one").Id);
        }

        Assert.NotNull(hall.Find(other, "other"));
        var open = mine.Where(id => hall.Find(id, "one") is not null).ToArray();
        Assert.InRange(open.Length, 2, 32);
        Assert.Equal(mine.TakeLast(open.Length), open);
    }

    // Two desks that each hold more than half of what one person may are not both kept.
    [Fact]
    public void A_great_desk_of_a_person_takes_the_room_of_another_of_theirs()
    {
        var text = new string('#', Limits.FileBytes);
        var great = Enumerable.Range(0, 9).ToDictionary(i => $"parts/{i}.yaml", _ => text, StringComparer.Ordinal);
        var hall = new DeskHall(clock, () => Guid.NewGuid().ToString());
        var (small, first) = (hall.Open("demo", data, null, Nothing, "one").Id, hall.Open("demo", data, great, Nothing, "one").Id);
        Assert.NotNull(hall.Find(small, "one"));
        Assert.NotNull(hall.Find(first, "one"));
        var others = hall.Open("demo", data, great, Nothing, "other").Id;
        clock.Advance(TimeSpan.FromSeconds(1));
        var second = hall.Open("demo", data, great, Nothing, "one").Id;
        Assert.Null(hall.Find(first, "one"));
        Assert.NotNull(hall.Find(second, "one"));
        Assert.NotNull(hall.Find(others, "other"));
    }
}
