namespace Fairlead.Model.Reading;

/// <summary>Pairs of values of which the first may not exceed the second: least and greatest, shortest and longest.</summary>
internal static class Spans
{
    /// <summary>The spans of a job that run backwards: the path of the greater end, its key and that of the lesser.</summary>
    public static IEnumerable<(string Path, string Lesser, string Greater)> Backward(Job job, Func<Type, string, bool> sound) =>
        All(job, sound).Where(s => s.Backward).Select(s => (s.Path, s.Lesser, s.Greater));

    private static IEnumerable<(bool Backward, string Path, string Lesser, string Greater)> All(Job job, Func<Type, string, bool> sound)
    {
        foreach (var p in job.Aircraft.Panels!.Where(p => sound(typeof(Panel), p.Id)))
        {
            var path = $"aircraft/panels/{p.Id}";
            yield return Times(p.Open, path + "/open");
            yield return Times(p.Close, path + "/close");
        }

        if (job.Aircraft.Envelope is { } envelope && envelope.MaxTakeOff > default(Mass))
        {
            yield return (envelope.MaxZeroFuel > envelope.MaxTakeOff, "aircraft/envelope/max-zero-fuel", "max-zero-fuel", "max-take-off");
            yield return (envelope.MaxLanding > envelope.MaxTakeOff, "aircraft/envelope/max-landing", "max-landing", "max-take-off");
        }

        foreach (var s in job.Aircraft.Stations!.Where(s => sound(typeof(LoadingStation), s.Id)))
        {
            yield return (s.Min > s.Max, $"aircraft/stations/{s.Id}/max", "min", "max");
        }

        foreach (var t in job.Change.Tasks!.Where(t => sound(typeof(ExtraTask), t.Id)))
        {
            yield return Times(t.Time, $"change/tasks/{t.Id}/time");
        }

        foreach (var s in job.Change.Scenarios!.Where(s => sound(typeof(Scenario), s.Id)))
        {
            foreach (var t in s.Targets)
            {
                yield return (t.Start > t.End, $"change/scenarios/{s.Id}/targets/{t.Id}/end", "start", "end");
            }
        }

        foreach (var e in job.Parts.Equipment!.Where(e => sound(typeof(EquipmentPart), e.Id)))
        {
            foreach (var i in e.Power!)
            {
                yield return (i.MinVoltage > i.MaxVoltage, $"parts/equipment/{e.Id}/power/{i.Id}/max-voltage", "min-voltage", "max-voltage");
            }
        }

        foreach (var a in job.Parts.Antennas!.Where(a => sound(typeof(AntennaPart), a.Id)))
        {
            yield return (a.From > a.To, $"parts/antennas/{a.Id}/to", "from", "to");
        }

        foreach (var c in job.Parts.Contacts!.Where(c => sound(typeof(ContactPart), c.Id)))
        {
            yield return (c.Thinnest > c.Thickest, $"parts/contacts/{c.Id}/thickest", "thinnest", "thickest");
        }
    }

    private static (bool Backward, string Path, string Lesser, string Greater) Times(ThreePoint time, string path) =>
        time.Low > time.Likely ? (true, path + "/likely", "low", "likely") : (time.Likely > time.High, path + "/high", "likely", "high");
}
