namespace Fairlead.Records;

/// <summary>Sealant by batch, time and temperature: how long a mix may be used and when it is cured, by the data of its part and never more favourably.</summary>
internal static class Mixing
{
    /// <summary>When it was mixed, where that is not told; the end of use and the cure, where they are not and the part says them.</summary>
    public static Payload Complete(Register register, Payload told, DateTimeOffset now)
    {
        // The time stands in the entry, so that it is judged by the moment its own times were counted from.
        var mix = told.Text("when").Length == 0 ? told.With("when", now) : told;
        if (Times(register, mix, now) is not { } times)
        {
            return mix;
        }

        var until = mix.Time("until") is null ? mix.With("until", times.Until) : mix;
        return until.Time("cured") is null ? until.With("cured", times.Cured) : until;
    }

    /// <summary>Why a mix is not taken.</summary>
    public static IEnumerable<string> Of(Candidate c)
    {
        var (mix, when) = (c.Entry.Payload, c.Entry.Payload.Time("when") ?? c.Now);
        if (c.Register.Sealants.Find(mix.Text("part")) is not { } part)
        {
            yield return $"'{mix.Text("part")}' is no sealant of this job.";
        }
        else if (Times(c.Register, mix, c.Now) is not { } times)
        {
            yield return $"At {mix.Text("temperature")} degC nobody can tell when '{part.Id}' is cured: its data begin at {part.Cure.Min(p => p.At).As("degC")}. Warm the structure.";
        }
        else if (mix.Time("until") > times.Until || mix.Time("cured") < times.Cured)
        {
            yield return $"By its data '{part.Id}' mixed at {Instant.Text(when)} may be used until {Instant.Text(times.Until)} and is cured at {Instant.Text(times.Cured)}: no later, and no sooner.";
        }

        if (when > c.Now)
        {
            yield return "It cannot have been mixed in time to come.";
        }

        if (mix.Time("expires") < when)
        {
            yield return $"The shelf life of batch {mix.Text("batch")} ended at {mix.Text("expires")}.";
        }
    }

    /// <summary>Why a mix may not be used any more; nothing when it may.</summary>
    public static IEnumerable<string> Used(Candidate c, string mix)
    {
        if (c.State.Last("sealant/" + mix, "mixed") is not { } mixed)
        {
            yield return $"There is no sealant mix '{mix}' in the log.";
        }
        else if (c.Now > mixed.Payload.Time("until"))
        {
            yield return $"The application life of sealant mix '{mix}' ended at {mixed.Payload.Text("until")}.";
        }
    }

    /// <summary>The mix with which a task was done, and when it is cured; null when it is, or none was used.</summary>
    public static (string Mix, DateTimeOffset Cured)? Wet(Candidate c, string task) =>
        c.State.Last("task/" + task, "done")?.Payload.Text("sealant") is { Length: > 0 } mix && c.State.Last("sealant/" + mix, "mixed")?.Payload.Time("cured") is { } cured && cured > c.Now ? (mix, cured) : null;

    private static (DateTimeOffset Until, DateTimeOffset Cured)? Times(Register register, Payload mix, DateTimeOffset now)
    {
        var (when, degrees) = (mix.Time("when") ?? now, mix.Number("temperature"));
        return register.Sealants.Find(mix.Text("part")) is { } part && part.Cure.Where(p => p.At.In("degC") <= degrees).MaxBy(p => p.At) is { } point
            ? (when + TimeSpan.FromSeconds(part.ApplicationLife.Si), when + TimeSpan.FromSeconds(point.Time.Si)) : null;
    }
}
