namespace Fairlead.Client.Desk;

/// <summary>Who is signed in.</summary>
/// <param name="SignsIn">Whether people sign in here; not when one machine alone is served.</param>
/// <param name="Name">The name; empty when nobody is.</param>
/// <param name="Person">The person of the jobs in whose name entries are made.</param>
/// <param name="Roles">The roles.</param>
/// <param name="NeedsFirst">Whether the first keeper is still to be made.</param>
public sealed record Me(bool SignsIn, string Name, string Person, IReadOnlyList<string> Roles, bool NeedsFirst)
{
    /// <summary>Whether entries in the name of a person are theirs: of that person, or of whoever sits at the one machine that is served.</summary>
    public bool Is(string person) => !SignsIn || (Person.Length > 0 && Person == person);

    /// <summary>Whether they withdraw what was entered on this tablet in the name of a person and the log does not have yet: their own, and as a keeper that of all.</summary>
    public bool Withdraws(string person) => Is(person) || Roles.Contains("keeper");
}

/// <summary>Who is signed in, asked once, and their signing out.</summary>
/// <param name="server">The server.</param>
/// <param name="kept">What the tablet keeps for who is signed in.</param>
/// <param name="tablet">The storage of the tablet.</param>
public sealed class Membership(Server server, KeptAnswers kept, TabletStore tablet)
{
    private const string Owed = "signing-out", Last = "signed-in";
    private Task<Me>? asked;

    /// <summary>Who is signed in.</summary>
    /// <exception cref="ServerException">The server is not there.</exception>
    public async Task<Me> Ask()
    {
        try
        {
            return await (asked ??= Who());
        }
        catch (ServerException)
        {
            asked = null;
            throw;
        }
    }

    /// <summary>Asks anew the next time.</summary>
    public void Forget() => asked = null;

    /// <summary>Signs out. Where the server does not answer it is told when it does, before anything else is asked of it; what was kept here is deleted at once.</summary>
    public async Task SignOut()
    {
        asked = null;
        try
        {
            await tablet.Change(new TabletChange(TabletStore.Facts, Owed, "yes"));
            await kept.Clear();
        }
        catch (TabletStoreException)
        {
            // A browser without storage kept nothing.
        }

        await Tell();
    }

    private async Task<Me> Who()
    {
        try
        {
            if (await tablet.Get(TabletStore.Facts, Owed) is not null)
            {
                await Tell();
            }
        }
        catch (TabletStoreException)
        {
            // Nor does it owe anything.
        }

        var me = await server.Get<Me>("api/me");
        return me.Name.Length > 0 && await Another(me.Name) ? await server.Get<Me>("api/me") : me;
    }

    // A session may have ended by itself: what was kept for one person is not shown to the next.
    private async Task<bool> Another(string name)
    {
        try
        {
            var before = await tablet.Get(TabletStore.Facts, Last);
            if (before == name)
            {
                return false;
            }

            await (before is null ? Task.CompletedTask : kept.Clear());
            await tablet.Change(new TabletChange(TabletStore.Facts, Last, name));
            return before is not null;
        }
        catch (TabletStoreException)
        {
            return false;
        }
    }

    private async Task Tell()
    {
        try
        {
            await server.Post<object>("api/sign-out");
        }
        catch (ServerException e) when (e.Status == System.Net.HttpStatusCode.Unauthorized)
        {
            // The session had ended already.
        }
        catch (ServerException)
        {
            return;
        }

        try
        {
            await tablet.Delete(TabletStore.Facts, Owed);
        }
        catch (TabletStoreException)
        {
            // It is told once more than it need be.
        }
    }
}
