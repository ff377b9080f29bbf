using CsCheck;
using Fairlead.Records;

namespace Fairlead.Tests.Records;

/// <summary>Whatever is done to a log shows.</summary>
public sealed class ChainTests
{
    private static readonly Gen<Entry[]> Logs = Gen.Select(Gen.String[1, 8], Gen.OneOf(Gen.Const("opened"), Gen.Const("closed"), Gen.Const("noted")), Gen.Double.Where(double.IsFinite), Gen.Int[-5, 60]).Array[1, 12].Select(parts =>
    {
        var entries = new List<Entry>();
        foreach (var (text, kind, number, minutes) in parts)
        {
            var safe = Safe(text);
            entries.Add(Entry.After(entries.Count, entries.Count == 0 ? Entry.Origin : entries[^1].Hash, Hangar.Morning.AddMinutes(minutes), "AV1", kind, "panel/" + safe,
                Payload.Empty.With("text", safe).With("number", number)));
        }

        return entries.ToArray();
    });

    [Fact]
    public void Any_byte_changed_in_an_exported_log_is_found() => Gen.Select(Logs, Gen.Int[0, int.MaxValue], Gen.Byte[1, 255]).Sample((entries, place, flip) =>
    {
        var file = LogFile.Write(entries.Select(e => e.Line()));
        Assert.Null(LogFile.Read(file).Fault);
        file[place % file.Length] ^= flip;
        Assert.NotNull(LogFile.Read(file).Fault);
    }, iter: 4_000);

    [Fact]
    public void The_first_altered_entry_is_the_one_named() => Gen.Select(Logs, Gen.Int[0, 11], Gen.Int[0, int.MaxValue], Gen.Byte[1, 127]).Sample((entries, which, place, flip) =>
    {
        var lines = entries.Select(e => e.Line()).ToArray();
        which %= lines.Length;
        var start = lines.Take(which).Sum(l => CanonicalJson.Bytes(l).Length + 1);
        var file = LogFile.Write(lines);
        file[start + (place % CanonicalJson.Bytes(lines[which]).Length)] ^= flip;
        Assert.Equal(which + 1, LogFile.Read(file).Fault!.Sequence);
    }, iter: 1_000);

    [Fact]
    public void A_file_cut_off_anywhere_is_found() => Gen.Select(Logs, Gen.Int[0, int.MaxValue]).Sample((entries, place) =>
    {
        var file = LogFile.Write(entries.Select(e => e.Line()));
        Assert.NotNull(LogFile.Read(file.AsSpan(0, place % file.Length)).Fault);
    });

    [Fact]
    public void Entries_taken_out_doubled_or_swapped_are_found() => Logs.Where(l => l.Length > 2).Sample(entries =>
    {
        var lines = entries.Select(e => e.Line()).ToList();
        Assert.Equal(2, ChainCheck.Check([lines[0], .. lines.Skip(2)]).Fault!.Sequence);
        Assert.Equal(2, ChainCheck.Check([lines[0], lines[0], .. lines.Skip(1)]).Fault!.Sequence);
        Assert.Equal(1, ChainCheck.Check([lines[1], lines[0], .. lines.Skip(2)]).Fault!.Sequence);
    });

    [Fact]
    public void An_entry_altered_with_its_own_hash_made_anew_breaks_the_next_link() => Logs.Where(l => l.Length > 1).Sample(entries =>
    {
        var forged = Entry.After(0, Entry.Origin, entries[0].At, "AV2", entries[0].Kind, entries[0].Subject, entries[0].Payload);
        var report = ChainCheck.Check([forged.Line(), .. entries.Skip(1).Select(e => e.Line())]);
        Assert.Equal(2, report.Fault!.Sequence);
    });

    [Fact]
    public void A_witness_finds_an_end_cut_off_and_a_log_written_anew() => Logs.Sample(entries =>
    {
        var lines = entries.Select(e => e.Line()).ToArray();
        var witness = ChainCheck.Check(lines).Head;
        Assert.True(Witness.TryRead(witness.ToString(), out var read));
        Assert.Equal(witness, read);
        var more = Entry.After(entries.Length, entries[^1].Hash, Hangar.Morning, "AV1", "noted", "panel/X", Payload.Empty.With("text", "more"));
        Assert.Null(ChainCheck.Check([.. lines, more.Line()], witness).Fault);
        Assert.Contains("cut off", ChainCheck.Check(lines.SkipLast(1), witness).Fault!.What);
        var other = Entry.After(0, Entry.Origin, Hangar.Morning, "AV2", "noted", "panel/X", Payload.Empty);
        Assert.NotNull(ChainCheck.Check([other.Line()], witness).Fault);
    });

    [Fact]
    public void Every_proof_of_every_tree_holds_and_an_altered_one_does_not() => Gen.Select(Gen.Int[1, 70], Gen.Int[0, 1000], Gen.Int[0, 1000]).Sample((size, i, j) =>
    {
        var tree = Tree(size);
        var index = i % size;
        var path = tree.Inclusion(index, size);
        Assert.True(MerkleTree.Includes(tree.Root(), size, index, Leaf(index), path));
        Assert.False(MerkleTree.Includes(tree.Root(), size, index, Leaf(index + 1), path));
        Assert.False(MerkleTree.Includes(tree.Root(), size, (index + 1) % size, Leaf(index), path) && size > 1);
        Assert.False(MerkleTree.Includes(tree.Root(), size, index, Leaf(index), [.. path, new byte[32]]));
        Assert.True(path.Count == 0 || !MerkleTree.Includes(tree.Root(), size, index, Leaf(index), [.. path.SkipLast(1)]));
        var from = (j % size) + 1;
        var steps = tree.Consistency(from, size);
        Assert.True(MerkleTree.Continues(tree.Root(from), from, tree.Root(), size, steps));
        Assert.False(MerkleTree.Continues(Tree(from, other: true).Root(), from, tree.Root(), size, steps));
        Assert.False(MerkleTree.Continues(tree.Root(from), from, Tree(size, other: true).Root(), size, steps));
    });

    [Fact]
    public void A_proof_shows_one_entry_and_survives_its_text() => Logs.Sample(entries =>
    {
        var proof = Proof.Of(entries, entries.Length);
        Assert.Null(proof.Fault());
        var read = Proof.Read(proof.Json());
        Assert.Null(read.Fault());
        Assert.Equal(ChainCheck.Check(entries.Select(e => e.Line())).Head, read.Log);
        Assert.NotNull((proof with { Log = proof.Log with { Root = Entry.Origin } }).Fault());
        Assert.NotNull((proof with { Line = proof.Line.Replace("AV1", "AV2", StringComparison.Ordinal) }).Fault());
    });

    [Fact]
    public void An_entry_reads_back_as_itself() => Logs.Sample(entries => Assert.All(entries, e => Assert.Equal(e, Entry.Read(e.Line()))));

    private static byte[] Leaf(int i) => BitConverter.GetBytes(i);

    private static MerkleTree Tree(int size, bool other = false)
    {
        var tree = new MerkleTree();
        for (var i = 0; i < size; i++)
        {
            tree.Add(Leaf(other ? i + 1 : i));
        }

        return tree;
    }

    // Half surrogate pairs have no form in JSON, so no entry holds one.
    private static string Safe(string text) => new([.. text.Select(c => char.IsSurrogate(c) ? '□' : c)]);
}
