namespace Fairlead.Model.Reading;

/// <summary>What reading a job leaves behind, so that reading it again after an edit costs what the edit changed. For one job, and not for several
/// threads at once.</summary>
public sealed class ReadMemory
{
    private readonly Dictionary<string, PieceReader> readers = new(StringComparer.Ordinal);
    private PartsCatalog? parts;
    private readonly bool once;
    private Job? job;

    /// <summary>A memory of nothing yet.</summary>
    public ReadMemory()
    {
    }

    // Whoever reads once has no use for pieces: files are read whole, which is quicker.
    internal ReadMemory(bool once) => this.once = once;

    /// <summary>Another memory of the same, for another thread. What is known of a piece of text is shared between them.</summary>
    public ReadMemory Another()
    {
        var other = new ReadMemory { parts = parts, job = job, Sound = Sound };
        foreach (var (file, reader) in readers)
        {
            other.readers.Add(file, reader.Another());
        }

        return other;
    }

    internal PieceReader Reader(string file) => readers.TryGetValue(file, out var known) ? known : readers[file] = new PieceReader(file, whole: once);

    // Files that went are forgotten.
    internal void Keep(IReadOnlyList<string> files)
    {
        foreach (var gone in readers.Count > files.Count ? readers.Keys.Except(files, StringComparer.Ordinal).ToArray() : [])
        {
            readers.Remove(gone);
        }
    }

    // What is equal stays the very same object, so that nobody need compare it again.
    internal PartsCatalog Same(PartsCatalog now) => parts = now.Equals(parts) ? parts : now;

    internal Job Same(Job now) => now.Equals(job) ? job : now;

    // The last job of which nothing was wrong with the records taken together: that does not depend on where they stand.
    internal Job? Sound { get; private set; }

    internal void Keep(Job now, bool isSound) => (job, Sound) = (now, isSound ? now : Sound);
}
