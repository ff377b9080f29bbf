using System.Security.Cryptography;
using System.Text;

namespace Fairlead.Server.People;

/// <summary>The key with which the first keeper is made. It is shown on the console, never logged nor written, and works once.</summary>
public sealed class FirstKey
{
    private const int Signs = 20;
    private readonly Lock one = new();

    internal FirstKey(bool needed) => Words = needed ? RandomNumberGenerator.GetString("abcdefghjkmnpqrstuvwxyz23456789", Signs) : "";

    /// <summary>The key; empty when there is a keeper.</summary>
    public string Words { get; private set; }

    /// <summary>Whether a keeper is still to be made.</summary>
    public bool Needed => Words.Length > 0;

    internal bool Matches(string given) => Needed && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(Words));

    // Of two who come at once one is first.
    internal bool Use(string given)
    {
        lock (one)
        {
            var right = Matches(given);
            Words = right ? "" : Words;
            return right;
        }
    }
}
