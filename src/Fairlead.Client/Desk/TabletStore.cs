using System.Runtime.InteropServices.JavaScript;
using Microsoft.JSInterop;

namespace Fairlead.Client.Desk;

/// <summary>The storage of the tablet did not take or give something; the message says why.</summary>
public sealed class TabletStoreException(string message, bool full) : Exception(message)
{
    /// <summary>Whether it is full.</summary>
    public bool Full { get; } = full;
}

/// <summary>Something to put or, without a value, to delete.</summary>
/// <param name="Store">The store.</param>
/// <param name="Key">The key.</param>
/// <param name="Value">The text; null deletes.</param>
public sealed record TabletChange(string Store, string Key, string? Value);

/// <summary>What this tablet keeps, in the browser's own database: texts by key in a few named stores.</summary>
/// <param name="script">The browser.</param>
public sealed partial class TabletStore(IJSRuntime script)
{
    /// <summary>Last good answers of the server.</summary>
    public const string Kept = "kept";

    /// <summary>Texts of jobs.</summary>
    public const string Texts = "texts";

    /// <summary>Entries that wait to be sent.</summary>
    public const string Outbox = "outbox";

    /// <summary>Photographs of entries that wait to be sent.</summary>
    public const string Photographs = "photographs";

    /// <summary>What is known of this tablet itself.</summary>
    public const string Facts = "facts";

    /// <summary>Edits of jobs that are not kept yet.</summary>
    public const string Edits = "edits";

    private Task<IJSObjectReference>? module;
    private Task<JSObject>? texts;

    /// <summary>The text under a key; null when there is none.</summary>
    /// <exception cref="TabletStoreException">The storage cannot be read.</exception>
    public Task<string?> Get(string store, string key) => Straight(() => Browser.Get(store, key));

    /// <summary>All keys of a store, in order.</summary>
    /// <exception cref="TabletStoreException">The storage cannot be read.</exception>
    public Task<string[]> Keys(string store) => Call(m => m.InvokeAsync<string[]>("keys", store));

    /// <summary>All texts of a store, in the order of their keys.</summary>
    /// <exception cref="TabletStoreException">The storage cannot be read.</exception>
    public Task<string[]> All(string store) => Call(m => m.InvokeAsync<string[]>("all", store));

    /// <summary>Keeps a text that can be had again. It may be lost when the tablet dies within the next seconds.</summary>
    /// <exception cref="TabletStoreException">It is not kept.</exception>
    public Task Put(string store, string key, string value) => Straight(async () =>
    {
        await Browser.Put(store, key, value);
        return value;
    });

    /// <summary>Deletes a text.</summary>
    /// <exception cref="TabletStoreException">It is not deleted.</exception>
    public Task Delete(string store, string key) => Call(m => m.InvokeAsync<object?>("remove", store, key));

    /// <summary>Makes several changes at once, wholly or not at all. When this returns, they are on the disk.</summary>
    /// <exception cref="TabletStoreException">None is made.</exception>
    public Task Change(params TabletChange[] changes) => Call(m => m.InvokeAsync<object?>("change", (object)changes));

    /// <summary>A new id: a random UUID.</summary>
    public Task<string> NewId() => Call(m => m.InvokeAsync<string>("id"));

    /// <summary>Asks the browser not to clear this storage by itself; false where it may.</summary>
    public Task<bool> Persist() => Call(m => m.InvokeAsync<bool>("persist"));

    /// <summary>Has one page of this tablet at a time be at something; null where another page is, and this one does not wait for it. The turn ends when it is disposed of, or with the page.</summary>
    /// <param name="name">What they are at.</param>
    /// <param name="wait">Whether to wait for the others.</param>
    /// <exception cref="TabletStoreException">The browser gives no turns.</exception>
    public async Task<IAsyncDisposable?> Turn(string name, bool wait)
    {
        try
        {
            await using var locks = await script.InvokeAsync<IJSObjectReference>("import", "./js/locks.js");
            return await locks.InvokeAsync<IJSObjectReference?>("turn", name, wait) is { } turn ? new Held(turn) : null;
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            throw new TabletStoreException("The storage of this tablet failed. " + e.Message.Split('\n')[0], full: false);
        }
    }

    private async Task<T> Call<T>(Func<IJSObjectReference, ValueTask<T>> call)
    {
        try
        {
            return await call(await (module ??= script.InvokeAsync<IJSObjectReference>("import", "./js/store.js").AsTask()));
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            module = module is { IsFaulted: true } ? null : module;
            throw Failed(e.Message);
        }
    }

    // Long texts go over as they are: written as JSON for the way, they would hold up the page.
    private async Task<T> Straight<T>(Func<Task<T>> call)
    {
        try
        {
            await (texts ??= JSHost.ImportAsync("store", "../js/store.js"));
            return await call();
        }
        catch (System.Runtime.InteropServices.JavaScript.JSException e)
        {
            texts = texts is { IsFaulted: true } ? null : texts;
            throw Failed(e.Message);
        }
    }

    private static TabletStoreException Failed(string message)
    {
        var said = message.Split('\n')[0];
        return said.StartsWith("full:", StringComparison.Ordinal) || said.StartsWith("Error: full:", StringComparison.Ordinal)
            ? new TabletStoreException("The storage of this tablet is full.", full: true) : new TabletStoreException("The storage of this tablet failed. " + said, full: false);
    }

    private static partial class Browser
    {
        [JSImport("get", "store")]
        public static partial Task<string?> Get(string store, string key);

        [JSImport("put", "store")]
        public static partial Task Put(string store, string key, string value);
    }

    private sealed class Held(IJSObjectReference turn) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await turn.InvokeVoidAsync("end");
            await turn.DisposeAsync();
        }
    }
}
