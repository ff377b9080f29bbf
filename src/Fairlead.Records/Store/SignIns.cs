using System.Globalization;
using System.Text;
using Fairlead.Model;

namespace Fairlead.Records;

/// <summary>Asks a person for the PIN or password again at each signature. After five wrong ones in a row the next is looked at only after a
/// quarter of an hour.</summary>
/// <param name="store">Where the verifiers are kept.</param>
/// <param name="people">The people of the job.</param>
/// <param name="clock">The clock.</param>
public sealed class SignIns(ILogStore store, Catalog<Person> people, TimeProvider clock)
{
    /// <summary>Fewest characters.</summary>
    public const int Shortest = 6;

    /// <summary>Most bytes: what a tablet can seal, with room to spare.</summary>
    public const int Longest = 256;

    private const int MostFailures = 5;
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(15);

    /// <summary>Why a person is not taken to be that person; null when they are.</summary>
    public string? Refusal(string who, string secret)
    {
        if (store.FindSignIn(who) is not { } signIn)
        {
            return $"{who} has no PIN or password yet.";
        }

        // The failure is written down before the password is looked at, so that neither a crash nor trying many at once makes a trial free.
        if (!store.CountTry(who, MostFailures, clock.GetUtcNow(), Pause))
        {
            return store.FindSignIn(who) is { LastFailure: { } last } shut ? $"{shut.Failures.ToString(CultureInfo.InvariantCulture)} wrong entries in a row for {who}: wait until {Instant.Text(last + Pause)}." : $"There were too many wrong entries in a row for {who}: try again later.";
        }

        if (!Passwords.Matches(secret, signIn.Verifier))
        {
            return $"That is not the PIN or password of {who}.";
        }

        store.ForgetTries(who);
        return null;
    }

    /// <summary>Sets a PIN or password; one that is set already has to be given. Returns why not, or null.</summary>
    /// <param name="who">The person.</param>
    /// <param name="present">The present one; empty when there is none.</param>
    /// <param name="next">The new one.</param>
    /// <param name="salt">Random bytes, <see cref="Passwords.SaltBytes"/> of them.</param>
    public string? Set(string who, string present, string next, ReadOnlySpan<byte> salt)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (!people.Contains(who))
        {
            return $"'{who}' is not a person of this job.";
        }

        if (next.Length < Shortest)
        {
            return $"A PIN or password has at least {Shortest.ToString(CultureInfo.InvariantCulture)} characters.";
        }

        if (Encoding.UTF8.GetByteCount(next) > Longest)
        {
            return $"A PIN or password has at most {Longest.ToString(CultureInfo.InvariantCulture)} bytes.";
        }

        if (store.FindSignIn(who) is not null && Refusal(who, present) is { } refusal)
        {
            return refusal;
        }

        store.PutSignIn(who, new SignIn(Passwords.Verifier(next, salt)));
        return null;
    }
}
