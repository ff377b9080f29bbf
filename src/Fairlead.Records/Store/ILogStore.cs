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
}

/// <summary>How a person proves to be that person. It is kept beside the log and never in it, nor in any export.</summary>
/// <param name="Verifier">What <see cref="Passwords"/> made of the PIN or password.</param>
/// <param name="Failures">Wrong ones in a row.</param>
/// <param name="LastFailure">When the last was.</param>
public sealed record SignIn(string Verifier, int Failures = 0, DateTimeOffset? LastFailure = null);
