using System.Globalization;

namespace Fairlead.Records;

/// <summary>How much of a log somebody knew, and its root: a few words to write on paper or keep elsewhere. Whoever holds one can tell later
/// whether the log still begins with what it held then; entries cut off at the end show by nothing else.</summary>
public sealed record Witness(long Entries, string Root)
{
    /// <summary>Reads the text of a witness: <c>42:ab12…</c>.</summary>
    public static bool TryRead(string text, out Witness witness)
    {
        var parts = (text ?? "").Trim().Split(':');
        var valid = parts.Length == 2 && long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out _) && parts[1].Length == 64 && parts[1].All(char.IsAsciiHexDigit);
        witness = valid ? new Witness(long.Parse(parts[0], CultureInfo.InvariantCulture), parts[1].ToLowerInvariant()) : new Witness(0, "");
        return valid;
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Entries}:{Root}");
}

/// <summary>Where a log is not what it was.</summary>
/// <param name="Sequence">The first entry that is altered, missing or not in its place.</param>
/// <param name="What">What is wrong, in plain words.</param>
public sealed record ChainFault(long Sequence, string What);

/// <summary>What checking a log gave.</summary>
/// <param name="Entries">The entries up to the first fault.</param>
/// <param name="Head">Their number and root.</param>
/// <param name="Fault">The first fault; null when there is none.</param>
/// <param name="ClockWentBack">Entries whose time is before that of the entry they follow: a clock was set back. The order stands by the sequence.</param>
public sealed record ChainReport(IReadOnlyList<Entry> Entries, Witness Head, ChainFault? Fault, IReadOnlyList<long> ClockWentBack);

/// <summary>Recomputes a log from its lines.</summary>
public static class ChainCheck
{
    /// <summary>Checks every line, hash and link, and names the first fault.</summary>
    /// <param name="lines">The lines of the log, in order.</param>
    /// <param name="witness">What somebody knew of it; null when nobody did.</param>
    public static ChainReport Check(IEnumerable<string> lines, Witness? witness = null)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var (entries, back, tree) = (new List<Entry>(), new List<long>(), new MerkleTree());
        var (previous, latest) = (Entry.Origin, DateTimeOffset.MinValue);
        ChainFault? fault = null;
        foreach (var line in lines)
        {
            var (entry, what) = Next(line, entries.Count + 1, previous);
            if (entry is null)
            {
                fault = new ChainFault(entries.Count + 1, what);
                break;
            }

            if (entry.At < latest)
            {
                back.Add(entry.Sequence);
            }

            entries.Add(entry);
            tree.Add(CanonicalJson.Bytes(line));
            (previous, latest) = (entry.Hash, entry.At);
        }

        var head = new Witness(entries.Count, Convert.ToHexStringLower(tree.Root()));
        return new ChainReport(entries, head, fault ?? Against(witness, tree), back);
    }

    private static (Entry? Entry, string What) Next(string line, long sequence, string previous)
    {
        Entry entry;
        try
        {
            entry = Entry.Read(line);
        }
        catch (FormatException e)
        {
            return (null, "it cannot be read as an entry: " + e.Message);
        }

        return entry.Sequence != sequence ? (null, string.Create(CultureInfo.InvariantCulture, $"entry {entry.Sequence} stands in its place: an entry is missing, doubled or moved"))
            : entry.Computed() != entry.Hash ? (null, "its hash does not belong to what it says: the entry was altered")
            : entry.Previous != previous ? (null, "it does not follow the entry before it: one of the two was put in place of another")
            : (entry, "");
    }

    private static ChainFault? Against(Witness? witness, MerkleTree tree) =>
        witness is null ? null
        : witness.Entries > tree.Count ? new ChainFault(tree.Count + 1, string.Create(CultureInfo.InvariantCulture, $"the log held {witness.Entries} entries and holds {tree.Count}: the end was cut off"))
        : Convert.ToHexStringLower(tree.Root((int)witness.Entries)) == witness.Root ? null
        : new ChainFault(1, string.Create(CultureInfo.InvariantCulture, $"the first {witness.Entries} entries are not those of the witness: the log was written anew, or the note is of a copy that went on by itself"));
}
