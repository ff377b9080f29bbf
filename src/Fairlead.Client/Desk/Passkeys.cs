using System.Net;
using System.Text.Json;
using Microsoft.JSInterop;

namespace Fairlead.Client.Desk;

/// <summary>Passkeys as the browser makes and shows them.</summary>
/// <param name="js">The browser.</param>
/// <param name="server">The server.</param>
public sealed class Passkeys(IJSRuntime js, Server server)
{
    /// <summary>Whether this browser has passkeys, for the page as it was reached.</summary>
    public async Task<bool> Can()
    {
        await using var module = await Module();
        return await module.InvokeAsync<bool>("can");
    }

    /// <summary>Makes a passkey for whoever is signed in.</summary>
    /// <exception cref="ServerException">It is refused, or was not made.</exception>
    public Task Make(string password, string name) => Ask("api/passkeys/offer", new { password }, "make", credential => server.Post<object>("api/passkeys", new { credential, name }));

    /// <summary>Signs in by a passkey.</summary>
    /// <exception cref="ServerException">It is refused, or none was shown.</exception>
    public Task SignIn() => Ask("api/sign-in/passkey/offer", null, "show", credential => server.Post<object>("api/sign-in/passkey", new { credential }));

    private async Task Ask(string route, object? body, string how, Func<string, Task> give)
    {
        var offer = await server.Post<JsonElement>(route, body);
        string credential;
        try
        {
            await using var module = await Module();
            credential = await module.InvokeAsync<string>(how, offer.GetRawText());
        }
        catch (JSException e)
        {
            throw new ServerException(HttpStatusCode.BadRequest, "The browser gave no passkey. A passkey needs the server's name in the address, not its number, and a certificate that the browser trusts. The browser says: " + e.Message.Split('\n')[0]);
        }

        await give(credential);
    }

    private ValueTask<IJSObjectReference> Module() => js.InvokeAsync<IJSObjectReference>("import", "./js/passkey.js");
}
