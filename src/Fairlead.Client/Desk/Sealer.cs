using Fairlead.Workbench.Views;
using Microsoft.JSInterop;

namespace Fairlead.Client.Desk;

/// <summary>A secret cannot be sealed; the message says why.</summary>
public sealed class SealException(string message) : Exception(message);

/// <summary>Seals the PIN of a signature for the server, so that it lies on the tablet as something that only the server can open.</summary>
/// <param name="server">The server, whose key is kept here since the job was taken along.</param>
/// <param name="script">The browser.</param>
public sealed class Sealer(Server server, IJSRuntime script)
{
    /// <summary>The note with the secret sealed in it, for this entry alone.</summary>
    /// <exception cref="SealException">There is no key, the browser cannot seal, or the secret is too long.</exception>
    public async Task<TabletNote> Seal(string job, string who, string kind, string subject, IReadOnlyDictionary<string, string> payload, TabletNote note, string secret)
    {
        ArgumentNullException.ThrowIfNull(note);
        try
        {
            var key = await server.Get<SealKey>("api/seal-key");
            var text = SealText.Of(SealText.Digest(job, who, kind, subject, payload, note), secret);
            var module = await script.InvokeAsync<IJSObjectReference>("import", "./js/seal.js");
            return note with { Key = key.Id, Sealed = Convert.ToBase64String(await module.InvokeAsync<byte[]>("seal", key.Spki, text)) };
        }
        catch (ServerException e) when (e.Away)
        {
            throw new SealException("To sign with the network gone this tablet needs the server's key: take the job along while the server answers.");
        }
        catch (Exception e) when (e is ServerException or ArgumentException or JSException)
        {
            throw new SealException("The PIN cannot be sealed. " + e.Message.Split('\n')[0]);
        }
    }
}
