namespace Fairlead.Records;

/// <summary>Why a permit to radiate is not taken: it is given for the tests of a shift, by somebody who may sign for what radiates.</summary>
internal static class Permits
{
    // Who was told and who watches outside is known for a shift; common practice, no rule.
    private static readonly TimeSpan Longest = TimeSpan.FromHours(12);

    public static IEnumerable<string> Of(Candidate c)
    {
        var until = c.Entry.Payload.Time("until");
        if (until <= c.Now)
        {
            yield return $"The permit would have ended already: 'until' is {c.Entry.Payload.Text("until")}, and it is {Instant.Text(c.Now)}. Tell until when it runs.";
        }
        else if (until > c.Now + Longest)
        {
            yield return $"A permit to radiate is given for no more than 12 h: 'until' is {c.Entry.Payload.Text("until")}, expected at most {Instant.Text(c.Now + Longest)}. Give a new one for the next shift.";
        }

        var scopes = Scopes(c.Register.Required);
        if (scopes.Length > 0 && !scopes.Any(s => Signing.Find(c.Register, c.Entry.Who, s)?.Until >= c.Today))
        {
            yield return $"{c.Entry.Who} has no authorisation for '{string.Join("' or '", scopes)}' that runs: a permit to radiate is given by somebody who may sign for what radiates.";
        }
    }

    private static string[] Scopes(Required required) =>
        [.. required.Tests.Where(t => t.Radiates).SelectMany(t => required.Asks.Where(a => a.Subject == "test/" + t.Id && a.Role == "work")).Select(a => a.Scope).Distinct(StringComparer.Ordinal)];
}
