namespace Fairlead.Records;

/// <summary>Keeps one log and the texts its entries name by their hash. It only ever adds.</summary>
public interface ILogStore : IDisposable
{
    /// <summary>The lines after an entry, in order.</summary>
    /// <exception cref="InvalidDataException">The store is damaged.</exception>
    IEnumerable<string> Lines(long after);

    /// <summary>Adds an entry if its number is still free, and keeps the text it names. When this returns true, both are on the disk.</summary>
    /// <returns>False when somebody else was first: read what they added and judge again.</returns>
    bool TryAppend(Entry entry, ReadOnlyMemory<byte>? content = null);

    /// <summary>Fills an empty log, wholly or not at all.</summary>
    /// <exception cref="IOException">The log is not empty.</exception>
    void Fill(IReadOnlyList<Entry> entries, IEnumerable<byte[]> contents);

    /// <summary>A text by its SHA-256, or null.</summary>
    byte[]? Content(string hash);

    /// <summary>The hashes of all texts kept.</summary>
    IReadOnlyList<string> Contents();

    /// <summary>How a person proves to be that person; null when none was set.</summary>
    SignIn? FindSignIn(string person);

    /// <summary>Sets it.</summary>
    void PutSignIn(string person, SignIn signIn);

    /// <summary>Counts a try before it is looked at, in one step: of those who try at once each is counted, so that no more are looked at than may be.</summary>
    /// <param name="person">The person.</param>
    /// <param name="most">Wrong ones in a row after which none is looked at until the pause is over.</param>
    /// <param name="now">The time.</param>
    /// <param name="pause">The pause.</param>
    /// <returns>Whether it may be looked at.</returns>
    bool CountTry(string person, int most, DateTimeOffset now, TimeSpan pause);

    /// <summary>Forgets the tries counted: one of them was right.</summary>
    void ForgetTries(string person);
}

/// <summary>How a person proves to be that person. It is kept beside the log and never in it, nor in any export.</summary>
/// <param name="Verifier">What <see cref="Passwords"/> made of the PIN or password.</param>
/// <param name="Failures">Wrong ones in a row.</param>
/// <param name="LastFailure">When the last was.</param>
public sealed record SignIn(string Verifier, int Failures = 0, DateTimeOffset? LastFailure = null);
