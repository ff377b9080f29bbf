namespace Fairlead.Server.People;

/// <summary>Those who give a password for one name are looked at one after the other, so that a wrong one is counted before the next is looked at: of many sent at once no more
/// are tried than of many sent in a row.</summary>
internal sealed class SignInTurns : IDisposable
{
    private const int Turns = 64;
    private readonly SemaphoreSlim[] turns = [.. Enumerable.Range(0, Turns).Select(_ => new SemaphoreSlim(1, 1))];

    /// <summary>Does something when it is the turn of a name.</summary>
    /// <param name="name">The name as it is looked up.</param>
    /// <param name="work">What is done. The member is read within: what was read before does not know of the others.</param>
    /// <param name="stop">Asks for an end.</param>
    public async Task<T> Take<T>(string name, Func<Task<T>> work, CancellationToken stop)
    {
        var turn = turns[(StringComparer.Ordinal.GetHashCode(name) & int.MaxValue) % Turns];
        await turn.WaitAsync(stop);
        try
        {
            return await work();
        }
        finally
        {
            turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var turn in turns)
        {
            turn.Dispose();
        }
    }
}
