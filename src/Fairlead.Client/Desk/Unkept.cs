using System.Text.Json;
using System.Text.Json.Serialization;
using Fairlead.Workbench;
using Microsoft.JSInterop;

namespace Fairlead.Client.Desk;

/// <summary>Edits that were not kept by a page that is gone.</summary>
/// <param name="Page">The page that made them.</param>
/// <param name="Since">When the first of them was made.</param>
/// <param name="Steps">The edits, step by step.</param>
public sealed record LeftEdits(string Page, DateTimeOffset Since, JobEdit[][] Steps);

/// <summary>The edits of this page that are not kept yet, with the texts they were made from. Each is written down on the tablet before it is shown as made, so that
/// none is lost with the page.</summary>
/// <param name="store">What the tablet keeps.</param>
/// <param name="script">The browser.</param>
/// <param name="clock">The clock.</param>
public sealed class Unkept(TabletStore store, IJSRuntime script, TimeProvider clock)
{
    private readonly List<JobEdit[]> steps = [];
    private readonly Stack<JobEdit[]> undone = new();
    private JobEdit[]? pending;
    private bool mirrored = true;
    private Task<string>? page;
    private Task writing = Task.CompletedTask;
    private string job = "";
    private DateTimeOffset since;

    /// <summary>The steps, in their order.</summary>
    public IReadOnlyList<JobEdit[]> Steps => steps;

    /// <summary>The texts they are made from, by file, as JSON; empty while they are not known.</summary>
    public string From { get; private set; } = "";

    /// <summary>Why the tablet does not write edits down; empty when it does.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>Begins anew with a job and the texts that edits are made from.</summary>
    internal void Begin(string name, string from)
    {
        (job, From, pending, mirrored) = (name, from, null, true);
        steps.Clear();
        undone.Clear();
    }

    /// <summary>Begins anew with other texts of the same job and other steps.</summary>
    internal Task Replace(IEnumerable<JobEdit[]> others, string from)
    {
        var now = others.ToArray();
        Begin(job, from);
        steps.AddRange(now);
        return Write();
    }

    /// <summary>Writes down a step that is about to be made.</summary>
    internal Task Announce(JobEdit[] step)
    {
        pending = step;
        return Write();
    }

    /// <summary>The step that was announced is made.</summary>
    internal void Made()
    {
        steps.Add(pending!);
        pending = null;
        undone.Clear();
    }

    /// <summary>The step that was announced could not be made.</summary>
    internal Task Drop()
    {
        pending = null;
        return Write();
    }

    /// <summary>Takes the last step back.</summary>
    /// <returns>Whether the steps tell how things stand now. They do not when something was taken back that had been kept.</returns>
    internal async Task<bool> Undo()
    {
        if (!mirrored || steps.Count == 0)
        {
            return false;
        }

        undone.Push(steps[^1]);
        steps.RemoveAt(steps.Count - 1);
        await Write();
        return true;
    }

    /// <summary>Makes the step again that was taken back last.</summary>
    /// <returns>Whether the steps tell how things stand now.</returns>
    internal async Task<bool> Redo()
    {
        if (!mirrored || !undone.TryPop(out var step))
        {
            return false;
        }

        steps.Add(step);
        await Write();
        return true;
    }

    /// <summary>Puts one step that says how things stand now in place of all.</summary>
    internal Task Restate(JobEdit[] step)
    {
        Begin(job, From);
        mirrored = false;
        steps.AddRange(step.Length == 0 ? [] : [step]);
        return Write();
    }

    /// <summary>Edits of a job that pages which are gone did not keep, earliest first.</summary>
    internal async Task<LeftEdits[]> Left(string name)
    {
        try
        {
            // This page's own too: it has been at another job meanwhile.
            var (own, living) = (await (page ??= Hold()), await Living());
            var keys = (await store.Keys(TabletStore.Edits)).Select(k => k.Split('/')).Where(k => k is [var of, var by, "steps"] && of == name && (by == own || !living.Contains(by))).ToArray();
            var left = new List<LeftEdits>();
            foreach (var key in keys)
            {
                var written = JsonSerializer.Deserialize(await store.Get(TabletStore.Edits, string.Join('/', key)) ?? "", UnkeptJson.Default.WrittenSteps)!;
                left.Add(new LeftEdits(key[1], written.Since, written.Steps));
            }

            return [.. left.OrderBy(l => l.Since)];
        }
        catch (Exception e) when (e is TabletStoreException or JSException or JsonException)
        {
            Trouble = "It is not known whether edits were left over on this tablet. " + e.Message;
            return [];
        }
    }

    /// <summary>Takes over the edits of a page that is gone, with the texts they were made from.</summary>
    /// <exception cref="TabletStoreException">The storage cannot be read.</exception>
    internal async Task Take(LeftEdits left)
    {
        var from = await store.Get(TabletStore.Edits, Key(left.Page, "from")) ?? From;
        await Replace(left.Steps, from);
        since = left.Since;
        if (left.Page != await (page ??= Hold()))
        {
            await Forget(left);
        }
    }

    /// <summary>Drops the edits of a page that is gone.</summary>
    /// <exception cref="TabletStoreException">The storage does not drop them.</exception>
    internal Task Forget(LeftEdits left) => store.Change(new(TabletStore.Edits, Key(left.Page, "from"), null), new(TabletStore.Edits, Key(left.Page, "steps"), null));

    // One after the other: the last to be written is what stands.
    private Task Write()
    {
        JobEdit[][] all = pending is null ? [.. steps] : [.. steps, pending];
        since = all.Length <= 1 ? clock.GetUtcNow() : since;
        var (now, from, before) = (new WrittenSteps(since, all), From, writing);
        return writing = After();

        async Task After()
        {
            await before;
            try
            {
                var by = await (page ??= Hold());
                await store.Change(
                    new(TabletStore.Edits, Key(by, "from"), now.Steps.Length == 0 ? null : from),
                    new(TabletStore.Edits, Key(by, "steps"), now.Steps.Length == 0 ? null : JsonSerializer.Serialize(now, UnkeptJson.Default.WrittenSteps)));
                Trouble = "";
            }
            catch (Exception e) when (e is TabletStoreException or JSException)
            {
                Trouble = "This tablet does not write your edits down: keep them soon. " + e.Message;
            }
        }
    }

    private string Key(string by, string what) => $"{job}/{by}/{what}";

    // A page holds a lock of its own name while it lives: so others know that its edits are not left over.
    private async Task<string> Hold()
    {
        await using var locks = await script.InvokeAsync<IJSObjectReference>("import", "./js/locks.js");
        return await locks.InvokeAsync<string>("hold");
    }

    private async Task<HashSet<string>> Living()
    {
        await using var locks = await script.InvokeAsync<IJSObjectReference>("import", "./js/locks.js");
        return [.. await locks.InvokeAsync<string[]>("living")];
    }
}

/// <summary>Steps as they are written down.</summary>
internal sealed record WrittenSteps(DateTimeOffset Since, JobEdit[][] Steps);

/// <summary>How they are written down.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true)]
[JsonSerializable(typeof(WrittenSteps))]
internal sealed partial class UnkeptJson : JsonSerializerContext;
