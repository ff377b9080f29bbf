namespace Fairlead.Client.Desk;

/// <summary>Who is signed in.</summary>
/// <param name="SignsIn">Whether people sign in here; not when one machine alone is served.</param>
/// <param name="Name">The name; empty when nobody is.</param>
/// <param name="Person">The person of the jobs in whose name entries are made.</param>
/// <param name="Roles">The roles.</param>
/// <param name="NeedsFirst">Whether the first keeper is still to be made.</param>
public sealed record Me(bool SignsIn, string Name, string Person, IReadOnlyList<string> Roles, bool NeedsFirst);

/// <summary>Who is signed in, asked once.</summary>
/// <param name="server">The server.</param>
public sealed class Membership(Server server)
{
    private Task<Me>? asked;

    /// <summary>Who is signed in.</summary>
    /// <exception cref="ServerException">The server is not there.</exception>
    public async Task<Me> Ask()
    {
        try
        {
            return await (asked ??= server.Get<Me>("api/me"));
        }
        catch (ServerException)
        {
            asked = null;
            throw;
        }
    }

    /// <summary>Asks anew the next time.</summary>
    public void Forget() => asked = null;
}
